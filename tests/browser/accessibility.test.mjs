import assert from 'node:assert/strict';
import { after, before, test } from 'node:test';
import axe from 'axe-core';
import { DESK, launchBrowser, layOut, openPage, PHONE, SINGLE_FILE } from './harness.mjs';

let browser;

before(async () => {
  browser = await launchBrowser();
});

after(() => browser?.close());

for (const viewport of [PHONE, DESK]) {
  for (const colorScheme of ['light', 'dark']) {
    test(`axe-core finds nothing at ${viewport.width} px, ${colorScheme}`, async () => {
      const { page } = await openPage(browser, SINGLE_FILE, { viewport, colorScheme });
      assert.deepEqual(await violations(page), []);
    });

    test(`nothing is wider than the window at ${viewport.width} px, ${colorScheme}`, async () => {
      const { page } = await openPage(browser, SINGLE_FILE, { viewport, colorScheme });
      await layOut(page);
      const width = await page.evaluate(() => document.documentElement.scrollWidth);
      assert.ok(width <= viewport.width, `the page is ${width} px wide`);
    });
  }
}

async function violations(page) {
  await layOut(page);
  await page.evaluate(axe.source);
  const { violations } = await page.evaluate(() => globalThis.axe.run());
  return violations.flatMap(({ id, help, nodes }) => nodes.map(({ target }) => `${id} at ${target}: ${help}`));
}
