// "Which rings?" and "Will the cage take it?" from end to end, as a rider and a mechanic use them.

import assert from 'node:assert/strict';
import { after, before, test } from 'node:test';
import { addressWith, assertQuiet, frame, launchBrowser, openPage, PHONE, SINGLE_FILE, text, type } from './harness.mjs';

let browser;

before(async () => {
  browser = await launchBrowser();
});

after(() => browser?.close());

test('a rider decides between two chainring pairs', async () => {
  const { page, heard } = await openPage(browser, SINGLE_FILE);
  await type(page, 'rings-a', '48/35');
  await type(page, 'rings-b', '42');
  await type(page, 'cassette-b', '11 13 15 17 19 21 24 28 32 37 42');
  const answer = await text(page, '#rings-answer');
  // 42 ÷ 42 × 2.1614 m × 55 rpm × 0.06 and 35 ÷ 30 × 2.1614 m × 55 rpm × 0.06
  assert.match(answer, /^B turns 55 rpm down to 7\.1 km\/h, A only down to 8\.3 km\/h\./);
  assert.match(answer, /At the top A reaches 62\.2 km\/h against 54\.5 km\/h at 110 rpm\./);
  assert.match(await text(page, '#rings-steps'), /one ring, no front change/);
  assertQuiet(heard);
});

test('a mechanic checks a bigger cassette against the cage', async () => {
  const { page } = await openPage(browser, SINGLE_FILE);
  await type(page, 'capacity', '39');
  assert.match(await text(page, '#cage-answer'), /A fits, with 4 teeth of capacity to spare\.[\s\S]*B fits, with 6 teeth/);
  await type(page, 'cassette-a', '11-13-15-17-19-21-23-25-28-32-36');
  assert.match(await text(page, '#cage-answer'), /A does not fit: a 36 sprocket is larger than the 34/);
  await type(page, 'largest-sprocket', '36');
  assert.match(await text(page, '#cage-answer'), /A fits if you never use 34×11: 2 teeth short/);
});

test('a bad value is named beside its field and nothing typed is lost', async () => {
  const { page, heard } = await openPage(browser, SINGLE_FILE);
  const before = await text(page, '#rings-answer');
  const bad = [
    '',
    'words',
    '0',
    '-4',
    '1e9',
    '11-10-9',
    Array.from({ length: 40 }, (_, i) => i + 10).join('-'),
    '<img src=x onerror=alert(1)>',
  ];
  for (const value of bad) {
    await type(page, 'cassette-a', value);
    assert.equal(await page.inputValue('#cassette-a'), value);
    assert.equal(await page.getAttribute('#cassette-a', 'aria-invalid'), 'true', value);
    assert.match(await text(page, '#says-cassette-a'), /\. ?\n?The page goes on with 11-12-13-/, value);
    const answer = await text(page, '#rings-answer');
    assert.match(answer, /^“A: Cassette” is left aside; this goes on with 11-12-13-/, value);
    assert.ok(answer.includes(before.split('\n')[0]), answer);
  }
  assert.equal(await page.locator('img').count(), 0);
  await type(page, 'cassette-a', '11-12-13');
  assert.equal(await page.getAttribute('#cassette-a', 'aria-invalid'), null);
  assert.notEqual(await text(page, '#rings-answer'), before);
  assertQuiet(heard);
});

test('a link reopens the bench; what it cannot tell is said and the rest kept', async () => {
  const { page } = await openPage(browser, SINGLE_FILE);
  await type(page, 'rings-a', '46/33');
  await type(page, 'tyre', '700x35c');
  const link = await addressWith(page, '700x35c');
  assert.match(link.hash, /^#r=3&ra=46\/33&ty=700x35c$/);
  const again = await openPage(browser, link);
  assert.equal(await again.page.inputValue('#tyre'), '700x35c');
  assert.equal(await text(again.page, '#rings-answer'), await text(page, '#rings-answer'));
  const mangled = await openPage(browser, `${link.href}&rings-b=oops&colour=red&%E0%A4%A`);
  assert.match(await text(mangled.page, '#notices'), /“colour” in the link is not known here/);
  assert.equal(await mangled.page.inputValue('#rings-b'), 'oops');
  assert.equal(await mangled.page.inputValue('#rings-a'), '46/33');
});

test('swap, copy, undo and reset', async () => {
  const { page } = await openPage(browser, SINGLE_FILE);
  const rings = async () => [await page.inputValue('#rings-a'), await page.inputValue('#rings-b')];
  const [a, b] = await rings();
  assert.equal(await page.isDisabled('[data-act=undo]'), true);
  await page.click('[data-act=swap]');
  assert.deepEqual(await rings(), [b, a]);
  await page.click('[data-act=copy]');
  assert.deepEqual(await rings(), [b, b]);
  await page.click('[data-act=undo]');
  await page.click('[data-act=undo]');
  assert.deepEqual(await rings(), [a, b]);
  await type(page, 'rings-a', '39');
  await page.click('[data-act=reset]');
  assert.deepEqual(await rings(), [a, b]);
});

test('a usual cassette is picked from the list', async () => {
  const { page } = await openPage(browser, SINGLE_FILE);
  await page.selectOption('[data-sets=cassette-b]', '11-34 11s');
  await frame(page);
  assert.equal(await page.inputValue('#cassette-b'), '11-34 11s');
  assert.match(await text(page, '#cage-answer'), /B fits if you never use|B does not fit/);
});

test('a cassette is typed by its name, and what else it may be is a button beside it', async () => {
  const { page, heard } = await openPage(browser, SINGLE_FILE);
  await type(page, 'cassette-b', '11–34');
  assert.match(
    await text(page, '#says-cassette-b'),
    /^11 sprockets taken, the most usual number that A and B can both have: 11-13-15-17-19-21-23-25-27-30-34; makers differ/,
  );
  await addressWith(page, 'cb=11%E2%80%9334');
  assert.equal(await page.inputValue('#cassette-b'), '11–34');
  await page.click('#says-cassette-b button:text("10 sprockets")');
  assert.equal(await page.inputValue('#cassette-b'), '11-13-15-17-19-21-23-26-30-34');
  await page.click('[data-act=undo]');
  await page.click('#says-cassette-b button:text("only 11 and 34")');
  assert.match(await text(page, '#says-cassette-b'), /^2 sprockets, 11 to 34/);
  assertQuiet(heard);
});

test('everything is reached and read by keyboard alone', async () => {
  const { page } = await openPage(browser, SINGLE_FILE, { folded: true });
  const plot = page.locator('[data-picture=ladder] .plot');
  const read = page.locator('[data-read=ladder]');
  for (let press = 0; press < 60; press += 1) {
    await page.keyboard.press('Tab');
    if (await read.evaluate((element) => element === document.activeElement)) break;
  }
  await page.keyboard.press('Enter');
  assert.equal(await plot.evaluate((element) => element === document.activeElement), true);
  await page.keyboard.press('ArrowDown');
  assert.match(await text(page, '[data-picture=ladder] .reading'), /^A 50×11: 9\.825 m/);
  await page.keyboard.press('End');
  assert.match(await text(page, '[data-picture=ladder] .reading'), /^B 32×32: 2\.161 m/);
  assert.equal(await page.locator('[data-picture=ladder] .mark').isVisible(), true);
});

test('cadence and speed are read in both directions', async () => {
  const { page } = await openPage(browser, SINGLE_FILE);
  await page.locator('#at-cadence').focus();
  await page.keyboard.press('ArrowRight');
  await frame(page);
  assert.match(await text(page, '#rings .probes'), /86 rpm/);
  await page.locator('#at-speed').fill('60');
  await frame(page);
  assert.match(await text(page, '#probes-answer'), /At 60\.0 km\/h: A turns 50×11 at 102 rpm/);
});

test('a finger on a phone reads a gear', async () => {
  const { page } = await openPage(browser, SINGLE_FILE, { viewport: PHONE, hasTouch: true, deviceScaleFactor: 3 });
  const plot = page.locator('[data-picture=ladder] .plot');
  await plot.scrollIntoViewIfNeeded();
  await plot.tap({ position: { x: 90, y: 60 } });
  assert.match(await text(page, '[data-picture=ladder] .reading'), /^A 50×1\d: /);
  const size = await plot
    .locator('canvas')
    .evaluate((canvas) => [canvas.width / canvas.clientWidth, canvas.height / canvas.clientHeight]);
  for (const ratio of size) assert.ok(Math.abs(ratio - 3) < 0.02, `drawn at ${ratio} pixels to one`);
});

test('a roll-out limit names the sprockets to block', async () => {
  const { page } = await openPage(browser, SINGLE_FILE);
  await type(page, 'limit', '6.26');
  assert.match(await text(page, '#rings-limit'), /B 32\s+12 13 14 16 18 20 22 25 28 32\s+11\s+none/);
});

test('what was folded open stays open while the bench changes', async () => {
  const { page } = await openPage(browser, SINGLE_FILE);
  await page.locator('#all-gears > summary').click();
  await type(page, 'rings-a', '48/34');
  assert.equal(await page.locator('#all-gears').getAttribute('open'), '');
});

test('undo takes typing back field by field and pick by pick', async () => {
  const { page } = await openPage(browser, SINGLE_FILE);
  await type(page, 'rings-a', '48/33');
  await page.selectOption('[data-sets=rings-a]', '46/30');
  await frame(page);
  await page.click('[data-act=undo]');
  assert.equal(await page.inputValue('#rings-a'), '48/33');
  await page.click('[data-act=undo]');
  assert.equal(await page.inputValue('#rings-a'), '50/34');
});

test('a link to a section goes there and is no bench', async () => {
  const { page } = await openPage(browser, `${SINGLE_FILE}#cage`, { folded: true });
  assert.equal(await text(page, '#notices'), '');
  assert.ok((await page.evaluate(() => scrollY)) > 500);
});
