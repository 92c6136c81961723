// One screen decides: jobs of riders and mechanics, counted in presses, with the verdict in sight where they type.

import assert from 'node:assert/strict';
import { after, before, test } from 'node:test';
import { assertQuiet, frame, launchBrowser, openPage, PHONE, SINGLE_FILE, text } from './harness.mjs';

const WIDE = { width: 1440, height: 1000 };
let browser;
before(async () => {
  browser = await launchBrowser();
});
after(() => browser?.close());

const phone = (options = {}) =>
  openPage(browser, SINGLE_FILE, { viewport: PHONE, hasTouch: true, isMobile: true, folded: true, ...options });
const wide = (options = {}) => openPage(browser, SINGLE_FILE, { viewport: WIDE, folded: true, ...options });

/** A hand that counts what it presses: a tap, a key, and for a list opening it and choosing. */
class Hand {
  presses = 0;
  scrolled = 0;

  constructor(page, isTouch) {
    this.page = page;
    this.isTouch = isTouch;
  }

  async tap(selector) {
    this.presses += 1;
    const target = this.page.locator(selector).first();
    const at = () => this.page.evaluate('scrollY');
    const from = await at();
    await target.scrollIntoViewIfNeeded();
    this.scrolled += Math.abs((await at()) - from);
    await (this.isTouch ? target.tap() : target.click());
    await frame(this.page);
  }

  /** Types over what a field holds: its first touch selects all of it. */
  async type(field, value) {
    await this.tap(`#${field}`);
    this.presses += value.length;
    await this.page.keyboard.type(value);
    await frame(this.page);
  }

  async pick(list, value) {
    this.presses += 2;
    await this.page.selectOption(`[data-sets=${list}]`, value);
    await frame(this.page);
  }

  report(job) {
    const { width } = this.page.viewportSize();
    console.log(`job ${job} at ${width} px: ${this.presses} presses, ${Math.round(this.scrolled)} px scrolled`);
  }
}

/** The parts of the board or of the strip that are in the window. */
const inSight = (page, selector) =>
  page.locator(selector).evaluateAll((elements) =>
    elements.some((element) => {
      const { top, bottom, height } = element.getBoundingClientRect();
      return height > 0 && top < innerHeight && bottom > 0;
    }),
  );

const row = (page, question) => text(page, `#decide-${question}`);

for (const [open, isTouch, name] of [
  [phone, true, 'on a phone'],
  [wide, false, 'at a desk'],
]) {
  test(`a mechanic asks whether a bigger cassette needs another derailleur ${name}`, async () => {
    const { page, heard } = await open();
    const hand = new Hand(page, isTouch);
    const verdictStays = async () => assert.ok(await inSight(page, '#at-cage, #decide-cage'), 'the verdict is in sight');
    await hand.pick('rings-a', '48/34');
    await verdictStays();
    await hand.pick('cassette-a', '12-25 11s');
    await verdictStays();
    await hand.tap('[data-act=copy]');
    await verdictStays();
    await hand.pick('cassette-b', '11-34 11s');
    await verdictStays();
    await hand.type('capacity', '29');
    await verdictStays();
    await hand.type('largest-sprocket', '28');
    await verdictStays();
    hand.report(2);
    assert.ok(hand.presses <= 15, `${hand.presses} presses`);
    const cage = await row(page, 'cage');
    assert.match(cage, /A.*fits/s);
    assert.match(cage, /B.*does not fit/s);
    assert.match(cage, /Buy a rear derailleur for a 34 and at least 37 teeth/);
    assert.match(await text(page, '#at-cage'), /✗/);
    assert.match(await text(page, '#board-says'), /A is the one to ride: B cannot be ridden as it stands/);
    assertQuiet(heard);
  });

  test(`a rider reads on one screen below which speed running wins ${name}`, async () => {
    const { page } = await open();
    const hand = new Hand(page, isTouch);
    await hand.type('body-mass', '58');
    await hand.tap('#slope');
    await page.fill('#slope', '12');
    await page.fill('#climb-length', '40');
    await page.selectOption('#ground', 'mud');
    await page.fill('#power', '');
    await frame(page);
    hand.report(3);
    assert.match(await row(page, 'ride'), /running \d+ s.*it wins below \d+\.\d km\/h/s);
    assert.match(await row(page, 'ride'), /was /);
  });
}

test('what the last change did is said in the row, in the strip once the board is away, and aloud', async () => {
  const { page } = await phone();
  await page.fill('#rings-b', '40');
  await frame(page);
  assert.match(await text(page, '#decide-rings'), /was 7\.1 to 57\.1 km\/h/);
  await page.locator('#sheet').scrollIntoViewIfNeeded();
  await page.waitForFunction(() => document.documentElement.hasAttribute('data-board-away'));
  assert.match(await text(page, '#board-change'), /Rings: B /);
  assert.ok(await inSight(page, '#board-change'));
  await page.waitForFunction(() => document.getElementById('board-spoken').textContent.includes('Rings: B'));
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
