// What the page owes those who see little, point at nothing or listen, at each width, in each scheme and in every state.

import assert from 'node:assert/strict';
import { after, before, test } from 'node:test';
import { assertAxe, assertContrast } from './accessible.mjs';
import { DESK, frame, launchBrowser, layOut, openPage, PHONE, SINGLE_FILE, text } from './harness.mjs';

const NARROW = { width: 320, height: 640 };

let browser;
before(async () => {
  browser = await launchBrowser();
});
after(() => browser?.close());

const fits = async (page, state) => {
  const [wide, window] = await page.evaluate(() => [document.documentElement.scrollWidth, innerWidth]);
  assert.ok(wide <= window, `${state}: ${wide} px wide in ${window}`);
};

/** Rules of axe-core ask for no colours but contrast, which is reckoned in both schemes. */
async function assertAccessible(page, part, state) {
  await assertAxe(page, part, state);
  for (const colorScheme of ['light', 'dark']) {
    await page.emulateMedia({ colorScheme });
    await assertContrast(page, part, `${state}, ${colorScheme}`);
  }
  await fits(page, state);
}

/** Runs in the page: opens all there is to open. */
function openAll() {
  for (const button of document.querySelectorAll('[data-unfolds][aria-expanded=false]')) button.click();
  for (const details of document.querySelectorAll('details')) details.open = true;
}

/** Zooming to 200 % leaves half the width. */
async function assertZoomed(page) {
  await page.setViewportSize({ width: DESK.width / 2, height: DESK.height / 2 });
  await frame(page);
  await assertAxe(page, 'html', 'zoomed');
  await fits(page, 'zoomed');
  await page.setViewportSize(DESK);
}

/** Text of twice the size leaves the window as it is. */
async function assertTextOfTwiceTheSize(page) {
  await page.evaluate(() => {
    document.documentElement.style.fontSize = '200%';
  });
  await frame(page);
  await fits(page, 'text of twice the size');
}

for (const viewport of [NARROW, PHONE, DESK]) {
  test(`as it opens and unfolded, larger, in forced colours and without motion at ${viewport.width} px`, async () => {
    const { page } = await openPage(browser, SINGLE_FILE, { viewport, folded: true });
    await layOut(page);
    await assertAccessible(page, 'html', 'as it opens');
    await page.evaluate(openAll);
    await frame(page);
    await assertAccessible(page, 'html', 'unfolded');
    await page.emulateMedia({ forcedColors: 'active', reducedMotion: 'reduce' });
    await assertContrast(page, 'html', 'forced colours');
    if (viewport === PHONE) await assertAxe(page, 'html', 'forced colours');
    assert.equal(
      await page.evaluate(() => document.getAnimations().filter(({ playState }) => playState === 'running').length),
      0,
    );
    await page.emulateMedia({ forcedColors: 'none' });
    if (viewport === DESK) await assertZoomed(page);
    if (viewport !== NARROW) await assertTextOfTwiceTheSize(page);
  });
}

for (const viewport of [PHONE, DESK]) {
  test(`every state at ${viewport.width} px`, async () => {
    const { page } = await openPage(browser, `${SINGLE_FILE}#r=2&ra=46/30`, { viewport, folded: true });
    const unfold = (id) => page.click(`[data-unfolds=${id}]`);
    await assertAccessible(page, '.bench', 'notices');
    await page.fill('#tyre-b', '40-622');
    await page.fill('#rings-a', 'words');
    await frame(page);
    assert.equal(await page.isDisabled('[data-act=undo]'), false);
    await assertAccessible(page, '.bench', 'an error in a field, undo offered, a part of B given');
    await page.fill('#rings-a', '46/30');
    await page.click('#rack > summary');
    await page.fill('#rack-name-a', 'Mud');
    await page.click('[data-rack=keep-a]');
    await page.click('#rack-list [aria-label="Rename Mud"]');
    await assertAccessible(page, '#rack', 'a bike on the rack, being renamed');
    await page.focus('#rings .plot');
    await page.keyboard.press('ArrowRight');
    assert.match(await text(page, '[data-picture=ladder] .reading'), /\d/);
    await assertAccessible(page, '#rings', 'a picture read');
    await unfold('fold-cage-numbers');
    await assertAccessible(page, '#fold-cage-numbers', 'a fold open');
    await unfold('fold-position-settings');
    await page.fill('#saddle-height', '72.8');
    await frame(page);
    assert.equal(await page.locator('#says-saddle-height button').count(), 1);
    await assertAccessible(page, '#position', 'what a number may have meant');
    await page.fill('#saddle-height', '728');
    await unfold('fold-lap-search');
    await page.click('#search-start');
    await page.waitForSelector('#search-bar:not([hidden])');
    await assertAccessible(page, '#lap', 'a search under way, a lap not yet ridden');
    await assertAccessible(page, '.strip', 'what changed, said in the strip');
  });
}

/** Runs in the page: notes every stop of the Tab key in the order of the page. */
function noteStops() {
  const all = document.querySelectorAll('a[href], button, input, select, textarea, summary, [tabindex]');
  globalThis.stops = [...all].filter(
    (element) =>
      element.tabIndex >= 0 &&
      !element.disabled &&
      element.checkVisibility({ contentVisibilityAuto: false, visibilityProperty: true }) &&
      !element.closest('[hidden]'),
  );
  document.activeElement.blur();
  return globalThis.stops.length;
}

/** Runs in the page: where the focus is, and what is wrong with how that shows; where it is looked at again, of the same stop. */
function atStop(again) {
  const at = document.activeElement;
  const mark = (element) => {
    const { outlineStyle, outlineWidth, boxShadow } = getComputedStyle(element);
    return `${outlineStyle} ${outlineWidth} ${boxShadow}`;
  };
  const faults = [];
  const name = at.id || at.outerHTML.slice(0, 70);
  const { left, top, right, bottom } = at.getBoundingClientRect();
  // Of a text of many lines the one with the caret is brought into the window.
  const end = at.localName === 'textarea' ? top + 20 : bottom;
  const isIn = left >= -1 && right <= innerWidth + 1 && top >= -1 && end <= innerHeight + 1;
  if (!isIn) faults.push(`${name} is not in the window: ${[left, top, right, bottom].map(Math.round)}`);
  const [x, y] = [(left + right) / 2, (top + end) / 2];
  const over = document.elementFromPoint(x, y);
  if (isIn && !at.contains(over) && !over?.contains(at)) faults.push(`${name} is covered by ${over?.outerHTML.slice(0, 70)}`);
  if (!again) [globalThis.before, globalThis.last] = [globalThis.last, { element: at, marked: mark(at) }];
  const { marked, element } = globalThis.before ?? {};
  if (element && mark(element) === marked)
    faults.push(`the focus does not show at ${element.id || element.outerHTML.slice(0, 70)}`);
  return { place: globalThis.stops.indexOf(at), faults };
}

/** Goes by Tab through all stops and, where asked, back by Shift and Tab. */
async function walk(page, andBack) {
  const stops = await page.evaluate(noteStops);
  const faults = [];
  for (let place = 0; place < stops; place += 1) {
    await page.keyboard.press('Tab');
    let at = await page.evaluate(atStop, false);
    // What comes near is laid out in the next frame, and the browser then moves back what that moved.
    if (at.faults.some((fault) => fault.includes('not in the window'))) {
      await frame(page);
      at = await page.evaluate(atStop, true);
    }
    faults.push(...at.faults);
    if (at.place !== place) faults.push(`stop ${place} is ${at.place}`);
    if (faults.length > 9) break;
  }
  assert.deepEqual(faults, []);
  for (let place = stops - 2; andBack && place >= 0; place -= 1) {
    await page.keyboard.press('Shift+Tab');
    assert.equal(await page.evaluate(() => globalThis.stops.indexOf(document.activeElement)), place);
  }
  return stops;
}

/** What a screen reader is given: role, name and the nodes under them. */
async function tree(page) {
  const session = await page.context().newCDPSession(page);
  const { nodes } = await session.send('Accessibility.getFullAXTree');
  await session.detach();
  const said = nodes
    .filter(({ ignored }) => !ignored)
    .map((node) => ({ ...node, role: node.role.value, name: node.name?.value ?? '' }));
  const under = (node) =>
    [
      node.name,
      ...(node.childIds ?? [])
        .map((id) => said.find(({ nodeId }) => nodeId === id))
        .filter(Boolean)
        .map(under),
    ].join(' ');
  return { said, under };
}

const CONTROLS = [
  'button',
  'link',
  'textbox',
  'combobox',
  'slider',
  'spinbutton',
  'checkbox',
  'searchbox',
  'DisclosureTriangle',
  'progressbar',
];

test('by Tab there and back; in the tree every picture, control and change is said', async () => {
  const { page } = await openPage(browser, SINGLE_FILE, { folded: true });
  console.log(`${await walk(page, true)} stops as it opens`);
  await page.evaluate(openAll);
  await frame(page);
  console.log(`${await walk(page, false)} stops unfolded`);

  await layOut(page);
  const { said } = await tree(page);
  const pictures = ({ said }) => said.filter(({ role }) => role === 'image' || role === 'img').map(({ name }) => name);
  const before = pictures(await tree(page));
  const labels = await page.$$eval('figure:not([hidden]) canvas', (all) =>
    all.map((canvas) => canvas.getAttribute('aria-label')),
  );
  assert.deepEqual(before.toSorted(), labels.toSorted());
  // Workers rest here, so that the pictures of the lap wait for it.
  const drawn = before.filter((name) => !/being worked out\.$/.test(name));
  assert.equal(before.length - drawn.length, 3);
  assert.equal(new Set(before).size, before.length, 'no two pictures have one name');
  for (const name of drawn) assert.match(name, /\d.*\.$/s);
  const nameless = said.filter(({ role, name }) => CONTROLS.includes(role) && name.trim() === '');
  assert.deepEqual(nameless, []);

  await page.fill('#rings-b', '40');
  await page.waitForFunction(() => document.getElementById('board-spoken').textContent.includes('Rings: B'));
  const changed = await tree(page);
  assert.ok(pictures(changed).filter((name) => !before.includes(name)).length > 3, 'the pictures say what they show now');
  const statuses = changed.said.filter(({ role }) => role === 'status').map(changed.under);
  assert.match(statuses.join('\n').replaceAll('\u00a0', ' '), /Rings: B \d/);
});
