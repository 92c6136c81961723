// Whole bikes: set-up B with parts of its own, and all bikes of the rack side by side.

import assert from 'node:assert/strict';
import { after, afterEach, before, test } from 'node:test';
import { assertQuiet, DESK, downloaded, frame, launchBrowser, openPage, PHONE, SINGLE_FILE, text, type } from './harness.mjs';

const COMPARED = 120_000;

let browser;

before(async () => {
  browser = await launchBrowser();
});

after(() => browser?.close());

afterEach(() => Promise.all(browser.contexts().map((context) => context.close())));

const unfold = (page, id) => page.evaluate((id) => document.getElementById(id).setAttribute('open', ''), id);
const placeholder = (page, id) => page.getAttribute(`#${id}`, 'placeholder');

for (const [name, viewport] of [
  ['390', PHONE],
  ['1440', DESK],
]) {
  test(`B gets a long cage, a wide tyre and a mass of its own at ${name} px, and one press gives A's back`, async () => {
    const { page, heard } = await openPage(browser, SINGLE_FILE, { viewport });
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
    assertQuiet(heard);
  });
}

test('kept bikes are compared with A and B, ordered, saved and put on the bench', async () => {
  const { page, heard } = await openPage(browser, SINGLE_FILE, { viewport: DESK });
  await unfold(page, 'rack');
  await page.fill('#rack-name-a', 'As it came');
  await page.locator('[data-rack=keep-a]').click();
  await type(page, 'rings-b', '40');
  await page.fill('#rack-name-b', 'One ring');
  await page.locator('[data-rack=keep-b]').click();

  await page.waitForFunction(
    () => {
      document.getElementById('bikes').scrollIntoView({ behavior: 'instant' });
      return /the best/.test(document.getElementById('bikes-table').textContent);
    },
    null,
    { timeout: COMPARED },
  );
  await page.waitForFunction(() => !document.getElementById('bikes-table').textContent.includes('…'), null, {
    timeout: COMPARED,
  });
  assert.equal(await page.locator('#bikes-table tbody tr').count(), 4);
  assert.match(await text(page, '#bikes-answer'), /nothing beats/);

  await page.locator('[data-act="order-bikes:highest"]').click();
  assert.equal(await page.locator('[aria-sort=ascending]').count(), 1);
  const saving = page.waitForEvent('download');
  await page.locator('#save-bikes').click();
  const csv = await downloaded(await saving);
  assert.equal(csv.trim().split('\r\n').length, 5);

  await page.locator('[data-act="bike-a:One ring"]').last().click();
  await frame(page);
  assert.equal(await page.inputValue('#rings-a'), '40');
  assertQuiet(heard);
});
