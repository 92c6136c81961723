// The same Rust, compiled natively and to WebAssembly, on the same gear tables: the fastest of many rounds, which other
// work on the machine disturbs least.

import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { ms, times } from './statistics.mjs';

const TABLES = 10_000;
const ROUNDS = 40;

const target = new URL('../../target/', import.meta.url);

export async function mathsRows(browser) {
  const native = timeNative();
  const wasm = await timeWasm(browser);
  assert.equal(wasm.sum, native.sum, 'native and WebAssembly must compute the same');
  const [nativeMs, wasmMs] = [native, wasm].map(({ durations }) => Math.min(...durations));
  return [
    { what: `${TABLES} gear tables, native`, figure: ms(nativeMs) },
    { what: `${TABLES} gear tables, WebAssembly in the browser`, figure: ms(wasmMs) },
    { what: 'WebAssembly against native', figure: times(wasmMs / nativeMs) },
  ];
}

function timeNative() {
  const program = fileURLToPath(new URL('release/speed-bench', target));
  const lines = execFileSync(program, [TABLES, ROUNDS], { encoding: 'utf8' }).trim().split('\n').map(Number);
  return { durations: lines.slice(0, -1), sum: lines.at(-1) };
}

async function timeWasm(browser) {
  const file = new URL('wasm32-unknown-unknown/release/speed_bench.wasm', target);
  const page = await browser.newPage();
  return page.evaluate(
    async ({ base64, tables, rounds }) => {
      const bytes = Uint8Array.from(atob(base64), (character) => character.charCodeAt(0));
      const { instance } = await WebAssembly.instantiate(bytes);
      const durations = [];
      let sum;
      for (let round = 0; round < rounds; round += 1) {
        const start = performance.now();
        sum = instance.exports.gear_tables(tables);
        durations.push(performance.now() - start);
      }
      return { durations, sum };
    },
    { base64: readFileSync(file, 'base64'), tables: TABLES, rounds: ROUNDS },
  );
}
