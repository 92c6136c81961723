// What is taken along: tables, the link and its code, the short message, the sheet on one page of any paper.

import assert from 'node:assert/strict';
import { spawnSync } from 'node:child_process';
import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { test } from 'node:test';
import { fileURLToPath, pathToFileURL } from 'node:url';
import readCode from 'jsqr';
import { assertQuiet, browser, downloaded, frame, openPage, PHONE, SINGLE_FILE, share, site, type } from './harness.mjs';

share();

const BASE = 'https://example.org/remount/';

/** The clipboard of the machine is common to all tests: this page's is its own. */
async function withClipboard(page) {
  await page.evaluate(() => {
    const writeText = async (text) => {
      window.copied = text;
    };
    Object.defineProperty(navigator, 'clipboard', { configurable: true, value: { writeText } });
  });
  return () => page.evaluate(() => window.copied);
}

/** Reads RFC 4180 and nothing laxer. */
function readCsv(text) {
  const rows = [[]];
  const field = /(?:"((?:[^"]|"")*)"|([^",\r\n]*))(,|\r\n)/y;
  while (field.lastIndex < text.length) {
    const at = field.lastIndex;
    const found = field.exec(text);
    assert.ok(found, `not RFC 4180: ${JSON.stringify(text.slice(at, at + 60))}`);
    rows.at(-1).push(found[1]?.replaceAll('""', '"') ?? found[2]);
    if (found[3] === '\r\n') rows.push([]);
  }
  assert.deepEqual(rows.pop(), [], 'the last line has no end');
  return rows;
}

const flat = (text) => text.replace(/[\s\u00a0\u2009\u202f]+/g, ' ').trim();
const unitBehind = (head) => /\(([^()]+)\)$/.exec(head)?.[1];

/** Whether a value of a file says what the cell says, with the unit of its column or row put back. */
function says(value, cell, heads) {
  const number = cell.replaceAll(/−(?=\d)/g, '-').replace(/^\+/, '');
  const units = heads.map(unitBehind).filter(Boolean);
  return [`${value}`.trim(), ...units.flatMap((unit) => [`${value} ${unit}`, value + unit])].some((said) =>
    [number, cell].includes(said),
  );
}

/** Runs in the page: of every table its cells, and the file that its button saves. */
async function saveAll() {
  const blobs = [];
  URL.createObjectURL = (blob) => `#${blobs.push(blob)}`;
  HTMLAnchorElement.prototype.click = function () {
    blobs.at(-1).fileName = this.download;
  };
  const found = [];
  for (const scroll of document.querySelectorAll('.scroll:has(table)')) {
    const cellOf = (cell) => {
      const copy = cell.cloneNode(true);
      if (cell.closest('tbody')) for (const button of copy.querySelectorAll('button')) button.remove();
      return copy.textContent;
    };
    const cells = [...scroll.querySelectorAll('tr')].map((row) => [...row.cells].map(cellOf));
    scroll.querySelector('[data-table=csv]').click();
    found.push({ title: scroll.ariaLabel, cells, name: blobs.at(-1).fileName, csv: await blobs.at(-1).text() });
  }
  return found;
}

test('every table is saved as CSV that says what its cells say, figures as numbers', async () => {
  const { page, heard } = await openPage(browser, SINGLE_FILE, { rides: true });
  await page.waitForFunction(() => /likely/.test(document.getElementById('lap-answer').textContent), null, { timeout: 60_000 });
  const tables = await page.evaluate(saveAll);
  assert.ok(tables.length >= 35, `${tables.length} tables`);
  let numbers = 0;
  for (const { title, cells, csv, name } of tables) {
    assert.match(name, /^remount-[\p{L}\p{N}-]+\.csv$/u, title);
    const rows = readCsv(csv);
    assert.deepEqual(
      rows.map((row) => row.length),
      cells.map((row) => row.length),
      title,
    );
    rows.forEach((row, y) => {
      row.forEach((value, x) => {
        const isHead = y === 0 || x === 0;
        const bare = isHead ? value.replace(/ ?\([^()]*\)$/, '') : value;
        const heads = isHead ? [value, rows[0][x]] : [rows[0][x], row[0]];
        const told = `${title} [${y}, ${x}]: ${JSON.stringify(value)} for ${JSON.stringify(flat(cells[y][x]))} under ${heads}`;
        assert.ok(
          [value, bare].some((said) => says(said, flat(cells[y][x]), heads)),
          told,
        );
        assert.doesNotMatch(value, /^[=+@]|[\u00a0\u2009\u202f]|^−|\d−\d/, told);
        if (/^-?\d+(\.\d+)?$/.test(value)) numbers += 1;
      });
    });
  }
  assert.ok(numbers > 700, `${numbers} numbers`);
  assertQuiet(heard);
});

test('a table is a file with a name that says what it is, and a text for a spreadsheet', async () => {
  const { page } = await openPage(browser, SINGLE_FILE, { hasTouch: true });
  const copied = await withClipboard(page);
  const table = page.locator('#rings-summary .scroll');
  await table.locator('summary').tap();
  const waiting = page.waitForEvent('download');
  await table.locator('[data-table=csv]').tap();
  const download = await waiting;
  assert.equal(download.suggestedFilename(), 'remount-a-and-b-side-by-side.csv');
  const [head, lowest, development] = readCsv(await downloaded(download));
  assert.deepEqual(head, ['', 'A', 'B', 'B against A (%)']);
  assert.deepEqual(lowest, ['Lowest gear', '34×30', '32×32', '']);
  assert.deepEqual(development, ['Its development (m)', '2.450', '2.161', '-11.8']);
  await table.locator('[data-table=tsv]').focus();
  await page.keyboard.press('Enter');
  await frame(page);
  const lines = (await copied()).split('\n').map((line) => line.split('\t'));
  assert.deepEqual(lines.slice(0, 3), [head, lowest, development]);
  assert.equal(await table.locator('[data-table=tsv]').textContent(), 'On your clipboard');
});

test('a table is printed alone', async () => {
  const { page } = await openPage(browser, SINGLE_FILE);
  await page.evaluate(() => (window.print = () => {}));
  await page.locator('#rings-summary summary').press('Enter');
  await page.locator('#rings-summary [data-table=print]').click();
  await page.emulateMedia({ media: 'print' });
  const shown = await page.evaluate(() => [...document.querySelectorAll('table')].filter((one) => one.offsetHeight > 0).length);
  assert.equal(shown, 1);
  assert.equal(await page.locator('#alone caption').isVisible(), true);
  assert.equal(await page.locator('#sheet-page').isVisible(), false);
  await page.evaluate(() => dispatchEvent(new Event('afterprint')));
  assert.equal(await page.locator('#sheet-page').isVisible(), true);
});

/** The text of the code that is shown, read by another program from a picture of the screen. */
async function readShown(page, selector) {
  const png = (await page.locator(selector).screenshot()).toString('base64');
  const { width, height, pixels } = await page.evaluate(async (png) => {
    const image = await createImageBitmap(new Blob([Uint8Array.from(atob(png), (letter) => letter.charCodeAt(0))]));
    const drawing = new OffscreenCanvas(image.width, image.height).getContext('2d');
    drawing.drawImage(image, 0, 0);
    const { data, width, height } = drawing.getImageData(0, 0, image.width, image.height);
    return { width, height, pixels: [...data.filter((_, at) => at % 4 === 0)] };
  }, png);
  const rgba = Uint8ClampedArray.from({ length: pixels.length * 4 }, (_, at) => (at % 4 === 3 ? 255 : pixels[at >> 2]));
  return readCode(rgba, width, height);
}

/** Links hold a course as it is sketched, a stretch a line. */
const LONG = `#r=3&co=sketch&sk=${encodeURIComponent(Array.from({ length: 100 }, (_, at) => `${120 + at}; ${at % 9}.5; firm grass`).join('\n'))}`;

for (const [name, hash, colorScheme] of [
  ['the demo', '', 'dark'],
  ['a long', LONG, 'light'],
]) {
  test(`the code of ${name} link leads to the very bench`, async () => {
    const { page, heard } = await openPage(browser, site.address + hash, {
      colorScheme,
      deviceScaleFactor: 2,
      viewport: { ...PHONE, width: 700 },
    });
    const copied = await withClipboard(page);
    await page.click('[data-act=share]');
    await page.click('#code summary');
    await frame(page);
    const read = await readShown(page, '#link-code svg');
    assert.equal(read?.data, await copied());
    assert.ok(read.data.startsWith(site.address), read.data);
    await type(page, 'rings-b', '42');
    const again = await readShown(page, '#link-code svg');
    assert.match(again.data, /rb=42/);
    assert.deepEqual(heard.complaints, []);
  });
}

test('the sheet carries the code on paper, or says that the link is too long for it', async () => {
  const { page } = await openPage(browser, site.address, { deviceScaleFactor: 3, viewport: PHONE });
  await page.emulateMedia({ media: 'print' });
  await page.evaluate(() => dispatchEvent(new Event('beforeprint')));
  const read = await readShown(page, '#sheet-page .code svg');
  assert.ok(read?.data.startsWith(`${site.address}#r=3`), read?.data);
  await page.emulateMedia({ media: 'screen' });
  await page.evaluate((hash) => {
    location.hash = hash;
  }, LONG);
  await frame(page);
  await page.evaluate(() => dispatchEvent(new Event('beforeprint')));
  const said = await page.textContent('#sheet-page .code');
  assert.match(said, /^The link has \d+ letters, too many for a QR code here \(997\)/);
});

test('the system sends the link where it can, and what it refuses is copied', async () => {
  const { page } = await openPage(browser, SINGLE_FILE);
  assert.equal(await page.textContent('[data-act=share]'), 'Copy the link');
  const context = await browser.newContext();
  const phone = await context.newPage();
  await phone.addInitScript(() => {
    navigator.share = async (what) => {
      window.sent = what;
      if (window.refuse) throw new DOMException('', window.refuse);
    };
  });
  await phone.goto(site.address);
  await phone.waitForSelector('html[data-engine=ready]');
  const copied = await withClipboard(phone);
  await phone.click('text=Send the link');
  assert.match((await phone.evaluate(() => window.sent)).url, /#r=3/);
  for (const [refuse, isCopied] of [
    ['AbortError', false],
    ['NotAllowedError', true],
  ]) {
    await phone.evaluate((refuse) => (window.refuse = refuse), refuse);
    await phone.click('[data-act=share]');
    await frame(phone);
    assert.equal(Boolean(await copied()), isCopied, refuse);
  }
});

test('a file names the hosted page that it was built for, or says what to do', async () => {
  const { page } = await openPage(browser, SINGLE_FILE);
  const copied = await withClipboard(page);
  await page.click('[data-act=share]');
  await page.waitForFunction(() =>
    /this page is a file: .* send the file too/.test(document.getElementById('shared').textContent),
  );
  assert.match(await copied(), /^file:.*#r=3/);
  assert.equal(await page.locator('#code').isVisible(), false);
  const folder = await mkdtemp(join(tmpdir(), 'remount-'));
  const file = join(folder, 'remount.html');
  const built = (await readFile(SINGLE_FILE, 'utf8')).replace(
    '<link rel="icon"',
    `<link rel="canonical" href="${BASE}">\n<link rel="icon"`,
  );
  await writeFile(file, built);
  const { page: hosted, heard } = await openPage(browser, pathToFileURL(file));
  const sent = await withClipboard(hosted);
  await hosted.click('[data-act=share]');
  await frame(hosted);
  assert.ok((await sent()).startsWith(`${BASE}#r=3`), await sent());
  assert.match(await hosted.textContent('#shared'), /on your clipboard\.$/);
  assert.ok((await hosted.textContent('#sheet-page .link')).includes(`${BASE}#r=3`));
  assert.equal(await hosted.locator('#sheet-page .code svg').count(), 1);
  assertQuiet(heard);
  await rm(folder, { recursive: true });
});

test('an address that is none is refused before anything is built', () => {
  const cwd = fileURLToPath(new URL('../../', import.meta.url));
  const { status, stderr } = spawnSync('./build.sh', [], { cwd, env: { ...process.env, REMOUNT_URL: 'javascript:1' } });
  assert.equal(status, 1);
  assert.match(String(stderr), /REMOUNT_URL is 'javascript:1'/);
});

const FULL =
  '#r=3&ra=52/42/30&ca=9-10-11-13-15-17-19-22-25-29-34-40-48-60&rb=50/40/28&cb=10-11-12-13-15-17-19-22-25-29-34-40-46-52&tk=clincher&ho=hookless&bd=-60&re=470&li=6.1&rr=80&xr=70&rp=125&xp=115&fc=570&rim=30&co=meadow&ty=33-622&tc=33&ls=34&ss=11&rd=16&bm=62&bi=8.9&pw=220&gr=wet-grass&sl=9&le=60&tg=soft&sh=728&sb=56&tb=545&sa=73.5&rc=172.5&rs=15&xa=73&xc=172.5&xs=21&st=578&ha=72&hs=12';

test('a short message says bikes, decisions and what is known', async () => {
  for (const hash of ['', FULL, '#r=3&ra=50/34&bm=61&tk=tubular']) {
    const { page } = await openPage(browser, site.address + hash);
    const copied = await withClipboard(page);
    await page.click('[data-act=copy-short]');
    await frame(page);
    const message = await copied();
    assert.ok(message.length < 900 && message.length > 200, `${message.length}: ${message}`);
    assert.equal(/EXAMPLE/.test(message), hash === '', message);
    assert.match(message, /^Workshop sheet, Set-ups A and B\n/);
    // What rests on the demo's cassette is left open.
    assert.match(message, hash.includes('bm=61') ? /what the cage forbids is not known/ : /\nCage: /);
    if (hash !== FULL) assert.ok(message.includes(`${site.address}#r=3`), message);
    await page.context().close();
  }
});

/** What the margins leave of a paper, in CSS pixels. */
const PAPERS = [
  { format: 'A4', landscape: false, width: 718, height: 1054 },
  { format: 'A4', landscape: true, width: 1047, height: 725 },
  { format: 'Letter', landscape: false, width: 740, height: 988 },
  { format: 'Letter', landscape: true, width: 980, height: 748 },
];

/** Runs in the page: the smallest type of the sheet in points, and what of it is torn in two. */
function onPaper() {
  const sheet = document.getElementById('sheet-page');
  const texts = [...sheet.querySelectorAll('*')].filter(
    (one) =>
      one.checkVisibility() && !one.closest('svg') && [...one.childNodes].some((node) => node.nodeType === 3 && node.data.trim()),
  );
  const points = (one) => Number.parseFloat(getComputedStyle(one).fontSize) * 0.75;
  const smallest = Math.min(...texts.map(points));
  const torn = [...sheet.querySelectorAll('.block, .concern')].filter((one) => one.getClientRects().length > 1);
  const headless = [...sheet.querySelectorAll('.block, .concern')].filter(
    (one) => one.checkVisibility() && one.children[0].getClientRects().length !== 1,
  );
  const ticked = sheet.querySelectorAll('.ticked li');
  return {
    smallest,
    torn: torn.length + headless.length,
    rows: texts.filter((one) => one.matches('dd')).length,
    checks: [...ticked].filter((one) => one.checkVisibility()).length,
    allChecks: ticked.length,
    spares: sheet.querySelector('.spares').checkVisibility(),
  };
}

for (const [name, hash] of [
  ['the demo', ''],
  ['the fullest bike', FULL],
]) {
  test(`${name} prints on one page of every paper in type of 8.5 pt, blocks whole, and nothing but the sheet`, async () => {
    const { page } = await openPage(browser, site.address + hash, { colorScheme: 'dark' });
    for (const { format, landscape, width, height } of PAPERS) {
      const paper = `${format}${landscape ? ' landscape' : ''}`;
      await page.emulateMedia({ media: null });
      const pdf = (await page.pdf({ format, landscape })).toString('latin1');
      assert.equal(pdf.match(/\/Type\s*\/Page\b/g).length, 1, paper);
      await page.emulateMedia({ media: 'print' });
      await page.setViewportSize({ width, height });
      const found = await page.evaluate(onPaper);
      console.log(`${name}, ${paper}: ${JSON.stringify(found)}`);
      assert.ok(found.smallest >= 8.49, `${paper}: ${found.smallest} pt`);
      assert.equal(found.torn, 0, paper);
      assert.equal(found.checks, found.allChecks, `${paper}: a check was left out`);
      assert.ok(found.rows >= 8, `${paper}: ${found.rows} rows`);
      const shown = await page.$$eval('main > section', (all) => all.filter((one) => one.offsetHeight > 0).map(({ id }) => id));
      assert.deepEqual(shown, ['sheet']);
    }
    assert.equal(await page.evaluate(() => getComputedStyle(document.getElementById('sheet-page')).color), 'rgb(0, 0, 0)');
  });
}
