// Recorded tracks given to the page: in any characters, read beside the page, the last one wins.

import assert from 'node:assert/strict';
import { test } from 'node:test';
import { assertQuiet, browser, openPage, SINGLE_FILE, share, text } from './harness.mjs';

share();

/** A track that leads north, so many points. */
function track(points, head = '<?xml version="1.0" encoding="UTF-8"?>') {
  const point = (place) =>
    `<trkpt lat="${(50 + place * 2e-5).toFixed(6)}" lon="6.1"><ele>${10 + (place % 50) / 10}</ele></trkpt>`;
  const all = Array.from({ length: points }, (_, place) => point(place)).join('\n');
  return `${head}<gpx version="1.1"><trk><name>Äcker</name><trkseg>${all}</trkseg></trk></gpx>`;
}

/** Drops files one right behind the other. */
async function drop(page, ...files) {
  const sent = files.map(([name, bytes]) => [name, Buffer.from(bytes).toString('base64')]);
  await page.evaluate((sent) => {
    for (const [name, base64] of sent) {
      const dataTransfer = new DataTransfer();
      dataTransfer.items.add(new File([Uint8Array.from(atob(base64), (it) => it.charCodeAt(0))], name));
      document.getElementById('lap-drop').dispatchEvent(new DragEvent('drop', { dataTransfer, bubbles: true, cancelable: true }));
    }
  }, sent);
}

const untilRidden = (page, name) =>
  page.waitForFunction((name) => document.getElementById('lap-loaded').textContent.includes(name), name);

/** @param {string} words */
const swapped = (words) => Buffer.from(words, 'utf16le').swap16();

test('a track is read in whatever characters it was written', async () => {
  const { page, heard } = await openPage(browser, SINGLE_FILE);
  const declared = (name) => track(60, `<?xml version="1.0" encoding="${name}"?>`);
  const files = {
    'utf-16 with a mark': Buffer.from(`\ufeff${declared('UTF-16')}`, 'utf16le'),
    'utf-16 without one': Buffer.from(declared('UTF-16'), 'utf16le'),
    'utf-16 the other way': swapped(`\ufeff${declared('UTF-16')}`),
    'the same without a mark': swapped(declared('UTF-16')),
    'utf-8 with a mark': `\ufeff${track(60)}`,
    'latin-1': Buffer.from(declared('ISO-8859-1'), 'latin1'),
    'said to be utf-16': declared('UTF-16'),
    'in a set nobody knows': declared('Klingon'),
  };
  for (const [name, bytes] of Object.entries(files)) {
    await drop(page, [`${name}.gpx`, bytes]);
    await untilRidden(page, name);
  }
  assertQuiet(heard);
});

test('while a track is read the page says so, and the file given last is taken', async () => {
  const { page, heard } = await openPage(browser, SINGLE_FILE);
  await page.evaluate(() => {
    const says = document.getElementById('chosen-says');
    globalThis.said = [];
    new MutationObserver(() => globalThis.said.push(says.textContent)).observe(says, { childList: true });
  });
  await drop(page, ['large.gpx', track(15_000)], ['small.gpx', track(40)]);
  await untilRidden(page, 'small');
  await page.waitForTimeout(1500);
  assert.match(await text(page, '#lap-loaded'), /small/);
  const said = await page.evaluate(() => globalThis.said);
  assert.ok(said.includes('Reading “large.gpx”…') && said.at(-1) === '', said.join(', '));
  assertQuiet(heard);
});

for (const how of ['throws', 'fails']) {
  test(`a track is read by the page itself where a worker ${how}`, async () => {
    const context = await browser.newContext();
    const page = await context.newPage();
    await page.addInitScript((how) => {
      globalThis.Worker = class {
        constructor() {
          if (how === 'throws') throw new DOMException('refused', 'SecurityError');
          setTimeout(() => this.onerror(new Event('error')));
        }
        postMessage() {}
        terminate() {}
      };
    }, how);
    await page.goto(String(SINGLE_FILE));
    await page.waitForSelector('html[data-engine=ready]', { state: 'attached' });
    await drop(page, ['own.gpx', track(60)]);
    await untilRidden(page, 'own');
  });
}

test('a kept course without a name is called as its file is', async () => {
  const { page } = await openPage(browser, SINGLE_FILE);
  await drop(page, ['nameless.json', JSON.stringify({ remountCourse: 1, name: ' ', stretches: ['800; 0; tarmac'] })]);
  await untilRidden(page, 'nameless');
});
