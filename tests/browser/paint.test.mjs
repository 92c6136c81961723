// The lap painted on its picture by finger, mouse and keys, and its course chosen.

import assert from 'node:assert/strict';
import { after, afterEach, before, test } from 'node:test';
import { fileURLToPath } from 'node:url';
import axe from 'axe-core';
import { assertQuiet, frame, lapTimes, launchBrowser, openPage, PHONE, SINGLE_FILE, text } from './harness.mjs';

const WIDE = { width: 1440, height: 1000 };
const TRACK = fileURLToPath(new URL('../reference/data/gpx/recorded-walk.gpx', import.meta.url));

let browser;
before(async () => {
  browser = await launchBrowser();
});
after(() => browser?.close());
afterEach(() => Promise.all(browser.contexts().map((context) => context.close())));

const PLOT = '[data-picture=profile] .plot';

async function openLap(options) {
  const opened = await openPage(browser, SINGLE_FILE, { folded: true, rides: true, ...options });
  await lapTimes(opened.page);
  return opened;
}

/** Points of the picture at shares of its width. */
async function points(page, shares) {
  const box = await page.locator(PLOT).boundingBox();
  return shares.map((share) => ({ x: box.x + share * box.width, y: box.y + box.height / 3 }));
}

async function dragByMouse(page, shares) {
  const [from, to] = await points(page, shares);
  await page.mouse.move(from.x, from.y);
  await page.mouse.down();
  await page.mouse.move(to.x, to.y, { steps: 6 });
  await page.mouse.up();
}

/** A finger as the browser's own protocol moves it, so that the browser decides what scrolls. */
async function dragByFinger(page, from, to) {
  const session = await page.context().newCDPSession(page);
  const touch = (type, touchPoints) => session.send('Input.dispatchTouchEvent', { type, touchPoints });
  await touch('touchStart', [from]);
  for (let step = 1; step <= 8; step += 1) {
    await touch('touchMove', [{ x: from.x + ((to.x - from.x) * step) / 8, y: from.y + ((to.y - from.y) * step) / 8 }]);
  }
  await touch('touchEnd', []);
}

async function paint(page, what) {
  await page.selectOption('#brush-coat', what);
  await page.click('#brush [type=submit]');
  await frame(page);
}

const ends = (page) => Promise.all(['#brush-from', '#brush-to'].map((id) => page.inputValue(id).then(Number)));

for (const [name, viewport, isTouch] of [
  ['a finger', PHONE, true],
  ['the mouse', WIDE, false],
]) {
  test(`a stretch is marked with ${name}, painted, and taken back by undo`, async () => {
    const { page, heard } = await openLap({ viewport, hasTouch: isTouch, isMobile: isTouch });
    const before = await lapTimes(page);
    assert.equal(await page.isHidden('#brush'), true);
    if (isTouch) {
      const [from, to] = await points(page, [0.7, 0.3]);
      await dragByFinger(page, from, to);
    } else await dragByMouse(page, [0.7, 0.3]);
    const [from, to] = await ends(page);
    assert.ok(from > 600 && to < 2300 && to - from > 900, `${from} to ${to}`);
    assert.equal(await page.isVisible('.band'), true);
    await paint(page, 'deep mud');
    assert.equal(await page.inputValue('#paint'), `${from}; ${to}; deep mud`);
    assert.match(await text(page, '#brush-says'), /^Painted; as text it stands under “Course”\.$/);
    assert.match(
      await text(page, '#lap-loaded'),
      /Autumn meadow: 3\.00 km with \d+ m of climbing, invented, with 1 change on it/,
    );
    const painted = await lapTimes(page, before);
    await page.click('#brush [data-act=undo]');
    await frame(page);
    assert.equal(await page.inputValue('#paint'), '');
    assert.equal(await lapTimes(page, painted), before);
    assertQuiet(heard);
  });
}

test('a finger still scrolls over the picture, and a press marks nothing', async () => {
  const { page } = await openLap({ viewport: PHONE, hasTouch: true, isMobile: true });
  const at = await page.evaluate('scrollY');
  const [from] = await points(page, [0.5]);
  await dragByFinger(page, { x: from.x, y: 600 }, { x: from.x, y: 300 });
  await page.waitForFunction((at) => scrollY > at + 100, at);
  await page.locator(PLOT).tap({ position: { x: 120, y: 60 } });
  assert.equal(await page.isHidden('#brush'), true);
  assert.equal(await page.isHidden('.band'), true);
});

test('a stretch is marked and painted by keyboard alone', async () => {
  const { page, heard } = await openLap({ viewport: WIDE });
  const before = await lapTimes(page);
  const press = async (...keys) => {
    for (const key of keys) await page.keyboard.press(key);
  };
  const reading = () => text(page, '[data-picture=profile] .reading');
  await page.focus('[data-read=profile]');
  await press('Enter', 'Home', 'PageDown', 'Enter');
  assert.match(await reading(), /^A stretch from 301 m to 301 m\.$/);
  await press('PageDown', 'Shift+ArrowRight');
  assert.match(await reading(), /^A stretch from 301 m to 612 m\.$/);
  await press('Enter');
  assert.equal(await page.evaluate(() => document.activeElement.id), 'brush-coat');
  await press('f', 'Tab');
  await page.selectOption('#brush-coat', 'foot');
  assert.equal(await page.inputValue('#brush-number'), '2');
  assert.match(await text(page, '#brush-more'), /It costs\s+s/);
  await page.fill('#brush-from', '500');
  await page.fill('#brush-to', '400');
  await press('Enter');
  assert.match(await text(page, '#brush-says'), /Say in metres where it begins and, farther on, where it ends/);
  await page.fill('#brush-to', '510');
  await press('Enter');
  assert.equal(await page.inputValue('#paint'), '500; 510; foot 2');
  assert.ok(await lapTimes(page, before));
  await page.selectOption('#brush-coat', 'none');
  assert.equal(await page.isVisible('#brush-more'), false);
  await page.focus('#brush-to');
  await press('Enter');
  assert.equal(await page.inputValue('#paint'), '500; 510; none');
  for (const left of ['500; 510; foot 2', '']) {
    await page.focus('#brush [data-act=undo]');
    await press('Enter');
    await frame(page);
    assert.equal(await page.inputValue('#paint'), left);
  }
  await page.focus('#brush-done');
  await press('Enter');
  assert.equal(await page.isHidden('#brush'), true);
  assert.equal(await page.locator(PLOT).evaluate((plot) => plot === document.activeElement), true);
  assertQuiet(heard);
});

test('the course is chosen first, and what is ridden is said', async () => {
  const { page, heard } = await openLap({ viewport: WIDE });
  const isFirst = await page.evaluate(() => {
    const [first] = document.querySelectorAll('#lap :is(button, input:not([hidden]), select, textarea)');
    return document.getElementById('lap-chooser').contains(first);
  });
  assert.ok(isFirst, 'the chooser comes before all else that can be set');
  await page.setInputFiles('#lap-file', TRACK);
  await page.waitForFunction(() =>
    /recorded-walk: .*, from the file “recorded-walk\.gpx”\./.test(document.getElementById('lap-loaded').textContent),
  );
  assert.match(
    await text(page, '#lap-loaded'),
    /recorded-walk: 12\.\d\d km with \d+ m of climbing, from the file “recorded-walk\.gpx”/,
  );
  const pressed = () => text(page, '#lap-chooser [aria-pressed=true]');
  assert.equal(await pressed(), 'My own');
  await page.focus('#lap-chooser button');
  for (const key of ['ArrowRight', 'Enter']) await page.keyboard.press(key);
  await page.waitForFunction(() =>
    /^Sand pit: 2\.38.*invented/.test(document.getElementById('lap-loaded').textContent.replaceAll('\u00a0', ' ')),
  );
  assert.equal(await page.inputValue('#course'), 'sand-pit');
  assert.equal(await pressed(), 'Sand pit');
  await page.click('#lap-chooser [data-write="course=own"]');
  await page.waitForFunction(() => document.getElementById('course').value === 'own');
  await page.click('#lap-chooser button');
  const [chooser] = await Promise.all([page.waitForEvent('filechooser'), page.click('#lap-open')]);
  await chooser.setFiles(TRACK);
  await page.waitForFunction(() => document.getElementById('course').value === 'own');
  assertQuiet(heard);
});

for (const [viewport, colorScheme] of [
  [PHONE, 'dark'],
  [WIDE, 'light'],
]) {
  test(`axe-core finds nothing at ${viewport.width} px, ${colorScheme}, while a stretch is being painted`, async () => {
    const { page } = await openLap({ viewport, colorScheme });
    await dragByMouse(page, [0.3, 0.6]);
    await page.selectOption('#brush-coat', 'corner');
    await page.evaluate(axe.source);
    const found = await page.evaluate(() =>
      globalThis.axe.run('#lap').then(({ violations }) => violations.map(({ id, nodes }) => `${id} at ${nodes[0].target}`)),
    );
    assert.deepEqual(found, []);
    assert.ok((await page.evaluate('document.documentElement.scrollWidth')) <= viewport.width);
  });
}
