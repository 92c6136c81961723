// The lap on the built page: coarse and settled for two set-ups, shown; and a search in workers from click to result.

import { openPage, SINGLE_FILE } from '../browser/harness.mjs';
import { openEngine } from './engine.mjs';
import { median, ms } from './statistics.mjs';

const ROUNDS = 15;

export async function lapRows(browser) {
  const engine = await openEngine(browser);
  const coarse = await engine.evaluate(timeLaps, { settled: false, rounds: ROUNDS });
  const settled = await engine.evaluate(timeLaps, { settled: true, rounds: ROUNDS });
  const { page } = await openPage(browser, SINGLE_FILE);
  const search = await page.evaluate(timeSearch);
  return [
    { what: 'the lap of two set-ups in steps of 1 m, into fragments', figure: ms(median(coarse)) },
    { what: 'the same settled, with its band, into fragments', figure: ms(median(settled)) },
    { what: `search over ${search.tried} set-ups on ${search.workers} workers, click to end`, figure: ms(search.duration) },
  ];
}

/** Runs in the page: each round asks anew, with another power. */
function timeLaps({ settled, rounds }) {
  return Array.from({ length: rounds }, (_, round) => {
    engine.edit([['power', String(200 + round)]]);
    const start = performance.now();
    engine.lap(settled);
    return performance.now() - start;
  });
}

/** Runs in the page: rings wide enough for some 5,000 set-ups. */
async function timeSearch() {
  const find = (id) => document.getElementById(id);
  find('search-small').value = '26';
  find('search-large').value = '54';
  for (const id of ['search-small', 'search-large']) find(id).dispatchEvent(new Event('input', { bubbles: true }));
  await new Promise((done) => setTimeout(done, 200));
  const start = performance.now();
  find('search-start').click();
  while (!find('lap-found').textContent.includes('First of')) await new Promise((done) => setTimeout(done, 5));
  const duration = performance.now() - start;
  const tried = Number(find('lap-found').textContent.match(/First of (\d+)/)[1]);
  return { duration, tried, workers: Math.min(4, Math.max(1, navigator.hardwareConcurrency || 2)) };
}
