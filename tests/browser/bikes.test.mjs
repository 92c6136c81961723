// Whole bikes: set-up B with parts of its own, and all bikes of the rack side by side.

import assert from 'node:assert/strict';
import { after, afterEach, before, test } from 'node:test';
import { assertAxe, assertContrast } from './accessible.mjs';
import { assertQuiet, DESK, downloaded, frame, launchBrowser, openPage, SINGLE_FILE, text, type } from './harness.mjs';

const COMPARED = 120_000;

let browser;

before(async () => {
  browser = await launchBrowser();
});

after(() => browser?.close());

afterEach(() => Promise.all(browser.contexts().map((context) => context.close())));

const unfold = (page, id) => page.evaluate((id) => document.getElementById(id).setAttribute('open', ''), id);
const keep = async (page, side, name) => {
  await page.fill(`#rack-name-${side}`, name);
  await page.locator(`[data-rack=keep-${side}]`).click();
};
/** Waits until the table of all bikes has every lap, or this in it. */
const compared = (page, words = 'the best') =>
  page.waitForFunction(
    (words) => {
      document.getElementById('bikes').scrollIntoView({ behavior: 'instant' });
      const { textContent } = document.getElementById('bikes-table');
      return textContent.includes(words) && !textContent.includes('…');
    },
    words,
    { timeout: COMPARED },
  );

test('the page itself rides what no worker may, and hears the rider meanwhile', async () => {
  const { page, heard } = await openPage(browser, SINGLE_FILE, { viewport: DESK, rides: true });
  await type(page, 'capacity-b', '47');
  await type(page, 'tyre-b', '40-622');
  assert.match(await text(page, '#cage-tables'), /B’s derailleur/);
  await page.evaluate(() => {
    globalThis.Worker = class {
      constructor() {
        throw new Error('refused');
      }
    };
  });
  await unfold(page, 'rack');
  await keep(page, 'b', 'Long cage');
  await compared(page);
  await page.waitForFunction(() => / to /.test(document.getElementById('bikes-table').textContent), null, { timeout: COMPARED });
  await page.locator('[data-act="order-bikes:lap"]').click();
  assert.equal(await page.locator('[aria-sort=ascending]').count(), 1);
  assertQuiet(heard);
});

test('kept bikes are compared with A and B, ordered, saved and put on the bench', async () => {
  const { page, heard } = await openPage(browser, SINGLE_FILE, { viewport: DESK, rides: true });
  await unfold(page, 'rack');
  await keep(page, 'a', 'As it came');
  await type(page, 'rings-b', '46/33');
  await keep(page, 'b', 'Closer rings');
  await type(page, 'rings-b', '40');
  await keep(page, 'b', 'One ring');

  await compared(page);
  assert.equal(await page.locator('#bikes-table tbody tr').count(), 5);
  assert.match(await text(page, '#bikes-answer'), /nothing beats/);
  await assertAxe(page, '#bikes');
  await assertContrast(page, '#bikes');

  // Times are as they were in another unit: nothing is ridden anew, so that no row ever waits.
  await page.evaluate(() => {
    globalThis.waited = false;
    const table = document.getElementById('bikes-table');
    const look = () => {
      globalThis.waited ||= table.textContent.includes('…');
    };
    new MutationObserver(look).observe(table, { subtree: true, childList: true, characterData: true });
  });
  await page.click('#units-chosen');
  await type(page, 'speed-unit', 'mph');
  await page.keyboard.press('Escape');
  await compared(page, 'mph');
  assert.equal(await page.evaluate(() => globalThis.waited), false);

  await page.locator('[data-act="order-bikes:highest"]').click();
  assert.equal(await page.locator('[aria-sort=ascending]').count(), 1);
  const saving = page.waitForEvent('download');
  await page.locator('#save-bikes').click();
  const csv = await downloaded(await saving);
  assert.equal(csv.trim().split('\r\n').length, 6);

  await page.locator('[data-act="bike-a:One ring"]').last().click();
  await frame(page);
  assert.equal(await page.inputValue('#rings-a'), '40');
  const asB = page.locator('#bikes-table').getByRole('button', { name: 'Closer rings as B' });
  await asB.click();
  await frame(page);
  assert.equal(await page.inputValue('#rings-b'), '46/33');
  assertQuiet(heard);
});
