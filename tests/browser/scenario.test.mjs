// Bench, box of parts, rack and courses as one file: saved, held against its schema, opened by chooser and by a drop.

import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { test } from 'node:test';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { browser, downloaded, frame, openPage, PHONE, SITE, share, site, text, type } from './harness.mjs';

const schema = JSON.parse(readFileSync(new URL('scenario.schema.json', SITE), 'utf8'));
const isValid = new Ajv2020({ allowUnionTypes: true }).compile(schema);

share();

const fileOf = (name, contents) => ({ name, mimeType: 'application/json', buffer: Buffer.from(contents) });
const link = (page) => page.evaluate(() => document.location.hash);
const stored = (page) =>
  page.evaluate(() =>
    Object.entries(localStorage)
      .filter(([key]) => /bike:|course:/.test(key))
      .sort(),
  );

async function choose(page, contents, name = 'all.json') {
  await page.setInputFiles('#rack-file', fileOf(name, typeof contents === 'string' ? contents : JSON.stringify(contents)));
  await page
    .locator('#notices')
    .filter({ hasText: `“${name}”` })
    .waitFor();
}

async function drop(page, contents, name) {
  await page.evaluate(
    ([name, contents]) => {
      const dataTransfer = new DataTransfer();
      dataTransfer.items.add(new File([contents], name));
      document.querySelector('footer').dispatchEvent(new DragEvent('drop', { dataTransfer, bubbles: true, cancelable: true }));
    },
    [name, contents],
  );
  await page
    .locator('#notices')
    .filter({ hasText: `“${name}”` })
    .waitFor();
}

/** The bench's link once it is in the address. */
async function settledLink(page, part) {
  await page.waitForFunction((part) => document.location.hash.includes(part), part);
  return link(page);
}

test('all is saved as a file that keeps to its schema, and opened elsewhere by chooser and drop, with undo', async () => {
  const first = await openPage(browser, site.address, { acceptDownloads: true });
  const { page } = first;
  await type(page, 'saddle-height', '72,9 cm');
  await type(page, 'box-parts', 'cassette 11-34');
  const course = { remountCourse: 1, name: 'Hill', smoothingM: 40, stretches: ['120; 1.5; firm grass', '30; -6; mud'] };
  await page.setInputFiles('#lap-file', fileOf('hill.json', JSON.stringify(course)));
  await page.waitForFunction(() => document.querySelector('#course').value === 'own');
  await page.click('#keep');
  await page.click('#rack > summary');
  await page.fill('#rack-name-a', 'Road');
  await page.locator('#rack').getByRole('button', { name: 'Keep A on the rack' }).click();
  await type(page, 'rings-a', '46/30');
  const saved = await settledLink(page, '46/30');
  const [download] = await Promise.all([page.waitForEvent('download'), page.click('#save-all')]);
  const contents = await downloaded(download);
  const all = JSON.parse(contents);

  assert.ok(isValid(all), JSON.stringify(isValid.errors));
  assert.deepEqual([all.remount, all.version, all.bikes.length, all.courses.length], ['scenario', 1, 1, 1]);
  assert.deepEqual([all.bench.mine['saddle-height'], all.bench.mine['box-parts']], ['72,9 cm', 'cassette 11-34']);
  assert.equal(all.bench['not-mine']['rings-b'], '44/32');
  assert.deepEqual(all.ridden.stretches.length, 2);
  for (const wrong of [
    { ...all, version: 2 },
    { ...all, bench: { mine: { saddle: '1' } } },
    { ...all, bikes: [{ name: 'x', parts: { rings: [] } }] },
    { ...all, courses: [{ name: 'x', stretches: [1] }] },
    { remount: 'scenario', version: 1 },
  ]) {
    assert.ok(!isValid(wrong), JSON.stringify(wrong).slice(0, 80));
  }

  const second = await openPage(browser, `${site.address}#r=3&rb=38`, { viewport: PHONE });
  await choose(second.page, contents);
  assert.match(
    await text(second.page, '#notices'),
    /The bench is that of “all\.json”\. Undo brings back yours\. 1 course is added/,
  );
  assert.equal(await settledLink(second.page, '46/30'), saved);
  assert.deepEqual(await stored(second.page), await stored(page));
  assert.match(await text(second.page, '#rack-says'), /adds 1 bike: Road/);
  assert.ok((await second.page.locator('#kept option').allTextContents()).includes('Hill'));
  assert.equal(await second.page.evaluate(() => document.documentElement.scrollWidth), PHONE.width);
  await second.page.click('[data-act=undo]');
  assert.equal(await settledLink(second.page, 'rb=38'), '#r=3&rb=38');
  await drop(second.page, contents, 'again.json');
  assert.equal(await settledLink(second.page, '46/30'), saved);
  assert.match(await text(second.page, '#rack-says'), /adds no bike\. Kept just so already: Road/);
  assert.deepEqual(await stored(second.page), await stored(page));
  assert.deepEqual([first.heard.complaints, second.heard.complaints], [[], []]);
});

test('a file of a later version or of a hostile kind is refused in words, and nothing is lost', async () => {
  const { page, heard } = await openPage(browser, `${site.address}#r=3&ra=46/30`);
  const sound = { remount: 'scenario', version: 1, bench: { mine: { 'rings-a': '40' } }, bikes: [], courses: [] };
  const refused = [
    [{ ...sound, version: 2 }, 'of a version that this page does not know'],
    [{ ...sound, version: '1' }, 'of a version that this page does not know'],
    [{ ...sound, version: undefined }, 'of a version that this page does not know'],
    [{ ...sound, bench: [] }, 'its bench, bikes or courses are not'],
    [{ ...sound, bench: null }, 'its bench, bikes or courses are not'],
    [{ ...sound, bikes: 'many' }, 'its bench, bikes or courses are not'],
    [{ ...sound, bikes: null }, 'its bench, bikes or courses are not'],
    [{ ...sound, courses: { length: 3 } }, 'its bench, bikes or courses are not'],
    [{ ...sound, courses: [null] }, 'its bench, bikes or courses are not'],
    [{ ...sound, courses: [{ name: {}, stretches: [] }] }, 'its bench, bikes or courses are not'],
    [{ ...sound, courses: [{ name: 'x', stretches: [{ toString: 1 }] }] }, 'its bench, bikes or courses are not'],
  ];
  for (const [number, [contents, why]] of refused.entries()) {
    await choose(page, contents, `refused-${number}.json`);
    const said = await text(page, '#notices');
    assert.ok(said.includes(why) && said.includes('Everything stays as it is'), `${number}: ${said}`);
    assert.deepEqual([await link(page), await stored(page)], ['#r=3&ra=46/30', []]);
  }

  const odd = `{"remount": "scenario", "version": 1, "bench": {"mine": {"__proto__": "x", "constructor": "y", "rings-a": "<b>40", "tyre": [1], "cassette-b": "${'1'.repeat(5000)}"},
    "not-mine": ${'{"a":'.repeat(20_000)}1${'}'.repeat(20_000)}}, "ridden": {"name": "x"}, "__proto__": {"polluted": 1}}`;
  await choose(page, odd, 'odd.json');
  const said = await text(page, '#notices');
  for (const named of ['__proto__', 'constructor', 'ridden', 'tyre', 'Far too long and cut: cassette-b']) {
    assert.ok(said.includes(named), `${named}: ${said}`);
  }
  assert.equal(await page.evaluate(() => Object.prototype.polluted), undefined);
  await page.click('[data-act=undo]');
  assert.equal(await settledLink(page, 'ra=46/30'), '#r=3&ra=46/30');

  const many = Object.fromEntries(Array.from({ length: 200_000 }, (_, number) => [`n${number}`, '1']));
  await choose(page, { ...sound, bench: { mine: { ...many, 'rings-a': '40' } } }, 'many.json');
  assert.match(await text(page, '#notices'), /199,?994 more|\d+ more/);
  assert.equal(await page.inputValue('#rings-a'), '40');
  const courses = Array.from({ length: 102 }, (_, number) => ({ name: `C${number}`, stretches: ['120; 0; mud'] }));
  await choose(page, { ...sound, courses }, 'courses.json');
  assert.match(await text(page, '#notices'), /100 courses are added.*\s*2 courses are not kept/);
  await frame(page);
  assert.deepEqual(heard.complaints, []);
});
