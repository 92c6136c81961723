// The choice of units: everything follows it, what was typed comes back as typed, and the link holds it.

import assert from 'node:assert/strict';
import { test } from 'node:test';
import { browser, frame, openPage, SINGLE_FILE, share, text } from './harness.mjs';

share();

const open = (options) => openPage(browser, SINGLE_FILE, options);

/** Chooses all units by one word. */
async function choose(page, word) {
  await page.click('#units-chosen');
  await page.click(`[data-act="units:${word}"]`);
  await frame(page);
}

async function type(page, key, value) {
  await page.fill(`#${key}`, value);
  await frame(page);
}

/** Runs in the page: all that is to be read of it and what its fields show, by where it stands. */
function all() {
  const said = [...document.querySelectorAll('[id]')].map(({ id, textContent }) => [id, textContent]);
  const held = [...document.querySelectorAll('[data-field]')].map(({ id, value, placeholder }) => [id, value, placeholder]);
  const named = [...document.querySelectorAll('[aria-label], [aria-valuetext]')].map((it) => [it.ariaLabel, it.ariaValueText]);
  return JSON.stringify([said, held, named]);
}

/** Runs in the page: numbers with a metric unit behind them in some sections; rule books have theirs in metres. */
function metric() {
  const parts = document.querySelectorAll('.masthead, .strip, #rings, #ride, #lap, .sides');
  const words = [...parts].map((part) => {
    const copy = part.cloneNode(true);
    for (const rules of copy.querySelectorAll('.picks')) rules.remove();
    return copy.textContent;
  });
  return words.join(' ').match(/\d[\s\u00a0]?(km\/h|km|kg|m|m\/s|bar)(?![\p{L}²³/])/gu) ?? [];
}

test('one choice and everything follows, the other and all is as it was', async () => {
  const { page } = await open();
  await frame(page);
  // The first screen as it was built knows its lap, which rests here.
  for (const units of ['imperial', 'metric']) await choose(page, units);
  const before = await page.evaluate(all);
  assert.ok((await page.evaluate(metric)).length > 100);
  await choose(page, 'imperial');
  assert.equal(await text(page, '#units-chosen'), 'Units: imperial');
  assert.deepEqual(await page.evaluate(metric), []);
  const shown = await page.evaluate(() =>
    ['body-mass', 'bike-mass', 'climb-length', 'saddle-height'].map((id) => document.getElementById(id).value),
  );
  assert.deepEqual(shown, ['136.7', '19.62', '196.9', '28.66']);
  const units = await page.evaluate(() =>
    ['body-mass', 'entry-speed', 'headwind', 'tyre-mark', 'road-crank'].map(
      (id) => document.getElementById(id).parentElement.querySelector('.unit').textContent,
    ),
  );
  assert.deepEqual(units, ['lb', 'mph', 'mph', 'psi', 'mm']);
  await page.waitForURL(/ua=lb/);
  await choose(page, 'metric');
  assert.equal(await page.evaluate(all), before);
  await page.waitForURL(/#r=3$/);
});

test('what is typed bare is in the unit beside the field, and comes back as typed', async () => {
  const { page } = await open({ folded: true });
  await choose(page, 'imperial');
  await type(page, 'body-mass', '140');
  assert.equal(await page.inputValue('#body-mass'), '140');
  await page.waitForURL(/bm=140\+lb/);
  await choose(page, 'metric');
  assert.equal(await page.inputValue('#body-mass'), '63.5');
  await choose(page, 'imperial');
  assert.equal(await page.inputValue('#body-mass'), '140');
  await type(page, 'body-mass', '60');
  assert.match(await text(page, '#says-body-mass'), /Type 66\.2 to 330 lb\.\s.*goes on with 140\slb/);
  await page.waitForURL(/bm=60\+lb/);
  // Perhaps the kilograms of a scale were meant.
  await page.click('#says-body-mass [data-write]');
  await frame(page);
  assert.equal(await page.inputValue('#body-mass'), '132.3');
  await type(page, 'body-mass', '60');
  await page.waitForURL(/bm=60\+lb/);
  const { page: other } = await openPage(browser, String(page.url()), { folded: true });
  assert.equal(await text(other, '#units-chosen'), 'Units: imperial');
  assert.equal(await other.inputValue('#body-mass'), '60');
  await other.click('[data-act=reset]');
  await frame(other);
  assert.equal(await other.inputValue('#body-mass'), '136.7', 'the rider’s units stay');
});

test('a decimal comma is echoed as typed, and printed where it was chosen', async () => {
  const { page } = await open({ folded: true });
  await type(page, 'body-mass', '62,5');
  await page.click('#units-chosen');
  await page.selectOption('#decimal-mark', 'comma');
  await frame(page);
  assert.match(await text(page, '#decide-rings'), /8,1 to 64,8\skm\/h/);
  assert.deepEqual([await page.inputValue('#body-mass'), await page.inputValue('#bike-mass')], ['62,5', '8,9']);
  await page.selectOption('#decimal-mark', 'point');
  await frame(page);
  assert.deepEqual([await page.inputValue('#body-mass'), await page.inputValue('#bike-mass')], ['62,5', '8.9']);
});
