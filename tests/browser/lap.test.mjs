// “Round the lap” from end to end: a demo read by keyboard, files good and bad, kept courses, a search.

import assert from 'node:assert/strict';
import { readFile } from 'node:fs/promises';
import { after, afterEach, before, test } from 'node:test';
import { fileURLToPath } from 'node:url';
import {
  addressWith,
  assertQuiet,
  DESK,
  downloaded,
  frame,
  lapTimes,
  launchBrowser,
  openPage,
  SINGLE_FILE,
  serveSite,
  text,
  type,
  untilReady,
} from './harness.mjs';

const GPX = new URL('../reference/data/gpx/', import.meta.url);
const fixture = (name) => fileURLToPath(new URL(`${name}.gpx`, GPX));
const SETTLED = 60_000;
const SEARCHED = 120_000;

let browser;

before(async () => {
  browser = await launchBrowser();
});

after(() => browser?.close());

/** A page left open would work out its lap beside the next. */
afterEach(() => Promise.all(browser.contexts().map((context) => context.close())));

async function openLap(options, address = SINGLE_FILE) {
  const opened = await openPage(browser, address, { rides: true, ...options });
  await comeTo(opened.page);
  await settled(opened.page);
  return opened;
}

/** Scrolls to the lap until it is worked out: pictures above it are drawn on the way and may push it out of sight again. */
const comeTo = (page) =>
  page.waitForFunction(
    () => {
      document.getElementById('lap').scrollIntoView({ behavior: 'instant' });
      return !document.getElementById('lap-answer').textContent.includes('as soon as you come here');
    },
    null,
    { timeout: SETTLED },
  );

/** The answer holds the likely times, which come last. */
const settled = (page) =>
  page.waitForFunction(() => /likely/.test(document.getElementById('lap-answer').textContent), null, { timeout: SETTLED });

const searched = (page) =>
  page.waitForFunction(() => document.getElementById('lap-found').textContent.includes('First of'), null, { timeout: SEARCHED });

const focusOn = (page) => page.evaluate(() => document.activeElement.id);

async function dropFile(page, name, contents, where = '#lap-answer') {
  const data = await page.evaluateHandle(
    ([name, contents]) => {
      const transfer = new DataTransfer();
      transfer.items.add(new File([contents], name));
      return transfer;
    },
    [name, contents],
  );
  await page.dispatchEvent(where, 'drop', { dataTransfer: data });
}

test('coming to the lap again while workers ride it does not begin it anew', async () => {
  const { page, heard } = await openPage(browser, SINGLE_FILE, { rides: true });
  await page.evaluate(() => {
    globalThis.jobs = [];
    const { postMessage } = Worker.prototype;
    Worker.prototype.postMessage = function (message) {
      if (message.job) globalThis.jobs.push(message.job);
      postMessage.call(this, message);
    };
  });
  await comeTo(page);
  await page.waitForFunction(() => globalThis.jobs.length > 0);
  const asked = await page.evaluate(() => globalThis.jobs.at(-1));
  for (const top of [0, 1, 0, 1]) {
    await page.evaluate((top) => {
      if (top) document.getElementById('lap').scrollIntoView({ behavior: 'instant' });
      else scrollTo({ top: 0, behavior: 'instant' });
    }, top);
    await frame(page);
  }
  await page.waitForTimeout(300);
  assert.equal(await page.evaluate(() => globalThis.jobs.at(-1)), asked);
  await settled(page);
  assertQuiet(heard);
});

test('beside a field in error the lap is that of its last good value', async () => {
  const { page } = await openLap();
  const demo = await lapTimes(page);
  await type(page, 'power', '300');
  const strong = await lapTimes(page, demo);
  await type(page, 'power', '220');
  assert.equal(await lapTimes(page, strong), demo);
  await type(page, 'power', '300');
  await type(page, 'power', '300 x');
  assert.equal(await lapTimes(page, demo), strong);
  assert.match(await text(page, '#lap-answer'), /^“Power” is left aside/);
});

test('the answer comes first, and any metre of the demo is read by keyboard', async () => {
  const { page, heard } = await openLap();
  await page.waitForFunction(() => !document.getElementById('lap-answer').textContent.startsWith('Being worked out'), null, {
    timeout: SETTLED,
  });
  const answer = await text(page, '#lap-answer');
  assert.match(answer, /^(B is quicker here: it|Between A and B this lap makes hardly a difference|Too close to call)/);
  assert.match(answer, /Force it at \d+ to \d+ m \(A \d+(\.\d)? s for \d\.\d kJ, down to 34×30, B /);
  assert.match(answer, /You ride above your 220 W where that pays, up to 3\d\d W with A/);
  assert.match(answer, /Autumn meadow, 3\.00 km with \d+ m of climbing: A 1?\d:\d\d \(likely/);
  assert.match(await text(page, '#lap-places'), /dismount 4\d\d m, remount 4\d\d m\s+obstacle, 0 %, firm grass, \d+(\.\d)? s/);
  const reading = page.locator('[data-picture=profile] .reading');
  await page.focus('[data-picture=profile] .plot');
  await page.keyboard.press('Home');
  assert.match(
    await reading.innerText(),
    /^0\sm: 0\.0\sm up, 0\.0\s%, tarmac\. A: \d+×\d+ at \d+\srpm, \d+\.\d\skm\/h, \d+\sW, reserve down by \S+\skJ\. B: /,
  );
  await page.keyboard.press('PageDown');
  await page.keyboard.press('ArrowRight');
  assert.match(await reading.innerText(), /^3\d\d\sm: /);
  await page.keyboard.press('Home');
  for (const key of ['ArrowRight', 'ArrowRight', 'Shift+ArrowRight', 'ArrowRight']) await page.keyboard.press(key);
  assert.match(await reading.innerText(), /^13\sm: /, 'an arrow is a metre, with Shift ten');
  await page.keyboard.press('End');
  assert.match(await reading.innerText(), /^3000\sm: /);
  await page.focus('[data-picture=gain] .plot');
  await page.keyboard.press('End');
  assert.match(await text(page, '[data-picture=gain] .reading'), /^3000 m: ([AB] \d+\.\d s ahead|A and B level)\.$/);
  assertQuiet(heard);
});

test('a lap at a steady power is still to be had, and an older link says what has changed', async () => {
  const { page, heard } = await openLap({}, `${SINGLE_FILE}#r=2&ra=46/30`);
  assert.match(await text(page, '#notices'), /This link is from before laps were ridden as you ride/);
  assert.match(await text(page, '#lap-answer'), /Force it at/);
  await page.selectOption('#lap-model', 'steady');
  await page.waitForFunction(() => /ridden at an even 220/.test(document.getElementById('lap').textContent));
  assertQuiet(heard);
});

/** Runs in the page before anything else: counts laps at a steady power that workers found; refuses all but the first `most`. */
function countEven(most) {
  globalThis.evens = 0;
  let left = most;
  globalThis.Worker = class extends Worker {
    constructor(source) {
      left -= 1;
      if (left < 0) throw new Error('refused');
      super(source);
      this.addEventListener('message', ({ data }) => {
        if (data.even) globalThis.evens += 1;
      });
    }
  };
}

test('a lap at a steady power is settled by a worker, and by the page itself where there is none, which finds the same', async () => {
  const found = [];
  for (const most of [9, 1]) {
    const context = await browser.newContext({ viewport: DESK });
    const page = await context.newPage();
    await page.addInitScript(countEven, most);
    await page.goto(`${SINGLE_FILE}#r=3&ly=steady`);
    await untilReady(page);
    await comeTo(page);
    await settled(page);
    found.push([await text(page, '#lap-answer'), (await page.evaluate('evens')) > 0]);
    await context.close();
  }
  const [[answer]] = found;
  assert.deepEqual(found, [
    [answer, true],
    [answer, false],
  ]);
});

test('a recorded track is read, reported, smoothed and ridden; nothing leaves the machine', async () => {
  const { page, heard } = await openLap();
  await page.setInputFiles('#lap-file', fixture('recorded-walk'));
  await page.waitForFunction(() => document.getElementById('course').value === 'own');
  const report = await text(page, '#lap-course');
  assert.match(
    report,
    /^recorded-walk: \d+\.\d\d km long, \d+ m of climbing as recorded( \(.*?\))?(,| and) \d+ m after smoothing over 40 m.*\. Found: \d+ points/,
  );
  await page.waitForFunction(() => document.getElementById('lap-answer').textContent.includes('recorded-walk'));
  await page.fill('#smoothing', '120');
  await page.waitForFunction(() => document.getElementById('lap-course').textContent.includes('over 120'));
  await dropFile(page, 'again.gpx', await readFile(fixture('drawn-round-trip'), 'utf8'));
  await page.waitForFunction(() =>
    document.getElementById('lap-course').textContent.startsWith('again cannot be used for a lap'),
  );
  assertQuiet(heard);
});

test('a track of several laps is said to be, and cut to the first', async () => {
  const { page, heard } = await openLap();
  const point = (index) => {
    const angle = (index * 5) / (1000 / (2 * Math.PI));
    const [north, east] = [159.2 * Math.sin(angle), 159.2 * (1 - Math.cos(angle))];
    return `<trkpt lat="${50.9 + north / 111250}" lon="${6.1 + east / 70200}"><ele>${100 + 6 * Math.sin(angle) + index / 50}</ele></trkpt>`;
  };
  const gpx = `<gpx><trk><trkseg>${Array.from({ length: 801 }, (_, index) => point(index)).join('')}</trkseg></trk></gpx>`;
  await dropFile(page, 'race.gpx', gpx, 'h1');
  await page.waitForFunction(() =>
    /This looks like 4 laps of 1\.00 km/.test(document.getElementById('lap-course').textContent.replaceAll('\u00a0', ' ')),
  );
  assert.match(await text(page, '#lap-course'), /Its end was recorded 16 m higher than its start; that was taken away evenly/);
  await page.focus('#laps-of-track');
  await page.keyboard.press('Enter');
  await page.waitForFunction(
    () => /race, 1\.00 km/.test(document.getElementById('lap-answer').textContent.replaceAll('\u00a0', ' ')),
    null,
    { timeout: SETTLED },
  );
  assert.match(await text(page, '#lap-course'), /This is the first of 4 laps/);
  assert.equal(await focusOn(page), 'laps-of-track');
  await page.fill('#smoothing', '60');
  await page.waitForFunction(() => document.getElementById('lap-course').textContent.includes('over 60'));
  assert.match(await text(page, '#lap-course'), /the first of 4 laps/, 'other smoothing keeps the lap');
  await page.click('#laps-of-track');
  await page.waitForFunction(() => /Use the first lap/.test(document.getElementById('lap-course').textContent));
  assertQuiet(heard);
});

test('a part of a track is used, and undo brings the file before back', async () => {
  const { page } = await openLap();
  const says = (what) =>
    page.waitForFunction(
      (what) => document.getElementById('lap-course').textContent.replaceAll('\u00a0', ' ').includes(what),
      what,
    );
  await page.setInputFiles('#lap-file', fixture('recorded-walk'));
  await says('recorded-walk: 12.8');
  await page.fill('#track-from', '100');
  await page.fill('#track-to', '300');
  await says('recorded-walk: 0.20 km');
  await page.fill('#track-from', '90000');
  await page.waitForSelector('#track-to[aria-invalid]');
  await page.fill('#track-to', '');
  await says('That part of the track is not used: nothing of the track lies between these places');
  await page.fill('#track-from', '');
  await says('recorded-walk: 12.8');
  await dropFile(page, 'other.gpx', await readFile(fixture('drawn-round-trip'), 'utf8'));
  await says('other: ');
  await page.click('[data-act=undo]');
  await says('recorded-walk: 12.8');
});

test('a link to a file nobody has asks for it and gives no verdict', async () => {
  const { page } = await openPage(browser, `${SINGLE_FILE}#v=4&course=own&pa=100;900;deep%20mud`, { rides: true });
  await page.evaluate(() => document.getElementById('lap').scrollIntoView({ behavior: 'instant' }));
  if ((await page.inputValue('#course')) !== 'own') await page.selectOption('#course', 'own');
  await settled(page);
  const answer = await text(page, '#lap-answer');
  assert.match(answer, /^This is about a course from a file/);
  assert.doesNotMatch(answer, /quicker|Too close/);
});

test('a recorded course goes into the sketch, edited there, and travels in the link', async () => {
  const { page } = await openLap();
  await page.setInputFiles('#lap-file', fixture('recorded-walk'));
  await page.waitForFunction(() => document.getElementById('course').value === 'own');
  await page.click('[data-act=sketch-it]');
  await page.waitForFunction(() =>
    /^Put into the sketch as \d+ stretches in place of \d+: no height is off by more than/.test(
      document.getElementById('lap-course').textContent,
    ),
  );
  const sketch = await page.inputValue('#sketch');
  assert.match(sketch, /^[\d.]+; -?[\d.]+; firm grass(; heading \d+)?\n/);
  const link = await addressWith(page, 'sq=');
  assert.ok(link.href.length < 2000, link.href);
  const again = await openLap({}, link.href);
  assert.equal(await again.page.inputValue('#sketch'), sketch);
});

test('a sketch too long is refused whole', async () => {
  const { page } = await openLap();
  await page.click('summary:has-text("Sketch a course")');
  await page.fill('#sketch', '100; 0; firm grass; corner 20\n'.repeat(200));
  await page.selectOption('#course', 'sketch');
  await page.waitForFunction(() => /longer than the field holds/.test(document.getElementById('says-sketch').textContent));
});

test('a bad file gets a clear message and the page lives on', async () => {
  const { page, heard } = await openLap();
  const laughs =
    '<?xml version="1.0"?><!DOCTYPE gpx [<!ENTITY a "ha"><!ENTITY b "&a;&a;&a;&a;">]><gpx><trk><name>&b;</name></trk></gpx>';
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
    ['null.json', '{"remountCourse": 1, "stretches": [null, {}]}', /“null.json” is not taken: .*The course stays as it was/],
  ];
  for (const [name, contents, message] of bad) {
    await dropFile(page, name, contents);
    await page.waitForFunction(
      (source) => new RegExp(source).test(document.getElementById('lap-course').textContent),
      message.source,
    );
    assert.equal(await page.inputValue('#course'), 'meadow');
  }
  await dropFile(page, 'large.gpx', 'x'.repeat(33 * 1024 * 1024));
  await page.waitForFunction(() => document.getElementById('lap-course').textContent.includes('larger than 32 MB'));
  await page.selectOption('#course', 'sand-pit');
  await page.waitForFunction(() => document.getElementById('lap-answer').textContent.includes('Sand pit'));
  assertQuiet(heard);
});

test('a sketch is ridden, painted over, faulted by line, and travels in the link', async () => {
  const { page } = await openLap();
  await page.click('summary:has-text("Sketch a course")');
  await page.selectOption('#course', 'sketch');
  await page.fill('#sketch', '800; 0; tarmac\n400; 1; firm grass');
  await page.waitForFunction(() => /You never dismount/.test(document.getElementById('lap-answer').textContent));
  await page.fill('#paint', '100; 104; foot 2\n300; 420; mud');
  await page.waitForFunction(() => /[Yy]ou dismount once/.test(document.getElementById('lap-answer').textContent));
  const link = await addressWith(page, 'pq=100_104_f2');
  await page.fill('#sketch', '800; 0; tarmac\n400; steep; firm grass');
  await page.waitForSelector('#sketch[aria-invalid]');
  assert.match(await text(page, '#says-sketch'), /Line 2: second comes the gradient/);
  const again = await openLap({}, link.href);
  assert.equal(await again.page.inputValue('#sketch'), '800; 0; tarmac\n400; 1; firm grass');
  assert.match(await text(again.page, '#lap-answer'), /[Yy]ou dismount once/);
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
    await page.waitForFunction(() => document.getElementById('lap-course').textContent.startsWith('My <b>lap</b>: 39'));
    const [download] = await Promise.all([page.waitForEvent('download'), page.click('#save-course')]);
    const saved = JSON.parse(await downloaded(download));
    assert.equal(saved.remountCourse, 1);
    assert.equal(saved.stretches.length, 39);
    assert.equal(saved.stretches[0], '180; 0; tarmac');
    await page.click('summary:has-text("Sketch a course")');
    await page.fill('#paint', '300; 420; mud');
    await page.click('#keep');
    assert.match(await text(page, '#kept-says'), /Your changes on its stretches are part of what was kept/);
    await page.evaluate(() => localStorage.clear());
    await page.selectOption('#kept', { index: 1 });
    await page.waitForFunction(() => document.getElementById('chosen-says').textContent.includes('no longer kept'));
    await page.click('#keep');
    await page.selectOption('#kept', { index: 1 });
    await page.focus('#forget');
    await page.keyboard.press('Enter');
    assert.equal(await page.isHidden('#kept-row'), true);
    assert.equal(await focusOn(page), 'lap-open');
    assert.deepEqual(heard.complaints, []);
  } finally {
    await site.close();
  }
});

test('a search runs in the background, is cancelled, and a result goes on the bench', async () => {
  const { page, heard } = await openLap();
  const off = (id) => page.getAttribute(id, 'aria-disabled');
  assert.equal(await page.isHidden('[data-picture=found]'), true, 'nothing was searched, nothing is drawn');
  await page.focus('#search-start');
  await page.keyboard.press('Enter');
  assert.deepEqual([await off('#search-start'), await off('#search-stop')], ['true', 'false']);
  assert.equal(await focusOn(page), 'search-start');
  await page.focus('#search-stop');
  await page.keyboard.press('Enter');
  await page.waitForFunction(() => document.getElementById('search-stop').getAttribute('aria-disabled') === 'true');
  assert.equal(await focusOn(page), 'search-stop');
  assert.match(await text(page, '#lap-found'), /Cancelled before any was tried|Stopped after/);
  await page.fill('#search-small', '38');
  await page.click('#search-start');
  await page.waitForFunction(() => document.getElementById('lap-found').textContent.includes('Ahead so far'), null, {
    timeout: SETTLED,
  });
  assert.doesNotMatch(await text(page, '#lap-found'), /\d+ of \d+ done/, 'the counter beside the bar is the only one');
  await searched(page);
  assert.match(await text(page, '#lap-found'), /ties? with it by time/);
  assert.match(await text(page, '#shows-found'), /of \d+ tried\.$/);
  assert.match(await text(page, '#lap-found'), /The rest were not tested\./);
  const mass = await page.inputValue('#body-mass');
  await page.fill('#body-mass', '81');
  await page.waitForFunction(() =>
    /^Searched for Autumn meadow as it was.*search again/.test(document.getElementById('lap-found').textContent),
  );
  await page.fill('#body-mass', mass);
  await page.waitForFunction(() => !document.getElementById('lap-found').textContent.includes('search again'));
  await page.focus('[data-picture=found] .plot');
  await page.keyboard.press('Home');
  await page.waitForFunction(() => document.querySelector('[data-picture=found] .reading').textContent !== '');
  const first = await text(page, '[data-picture=found] .reading');
  const put = page.locator('#lap-found button[aria-label$="as B"]').first();
  assert.match(await put.getAttribute('aria-label'), /as B$/);
  await put.click();
  const ends = (await page.inputValue('#cassette-b')).split('-');
  const best = `${await page.inputValue('#rings-b')} with ${ends[0]}-${ends.at(-1)}, ${ends.length} sprockets: the best`;
  assert.ok(first.includes(best), `${first} not ${best}`);
  assert.equal(await page.isDisabled('[data-act=undo]'), false);
  assertQuiet(heard);
});

test('a kept course says what it was smoothed over', async () => {
  const { page } = await openLap();
  await page.setInputFiles('#lap-file', fixture('recorded-hike-two-segments'));
  await page.waitForFunction(() => document.getElementById('course').value === 'own');
  const [download] = await Promise.all([page.waitForEvent('download'), page.click('#save-course')]);
  await dropFile(page, 'kept.json', await downloaded(download));
  await page.waitForFunction(() =>
    /^recorded-hike-two-segments: \d+.stretches, smoothed over 40.m when it was read\.$/.test(
      document.getElementById('lap-course').textContent,
    ),
  );
});
