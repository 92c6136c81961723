// Measures the built page and prints a table. ./build.sh bench builds what it needs first.

import { launchBrowser } from '../browser/harness.mjs';
import { boxRows } from './boxes.mjs';
import { chartRows } from './charts.mjs';
import { lapRows } from './laps.mjs';
import { lighthouseRows } from './lighthouse.mjs';
import { mathsRows } from './maths.mjs';
import { paintRows } from './paint.mjs';
import { startRows } from './start.mjs';

// Frames follow each other at once: what is timed is the work for a frame, not the wait for the screen's next one.
const browser = await launchBrowser(['--disable-frame-rate-limit', '--disable-gpu-vsync']);
try {
  for (const rows of [startRows, lighthouseRows, paintRows, lapRows, mathsRows, boxRows, chartRows]) print(await rows(browser));
} finally {
  await browser.close();
}

function print(rows) {
  for (const { what, figure } of rows) console.log(`${what.padEnd(64)} ${figure.padStart(12)}`);
  console.log();
}
