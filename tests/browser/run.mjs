// Runs the browser tests side by side in one browser: node tests/browser/run.mjs [FILE...]

import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { readdirSync, statSync } from 'node:fs';
import { startSharedBrowser } from './harness.mjs';

/** More files than this at a time only wait for each other on two cores. */
const SIDE_BY_SIDE = 2;

const folder = new URL('.', import.meta.url).pathname;
const every = readdirSync(folder).filter((name) => name.endsWith('.test.mjs'));
// The longest first: they mostly take longest, and none is left to run alone at the end.
const bytes = (file) => statSync(file).size;
const all = every.map((name) => folder + name).sort((a, b) => bytes(b) - bytes(a));
const files = process.argv.length > 2 ? process.argv.slice(2) : all;

const browser = await startSharedBrowser();
const tests = spawn(process.execPath, ['--test', `--test-concurrency=${SIDE_BY_SIDE}`, '--test-reporter=spec', ...files], {
  stdio: 'inherit',
  env: { ...process.env, SHARED_BROWSER: browser.wsEndpoint() },
});
const [code] = await once(tests, 'exit');
await browser.close();
process.exitCode = code ?? 1;
