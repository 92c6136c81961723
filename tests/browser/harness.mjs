// Opens the built page in a real browser and keeps an ear on everything that page must not do.

import assert from 'node:assert/strict';
import { existsSync } from 'node:fs';
import { after, before } from 'node:test';
import { fileURLToPath } from 'node:url';
import { chromium } from 'playwright-core';
import { startServer } from '../../crates/packer/node/static-server.mjs';

const project = new URL('../../', import.meta.url);

export const SINGLE_FILE = new URL('dist/remount.html', project);
export const SITE = new URL('dist/site/', project);
export const API = new URL('dist/api/', project);

/** A wide window and a narrow phone, as CSS pixels. */
export const DESK = { width: 1440, height: 900 };
export const PHONE = { width: 390, height: 844 };

/** A lap has been ridden by then on two busy cores, milliseconds. */
const LAP_RIDDEN = 60_000;

const BROWSERS = ['/usr/bin/chromium', '/usr/bin/chromium-browser', '/usr/bin/google-chrome'];

// The browser's own traffic is switched off, so that what is heard is the page's. A root user has no sandbox.
const FLAGS = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

/** A browser to open pages in: that which all test files share (`run.mjs`), or one of its own. */
export async function launchBrowser(moreFlags = []) {
  const shared = process.env.SHARED_BROWSER;
  if (shared && moreFlags.length === 0) return chromium.connect(shared);
  return chromium.launch(withFlags(moreFlags));
}

/** Starts the browser that all test files share, each in contexts of its own. */
export const startSharedBrowser = () => chromium.launchServer(withFlags([]));

function withFlags(moreFlags) {
  const executablePath = process.env.CHROMIUM ?? BROWSERS.find((path) => existsSync(path));
  assert.ok(executablePath, 'no Chromium found: ./build.sh test installs one, or name it with CHROMIUM=/path');
  return { executablePath, args: [...FLAGS, ...moreFlags] };
}

/** Serves dist/site and notes the path of every request that reaches it. */
export async function serveSite() {
  return serveFolder(SITE);
}

/** The browser and the served site of a test file that asked for them by `share`. */
export let browser;
export let site;

/** Has both there while the tests of a file run. */
export function share() {
  before(async () => {
    browser = await launchBrowser();
    site = await serveSite();
  });
  after(async () => {
    await browser?.close();
    await site?.close();
  });
}

export async function serveFolder(folder, headersOf) {
  const requests = [];
  const onRequest = (path) => requests.push(path);
  const server = await startServer(fileURLToPath(folder), { headersOf, onRequest });
  return { ...server, requests };
}

/**
 * Opens an address in a fresh browser context, waits until the page has drawn, and gives back the Playwright page and
 * what was heard so far. Options are those of a Playwright context: viewport, colorScheme, deviceScaleFactor, …; with
 * `folded` everything stays folded as it is. Laps and searches take both cores: workers ride only where a test `rides`.
 */
export async function openPage(browser, address, { folded = false, rides = false, ...options } = {}) {
  const context = await browser.newContext({ viewport: DESK, ...options });
  const page = await context.newPage();
  if (!rides) await page.addInitScript(restWorkers);
  const heard = await listen(page);
  await page.goto(String(address));
  await untilReady(page, folded);
  heard.loadedAt = Date.now();
  return { page, heard };
}

/**
 * Waits for the page's own word: `<html data-engine="ready">` after the first drawing, "failed" with a message. Then everything
 * that unfolds is opened, for tests of what is in it, unless it is to stay `folded`.
 */
export async function untilReady(page, folded = false) {
  await page.waitForSelector('html[data-engine]', { state: 'attached' });
  const state = await page.getAttribute('html', 'data-engine');
  assert.equal(state, 'ready', `the page could not start: ${await page.innerText('body')}`);
  if (!folded) await page.evaluate(unfold);
  await page.evaluate(settle);
}

/** Runs in the page: workers compile the engine and read files; whatever else they are sent they take and never answer. */
function restWorkers() {
  const Reader = globalThis.Worker;
  globalThis.Worker = class extends EventTarget {
    constructor(source) {
      super();
      this.reader = new Reader(source);
      this.reader.onmessage = (event) => this.onmessage(event);
      this.reader.onerror = (event) => this.onerror(event);
    }
    postMessage(message) {
      if (message.track || message.packed) this.reader.postMessage(message);
    }
    terminate() {
      this.reader.terminate();
    }
  };
}

/** Runs in the page. */
function unfold() {
  for (const button of document.querySelectorAll('[data-unfolds][aria-expanded=false]')) button.click();
  for (const details of document.querySelectorAll('#more, #yours')) details.open = true;
  document.documentElement.scrollTop = 0;
}

/** Runs in the page: a service worker has fetched what it keeps, and what was drawn is on screen. */
async function settle() {
  const registration = await navigator.serviceWorker?.getRegistration?.().catch(() => undefined);
  if (registration) await navigator.serviceWorker.ready;
  await new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done)));
}

async function listen(page) {
  const heard = { loadedAt: Infinity, complaints: [], requests: [] };
  page.on('console', (message) => {
    if (['error', 'warning'].includes(message.type())) heard.complaints.push(`console: ${message.text()}`);
  });
  page.on('pageerror', (error) => heard.complaints.push(`uncaught: ${error.stack ?? error}`));
  page.context().on('request', (request) => heard.requests.push({ url: request.url(), at: Date.now() }));
  await page.exposeBinding('reportCspViolation', (_, violation) => heard.complaints.push(violation));
  await page.addInitScript(() => {
    document.addEventListener('securitypolicyviolation', (event) => {
      globalThis.reportCspViolation(`CSP: ${event.violatedDirective} blocked ${event.blockedURI} ${event.sample}`);
    });
  });
  return heard;
}

/**
 * Nothing was complained about, and nothing was asked for since the page was ready but what the page holds itself and, for
 * workers, its own script.
 */
export function assertQuiet({ complaints, requests, loadedAt }) {
  assert.deepEqual(complaints, []);
  assert.deepEqual(
    requests.filter(({ at, url }) => at > loadedAt && !/^(data|blob):|\/page-\w+\.js$/.test(url)),
    [],
  );
}

/**
 * What an element says, with common spaces; an answer with what is unfolded of the reasons behind it. A section out of sight is
 * laid out for as long as it takes to read it.
 */
export async function text(page, selector) {
  const words = await said(page, selector);
  const why = /^#(rings|cage|ride|lap|bikes|tyre|position)-answer$/.exec(selector)?.[1];
  return why ? `${words}\n\n${await said(page, `#${why}-why`)}` : words;
}

async function said(page, selector) {
  const words = await page.locator(selector).evaluate((element) => {
    const section = element.closest('main > section');
    if (section) section.style.contentVisibility = 'visible';
    const said = element.innerText;
    if (section) section.style.contentVisibility = '';
    return said;
  });
  return words.replaceAll('\u00a0', ' ');
}

/** Lays out every section, also those out of sight, for checks that read the whole page. */
export async function layOut(page) {
  await page.evaluate(() => {
    for (const section of document.querySelectorAll('main > section')) section.style.contentVisibility = 'visible';
  });
}

/**
 * The times of A and B round the lap once they are of the bench as it stands, other ones than before. On the way down to them the page
 * grows.
 */
export async function lapTimes(page, before = '') {
  const times = await page.waitForFunction(
    (before) => {
      const answer = document.getElementById('lap-answer');
      document.querySelector('[data-picture=profile]').scrollIntoView({ block: 'center', behavior: 'instant' });
      const [, ...found] =
        /: A (?:about )?(\S+) \(likely.*?, B (?:about )?(\S+) \(/.exec(answer.textContent.replaceAll('\u00a0', ' ')) ?? [];
      const times = found.join(' and ');
      return times !== before && !answer.querySelector('.stale') && times;
    },
    before,
    { timeout: LAP_RIDDEN },
  );
  return times.jsonValue();
}

/** Waits until the page has worked off a frame, and what is out of sight has followed in the next. */
export async function frame(page) {
  await page.evaluate(
    () =>
      new Promise((done) => {
        requestAnimationFrame(() => requestAnimationFrame(() => setTimeout(done)));
      }),
  );
}

/** Types a whole value into the field of this key, or chooses it where the field is a list. */
export async function type(page, key, value) {
  const field = page.locator(`#${key}`);
  if ((await field.evaluate(({ localName }) => localName)) === 'select') await field.selectOption(value);
  else await field.fill(value);
  await frame(page);
}

/** How long typing must pause before the page writes its link into the address. */
export const LINK_PAUSE_MS = 200;

/** The address, once the page has written into it a link that holds `part`. */
export async function addressWith(page, part) {
  await page.waitForURL((url) => url.hash.includes(part));
  return new URL(page.url());
}

/** The text of a file that the page hands out. The browser may be another process's, which shares no folder with this one. */
export async function downloaded(download) {
  const parts = await (await download.createReadStream()).toArray();
  return Buffer.concat(parts).toString('utf8');
}
