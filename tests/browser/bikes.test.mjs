// Whole bikes: set-up B with parts of its own, and all bikes of the rack side by side.

import assert from 'node:assert/strict';
import { after, afterEach, before, test } from 'node:test';
import axe from 'axe-core';
import { assertQuiet, DESK, downloaded, frame, launchBrowser, openPage, PHONE, SINGLE_FILE, text, type } from './harness.mjs';

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
const placeholder = (page, id) => page.getAttribute(`#${id}`, 'placeholder');

for (const [name, viewport] of [
  ['390', PHONE],
  ['1440', DESK],
]) {
  test(`B gets a long cage, a wide tyre and a mass of its own at ${name} px, and one press gives A's back`, async () => {
    const { page, heard } = await openPage(browser, SINGLE_FILE, { viewport, rides: true });
    assert.equal(await placeholder(page, 'capacity-b'), 'as A: 33');
    assert.equal(await placeholder(page, 'roll-out-b'), 'as A');
    assert.match(await page.locator('#tyre-kind-b option').first().textContent(), /^as A: tubeless$/);

    await type(page, 'capacity-b', '47');
    await type(page, 'tyre-b', '40-622');
    await type(page, 'bike-mass-b', '9.7');
    await frame(page);
    assert.equal(await placeholder(page, 'roll-out-b'), 'not known');
    assert.match(await text(page, '#differences'), /total capacity 47 for 33 teeth.*|tyre 40-622 for 33-622/);
    assert.match(await text(page, '#cage-tables'), /B’s derailleur/);
    assert.match(await text(page, '#tyre-answer'), /labelled 40/);

    await page.locator('#says-tyre-b button').click();
    await frame(page);
    assert.equal(await page.inputValue('#tyre-b'), '');
    assert.doesNotMatch(await text(page, '#tyre-answer'), /labelled 40/);
    const widest = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
    assert.ok(widest <= 0, `${widest} px wider than the window`);
    if (viewport === DESK) await compareWithoutWorkers(page);
    assertQuiet(heard);
  });
}

/** The page itself rides what no worker may, and hears the rider meanwhile. */
async function compareWithoutWorkers(page) {
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
}

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
  await page.evaluate(axe.source);
  const violations = await page.evaluate(() =>
    globalThis.axe.run('#bikes').then(({ violations }) => violations.map(({ id, nodes }) => `${id} at ${nodes[0].target}`)),
  );
  assert.deepEqual(violations, []);

  // Times are as they were in another unit: nothing is ridden anew, so that no row ever waits.
  await page.evaluate(() => {
    globalThis.waited = false;
    const table = document.getElementById('bikes-table');
    const look = () => {
      globalThis.waited ||= table.textContent.includes('…');
    };
    new MutationObserver(look).observe(table, { subtree: true, childList: true, characterData: true });
  });
  await type(page, 'speed-unit', 'mph');
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
