import assert from 'node:assert/strict';
import { after, before, test } from 'node:test';
import axe from 'axe-core';
import { DESK, launchBrowser, layOut, openPage, PHONE, SINGLE_FILE } from './harness.mjs';

let browser;

before(async () => {
  browser = await launchBrowser();
});

after(() => browser?.close());

// As it opens and with everything unfolded, at each width and in each scheme.
for (const [viewport, colorScheme, folded] of [
  [PHONE, 'light', false],
  [PHONE, 'dark', true],
  [DESK, 'light', true],
  [DESK, 'dark', false],
]) {
  const state = folded ? 'as it opens' : 'unfolded';
  test(`axe-core finds nothing at ${viewport.width} px, ${colorScheme}, ${state}, and nothing is wider than the window`, async () => {
    const { page } = await openPage(browser, SINGLE_FILE, { viewport, colorScheme, folded });
    assert.deepEqual(await violations(page), []);
    const width = await page.evaluate(() => document.documentElement.scrollWidth);
    assert.ok(width <= viewport.width, `the page is ${width} px wide`);
  });
}

async function violations(page) {
  await layOut(page);
  await page.evaluate(axe.source);
  const { violations } = await page.evaluate(() => globalThis.axe.run());
  return violations.flatMap(({ id, help, nodes }) => nodes.map(({ target }) => `${id} at ${target}: ${help}`));
}
