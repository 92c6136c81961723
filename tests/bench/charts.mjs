// The chart of speed at cadence, drawn by the page and by two JavaScript chart libraries in the same browser.
//
// Each drawing is timed from the call to the moment its first pixel can be read back, which waits for the whole drawing.
// All draw the same number of lines and points at the size of the page's own canvas.

import { fileURLToPath } from 'node:url';
import { SINGLE_FILE, openPage } from '../browser/harness.mjs';
import { median, ms, times } from './statistics.mjs';

const DRAWINGS = 60;
const WARM_UP = 10;

/** The page's canvas for this chart; the page offers `remountBench.drawSpeeds()` to draw it once more. */
const OWN_CANVAS = '#speeds canvas';

/** What the page draws on first load: one line per gear over the cadence window. */
const LINES = 44;
const CADENCES_RPM = Array.from({ length: 61 }, (_, step) => 50 + step);

const LIBRARIES = [
  { name: 'Chart.js', script: 'chart.js/dist/chart.umd.min.js', setUp: setUpChartJs },
  { name: 'uPlot', script: 'uplot/dist/uPlot.iife.min.js', style: 'uplot/dist/uPlot.min.css', setUp: setUpUplot },
];

export async function chartRows(browser) {
  const own = await drawOwn(browser);
  if (!own) return [{ what: 'speed chart: the page offers no remountBench.drawSpeeds()', figure: '–' }];
  const rows = [{ what: `speed chart, drawn by the page (${own.width} × ${own.height} px)`, figure: ms(own.duration) }];
  for (const library of LIBRARIES) {
    const duration = await drawWith(browser, library, own);
    rows.push(
      { what: `speed chart, drawn by ${library.name}`, figure: ms(duration) },
      { what: `the page against ${library.name}`, figure: times(own.duration / duration) },
    );
  }
  return rows;
}

async function drawOwn(browser) {
  const { page } = await openPage(browser, SINGLE_FILE);
  if (!(await page.evaluate(() => typeof globalThis.remountBench?.drawSpeeds === 'function'))) return undefined;
  await page.evaluate((selector) => {
    globalThis.canvas = document.querySelector(selector);
    globalThis.drawOnce = () => globalThis.remountBench.drawSpeeds();
  }, OWN_CANVAS);
  const { width, height } = await page.evaluate(() => ({ width: canvas.width, height: canvas.height }));
  return { width, height, duration: await timeDrawing(page) };
}

async function drawWith(browser, { script, style, setUp }, { width, height }) {
  const page = await browser.newPage();
  await page.setContent('<!DOCTYPE html><body></body>');
  await page.addScriptTag({ path: installed(script) });
  if (style) await page.addStyleTag({ path: installed(style) });
  await page.evaluate(setUp, { width, height, cadences: CADENCES_RPM, lines: LINES });
  return timeDrawing(page);
}

const installed = (file) => fileURLToPath(new URL(`node_modules/${file}`, import.meta.url));

/** Times `drawOnce()` onto `canvas`, both left in the page by what came before. */
async function timeDrawing(page) {
  const durations = await page.evaluate(async (count) => {
    const durations = [];
    for (let drawing = 0; drawing < count; drawing += 1) {
      const start = performance.now();
      await drawOnce(drawing);
      canvas.getContext('2d').getImageData(0, 0, 1, 1);
      durations.push(performance.now() - start);
    }
    return durations;
  }, WARM_UP + DRAWINGS);
  return median(durations.slice(WARM_UP));
}

/** Runs in the page. */
function setUpChartJs({ width, height, cadences, lines }) {
  const speeds = (line, drawing) => cadences.map((cadence) => cadence * (0.08 + line * 0.01) + drawing * 0.01);
  globalThis.canvas = Object.assign(document.createElement('canvas'), { width, height });
  document.body.append(canvas);
  const datasets = Array.from({ length: lines }, (_, line) => ({
    label: `gear ${line + 1}`,
    data: speeds(line, 0),
    pointRadius: 0,
    borderWidth: 1.5,
  }));
  const chart = new Chart(canvas, {
    type: 'line',
    data: { labels: cadences, datasets },
    options: { animation: false, responsive: false, devicePixelRatio: 1, plugins: { legend: { display: false } } },
  });
  globalThis.drawOnce = (drawing) => {
    chart.data.datasets.forEach((dataset, line) => (dataset.data = speeds(line, drawing)));
    chart.update('none');
  };
}

/** Runs in the page. uPlot draws in a microtask, so that waiting for the call waits for the drawing. */
function setUpUplot({ width, height, cadences, lines }) {
  const speeds = (line, drawing) => cadences.map((cadence) => cadence * (0.08 + line * 0.01) + drawing * 0.01);
  const all = (drawing) => [cadences, ...Array.from({ length: lines }, (_, line) => speeds(line, drawing))];
  const series = Array.from({ length: lines }, (_, line) => ({
    label: `gear ${line + 1}`,
    width: 1.5,
    stroke: 'navy',
    points: { show: false },
  }));
  const options = { width, height, series: [{}, ...series], scales: { x: { time: false } }, legend: { show: false }, cursor: { show: false } };
  const chart = new uPlot(options, all(0), document.body);
  globalThis.canvas = chart.ctx.canvas;
  globalThis.drawOnce = (drawing) => chart.setData(all(drawing));
}
