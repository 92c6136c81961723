// "Will the cage take it?" from end to end: a mechanic measures, steps through the gears, and prints.

import assert from 'node:assert/strict';
import { after, before, test } from 'node:test';
import {
  addressWith,
  assertQuiet,
  frame,
  LINK_PAUSE_MS,
  launchBrowser,
  openPage,
  PHONE,
  SINGLE_FILE,
  text,
  type,
} from './harness.mjs';

let browser;

before(async () => {
  browser = await launchBrowser();
});

after(() => browser?.close());

const label = (page) => page.getAttribute('[data-picture=drivetrain] canvas', 'aria-label');

async function press(page, key, times = 1) {
  for (let pressed = 0; pressed < times; pressed += 1) {
    await page.keyboard.press(key);
    await frame(page);
  }
}

test('a bigger cassette changes the verdict, the links and the remedies', async () => {
  const { page, heard } = await openPage(browser, SINGLE_FILE);
  await type(page, 'pulley-centres', '55');
  assert.match(
    await text(page, '#cage-answer'),
    /A fits if you never use 34×11 and 34×12: .*Keep the derailleur, with a chain of 110 links/,
  );
  await type(page, 'cassette-a', '11-13-15-17-19-21-24-28-32-36-40');
  assert.match(
    await text(page, '#cage-answer'),
    /A does not fit: a 40 sprocket is larger than the 34 .*Buy a rear derailleur for a 40 and at least 45 teeth/,
  );
  const remedies = await text(page, '#chain-remedies');
  assert.match(remedies, /A cage of at least \d+ mm between pulley centres/);
  assert.match(remedies, /A hanger \d+ mm lower, so that the derailleur clears the 40 sprocket/);
  await type(page, 'pulley-centres', '93');
  assert.match(await text(page, '#cage-answer'), /A does not fit/);
  assertQuiet(heard);
});

test('a chain that was counted is judged gear by gear', async () => {
  const { page } = await openPage(browser, SINGLE_FILE);
  await type(page, 'links', '104');
  assert.match(await text(page, '#cage-answer'), /the 104 links fitted are too short for 50×21/);
  assert.match(await text(page, '#chain-bench'), /50×30\s+–\s+−\d\.\d.*too tight, cross-chained/);
  assert.match(await label(page), /A · 50×30: too tight/);
  await type(page, 'links', '105');
  assert.match(await text(page, '#says-links'), /cannot be closed/);
  assert.match(await text(page, '#chain-bench'), /104 links/);
});

test('the gears are stepped through by keyboard, slider and table', async () => {
  const { page, heard } = await openPage(browser, SINGLE_FILE);
  const address = page.url();
  assert.match(await label(page), /A · 34×13: 1° from its stop.*B · 32×11: 1° from its stop/);
  await page.locator('[data-picture=drivetrain] .plot').focus();
  await press(page, 'ArrowRight', 3);
  assert.match(await label(page), /A · 50×24: cage \d+° forward, fine/);
  assert.match(await text(page, '[data-picture=drivetrain] .reading'), /^A 50×24: cage \d+° forward/);
  assert.equal(await page.inputValue('#gear-a'), '3');
  await page.focus('#gear-a');
  await press(page, 'End');
  assert.match(await label(page), /A · 34×11: slack/);
  assert.equal(await text(page, '#value-gear-a'), '34×11');
  const table = page.locator('#chain-bench .scroll').nth(1);
  await table.focus();
  await press(page, 'ArrowDown', 2);
  assert.match(await label(page), /B · 44×28: /);
  await page.locator('#chain-bench tr[data-value="22"]').first().scrollIntoViewIfNeeded();
  await page.locator('#chain-bench tr[data-puts="gear-b"]').last().hover();
  await frame(page);
  assert.match(await label(page), /B · 32×11: /);
  await page.waitForTimeout(LINK_PAUSE_MS + 100);
  assert.equal(page.url(), address, 'looking is nothing to keep in the address');
  assert.ok(await page.isDisabled('[data-act=undo]'), 'looking is nothing to undo');
  assertQuiet(heard);
});

test('a gear beyond a smaller set-up falls back to its last, and comes again', async () => {
  const { page } = await openPage(browser, SINGLE_FILE);
  await page.focus('#gear-b');
  await press(page, 'Home');
  await press(page, 'End');
  await type(page, 'rings-b', '42');
  assert.match(await label(page), /B · 42×11: /);
  assert.equal(await page.getAttribute('#gear-b', 'max'), '11');
  await type(page, 'rings-b', '44/32');
  assert.match(await label(page), /B · 32×11: /);
});

test('measures travel with the link, and so does the gear drawn', async () => {
  const { page } = await openPage(browser, SINGLE_FILE);
  await page.focus('#gear-a');
  await press(page, 'End');
  await type(page, 'chainstay', '432');
  const { page: other } = await openPage(browser, await addressWith(page, 'cs=432'));
  assert.equal(await other.inputValue('#chainstay'), '432');
  assert.match(await label(other), /A · 34×11: /);
  assert.equal(await text(other, '#chain-bench'), await text(page, '#chain-bench'));
});

test('what was left empty is named until it is measured', async () => {
  const { page } = await openPage(browser, SINGLE_FILE);
  assert.match(await text(page, '#cage-answer'), /You left these empty\. .*chainstay length/);
  await type(page, 'chainstay', '428');
  assert.doesNotMatch(await text(page, '#cage-answer'), /chainstay length/);
});

for (const viewport of [undefined, PHONE]) {
  test(`the bench table is on paper, ${viewport ? 'from a phone' : 'from a desk'}`, async () => {
    const { page } = await openPage(browser, SINGLE_FILE, viewport ? { viewport } : {});
    await page.evaluate(() => (window.print = () => {}));
    await page.click('[data-prints=chain-bench]');
    await page.emulateMedia({ media: 'print' });
    await page.setViewportSize({ width: 718, height: 1000 }); // A4 between usual margins
    const rows = page.locator('#alone tbody tr');
    assert.equal(await rows.count(), 44);
    for (const row of [rows.first(), rows.last()]) {
      const box = await row.boundingBox();
      assert.ok(box.height > 0 && box.x >= 0 && box.x + box.width <= 718, JSON.stringify(box));
    }
    assert.equal(await page.locator('[data-form=chain]').isVisible(), false);
    assert.equal(await page.locator('#sheet').isVisible(), false);
    const pdf = await page.pdf({ format: 'A4' });
    assert.ok(pdf.length > 20_000, `${pdf.length} bytes`);
  });
}
