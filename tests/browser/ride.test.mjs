// "Ride or run?" from end to end, as a rider uses it.

import assert from 'node:assert/strict';
import { after, before, test } from 'node:test';
import { addressWith, assertQuiet, launchBrowser, openPage, PHONE, SINGLE_FILE, text, type } from './harness.mjs';

let browser;

before(async () => {
  browser = await launchBrowser();
});

after(() => browser?.close());

const gradientOfA = async (page) => Number((await text(page, '#ride-answer')).match(/riding ends from about (\d+) % up/)[1]);

test('a rider changes ground and power and reads the new crossover', async () => {
  const { page, heard } = await openPage(browser, SINGLE_FILE);
  const start = await gradientOfA(page);
  await type(page, 'ground', 'firm-grass');
  const onGrass = await gradientOfA(page);
  assert.ok(onGrass > start, `${onGrass} after ${start}`);
  await type(page, 'power', '260');
  assert.ok((await gradientOfA(page)) > onGrass);
  assert.match(
    await text(page, '#ride-answer'),
    /^On firm grass with A no gear is low enough below 8\.1 km\/h, with B below 7\.1 km\/h\. Running itself (only )?wins below/,
  );
  assert.match((await addressWith(page, 'pw=260')).hash, /&gr=firm-grass(&|$)/);
  assertQuiet(heard);
});

test('a link brings the whole question back', async () => {
  const link = `${SINGLE_FILE}#remount=1&power=260&ground=mud&slope=7&climb-length=35&efficiency=0.22`;
  const { page } = await openPage(browser, link);
  assert.match(await text(page, '#ride-answer'), /^On mud with A/);
  assert.match(await text(page, '#ride-answer'), /This climb, 7\.0 % for 35 m/);
  assert.equal(await page.inputValue('#efficiency'), '0.22');
});

test('on slick ground grip bites first, whatever the gear', async () => {
  const { page } = await openPage(browser, SINGLE_FILE);
  await page.getByText('Finer settings: your body').click();
  await type(page, 'friction', '0.2');
  for (const side of ['a', 'b']) {
    await type(page, `rings-${side}`, '30');
    await type(page, `cassette-${side}`, '11-13-15-17-20-23-27-32-38-45-51');
  }
  const answer = await text(page, '#ride-answer');
  assert.match(
    answer,
    /^On your own ground with A and B alike no gear is low enough below [\s\S]* riding ends from about \d+ % up[^:]*: the rear wheel slips, whatever the gear\./,
  );
  assert.match(answer, /Between A and B that makes no difference/);
  await type(page, 'slope', '15');
  assert.match(await text(page, '#ride-answer'), /run: \d+ s, because (no gear is low enough and )?the rear wheel slips/);
  await type(page, 'grip-limit', 'off');
  assert.doesNotMatch(await text(page, '#ride-answer'), /slips, whatever/);
});

test('the band is in the text a screen reader gets', async () => {
  const { page } = await openPage(browser, SINGLE_FILE);
  const label = (name) => page.getAttribute(`[data-picture=${name}] canvas`, 'aria-label');
  assert.match(
    await label('slopes'),
    /running and riding are too close to call from about \d+\s%\. This climb, 9\.0\s%: A and B: force it\.$/,
  );
  assert.match(
    await label('climb'),
    /A does not ride it, B rides it in \d+\ss, running \d+\ss, likely \d+ to \d+\ss\. .*: A and B: force it\.$/,
  );
  assert.match(await label('verdicts'), /wet, soft grass, A: ride from 0\s% to/);
  assert.match(
    await text(page, '#ride-answer'),
    /with A riding ends from about \d+ % up \(likely \d+ to \d+\)[\s\S]*Likely means about 3 in 4 cases\./,
  );
  await page.locator('#ride-speeds summary').first().click();
  assert.match(await text(page, '#ride-speeds'), /10\.0 %[\s\S]*0\.78 – 0\.89 – 1\.01/);
});

test('downhill and walls are refused politely and nothing typed is lost', async () => {
  // A lap on a reserve would bring the climb its price meanwhile.
  const { page, heard } = await openPage(browser, new URL('#r=3&ly=steady', SINGLE_FILE));
  const before = await text(page, '#ride-answer');
  for (const [typed, words] of [
    ['-4', /downhill/],
    ['46', /steeper than 45 %/],
    ['steep', /Type a number, such as/],
  ]) {
    await type(page, 'slope', typed);
    assert.match(await text(page, '#says-slope'), words);
    assert.match(await text(page, '#says-slope'), /The page goes on with 9 %/);
    assert.equal(await page.inputValue('#slope'), typed);
    const answer = await text(page, '#ride-answer');
    assert.match(answer, /^“Slope” is left aside; this goes on with 9 %/);
    assert.ok(answer.endsWith(before));
    assert.doesNotMatch(await text(page, '#rings-answer'), /not understood/);
  }
  assertQuiet(heard);
});

test('without a power meter the power is an estimate and says so', async () => {
  const { page } = await openPage(browser, SINGLE_FILE);
  await type(page, 'power', '');
  assert.match(await text(page, '#says-power'), /Estimate: 3\.0 W\/kg × 62 kg = 186 W; one rider may be 25 % away/);
  await type(page, 'level', 'national');
  assert.match(await text(page, '#says-power'), /4\.6 W\/kg × 62 kg = 285 W/);
});

test('the pictures can be stepped through by key on a phone', async () => {
  const { page } = await openPage(browser, SINGLE_FILE, { viewport: PHONE });
  const plot = page.locator('[data-picture=slopes] .plot');
  await plot.focus();
  await page.keyboard.press('End');
  await page.keyboard.press('Home');
  await page.keyboard.press('ArrowRight');
  const reading = await text(page, '[data-picture=slopes] .reading');
  assert.match(reading, /^1 %: riding 16\.\d km\/h, run 8\.\d km\/h, likely/);
  await page.keyboard.press('End');
  assert.match(await text(page, '[data-picture=slopes] .reading'), /^30 %: riding/);
});

test('a speed is read against its slope, by key too', async () => {
  const { page } = await openPage(browser, SINGLE_FILE);
  const slope = async () => Number((await text(page, '#ride-at-speed')).match(/slopes up to ([\d.]+) %/)[1]);
  const start = await slope();
  await page.locator('#slope-speed').focus();
  await page.keyboard.press('ArrowUp');
  await page.waitForFunction(() => document.querySelector('#ride-at-speed').textContent.startsWith('At 9.5'));
  assert.ok((await slope()) < start);
  assert.match(await text(page, '#ride-at-speed'), /On foot there: .* A: 34×\d+ at \d+ rpm/);
});

test('an empty field in error goes on with the estimate it stands for', async () => {
  const { page } = await openPage(browser, SINGLE_FILE);
  await page.getByText('Finer settings: your body').click();
  await type(page, 'peak-power', 'strong');
  assert.match(await text(page, '#says-peak-power'), /The page goes on with an estimate of 880 W/);
  await type(page, 'rolling', 'soft');
  assert.match(await text(page, '#says-rolling'), /The page goes on with 0\.05\./);
});

test('a reserve left empty is estimated from the rider, and says so', async () => {
  const { page } = await openPage(browser, SINGLE_FILE);
  await page.getByText('Finer settings: your body').click();
  await type(page, 'reserve', '');
  assert.match(await text(page, '#says-reserve'), /Estimate: 14 kJ for 62 kg at 220 W/);
});
