// “Round the lap” from end to end: a demo read by keyboard, files good and bad, kept courses, a search.

import assert from 'node:assert/strict';
import { readFile } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import { after, before, test } from 'node:test';
import axe from 'axe-core';
import { PHONE, SINGLE_FILE, addressWith, assertQuiet, launchBrowser, openPage, serveSite, text } from './harness.mjs';

const GPX = new URL('../reference/data/gpx/', import.meta.url);
const fixture = (name) => fileURLToPath(new URL(`${name}.gpx`, GPX));
const SETTLED = 15_000;

let browser;

before(async () => {
  browser = await launchBrowser();
});

after(() => browser?.close());

async function openLap(options, address = SINGLE_FILE) {
  const opened = await openPage(browser, address, options);
  await opened.page.evaluate(() => document.getElementById('lap').scrollIntoView({ behavior: 'instant' }));
  await settled(opened.page);
  return opened;
}

/** The answer holds the likely times, which come last. */
const settled = (page) => page.waitForFunction(() => /likely/.test(document.getElementById('lap-answer').innerText), null, { timeout: SETTLED });

async function dropFile(page, name, contents) {
  const data = await page.evaluateHandle(([name, contents]) => {
    const transfer = new DataTransfer();
    transfer.items.add(new File([contents], name));
    return transfer;
  }, [name, contents]);
  await page.dispatchEvent('#lap-answer', 'drop', { dataTransfer: data });
}

test('the answer comes first, and any metre of the demo is read by keyboard', async () => {
  const { page, heard } = await openLap();
  const answer = await text(page, '#lap-answer');
  assert.match(answer, /^(Too close to call: by the best guess [AB] gains|[AB] is quicker here: it gains) \d+\.\d s a lap/);
  assert.match(answer, /Autumn meadow, 3\.00 km with \d+ m of climbing: A 1?\d:\d\d\.\d \(likely/);
  assert.match(await text(page, '#lap-places'), /off 4\d\d on 4\d\d/);
  const reading = page.locator('[data-picture=profile] .reading');
  await page.focus('[data-picture=profile] .plot');
  await page.keyboard.press('Home');
  assert.match(await reading.innerText(), /^0\sm: 0\.0\sm up, 0\.0\s%, tarmac\. A: \d+×\d+ at \d+\srpm, \d+\.\d\skm\/h\. B: /);
  await page.keyboard.press('PageDown');
  await page.keyboard.press('ArrowRight');
  assert.match(await reading.innerText(), /^3\d\d\sm: /);
  await page.keyboard.press('End');
  assert.match(await reading.innerText(), /^3000\sm: /);
  await page.focus('[data-picture=gain] .plot');
  await page.keyboard.press('End');
  assert.match(await text(page, '[data-picture=gain] .reading'), /^3000 m: ([AB] \d+\.\d s ahead|A and B level)\.$/);
  assertQuiet(heard);
});

test('a recorded track is read, reported, smoothed and ridden; nothing leaves the machine', async () => {
  const { page, heard } = await openLap();
  await page.setInputFiles('#lap-file', fixture('recorded-walk'));
  await page.waitForFunction(() => document.getElementById('course').value === 'own');
  const report = await text(page, '#lap-course');
  assert.match(report, /^recorded-walk: \d+\.\d\d km long, \d+ m of climbing as recorded and \d+ m after smoothing over 40 m\. Found: \d+ points/);
  await page.waitForFunction(() => document.getElementById('lap-answer').innerText.includes('recorded-walk'));
  await page.fill('#smoothing', '120');
  await page.waitForFunction(() => document.getElementById('lap-course').innerText.includes('over 120'));
  await dropFile(page, 'again.gpx', await readFile(fixture('drawn-round-trip'), 'utf8'));
  await page.waitForFunction(() => document.getElementById('lap-course').innerText.startsWith('again:'));
  assertQuiet(heard);
});

test('a bad file gets a clear message and the page lives on', async () => {
  const { page, heard } = await openLap();
  const laughs = '<?xml version="1.0"?><!DOCTYPE gpx [<!ENTITY a "ha"><!ENTITY b "&a;&a;&a;&a;">]><gpx><trk><name>&b;</name></trk></gpx>';
  const bad = [
    ['photo.jpg', '\u00ff\u00d8\u00ff\u0000\u0010JFIF', /not a GPX file/],
    ['empty.gpx', '', /not a GPX file/],
    ['laughs.gpx', laughs, /declares a document type/],
    ['one.gpx', '<gpx><trk><trkseg><trkpt lat="1" lon="1"><ele>1</ele></trkpt></trkseg></trk></gpx>', /two different points/],
    ['flat.gpx', await readFile(fixture('without-elevation'), 'utf8'), /no elevations/],
    ['cut.gpx', '<gpx><trk><trkseg><trkpt lat="1"', /damaged at line 1/],
    ['ours.json', '{"remountCourse": 1, "stretches": ["10; 0; lava"]}', /line 1: third comes the ground/],
    ['later.json', '{"remountCourse": 2}', /not one of our courses/],
    ['broken.json', '{"remountCourse"', /neither GPX nor/],
    ['null.json', '{"remountCourse": 1, "stretches": [null, {}]}', /That is no course/],
  ];
  for (const [name, contents, message] of bad) {
    await dropFile(page, name, contents);
    await page.waitForFunction((source) => new RegExp(source).test(document.getElementById('lap-course').innerText), message.source);
    assert.equal(await page.inputValue('#course'), 'meadow');
  }
  await dropFile(page, 'large.gpx', 'x'.repeat(33 * 1024 * 1024));
  await page.waitForFunction(() => document.getElementById('lap-course').innerText.includes('larger than 32 MB'));
  await page.selectOption('#course', 'sand-pit');
  await page.waitForFunction(() => document.getElementById('lap-answer').innerText.includes('Sand pit'));
  assertQuiet(heard);
});

test('a sketch is ridden, painted over, faulted by line, and travels in the link', async () => {
  const { page } = await openLap();
  await page.click('summary:has-text("Sketch a course")');
  await page.selectOption('#course', 'sketch');
  await page.fill('#sketch', '800; 0; tarmac\n400; 1; firm grass');
  await page.waitForFunction(() => /you get off never/.test(document.getElementById('lap-answer').innerText));
  await page.fill('#paint', '100; 104; foot 2\n300; 420; mud');
  await page.waitForFunction(() => /you get off once/.test(document.getElementById('lap-answer').innerText));
  const link = await addressWith(page, 'pa=100;');
  await page.fill('#sketch', '800; 0; tarmac\n400; steep; firm grass');
  await page.waitForSelector('#sketch[aria-invalid]');
  assert.match(await text(page, '#says-sketch'), /Line 2: second comes the gradient/);
  const again = await openLap({}, link.href);
  assert.equal(await again.page.inputValue('#sketch'), '800; 0; tarmac\n400; 1; firm grass');
  assert.match(await text(again.page, '#lap-answer'), /you get off once/);
});

test('a course is kept in the browser, read again and forgotten', async () => {
  const site = await serveSite();
  try {
    const { page, heard } = await openLap({}, site.address);
    await page.fill('#keep-name', 'My <b>lap</b>');
    await page.click('#keep');
    await page.reload();
    await page.waitForSelector('#kept-row:not([hidden])', { state: 'attached' });
    await page.selectOption('#kept', { label: 'My <b>lap</b>' });
    await page.waitForFunction(() => document.getElementById('lap-course').innerText.startsWith('My <b>lap</b>: 39'));
    const [download] = await Promise.all([page.waitForEvent('download'), page.click('#save-course')]);
    const saved = JSON.parse(await readFile(await download.path(), 'utf8'));
    assert.equal(saved.remountCourse, 1);
    assert.equal(saved.stretches.length, 39);
    assert.equal(saved.stretches[0], '180; 0; tarmac');
    await page.click('#forget');
    assert.equal(await page.isHidden('#kept-row'), true);
    assert.deepEqual(heard.complaints, []);
  } finally {
    await site.close();
  }
});

test('a search runs in the background, is cancelled, and a result goes on the bench', async () => {
  const { page, heard } = await openLap();
  await page.click('#search-start');
  assert.equal(await page.isDisabled('#search-start'), true);
  await page.click('#search-stop');
  await page.waitForFunction(() => document.getElementById('search-stop').disabled);
  assert.match(await text(page, '#lap-found'), /to be tried|No set-up|Stopped after|\d/);
  await page.fill('#search-small', '38');
  await page.click('#search-start');
  await page.fill('#body-mass', '63');
  assert.equal(await page.getAttribute('#body-mass', 'aria-invalid'), null);
  await page.waitForFunction(() => document.getElementById('lap-found').innerText.includes('First of'), null, { timeout: 60_000 });
  assert.match(await text(page, '#lap-found'), /tie with it|more than the uncertainty/);
  await page.focus('[data-picture=found] .plot');
  await page.keyboard.press('Home');
  const first = await text(page, '[data-picture=found] .reading');
  const put = page.locator('#lap-found button').nth(1);
  assert.match(await put.getAttribute('aria-label'), /as B$/);
  await put.click();
  assert.equal(first.startsWith(`${await page.inputValue('#rings-b')} with ${await page.inputValue('#cassette-b')}: `), true, first);
  assert.equal(await page.isDisabled('[data-act=undo]'), false);
  assertQuiet({ ...heard, requests: heard.requests.filter(({ url }) => !url.startsWith('blob:')) });
});

test('axe-core finds nothing once the lap and a search stand there', async () => {
  const { page } = await openLap();
  await page.fill('#search-small', '44');
  await page.click('#search-start');
  await page.waitForFunction(() => document.getElementById('lap-found').innerText.includes('First of'), null, { timeout: 60_000 });
  await page.evaluate(axe.source);
  const found = await page.evaluate(() => globalThis.axe.run('#lap').then(({ violations }) => violations.map(({ id, nodes }) => `${id} at ${nodes[0].target}`)));
  assert.deepEqual(found, []);
});

test('nothing sticks out on a phone', async () => {
  const { page } = await openLap({ viewport: PHONE });
  assert.equal(await page.evaluate(() => document.documentElement.scrollWidth), PHONE.width);
});
