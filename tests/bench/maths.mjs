// The same Rust, compiled natively and to WebAssembly, on the same work: the fastest of many rounds, which other
// work on the machine disturbs least. The map of riding or running is timed in numpy too, where that is installed.

import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { ms, times } from './statistics.mjs';

const ROUNDS = 40;

/** A plan may turn on the last digit of a number: times of planned laps agree to this, s. */
const REPLANNED_S = 0.1;

/** Exported functions of the bench module, how often they are run in a round, and what a round is. */
const WORKS = [
  { work: 'gear_tables', count: 10_000, what: '10000 gear tables' },
  {
    work: 'cages',
    count: 1_000,
    what: 'the cage in all gears of 1000 set-ups of 2×12',
    each: 'one set-up of 2×12, WebAssembly (aim: below 0.2 ms)',
  },
  {
    work: 'verdict_maps',
    count: 1,
    what: 'ride or run on 91 × 9 slopes and grounds for A and B (aim: below 4 ms)',
    yardstick: numpyRows,
  },
  { work: 'laps', count: 1, what: 'a lap of 3 km in steps of 1 m on two set-ups', yardstick: scriptRows('lap.mjs') },
  {
    work: 'reserve_single',
    count: 1,
    what: 'a lap of 3 km as riders ride, one ring',
    yardstick: scriptRows('reserve/lap.mjs', '40'),
    near: REPLANNED_S,
  },
  {
    work: 'reserve_pair',
    count: 1,
    what: 'a lap of 3 km as riders ride, two rings',
    yardstick: scriptRows('reserve/lap.mjs', '44/31'),
    near: REPLANNED_S,
  },
  {
    work: 'boxes',
    count: 1,
    what: 'a box of 168 combinations round a lap of 3 km (aim: below 2 s)',
    near: REPLANNED_S,
    rounds: 3,
  },
];

const target = new URL('../../target/', import.meta.url);
const PYTHON = process.env.PYTHON ?? 'python3';

export async function mathsRows(browser) {
  const rows = [];
  for (const work of WORKS) rows.push(...(await rowsOf(browser, work)));
  return rows;
}

async function rowsOf(browser, { work, count, what, each, yardstick = () => [], near = 0, rounds = ROUNDS }) {
  const native = timeNative(work, count, rounds);
  const wasm = await timeWasm(browser, work, count, rounds);
  assert.ok(agree(wasm.sum, native.sum, near), `native and WebAssembly must compute the same: ${native.sum}, ${wasm.sum}`);
  const [nativeMs, wasmMs] = [native, wasm].map(({ durations }) => Math.min(...durations));
  const one = each ? [{ what: each, figure: ms(wasmMs / count, 4) }] : [];
  return [
    { what: `${what}, native`, figure: ms(nativeMs) },
    { what: `${what}, WebAssembly in the browser`, figure: ms(wasmMs) },
    ...one,
    { what: 'WebAssembly against native', figure: times(wasmMs / nativeMs) },
    ...yardstick(native.sum, nativeMs, wasmMs, near),
  ];
}

/** Sines and arcs may differ in the last digit between two mathematical libraries. */
const agree = (a, b, near = 0) => Math.abs(a - b) <= near + 1e-9 * Math.abs(b);

/** The same algorithm in plain JavaScript; its laps must take the same times. */
function scriptRows(script, ...given) {
  return (sum, _nativeMs, wasmMs, near) => {
    const file = fileURLToPath(new URL(script, import.meta.url));
    const said = execFileSync(process.execPath, [file, ...given], { encoding: 'utf8' });
    const [, duration] = said.match(/: ([\d.]+) ms/);
    const time = [...said.matchAll(/([\d.]+) s\b/g)].reduce((total, [, seconds]) => total + Number(seconds), 0);
    assert.ok(agree(time, sum, near), `the script gives ${time}, gear-math ${sum}`);
    return [
      { what: 'the same in plain JavaScript', figure: ms(Number(duration)) },
      { what: 'WebAssembly against plain JavaScript', figure: times(wasmMs / duration) },
    ];
  };
}

/** The independent numpy model works the same map out; its reference ratios must add up to the same sum. */
function numpyRows(sum, nativeMs, wasmMs) {
  let said;
  try {
    said = execFileSync(PYTHON, [fileURLToPath(new URL('ride_or_run_numpy.py', import.meta.url))], {
      encoding: 'utf8',
      stdio: ['ignore', 'pipe', 'ignore'],
    });
  } catch {
    return [{ what: `the same map in numpy: ${PYTHON} has no numpy (name one that has with PYTHON=)`, figure: '–' }];
  }
  const [, reference] = said.match(/reference ([\d.]+)/);
  const [, version, duration] = said.match(/numpy (\S+): ([\d.]+) ms/);
  assert.ok(agree(reference, sum), `numpy gives ${reference}, gear-math ${sum}`);
  return [
    { what: `the same map in numpy ${version}`, figure: ms(Number(duration)) },
    { what: 'native against numpy', figure: times(nativeMs / duration) },
    { what: 'the browser against numpy', figure: times(wasmMs / duration) },
  ];
}

function timeNative(work, count, rounds) {
  const program = fileURLToPath(new URL('release/speed-bench', target));
  const lines = execFileSync(program, [work, count, rounds], { encoding: 'utf8' }).trim().split('\n').map(Number);
  return { durations: lines.slice(0, -1), sum: lines.at(-1) };
}

async function timeWasm(browser, work, count, rounds) {
  const file = new URL('wasm32-unknown-unknown/release/speed_bench.wasm', target);
  const page = await browser.newPage();
  return page.evaluate(
    async ({ base64, work, count, rounds }) => {
      const bytes = Uint8Array.from(atob(base64), (character) => character.charCodeAt(0));
      const { instance } = await WebAssembly.instantiate(bytes);
      const durations = [];
      let sum;
      for (let round = 0; round < rounds; round += 1) {
        const start = performance.now();
        sum = instance.exports[work](count);
        durations.push(performance.now() - start);
      }
      return { durations, sum };
    },
    { base64: readFileSync(file, 'base64'), work, count, rounds },
  );
}
