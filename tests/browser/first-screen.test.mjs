// One screen decides: what it says of a change, how long the page is, what unfolds, and teeth up and down.

import assert from 'node:assert/strict';
import { after, before, test } from 'node:test';
import { WIDE } from './hand.mjs';
import { frame, launchBrowser, openPage, PHONE, SINGLE_FILE, text } from './harness.mjs';

let browser;
before(async () => {
  browser = await launchBrowser();
});
after(() => browser?.close());

const phone = (options = {}) =>
  openPage(browser, SINGLE_FILE, { viewport: PHONE, hasTouch: true, isMobile: true, folded: true, ...options });
const wide = (options = {}) => openPage(browser, SINGLE_FILE, { viewport: WIDE, folded: true, ...options });

/** The parts of the board or of the strip that are in the window. */
const inSight = (page, selector) =>
  page.locator(selector).evaluateAll((elements) =>
    elements.some((element) => {
      const { top, bottom, height } = element.getBoundingClientRect();
      return height > 0 && top < innerHeight && bottom > 0;
    }),
  );

test('what the last change did is said in the row and, once the board is away, in the strip', async () => {
  const { page } = await phone();
  await page.fill('#rings-b', '40');
  await frame(page);
  assert.match(await text(page, '#decide-rings'), /was 7\.1 to 57\.1 km\/h/);
  await page.locator('#sheet').scrollIntoViewIfNeeded();
  await page.waitForFunction(() => document.documentElement.hasAttribute('data-board-away'));
  assert.match(await text(page, '#board-change'), /Rings: B /);
  assert.ok(await inSight(page, '#board-change'));
});

test('everything is on so few screens and so few stops of the Tab key', async () => {
  for (const [open, screen, most] of [
    [wide, WIDE, 7],
    [phone, PHONE, 12],
  ]) {
    const { page } = await open();
    await page.evaluate(async () => {
      for (let y = 0; y < document.documentElement.scrollHeight; y += innerHeight / 2) {
        scrollTo(0, y);
        await new Promise((done) => setTimeout(done, 60));
      }
    });
    const height = await page.evaluate('document.documentElement.scrollHeight');
    console.log(`${screen.width} px: ${(height / screen.height).toFixed(2)} screens`);
    assert.ok(height <= most * screen.height, `${height / screen.height} screens at ${screen.width} px`);
    const stops = await page.evaluate(() => {
      const all = document.querySelectorAll('a[href], button, input, select, textarea, summary, [tabindex]');
      const isStop = (element) =>
        element.tabIndex >= 0 &&
        !element.disabled &&
        element.checkVisibility({ contentVisibilityAuto: false }) &&
        !element.closest('[hidden]');
      return [...all].filter(isStop).map((element) => element.id || element.outerHTML.slice(0, 60));
    });
    console.log(`${screen.width} px: ${stops.length} stops of the Tab key`);
    assert.ok(stops.length <= 45, `${stops.length} stops: ${stops.join(', ')}`);
  }
});

test('what is out of sight follows once what is in sight is painted', async () => {
  const { page } = await wide();
  const said = () => Promise.all(['#rings-answer', '#ride-answer'].map((answer) => text(page, answer)));
  const type = (value) =>
    page.evaluate(async (value) => {
      const said = () => ['rings-answer', 'ride-answer'].map((id) => document.getElementById(id).textContent);
      const before = said();
      const field = document.getElementById('rings-b');
      field.value = value;
      field.dispatchEvent(new Event('input', { bubbles: true }));
      await new Promise((done) => requestAnimationFrame(() => setTimeout(done)));
      return said().map((text, index) => text !== before[index]);
    }, value);
  const [, ride] = await said();
  assert.deepEqual(await type('42'), [true, false]);
  await frame(page);
  assert.notEqual((await said())[1], ride);
  await page.locator('#ride').scrollIntoViewIfNeeded();
  await frame(page);
  const [rings] = await said();
  assert.deepEqual(await type('46/33'), [false, true]);
  await page.locator('#rings').scrollIntoViewIfNeeded();
  await frame(page);
  assert.notEqual((await said())[0], rings);
});

test('what unfolds stays as it was left, opens for a link to what is in it, and for a word that is looked for', async () => {
  const { page } = await wide();
  assert.equal(await page.locator('#rings-summary').isVisible(), false);
  await page.click('[data-unfolds=fold-rings-numbers]');
  assert.match(await text(page, '#rings-summary'), /50×11/);
  await page.reload();
  await page.waitForSelector('html[data-engine=ready]');
  assert.match(await text(page, '#rings-summary'), /50×11/);
  await page.click('[data-unfolds=fold-rings-numbers]');
  assert.equal(await page.locator('#rings-summary').isVisible(), false);
  await page.goto(`${SINGLE_FILE}#pulley-centres`);
  await page.waitForFunction(() => document.getElementById('pulley-centres').checkVisibility());
  await page.waitForFunction(() => document.getElementById('ride-ends').textContent.includes('%'));
  const panel = page.locator('#fold-ride-numbers');
  assert.equal(await panel.getAttribute('hidden'), 'until-found');
  await panel.evaluate((element) => element.dispatchEvent(new Event('beforematch', { bubbles: true })));
  assert.equal(await panel.getAttribute('hidden'), null);
});

test('rings and sprockets go up and down a tooth by arrow keys, and by buttons for fingers', async () => {
  const { page } = await wide();
  await page.focus('#rings-a');
  await page.locator('#rings-a').evaluate((field) => field.setSelectionRange(4, 4));
  await page.keyboard.press('ArrowDown');
  assert.equal(await page.inputValue('#rings-a'), '50/33');
  await page.keyboard.press('ArrowUp');
  assert.equal(await page.inputValue('#rings-a'), '50/34');
  const touch = await phone();
  await touch.page.tap('#rings-b');
  await touch.page.tap('#teeth [data-by="1"]');
  assert.equal(await touch.page.inputValue('#rings-b'), '45/32');
  await touch.page.tap('#teeth [data-along="1"]');
  await touch.page.tap('#teeth [data-by="-1"]');
  assert.equal(await touch.page.inputValue('#rings-b'), '45/31');
  assert.match(await text(touch.page, '#decide-rings'), /was /);
});
