// Random inputs for module and page, minutes by choice: node tests/fuzz/fuzz.mjs [MINUTES]; FUZZ_SEED=17 repeats a run.

import { API, DESK, launchBrowser, openPage, serveSite } from '../browser/harness.mjs';
import { call, holdsNaN } from './calls.mjs';
import { Chance } from './chance.mjs';
import { file, link, track, typed } from './texts.mjs';

const MINUTES = Number(process.argv[2] ?? 1);
const SEED = Number(process.env.FUZZ_SEED ?? Date.now() % 1_000_000);
const FRESH_PAGE_AFTER = 200;
const MEGABYTE = 2 ** 20;
/** Growth from the first third of a run on: less is what collecting garbage leaves. */
const MOST_GROWTH = 64;
const SHOWN = 5;

if (!(MINUTES > 0)) throw new Error('say for how many minutes, such as 1 or 0.5');
const tried = {};
const faults = {
  traps: [],
  NaN: [],
  'empty answers': [],
  'scripts run': [],
  'requests after load': [],
  complaints: [],
  growth: [],
};
const count = (kind) => {
  tried[kind] = (tried[kind] ?? 0) + 1;
};

/** Works until half of the time is over, and says by how much memory grew after a third of that. */
async function forHalf(what, memory, work) {
  const [start, span] = [Date.now(), MINUTES * 30_000];
  let first;
  for (let number = 0; Date.now() < start + span; number += 1) {
    await work(number);
    if (first === undefined && Date.now() > start + span / 3) first = await memory();
  }
  const growth = ((await memory()) - first) / MEGABYTE;
  console.log(`${what}: ${growth.toFixed(1)} MB more than after a third of it`);
  if (growth > MOST_GROWTH) faults.growth.push(`${what}: ${growth.toFixed(1)} MB`);
}

async function tryModule(chance) {
  const api = await import(new URL('remount.js', API));
  const once = () => {
    const { name, given } = call(chance);
    count('module calls');
    const words = `${name}(${JSON.stringify(given)})`;
    try {
      const answer = api[name](...given);
      if (answer === undefined || answer === null) faults['empty answers'].push(words);
      if (holdsNaN(answer)) faults.NaN.push(words);
    } catch (error) {
      if (error instanceof WebAssembly.RuntimeError) faults.traps.push(words);
      else if (!error.message) faults['empty answers'].push(words);
    }
  };
  await forHalf('module', () => process.memoryUsage().rss, once);
}

async function tryPage(chance) {
  const [browser, site] = [await launchBrowser(['--js-flags=--expose-gc']), await serveSite()];
  let opened;
  const renew = async (number) => {
    if (number % FRESH_PAGE_AFTER !== 0) return;
    if (opened) await hear(opened);
    opened = await openPage(browser, site.address);
  };
  let keys;
  const once = async (number) => {
    await renew(number);
    const { page } = opened;
    keys ??= await page.$$eval('[data-field]', (all) => all.map((it) => it.dataset.field));
    if (chance.share() < 0.1) await page.setViewportSize({ width: 40 + chance.below(1500), height: 300 + chance.below(900) });
    const [kind, words] = await act(chance, page, keys);
    count(kind);
    const found = await page.evaluate(look);
    for (const [fault, said] of found) faults[fault].push(`${kind}: ${said}, after ${JSON.stringify(words).slice(0, 400)}`);
    if (found.length > 0) await page.evaluate(() => delete globalThis.ran);
  };
  const memory = () => opened.page.evaluate(() => globalThis.gc() ?? performance.memory.usedJSHeapSize);
  await forHalf('page', memory, once);
  await hear(opened);
  await browser.close();
  await site.close();
}

/** Does one thing to the page; gives back what kind of thing, and with which words. */
async function act(chance, page, keys) {
  const kinds = {
    benches: async () => {
      const edits = [...chance.some(6, () => [chance.one(keys), typed(chance)]), [chance.one(keys), typed(chance)]];
      await page.evaluate(write, edits);
      return edits;
    },
    links: async () => {
      const words = link(chance, keys);
      await page.evaluate((words) => {
        location.hash = words;
      }, words);
      return words;
    },
    tracks: () => dropped(page, track(chance)),
    files: () => dropped(page, file(chance, keys)),
  };
  const kind = chance.one(Object.keys(kinds));
  const words = await kinds[kind]();
  await page.evaluate(() => new Promise((done) => requestAnimationFrame(() => setTimeout(done, 60))));
  return [kind, words];
}

async function dropped(page, words) {
  await page.evaluate((words) => {
    const dataTransfer = new DataTransfer();
    dataTransfer.items.add(new File([words], 'any.json'));
    document.body.dispatchEvent(new DragEvent('drop', { dataTransfer, bubbles: true, cancelable: true }));
  }, words);
  return words;
}

/** Runs in the page. */
function write(edits) {
  for (const [key, words] of edits) {
    const entry = document.querySelector(`[data-field="${key}"]`);
    entry.value = words;
    entry.dispatchEvent(new Event('input', { bubbles: true }));
  }
}

/** Runs in the page: what is wrong with what it says. */
function look() {
  const found = [];
  if (globalThis.ran) found.push(['scripts run', 'a script']);
  for (const element of document.querySelectorAll('main [id], .strip')) {
    const said = /\bNaN\b|\bundefined\b|\[object/.exec(element.textContent);
    if (said && element.children.length === 0) found.push(['NaN', `#${element.id}: ${element.textContent.slice(0, 80)}`]);
  }
  for (const answer of document.querySelectorAll('[id$=-answer]')) {
    if (!answer.textContent.trim()) found.push(['empty answers', `#${answer.id}`]);
  }
  return found;
}

/** Takes what a page was heard to do, and closes it. */
async function hear({ page, heard }) {
  // The browser itself asks for the icon again when the address changes.
  const late = heard.requests.filter(
    ({ at, url }) => at > heard.loadedAt && !/^(data|blob):|(icon\.svg|page-\w+\.js)$/.test(url),
  );
  faults['requests after load'].push(...late.map(({ url }) => url));
  for (const words of heard.complaints) (/RuntimeError|unreachable/.test(words) ? faults.traps : faults.complaints).push(words);
  await page.context().close();
}

console.log(`seed ${SEED}, ${MINUTES} min, window of ${DESK.width} px and others`);
await tryModule(new Chance(SEED));
await tryPage(new Chance(SEED + 1));
console.log(
  Object.entries(tried)
    .map(([kind, times]) => `${times} ${kind}`)
    .join(', '),
);
for (const [fault, met] of Object.entries(faults)) {
  console.log(`${fault}: ${met.length}`);
  for (const words of met.slice(0, SHOWN)) console.log(`  ${words.slice(0, 600)}`);
}
process.exitCode = Object.values(faults).some((met) => met.length > 0) ? 1 : 0;
