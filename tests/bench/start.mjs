// From opening the page to its first answer and to the first input it takes, here, on a slow network and on a slow
// processor; AGAINST=folder opens another build's dist/site in turn, and tells the ratios.

import { pathToFileURL } from 'node:url';
import { SITE } from '../browser/harness.mjs';
import { serveGzipped } from './gzipped.mjs';
import { median, ms } from './statistics.mjs';

const RUNS = 7;

/** Chromium's own figures for a slow 4G network. */
const SLOW_4G = { offline: false, latency: 562.5, downloadThroughput: 180_000, uploadThroughput: 84_375 };
const CASES = [
  { name: 'local' },
  { name: 'processor ÷ 4', slower: 4 },
  { name: 'slow 4G', network: SLOW_4G },
  { name: 'slow 4G, processor ÷ 4', slower: 4, network: SLOW_4G },
];

export async function startRows(browser) {
  const against = process.env.AGAINST;
  const builds = [{ name: 'this', folder: SITE }, ...(against ? [{ name: 'other', folder: pathToFileURL(`${against}/`) }] : [])];
  for (const build of builds) Object.assign(build, await serveGzipped(build.folder));
  const rows = [];
  for (const which of CASES) {
    for (const build of builds) build.runs = [];
    for (let run = 0; run < RUNS; run += 1)
      for (const { runs, address } of builds) runs.push(await opened(browser, address, which));
    const [these, others] = builds.map(({ runs }) => runs);
    for (const what of Object.keys(these[0])) {
      const of = (runs) => median(runs.map((run) => run[what]));
      const told = what === 'layout shift' ? of(these).toFixed(3) : ms(of(these));
      rows.push({ what: `${which.name}: ${what}`, figure: others ? `${told} × ${(of(these) / of(others)).toFixed(2)}` : told });
    }
  }
  for (const { close } of builds) close();
  return rows;
}

async function opened(browser, address, { slower, network }) {
  const context = await browser.newContext({
    viewport: { width: 412, height: 823 },
    isMobile: true,
    hasTouch: true,
    serviceWorkers: 'block',
  });
  const page = await context.newPage();
  const devtools = await context.newCDPSession(page);
  if (slower) await devtools.send('Emulation.setCPUThrottlingRate', { rate: slower });
  if (network) {
    await devtools.send('Network.enable');
    await devtools.send('Network.emulateNetworkConditions', network);
  }
  await page.addInitScript(watch);
  await page.goto(address);
  await page.waitForSelector('html[data-engine=ready]', { state: 'attached', timeout: 120_000 });
  await page.waitForTimeout(1500 * (slower ?? 1));
  const times = await page.evaluate(told);
  await context.close();
  return times;
}

/** Runs in the page before anything else: when the answer stood there, how long tasks were, and what moved. */
function watch() {
  globalThis.start = { answer: 0, ready: 0, tasks: [], shift: 0 };
  const see = () => {
    const answer = document.querySelector('#decide-rings td, #decide-rings')?.textContent ?? '';
    if (/\d/.test(answer)) start.answer ||= performance.now();
    if (document.documentElement.dataset.engine) start.ready ||= performance.now();
    if (!start.answer || !start.ready) requestAnimationFrame(see);
  };
  requestAnimationFrame(see);
  new PerformanceObserver((list) => {
    for (const { startTime, duration } of list.getEntries()) start.tasks.push([startTime, duration]);
  }).observe({ type: 'longtask', buffered: true });
  new PerformanceObserver((list) => {
    for (const { value, hadRecentInput } of list.getEntries()) if (!hadRecentInput) start.shift += value;
  }).observe({ type: 'layout-shift', buffered: true });
}

/** Runs in the page. Time to interactive: the end of the last task of more than 50 ms. */
function told() {
  const { answer, ready, tasks, shift } = globalThis.start;
  const [first] = performance.getEntriesByName('first-contentful-paint');
  return {
    'first paint': first?.startTime ?? 0,
    'first answer': Math.max(answer, first?.startTime ?? 0),
    ready: ready,
    'time to interactive': Math.max(ready, ...tasks.map(([at, long]) => at + long)),
    blocked: tasks.filter(([at]) => at > (first?.startTime ?? 0)).reduce((sum, [, long]) => sum + long - 50, 0),
    'layout shift': shift,
  };
}
