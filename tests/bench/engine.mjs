// The engine of the last build on a blank page, to be called from a measurement.

import { DESK, serveFolder } from '../browser/harness.mjs';

const ENGINE = new URL('../../target/packer/page/', import.meta.url);

/** A page whose `engine` has the demo open. */
export async function openEngine(browser) {
  const { address, close } = await serveFolder(ENGINE);
  const page = await browser.newPage({ viewport: DESK });
  page.once('close', close);
  await page.route(address, (route) => route.fulfill({ contentType: 'text/html', body: '<!doctype html>' }));
  await page.goto(address);
  await page.evaluate(async () => {
    globalThis.engine = await import('/remount.js');
    await engine.default({ module_or_path: '/remount_bg.opt.wasm' });
    engine.open('');
  });
  return page;
}
