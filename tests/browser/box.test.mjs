// The box of parts: put in by lists, what is not understood, the way into a link, and the page riding what no worker may.

import assert from 'node:assert/strict';
import { after, before, test } from 'node:test';
import {
  addressWith,
  assertQuiet,
  DESK,
  downloaded,
  frame,
  launchBrowser,
  openPage,
  SINGLE_FILE,
  text,
  type,
} from './harness.mjs';

const RIDDEN = 120_000;

let browser;
before(async () => {
  browser = await launchBrowser();
});
after(() => browser?.close());

test('parts are put in by lists, kept in the link, and what is not understood is said', async () => {
  const { page, heard } = await openPage(browser, SINGLE_FILE, { viewport: DESK });
  for (const [list, part] of [
    ['rings', '42'],
    ['rings', '38'],
    ['cassettes', '11-34 11s'],
    ['rear', '39/36'],
  ]) {
    await page.selectOption(`#box-put-${list}`, part);
    await page.press(`[data-puts=box-put-${list}]`, 'Enter');
  }
  await frame(page);
  assertQuiet(heard);
  const box = 'rings 42, 38\ncassettes 11-34 11s\nrear 39/36';
  assert.equal(await page.inputValue('#box-parts'), box);
  assert.match(await text(page, '#box-answer'), /5 sets of rings, 3 cassettes and 2 rear derailleurs, which make 30/);
  const url = await addressWith(page, 'rear+39/36');
  const other = await openPage(browser, `${SINGLE_FILE}${url.hash}`);
  assert.equal(await other.page.inputValue('#box-parts'), box);
  await type(page, 'box-parts', `${box}, 39\n99`);
  assert.match(await text(page, '#says-box-parts'), /“39” is not understood as a rear derailleur.*“99” is/s);
  assert.equal(await page.getAttribute('#box-parts', 'aria-invalid'), 'true');
  assert.match(await text(page, '#box-answer'), /3 cassettes and 2 rear derailleurs/);
  assertQuiet(heard);
});

test('the box goes into the rack’s file and comes out of it, and kept courses count by their weights', async () => {
  const { page, heard } = await openPage(browser, SINGLE_FILE, { viewport: DESK });
  await type(page, 'box-parts', 'rings 38\ntyres 40-622');
  const saving = page.waitForEvent('download');
  await page.evaluate(() => document.getElementById('rack').setAttribute('open', ''));
  await page.locator('#save-rack').click();
  const rack = await downloaded(await saving);
  assert.equal(JSON.parse(rack).box, 'rings 38\ntyres 40-622');
  await type(page, 'box-parts', 'rings 42');
  await page.setInputFiles('#rack-file', { name: 'rack.json', mimeType: 'application/json', buffer: Buffer.from(rack) });
  await page.waitForFunction(() => document.getElementById('box-parts').value.includes('tyres'));
  assert.equal(await page.inputValue('#box-parts'), 'rings 42\nrings 38\ntyres 40-622');
  assert.equal(await page.locator('#box-courses').isVisible(), false);
  await page.locator('#keep').click();
  await frame(page);
  assert.equal(await page.locator('#box-courses [data-course] input').count(), 1);
  await page.locator('#box-courses input').check();
  await page.selectOption('#box-courses select', '2');
  assertQuiet(heard);
});

test('the page itself rides what no worker may, stops when told, and saves the table', async () => {
  const { page, heard } = await openPage(browser, SINGLE_FILE, { viewport: DESK, rides: true });
  await page.evaluate(() => {
    globalThis.Worker = class {
      constructor() {
        throw new Error('refused');
      }
    };
  });
  await type(page, 'lap-model', 'steady');
  await page.click('#box-start');
  await page.click('#box-stop');
  await frame(page);
  assert.equal(await page.locator('#box-stop').isVisible(), false);
  assert.match(await text(page, '#box-answer'), /Stopped after|Quickest of the box/);
  await page.click('#box-start');
  await page.waitForFunction(() => document.getElementById('box-stop').hidden, null, { timeout: RIDDEN });
  assert.match(await text(page, '#box-answer'), /Quickest of the box round Autumn meadow.*(worth|could be bought)/s);
  await page.locator('#box-table th button').nth(3).click();
  await frame(page);
  assert.equal(await page.locator('#box-table th[aria-sort=ascending]').count(), 1);
  await page.locator('#box-table [data-keep]').first().click();
  assert.match(await page.textContent('#rack-list'), / with \d+-\d+/);
  assert.match(await text(page, '#box-left'), /^Kept as “/);
  const saving = page.waitForEvent('download');
  await page.locator('#save-box').click();
  assert.match(await downloaded(await saving), /^"Parts","Lap"/);
  assertQuiet(heard);
});
