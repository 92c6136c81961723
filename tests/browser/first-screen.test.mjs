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

test('the first screen stands as it was built until its lap is ridden, and says the same then', async () => {
  const { page } = await wide({ rides: true });
  const built = await page.innerText('.bench');
  assert.match(built, /suits this rider and course/);
  await page.waitForFunction(() => /likely/.test(document.getElementById('lap-answer').textContent), null, { timeout: 60_000 });
  await frame(page);
  assert.equal(await page.innerText('.bench'), built);
});

test('a change before the lap is ridden is told at once, and the lap is being worked out', async () => {
  const { page } = await wide();
  await page.fill('#rings-b', '40');
  await frame(page);
  assert.match(await text(page, '#board-says'), /being worked out/);
});

/** Runs in the page: what decides and is not said whole in the window, each with its question. */
function unsaid() {
  const { top, bottom } = document.querySelector('.strip').getBoundingClientRect();
  const isIn = (element) => {
    const box = element.getBoundingClientRect();
    return box.height > 0 && box.top >= top && box.bottom <= Math.min(bottom, innerHeight) + 1;
  };
  const rows = [...document.querySelectorAll('.board tbody tr')].map(({ id }) => id.replace('decide', 'at'));
  const words = (id) => [...document.querySelectorAll(`#${id} > span`)].filter(({ textContent }) => textContent);
  return rows.filter((id) => words(id).length === 0 || !words(id).every(isIn));
}

test('a phone has every decision in words in its strip, also above a keyboard, beside the field that is typed into', async () => {
  const { page } = await phone();
  assert.deepEqual(await page.evaluate(unsaid), []);
  await page.tap('#capacity');
  await page.setViewportSize({ ...PHONE, height: PHONE.height - 330 });
  await page.locator('#capacity').scrollIntoViewIfNeeded();
  await page.keyboard.type('29');
  await frame(page);
  assert.deepEqual(await page.evaluate(unsaid), []);
  assert.match(await text(page, '#at-cage'), /A\s*✗\D*no: 6 t short/);
  const [field, strip] = await page.evaluate(() =>
    ['#capacity', '.strip'].map((selector) => document.querySelector(selector).getBoundingClientRect()),
  );
  assert.ok(field.top >= 0 && field.bottom <= strip.top, 'the strip covers the field');
  assert.ok(strip.height < 0.42 * (PHONE.height - 330), `the strip takes ${strip.height} px`);
  const targets = await page.$$eval('.strip a', (links) => links.map((link) => link.getBoundingClientRect().height));
  assert.ok(Math.min(...targets.filter(Boolean)) >= 44);
});

test('hatching and signs have their key under the last decision', async () => {
  for (const open of [wide, phone]) {
    const { page } = await open();
    assert.match(
      await text(page, '.key'),
      /hatched: the demo’s or not known.*✓ well.*! take care.*✗ no.*\? open.*= no difference/s,
    );
    const [key, last] = await page.evaluate(() =>
      ['.key', '#decide-position'].map((selector) => document.querySelector(selector).getBoundingClientRect()),
    );
    assert.ok(key.top >= last.bottom - 1 && key.top < last.bottom + 20);
  }
});

test('what decides a section is changed beside its answer', async () => {
  for (const open of [wide, phone]) {
    const { page } = await open();
    await page.click('#by-cage [data-edits=capacity]');
    await page.keyboard.type('29');
    await page.waitForFunction(() => /does not fit/.test(document.getElementById('cage-answer').textContent));
    assert.equal(await page.inputValue('#capacity'), '29');
    assert.ok((await inSight(page, '#cage > .edit')) && (await inSight(page, '#cage-answer p')));
    await page.keyboard.press('Enter');
    assert.equal(await page.locator('#cage > .edit').count(), 0);
    const button = page.locator('#by-cage [data-edits=capacity]');
    assert.equal(await button.evaluate((element) => element === document.activeElement), true);
    assert.match(await button.innerText(), /29\steeth/);
    assert.equal(await button.locator('.demo').count(), 0, 'it is the rider’s now');
    await page.click('#by-tyre-section [data-edits=tyre-kind]');
    await page.selectOption('#tyre-section > .edit', 'clincher');
    await frame(page);
    assert.equal(await page.inputValue('#tyre-kind'), 'clincher');
  }
});

test('a phone shows all buttons of a section, and a wide screen the drawing beside the table of its gears', async () => {
  const narrow = await phone();
  const cut = await narrow.page.$$eval('.folds button', (buttons) => {
    const isCut = (button) => {
      const { left, right } = button.getBoundingClientRect();
      return right > 0 && (left < 0 || right > innerWidth);
    };
    return buttons.filter(isCut).map((button) => button.textContent);
  });
  assert.deepEqual(cut, []);
  const { page } = await wide();
  await page.click('[data-unfolds=fold-cage-numbers]');
  await page
    .locator('#chain-bench tbody tr')
    .nth(12)
    .evaluate((row) => row.scrollIntoView({ block: 'center' }));
  await frame(page);
  const [drawing, table, strip] = await page.evaluate(() =>
    ['[data-picture=drivetrain] .plot', '#chain-bench', '.strip'].map((selector) =>
      document.querySelector(selector).getBoundingClientRect(),
    ),
  );
  assert.ok(drawing.top >= strip.bottom && drawing.bottom <= WIDE.height, 'the drawing is out of sight');
  assert.ok(drawing.left >= table.right, 'the drawing lies over the table');
});

test('everything is on so few screens and so few stops of the Tab key', async () => {
  for (const [open, screen, most] of [
    [wide, WIDE, 7],
    [phone, PHONE, 12],
  ]) {
    const { page } = await open({ rides: true });
    await page.evaluate(async () => {
      for (let y = 0; y < document.documentElement.scrollHeight; y += innerHeight / 2) {
        scrollTo(0, y);
        await new Promise((done) => setTimeout(done, 60));
      }
    });
    // An answered lap takes more lines than one that is waited for.
    await page.waitForFunction(() => /likely/.test(document.getElementById('lap-answer').textContent), null, { timeout: 60_000 });
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

test('what is out of sight waits while every frame brings something typed', async () => {
  const { page } = await wide();
  await page.waitForTimeout(500);
  const written = await page.evaluate(async () => {
    let count = 0;
    const watch = new MutationObserver(() => (count += 1));
    watch.observe(document.getElementById('ride-answer'), { childList: true, characterData: true, subtree: true });
    const field = document.getElementById('rings-b');
    const painted = () => new Promise((done) => requestAnimationFrame(() => setTimeout(done)));
    for (const value of ['42', '40', '38', '36', '44']) {
      field.value = value;
      field.dispatchEvent(new Event('input', { bubbles: true }));
      await painted();
    }
    const meanwhile = count;
    await painted();
    return [meanwhile > 0, count > 0];
  });
  assert.deepEqual(written, [false, true]);
});

test('nothing moves of itself while something is being pressed', async () => {
  const { page } = await wide({ rides: true });
  await page.locator('#lap').scrollIntoViewIfNeeded();
  const lap = () => page.textContent('#lap-answer');
  await page.waitForFunction(() => /likely/.test(document.getElementById('lap-answer').textContent), null, { timeout: 60_000 });
  await page.hover('[data-unfolds=fold-lap-search]');
  await page.mouse.down();
  // What is typed elsewhere is shown at once; what workers find for it is not.
  await page.evaluate(() => {
    const power = document.querySelector('[data-field=power]');
    power.value = '260';
    power.dispatchEvent(new InputEvent('input', { bubbles: true }));
  });
  await frame(page);
  const held = await lap();
  await page.waitForTimeout(1000);
  assert.equal(await lap(), held);
  await page.mouse.up();
  await page.waitForFunction((held) => document.getElementById('lap-answer').textContent !== held, held);
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
