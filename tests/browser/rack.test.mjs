// Whole bikes kept under names in the browser, in two windows of it, and as a file; and the bench that comes back.

import assert from 'node:assert/strict';
import { test } from 'node:test';
import { addressWith, browser, downloaded, frame, openPage, PHONE, share, site, text, type, untilReady } from './harness.mjs';

share();

const button = (page, name) => page.locator('#rack').getByRole('button', { name, exact: true });
const press = (page, name) => button(page, name).click();
const says = (page, pattern) => page.locator('#rack-says').filter({ hasText: pattern }).waitFor();
const value = (page, key) => page.inputValue(`#${key}`);
const names = (page) => page.locator('#rack-list strong').allInnerTexts();
const focused = (page) => page.evaluate(() => document.activeElement.getAttribute('aria-label') ?? document.activeElement.id);

async function keep(page, side, name) {
  await page.fill(`#rack-name-${side.toLowerCase()}`, name);
  await press(page, `Keep ${side} on the rack`);
}

async function open(page, name, contents) {
  const buffer = Buffer.from(typeof contents === 'string' ? contents : JSON.stringify(contents));
  await page.setInputFiles('#rack-file', { name, mimeType: 'application/json', buffer });
}

test('bikes are kept, put on a side, renamed, forgotten, saved and opened, with two windows in step', async () => {
  const { page, heard } = await openPage(browser, site.address, { viewport: PHONE, acceptDownloads: true });
  await page.locator('#rack > summary').focus();
  await page.keyboard.press('Enter');
  await page.fill('#rack-name-a', '<b>Road & "mud"');
  await page.keyboard.press('Enter');
  await says(page, 'Kept as “<b>Road & "mud"”.');
  assert.match(await text(page, '#rack-list'), /<b>Road & "mud" 50\/34, 11-30/);

  await press(page, '<b>Road & "mud" as B');
  assert.deepEqual([await value(page, 'rings-b'), await value(page, 'tyre-b')], ['50/34', '']);
  await page.click('[data-act=undo]');
  assert.equal(await value(page, 'rings-b'), '44/32');
  await type(page, 'tyre-b', '40-622');
  await keep(page, 'B', 'Cross');
  await page.click('[data-act=swap]');
  await press(page, 'Cross as B');
  assert.deepEqual([await value(page, 'tyre'), await value(page, 'tyre-b')], ['40-622', '']);
  await says(page, 'B is now “Cross”.');

  await press(page, 'Rename <b>Road & "mud"');
  assert.equal(await focused(page), 'rack-new-name');
  await page.keyboard.type('Cross');
  await page.keyboard.press('Enter');
  await says(page, 'That name is taken');
  await page.fill('#rack-new-name', 'Road');
  await page.keyboard.press('Enter');
  await says(page, 'is now “Road”.');
  assert.equal(await focused(page), 'Rename Road');
  await press(page, 'Copy Cross');
  await press(page, 'Forget Road');
  assert.deepEqual(await names(page), ['Cross', 'Cross 2']);
  await page.keyboard.press('Enter');
  await says(page, '“Road” is back.');
  assert.deepEqual(await names(page), ['Road', 'Cross', 'Cross 2']);

  const other = await page.context().newPage();
  await other.goto(`${site.address}#r=3&ra=52/36`);
  await untilReady(other);
  await other.click('#rack > summary');
  assert.deepEqual(await names(other), ['Road', 'Cross', 'Cross 2']);
  await keep(other, 'A', 'Road');
  await says(other, 'Another bike is kept as “Road”');
  await keep(page, 'A', 'Road');
  await keep(page, 'A', 'Road');
  await says(page, 'Kept as “Road” in place of');
  await other.locator('#rack-list').filter({ hasText: 'Road 44/32' }).waitFor();
  await press(other, 'Keep A on the rack');
  await says(other, 'Another bike is kept as “Road”');
  assert.match(await text(page, '#rack-list'), /Road 44\/32/);
  await press(other, 'Keep A on the rack');
  await page.locator('#rack-list').filter({ hasText: 'Road 52/36' }).waitFor();
  await other.close();

  const [download] = await Promise.all([page.waitForEvent('download'), press(page, 'Save the rack as a file')]);
  const saved = await downloaded(download);
  const rack = JSON.parse(saved);
  assert.deepEqual([rack.remount, rack.version, rack.bikes.length], ['rack', 1, 3]);
  assert.equal(rack.bikes[0].parts.rings, '52/36');
  const stored = () =>
    page.evaluate(() =>
      JSON.stringify(
        Object.entries(localStorage)
          .filter(([key]) => key.includes('bike'))
          .sort(),
      ),
    );
  const before = await stored();
  for (const name of ['Road', 'Cross', 'Cross 2']) await press(page, `Forget ${name}`);
  assert.equal(await stored(), '[]');
  await open(page, 'mine.json', saved);
  await says(page, '“mine.json” adds 3 bikes: Road, Cross and Cross 2.');
  assert.equal(await stored(), before);

  await open(page, 'later.json', { ...rack, version: 2 });
  await says(page, '“later.json” is not opened: it is a rack of a version that this page does not know');
  await open(page, 'course.json', { remountCourse: 1 });
  await says(page, '“course.json” is not opened: it is no rack');
  await open(page, 'large.json', ' '.repeat(1_000_001));
  await says(page, 'larger than 1 MB');
  const odd = { name: 'Road', colour: 'red', parts: { rings: 40, saddle: '<i>', capacity: [1] } };
  await drop(page, 'odd.json', JSON.stringify({ remount: 'rack', version: 1, bikes: [odd, 7] }));
  await says(page, 'Names that another bike has: Road is Road 2.');
  assert.match(await text(page, '#rack-says'), /Not taken: “” \(no name\)\. Passed over, .*: capacity, colour and saddle\./);
  assert.match(await text(page, '#rack-list'), /Road 2 40, cassette not known/);
  assert.equal((await stored()) === before, false);
  assert.equal(await page.evaluate(() => document.documentElement.scrollWidth), PHONE.width);
  assert.deepEqual(heard.complaints, []);
});

/** Drops a file onto the top of the page. */
async function drop(page, name, contents) {
  await page.evaluate(
    ([name, contents]) => {
      const dataTransfer = new DataTransfer();
      dataTransfer.items.add(new File([contents], name));
      document.body.dispatchEvent(new DragEvent('drop', { dataTransfer, bubbles: true, cancelable: true }));
    },
    [name, contents],
  );
}

test('the bench comes back, garbage is left alone, and what the browser refuses to keep is said', async () => {
  const { page, heard } = await openPage(browser, site.address);
  await type(page, 'tyre-b', '38-622');
  await addressWith(page, '38-622');
  await page.evaluate(() => localStorage.setItem('remount-bike:Odd', '{"remount": "rack"'));
  await page.goto('about:blank');
  await page.goto(site.address);
  await untilReady(page);
  assert.equal(await value(page, 'tyre-b'), '38-622');
  assert.match(await text(page, '#notices'), /as you left it in this browser/);
  await page.click('#rack > summary');
  await says(page, 'keeps as Odd is no bike');

  await page.evaluate(() => {
    Storage.prototype.setItem = () => {
      throw new DOMException('full', 'QuotaExceededError');
    };
  });
  await keep(page, 'B', 'Mud');
  await says(page, 'This browser does not keep that');
  assert.deepEqual(await names(page), ['Mud']);
  await press(page, 'Mud as A');
  assert.equal(await value(page, 'tyre'), '38-622');
  await keep(page, 'B', 'Odd');
  await says(page, 'That name is taken');
  assert.equal(await page.evaluate(() => localStorage.getItem('remount-bike:Odd')), '{"remount": "rack"');

  await page.click('[data-act=reset]');
  await frame(page);
  await page.goto('about:blank');
  await page.goto(site.address);
  await untilReady(page);
  assert.equal(await value(page, 'tyre-b'), '');
  await page.goto(`${site.address}#r=3&ra=46/30`);
  await frame(page);
  assert.equal(await value(page, 'rings-a'), '46/30');
  assert.deepEqual(heard.complaints, []);
});
