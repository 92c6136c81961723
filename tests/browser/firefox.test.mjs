// The built page in a second engine: what is most likely to differ is that it starts, draws, answers and searches.

import assert from 'node:assert/strict';
import { existsSync } from 'node:fs';
import { after, before, test } from 'node:test';
import puppeteer from 'puppeteer-core';
import { DESK, PHONE, SINGLE_FILE } from './harness.mjs';

const executablePath = [process.env.FIREFOX, '/usr/bin/firefox-esr', '/usr/bin/firefox'].find((path) => path && existsSync(path));
const skip = executablePath ? false : 'no Firefox found: name one with FIREFOX=/path';
const STARTED = 60_000; // milliseconds
const DRAWN = 10_000; // milliseconds
const SEARCHED = 60_000; // milliseconds

let browser;
let page;
const complaints = [];

before(async () => {
  if (skip) return;
  browser = await puppeteer.launch({ browser: 'firefox', executablePath, timeout: STARTED });
  page = await browser.newPage();
  page.on('console', (message) => ['error', 'warn'].includes(message.type()) && complaints.push(message.text()));
  page.on('pageerror', (error) => complaints.push(String(error)));
  await page.setViewport(DESK);
  await page.goto(String(SINGLE_FILE));
  await page.waitForSelector('html[data-engine=ready]', { timeout: STARTED });
  await page.$$eval('[data-unfolds]', (buttons) => {
    for (const button of buttons) button.click();
  });
});

after(() => browser?.close());

const words = (selector) => page.$eval(selector, (element) => element.textContent.replaceAll('\u00a0', ' '));

/** Brings an element into view and waits until what then has to be laid out and drawn is. */
const bring = (selector) =>
  page.$eval(selector, async (element) => {
    element.scrollIntoView({ behavior: 'instant' });
    for (let frames = 0; frames < 3; frames += 1) await new Promise(requestAnimationFrame);
  });

/** Runs in the page. */
function isDrawn(name) {
  const canvas = document.querySelector(`[data-picture="${name}"] canvas`);
  const pixels = canvas.getContext('2d').getImageData(0, 0, canvas.width, canvas.height).data;
  return pixels.some((channel) => channel !== 0);
}

test('a change of rings reaches every section', { skip }, async () => {
  const answers = ['#rings-answer', '#cage-answer', '#ride-answer', '#sheet-page'];
  const before = await Promise.all(answers.map(words));
  await page.$eval('#rings-b', (field) => {
    field.value = '40/26';
    field.dispatchEvent(new Event('input', { bubbles: true }));
  });
  await page.waitForFunction(() => location.hash.includes('rb=40'));
  const now = await Promise.all(answers.map(words));
  for (const [place, text] of now.entries()) assert.notEqual(text, before[place], answers[place]);
});

test('every picture is drawn', { skip }, async () => {
  await bring('#lap');
  await page.waitForFunction(() => document.getElementById('lap-gears').textContent !== '', { timeout: STARTED });
  const names = await page.$$eval('[data-picture]:not([hidden])', (figures) => figures.map(({ dataset }) => dataset.picture));
  assert.ok(names.length >= 15);
  const blank = [];
  for (const name of names) {
    await bring(`[data-picture="${name}"]`);
    await page.waitForFunction(isDrawn, { timeout: DRAWN }, name).catch(() => blank.push(name));
  }
  assert.deepEqual(blank, []);
});

test('the search runs in workers, also without a server', { skip }, async () => {
  await bring('#lap-found');
  await page.$eval('#search-start', (button) => button.click());
  await page.waitForFunction(() => document.getElementById('lap-found').textContent.includes('First of'), { timeout: SEARCHED });
});

test('a track in UTF-16 is read', { skip }, async () => {
  await page.evaluate(() => {
    const points = Array.from(
      { length: 60 },
      (_, place) => `<trkpt lat="${50 + place / 5000}" lon="6"><ele>9</ele></trkpt>`,
    ).join('');
    const words = `\ufeff<?xml version="1.0" encoding="UTF-16"?><gpx><trk><trkseg>${points}</trkseg></trk></gpx>`;
    const dataTransfer = new DataTransfer();
    dataTransfer.items.add(new File([Uint16Array.from(words, (it) => it.charCodeAt(0))], 'wide.gpx'));
    document.getElementById('lap-drop').dispatchEvent(new DragEvent('drop', { dataTransfer, bubbles: true, cancelable: true }));
  });
  await page.waitForFunction(() => document.getElementById('lap-loaded').textContent.includes('wide'), { timeout: SEARCHED });
});

test('nothing is wider than a phone', { skip }, async () => {
  await page.setViewport(PHONE);
  for (const section of ['rings', 'cage', 'ride', 'lap', 'tyre-section', 'position', 'sheet']) {
    await bring(`#${section}`);
    assert.ok(await page.evaluate(() => document.documentElement.scrollWidth <= innerWidth), section);
  }
});

test('there was nothing to complain of', { skip }, () => assert.deepEqual(complaints, []));
