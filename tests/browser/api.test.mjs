// The JavaScript module: the same answers in Node and in a browser, from one import.

import assert from 'node:assert/strict';
import { readFile } from 'node:fs/promises';
import { test } from 'node:test';
import { API, launchBrowser, serveFolder } from './harness.mjs';

const FUNCTIONS = [
  ...[
    'gearTable',
    'cassetteNamed',
    'overlap',
    'compare',
    'wheel',
    'cageCheck',
    'chain',
    'chainLength',
    'rideOrRun',
    'climb',
    'lap',
    'courseFromGpx',
    'search',
    'combine',
  ],
  ...['tyreWidth', 'airSpring', 'tyrePressure', 'stemPosition', 'carryPosition', 'stemSearch'],
];

const api = await import(new URL('remount.js', API));

test('Node imports every function ready to be called', async () => {
  assert.deepEqual(
    FUNCTIONS.filter((name) => typeof api[name] !== 'function'),
    [],
  );
  await api.default();
  await api.default();
});

test('every function has its type declared', async () => {
  const types = await readFile(new URL('remount.d.ts', API), 'utf8');
  const names = Object.keys(api).filter((name) => name !== 'default');
  assert.deepEqual(
    names.filter((name) => !types.includes(`export function ${name}(`)),
    [],
  );
});

// What is left out comes back as null; only what may be left out of a question is optional.
test('the types say null where null is given', async () => {
  const types = await readFile(new URL('remount.d.ts', API), 'utf8');
  assert.match(types, /spareTeeth: number \| null;/);
  assert.doesNotMatch(types, /: [^;()]*\| undefined;/);
});

test('a browser imports the same functions', async () => {
  const browser = await launchBrowser();
  const server = await serveFolder(API);
  try {
    const page = await browser.newPage();
    await page.route(server.address, (route) => route.fulfill({ contentType: 'text/html', body: '' }));
    await page.goto(server.address);
    const names = await page.evaluate(async () => Object.keys(await import('/remount.js')));
    assert.deepEqual(names.sort(), Object.keys(api).sort());
  } finally {
    await browser.close();
    await server.close();
  }
});

const DEMO = { rings: [44, 31], sprockets: [11, 13, 15, 18, 21, 24, 28, 32], circumferenceMm: 2150 };

test('a gear table has every gear with its unit in every name', () => {
  const { gears, rangePercent } = api.gearTable({ ...DEMO, cadencesRpm: [60, 90] });
  assert.equal(gears.length, 16);
  const { ring, sprocket, ratio } = gears[0];
  assert.deepEqual([ring, sprocket], [44, 11]);
  assert.equal(ratio, 4);
  assert.deepEqual(Object.keys(gears[0]), ['ring', 'sprocket', 'ratio', 'developmentM', 'gearInches', 'speedsKmh']);
  assert.ok(rangePercent > 400 && rangePercent < 420);
});

test('developments, gear inches and speeds are the published ones', async () => {
  const text = await readFile(new URL('../reference/data/gear-checks.csv', import.meta.url), 'utf8');
  const [head, ...lines] = text
    .trim()
    .split('\n')
    .map((line) => line.split(','));
  const inMm = { circumference_m: 1000, diameter_in: Math.PI * 25.4, development_m: 1000 };
  const answers = { development: 'developmentM', gear_inches: 'gearInches', speed_kmh: 'speedsKmh' };
  let compared = 0;
  for (const cells of lines) {
    const row = Object.fromEntries(head.map((column, place) => [column, cells[place]]));
    const key = answers[row.quantity];
    if (!key || (row.ring && (Number(row.ring) < 20 || Number(row.ring) > 60))) continue;
    const [gear] = api.gearTable({
      // A development alone is that of a ring and a sprocket of the same size.
      rings: [Number(row.ring || 30)],
      sprockets: [Number(row.sprocket || 30)],
      circumferenceMm: Number(row.wheel_value) * inMm[row.wheel_kind],
      cadencesRpm: [Number(row.cadence_rpm || 60)],
    }).gears;
    const found = key === 'speedsKmh' ? gear[key][0] : gear[key];
    assert.ok(Math.abs(found - Number(row.published)) <= Number(row.tolerance), `${row.id}: ${found}`);
    compared += 1;
  }
  assert.ok(compared >= 31, `${compared} rows`);
});

test('a cassette is known by its ends and its number of sprockets', () => {
  assert.deepEqual(api.cassetteNamed(12, 25, 8), [12, 13, 15, 17, 19, 21, 23, 25]);
  assert.deepEqual(api.cassetteNamed(11, 32, 8), DEMO.sprockets);
  assert.throws(() => api.cassetteNamed(11, 42, 9), /no usual 11-42 has 9 sprockets, only one of 11/);
  assert.throws(() => api.cassetteNamed(11, 33, 11), /no usual cassette is called 11-33/);
  assert.throws(() => api.cassetteNamed(11.5, 32, 11), /first must be a whole number/);
  assert.throws(() => api.cassetteNamed(11, 32), /count must be a whole number/);
});

// A cycling magazine counts 14 overlapping gears and 8 others for 53/39 with an 11-speed 11-25.
test('overlap agrees with a published count', () => {
  const sprockets = [11, 12, 13, 14, 15, 16, 17, 19, 21, 23, 25];
  const found = api.overlap({ rings: [53, 39], sprockets, circumferenceMm: 2096, duplicateTolerancePercent: 1 });
  assert.deepEqual([found.insideCount, found.outsideCount, found.duplicates.length], [14, 8, 3]);
  const same = found.duplicates.find(({ sprocketA, sprocketB }) => sprocketA === 19 && sprocketB === 14);
  assert.ok(same.differencePercent < 0.15);
});

test('comparing swaps with its sides', () => {
  const other = { ...DEMO, rings: [40], cadencesRpm: [80] };
  const [ab, ba] = [api.compare({ a: DEMO, b: other }), api.compare({ a: other, b: DEMO })];
  assert.deepEqual([ab.a, ab.onlyB], [ba.b, ba.onlyA]);
  assert.equal(ab.common.length, ba.common.length);
  assert.equal(ab.a.gearCount, 16);
});

// π(622 + 2 × 32) = 2155.1, and 2155 in published setting tables.
test('a wheel is known by its designation', () => {
  for (const designation of ['32-622', '622-32', '700x32C']) {
    const wheel = api.wheel({ designation });
    assert.ok(Math.abs(wheel.circumferenceMm - 2155.1) < 0.1);
    assert.ok(Math.abs(wheel.diameterMm - 686) < 1e-9);
    assert.equal(wheel.designation, '32-622');
  }
});

// 53/39 with 12-25 needs 27 teeth (a workshop weblog).
test('a cage is checked against what its maker states', () => {
  const asked = { rings: [53, 39], sprockets: [12, 13, 14, 15, 17, 19, 21, 23, 25] };
  assert.deepEqual(api.cageCheck(asked), { neededTeeth: 27, spareTeeth: null, verdict: 'unknown', findings: [] });
  const short = api.cageCheck({ ...asked, totalCapacityTeeth: 26, largestSprocketTeeth: 23 });
  assert.equal(short.spareTeeth, -1);
  assert.equal(short.verdict, 'does-not-fit');
  assert.deepEqual(
    short.findings.map(({ kind }) => kind),
    ['sprocket-too-large', 'avoid-gears'],
  );
  assert.deepEqual(short.findings[1].gears, [{ ring: 39, sprocket: 12 }]);
});

test('what cannot be computed is thrown with a message', () => {
  assert.throws(() => api.gearTable({ ...DEMO, rings: [] }), Error);
  assert.throws(() => api.gearTable({ ...DEMO, sprockets: [15, 13] }), /ascend|order|small/i);
  assert.throws(() => api.gearTable({ ...DEMO, circumferenceMm: NaN }), /circumference/);
  assert.throws(() => api.gearTable({ ...DEMO, cadencesRpm: [Infinity] }), /cadence/);
  assert.throws(() => api.wheel({ designation: '28 inch' }), /ISO/);
  assert.throws(() => api.wheel({}), /designation/);
});
