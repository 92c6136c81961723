// Pictures taken along: saved as PNG and SVG and read back, copied, with their title, bikes and scenario; the whole board as one.

import assert from 'node:assert/strict';
import { buffer } from 'node:stream/consumers';
import { test } from 'node:test';
import { inflateSync } from 'node:zlib';
import { assertAxe } from './accessible.mjs';
import { browser, DESK, frame, launchBrowser, openPage, PHONE, SINGLE_FILE, share, site, text } from './harness.mjs';

share();

const LADDER = '[data-save=ladder]';
const BOARD = '[data-save=""]';

/** Takes along what a button is for, and reads the file. */
async function saved(page, button, how) {
  await page.click(button);
  const [download] = await Promise.all([page.waitForEvent('download'), page.click(`[data-as=${how}]`)]);
  assert.equal(await page.isVisible('#take'), false, 'the menu closes');
  return { name: download.suggestedFilename(), file: await buffer(await download.createReadStream()) };
}

/** Width, height, pixels to the metre and the number of different bytes in a PNG. */
function read(png) {
  assert.equal(png.toString('latin1', 1, 4), 'PNG');
  const data = [];
  let density;
  for (let at = 8; at < png.length; at += 12 + png.readUInt32BE(at)) {
    const body = png.subarray(at + 8, at + 8 + png.readUInt32BE(at));
    const kind = png.toString('latin1', at + 4, at + 8);
    if (kind === 'IDAT') data.push(body);
    if (kind === 'pHYs') density = body.readUInt32BE(0);
  }
  const colours = new Set(inflateSync(Buffer.concat(data)));
  return { width: png.readUInt32BE(16), height: png.readUInt32BE(20), density, colours: colours.size };
}

test('a picture is saved as PNG for a screen and for print', async () => {
  const { page } = await openPage(browser, SINGLE_FILE, { folded: true });
  const screen = await saved(page, LADDER, 'png');
  assert.match(screen.name, /^remount-[a-z-]+-50-34-11-30-against-44-32-11-32\.png$/);
  const small = read(screen.file);
  assert.equal(small.width, 1286);
  assert.ok(small.height > 800 && small.colours > 20, JSON.stringify(small));
  const paper = await saved(page, LADDER, 'print');
  assert.match(paper.name, /-170mm\.png$/);
  const large = read(paper.file);
  assert.ok(Math.abs(large.width / 11811 - 0.17) < 0.0005, `${large.width} pixels`);
  assert.equal(large.density, 11811);
  assert.ok(Math.abs(large.height / large.width - small.height / small.width) < 0.002);
  // Another program reads the print size too: its own block does not break the file.
  const size = await page.evaluate(
    async (bytes) => {
      const { width, height } = await createImageBitmap(new Blob([Uint8Array.from(bytes)], { type: 'image/png' }));
      return [width, height];
    },
    [...paper.file],
  );
  assert.deepEqual(size, [large.width, large.height]);
});

test('an SVG has title, bikes, scenario and address written in it, and none of a file', async () => {
  const { page } = await openPage(browser, `${site.address}#r=3&ra=48/33`, { folded: true });
  const { name, file } = await saved(page, LADDER, 'svg');
  assert.match(name, /^remount-.*48-33-11-30.*\.svg$/);
  const svg = file.toString();
  const title = await text(page, '[data-picture=ladder] figcaption > b');
  const told = await page.evaluate((svg) => {
    const document = new DOMParser().parseFromString(svg, 'image/svg+xml');
    const part = (selector) => [...document.querySelectorAll(selector)].map((element) => element.textContent.trim());
    return { title: part('title'), desc: part('desc'), texts: part('text'), faults: part('parsererror') };
  }, svg);
  assert.deepEqual([told.title, told.faults], [[title], []]);
  const written = told.texts.join(' ').replaceAll('\u00a0', ' ');
  assert.ok(written.startsWith(title), written);
  assert.match(written, /A: 48\/33, 11-30 11s, 33-622.* B: 44\/32, 11-32 11s, 33-622/);
  assert.match(written, /Rider \d+ kg, \d+ W · bank [\d.]+ %, \d+ m, .* · course Autumn meadow, \d\.\d\d km/);
  assert.ok(written.includes(`${site.address}#r=`), written);
  assert.match(told.desc[0], /ladder|gear/i);
  const disk = await openPage(browser, SINGLE_FILE, { folded: true });
  assert.doesNotMatch((await saved(disk.page, LADDER, 'svg')).file.toString(), /file:/);
});

test('the board is one picture with the words of every row', async () => {
  const { page } = await openPage(browser, SINGLE_FILE, { folded: true });
  await page.fill('#capacity', '29');
  await frame(page);
  const { name, file } = await saved(page, BOARD, 'svg');
  assert.match(name, /^remount-every-decision-for-a-and-b-/);
  const told = await page.evaluate((svg) => {
    const document = new DOMParser().parseFromString(svg, 'image/svg+xml');
    const flat = (element) => element.textContent.replaceAll('\u00a0', ' ').trim();
    const texts = [...document.querySelectorAll('text')].map(flat).join(' ').split(/\s+/);
    const parts = '.board tbody th, .verdict-line > b, .detail, .between, #board-says';
    const words = [...globalThis.document.querySelectorAll(`.board tbody :is(${parts}), #board-says`)];
    const all = words.map(flat).join(' ').split(/\s+/).filter(Boolean);
    return {
      rows: globalThis.document.querySelectorAll('.board tbody tr').length,
      count: all.length,
      lacking: all.filter((word) => !texts.includes(word)),
    };
  }, file.toString());
  assert.ok(told.rows > 4 && told.count > 40, JSON.stringify(told));
  assert.deepEqual(told.lacking, []);
  assert.match(file.toString(), /✗/);
  const png = read((await saved(page, BOARD, 'png')).file);
  assert.ok(png.width === 1286 && png.height > 600 && png.colours > 20, JSON.stringify(png));
});

test('a picture is copied and read back from the clipboard', async () => {
  // A browser of its own has a clipboard of its own.
  const alone = await launchBrowser(['--no-default-browser-check']);
  const permissions = ['clipboard-read', 'clipboard-write'];
  const { page } = await openPage(alone, site.address, { folded: true, permissions });
  await page.bringToFront();
  await page.click(LADDER);
  await page.click('[data-as=copy]');
  await page.waitForFunction(() => document.querySelector('#taken').textContent);
  assert.match(await text(page, '#taken'), /on your clipboard/);
  const [width, colours] = await page.evaluate(async () => {
    const [item] = await navigator.clipboard.read();
    const picture = await createImageBitmap(await item.getType('image/png'));
    const pen = new OffscreenCanvas(picture.width, picture.height).getContext('2d');
    pen.drawImage(picture, 0, 0);
    return [picture.width, new Set(pen.getImageData(0, 0, picture.width, picture.height).data).size];
  });
  await alone.close();
  assert.ok(width === 1286 && colours > 20, `${width} ${colours}`);
});

test('where nothing is copied the menu says so', async () => {
  const { page } = await openPage(browser, SINGLE_FILE, { folded: true });
  await page.evaluate(() => Object.assign(navigator.clipboard, { write: () => Promise.reject(new Error('refused')) }));
  await page.click(LADDER);
  await page.click('[data-as=copy]');
  await page.waitForFunction(() => document.querySelector('#taken').textContent);
  assert.match(await text(page, '#taken'), /save the picture instead/);
  await page.keyboard.press('Escape');
  await page.evaluate(() => Reflect.deleteProperty(globalThis, 'ClipboardItem'));
  await page.click(LADDER);
  assert.equal(await page.isVisible('[data-as=copy]'), false);
  assert.match(await text(page, '#taken'), /copies no pictures/);
});

test('the menu is reached, walked and left by keyboard', async () => {
  const { page } = await openPage(browser, SINGLE_FILE, { folded: true, viewport: DESK });
  const focused = () => page.evaluate(() => document.activeElement.dataset);
  await page.focus('[data-act=copy]');
  // Undo has nothing to take back and is passed over.
  for (const _ of Array(4)) await page.keyboard.press('ArrowRight');
  assert.deepEqual(await focused(), { save: '' });
  await page.keyboard.press('Enter');
  await page.waitForSelector('#take:popover-open');
  assert.equal(await text(page, '#take-what'), 'Every decision for A and B');
  await page.waitForFunction(() => document.activeElement.dataset.as === 'png');
  await page.keyboard.press('ArrowDown');
  await page.keyboard.press('ArrowDown');
  assert.deepEqual(await focused(), { as: 'svg' });
  await page.keyboard.press('Escape');
  assert.equal(await page.isVisible('#take'), false);
  assert.deepEqual(await focused(), { save: '' });
  await page.keyboard.press('Enter');
  await page.waitForFunction(() => document.activeElement.dataset.as === 'png');
  const [download] = await Promise.all([page.waitForEvent('download'), page.keyboard.press('Enter')]);
  assert.match(download.suggestedFilename(), /^remount-every-decision/);
  assert.deepEqual(await focused(), { save: '' });
});

test('a finger finds the menu whole in the window, and axe finds nothing in it', async () => {
  for (const colorScheme of ['light', 'dark']) {
    const options = { folded: true, viewport: PHONE, hasTouch: true, isMobile: true, colorScheme };
    const { page } = await openPage(browser, SINGLE_FILE, options);
    for (const button of [LADDER, BOARD]) {
      await page.locator(button).scrollIntoViewIfNeeded();
      await page.tap(button);
      await page.waitForSelector('#take:popover-open');
      await page.waitForFunction(() => document.activeElement.dataset.as === 'png');
      const boxes = await page.$$eval('#take button:not([hidden])', (buttons) =>
        buttons.map((button) => {
          const { left, right, top, bottom, height } = button.getBoundingClientRect();
          return { height, inside: left >= 0 && right <= innerWidth && top >= 0 && bottom <= innerHeight };
        }),
      );
      assert.ok(boxes.length >= 3 && boxes.every(({ height, inside }) => height >= 44 && inside), JSON.stringify(boxes));
      await assertAxe(page, '#take', `${button} ${colorScheme}`);
      const [download] = await Promise.all([page.waitForEvent('download'), page.tap('[data-as=svg]')]);
      assert.match(download.suggestedFilename(), /\.svg$/);
    }
  }
});
