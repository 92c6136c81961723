// The picture of every gear's speed at cadence, drawn by the page and by two JavaScript chart libraries in the same
// browser: the same gears, the same speeds, the same logarithmic scale, the same size.
//
// Each drawing is timed from the call to the moment its first pixel can be read back, which waits for the whole drawing.
// Chart.js draws the same bars with gear names and grid. uPlot has no horizontal bars: it draws each gear as a line over
// the cadences, which is less than the page draws (no name on each gear).

import { fileURLToPath } from 'node:url';
import { openEngine } from './engine.mjs';
import { median, ms, times } from './statistics.mjs';

/** Of a picture on the page in a wide window, CSS pixels. */
const WIDTH = 816;
const DRAWINGS = 60;
const WARM_UP = 10;

/** The demo's gears and cadences, as on the page at first load. */
const SET_UPS = [
  { rings: [50, 34], sprockets: [11, 12, 13, 14, 15, 17, 19, 21, 24, 27, 30] },
  { rings: [44, 32], sprockets: [11, 12, 13, 14, 16, 18, 20, 22, 25, 28, 32] },
];
const CADENCES_RPM = [55, 110];
const WHEEL_M = 2.1614;
const GEARS = SET_UPS.flatMap(({ rings, sprockets }, set) =>
  rings.flatMap((ring) =>
    sprockets.map((sprocket) => ({
      name: `${'AB'[set]} ${ring}×${sprocket}`,
      speeds: CADENCES_RPM.map((rpm) => (ring / sprocket) * WHEEL_M * rpm * 0.06),
    })),
  ),
).sort((x, y) => y.speeds[0] - x.speeds[0]);

const LIBRARIES = [
  { name: 'Chart.js', script: 'chart.js/dist/chart.umd.min.js', setUp: setUpChartJs },
  { name: 'uPlot', script: 'uplot/dist/uPlot.iife.min.js', style: 'uplot/dist/uPlot.min.css', setUp: setUpUplot },
];

export async function chartRows(browser) {
  const own = await drawOwn(browser);
  const rows = [{ what: `speed picture, drawn by the page (${own.width} × ${own.height} px)`, figure: ms(own.duration) }];
  for (const library of LIBRARIES) {
    const duration = await drawWith(browser, library, own);
    rows.push(
      { what: `speed picture, drawn by ${library.name}`, figure: ms(duration) },
      { what: `the page against ${library.name}`, figure: times(own.duration / duration) },
    );
  }
  return rows;
}

async function drawOwn(browser) {
  const page = await openEngine(browser);
  await page.evaluate((width) => {
    const height = engine.pictureHeight('speeds', width);
    globalThis.canvas = Object.assign(document.createElement('canvas'), { width, height });
    document.body.append(canvas);
    globalThis.drawOnce = () => {
      engine.preparePicture('speeds', width, height, false, false);
      engine.paint('speeds', canvas, 1);
    };
  }, WIDTH);
  const { width, height } = await page.evaluate(() => ({ width: canvas.width, height: canvas.height }));
  return { width, height, duration: await timeDrawing(page) };
}

async function drawWith(browser, { script, style, setUp }, { width, height }) {
  const page = await browser.newPage();
  await page.setContent('<!DOCTYPE html><body></body>');
  await page.addScriptTag({ path: installed(script) });
  if (style) await page.addStyleTag({ path: installed(style) });
  await page.evaluate(setUp, { width, height, gears: GEARS, cadences: CADENCES_RPM });
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
function setUpChartJs({ width, height, gears }) {
  const bars = (drawing) => gears.map(({ speeds }) => speeds.map((speed) => speed + drawing * 0.01));
  globalThis.canvas = Object.assign(document.createElement('canvas'), { width, height });
  document.body.append(canvas);
  const chart = new Chart(canvas, {
    type: 'bar',
    data: { labels: gears.map(({ name }) => name), datasets: [{ data: bars(0), backgroundColor: 'navy' }] },
    options: {
      animation: false,
      responsive: false,
      devicePixelRatio: 1,
      indexAxis: 'y',
      scales: { x: { type: 'logarithmic' }, y: { ticks: { autoSkip: false } } },
      plugins: { legend: { display: false } },
    },
  });
  globalThis.drawOnce = (drawing) => {
    chart.data.datasets[0].data = bars(drawing);
    chart.update('none');
  };
}

/** Runs in the page. uPlot draws in a microtask, so that waiting for the call waits for the drawing. */
function setUpUplot({ width, height, gears, cadences }) {
  const all = (drawing) => [cadences, ...gears.map(({ speeds }) => speeds.map((speed) => speed + drawing * 0.01))];
  const series = gears.map(({ name }) => ({ label: name, width: 1.5, stroke: 'navy', points: { show: false } }));
  const options = {
    width,
    height,
    series: [{}, ...series],
    scales: { x: { time: false }, y: { distr: 3 } },
    legend: { show: false },
    cursor: { show: false },
  };
  const chart = new uPlot(options, all(0), document.body);
  globalThis.canvas = chart.ctx.canvas;
  globalThis.drawOnce = (drawing) => chart.setData(all(drawing));
}
