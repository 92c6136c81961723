// rideOrRun against the reference tables, which two independent implementations agree on to 1e-14.

import assert from 'node:assert/strict';
import { readFile } from 'node:fs/promises';
import { test } from 'node:test';
import { API } from './harness.mjs';

const api = await import(new URL('remount.js', API));
await api.default();

const TOLERANCE = 1e-4;
const GROUNDS = { firm_grass: { crr: 0.03, footFactor: 1.1 }, mud: { crr: 0.08, footFactor: 1.5 } };
/** Gear and energy only, as the tables were worked out. */
const NO_LIMITS = { balance: false, grip: false, force: false };

async function rows(name) {
  const text = await readFile(new URL(`../reference/data/${name}.csv`, import.meta.url), 'utf8');
  const [head, ...lines] = text
    .trim()
    .split('\n')
    .filter((line) => !line.startsWith('#'))
    .map((line) => line.trim().split(','));
  return lines.map((cells) => Object.fromEntries(head.map((column, index) => [column, cells[index]])));
}

function ask({ surface, ring = 36, sprocket = 32, lowestCadenceRpm = 50, ...more }) {
  return api.rideOrRun({
    rider: { bodyKg: 70, kitKg: 2, powerW: 250, lowestCadenceRpm },
    bike: { massKg: 8.5, rings: [ring], sprockets: [sprocket] },
    ground: GROUNDS[surface],
    limits: NO_LIMITS,
    gradients: [],
    ...more,
  });
}

const close = (actual, expected, what) =>
  assert.ok(Math.abs(actual - Number(expected)) <= TOLERANCE, `${what}: ${actual} is not ${expected}`);

test('speeds, gait and cadence are those of the table', async () => {
  const table = await rows('speeds-reference');
  assert.ok(table.length >= 18);
  for (const row of table) {
    const gradient = Number(row.gradient_rise_over_run);
    const [answer] = ask({ surface: row.surface, gradients: [gradient] }).rows;
    close(answer.rideMs, row.v_ride_power_limited_m_per_s, 'ride');
    close(answer.footMs, row.v_foot_m_per_s, 'foot');
    close(answer.ratio, row.foot_over_ride_ratio, 'ratio');
    assert.equal(answer.gait, row.foot_gait);
    assert.ok(Math.abs(answer.cadenceRpm - Number(row.cadence_36x32_rpm)) < 0.006);
    const forced = row.decision_36x32_min50rpm === 'foot_gear';
    assert.deepEqual(answer.limits, forced ? ['gear'] : []);
    assert.equal(answer.verdict === 'foot-forced', forced);
    assert.ok(answer.ratioLow < answer.ratio && answer.ratio < answer.ratioHigh);
  }
});

test('one climb at a steady power gets its advice, forcing at the slowest that gear and balance allow', () => {
  const advised = (rings, sprockets) => {
    const [{ advice }] = api.rideOrRun({
      rider: { bodyKg: 62, kitKg: 2, powerW: 220, lowestCadenceRpm: 55 },
      bike: { massKg: 8.9, rings, sprockets, circumferenceMm: 2161 },
      ground: { surface: 'wet soft grass' },
      gradients: [0.09],
      climb: { lengthM: 60, reserveKj: 18, entrySpeedMs: 20 / 3.6 },
    }).rows;
    return advice;
  };
  const a = advised([50, 34], [11, 12, 13, 14, 15, 17, 19, 21, 24, 27, 30]);
  assert.equal(a.advice, 'force');
  assert.deepEqual([a.forcedW, a.bikeS, a.footS].map(Math.round), [236, 27, 36]);
  const b = advised([44, 32], [11, 12, 13, 14, 16, 18, 20, 22, 25, 28, 32]);
  assert.deepEqual([b.advice, b.forcedW, Math.round(b.bikeS)], ['ride', null, 29]);
  assert.equal(ask({ surface: 'mud', gradients: [0.1] }).rows[0].advice, null);
});

/** One row of the table of climbs on a budget. */
const climbed = (row, more) =>
  api.climb({
    rider: { bodyKg: Number(row.body_kg), kitKg: Number(row.kit_kg), powerW: Number(row.CP_W), peakPowerW: Number(row.Pmax_W) },
    bike: {
      massKg: Number(row.bike_kg),
      rings: [Number(row.ring)],
      sprockets: row.sprockets.split('-').map(Number),
      circumferenceMm: 2100,
    },
    ground: { surface: row.ground.replaceAll('_', ' ') },
    gradientPercent: 100 * Number(row.gradient),
    lengthM: Number(row.length_m),
    budgetJ: Number(row.B_J),
    ...more,
  });

const near = (actual, expected, what) =>
  assert.ok(Math.abs(actual / Number(expected) - 1) <= 1e-3, `${what}: ${actual} is not ${expected}`);

test('a climb on a budget goes as fast as the table says', async () => {
  const table = await rows('lap-model/single-climb');
  assert.ok(table.length >= 72);
  for (const row of table) {
    const { ride, foot, verdict } = climbed(row);
    near(foot.timeS, row.foot_s, 'time on foot');
    near(foot.speedMPerS, row.foot_m_per_s, 'speed on foot');
    near(foot.powerW, row.foot_W, 'power on foot');
    assert.equal(ride === null, row.ride_s === '');
    assert.equal(verdict === 'foot-forced', ride === null);
    if (ride === null) continue;
    near(ride.timeS, row.ride_s, 'time');
    near(ride.speedMPerS, row.ride_m_per_s, 'speed');
    near(ride.powerW, row.ride_W, 'power');
    near(ride.cadenceRpm, row.ride_rpm, 'cadence');
    assert.deepEqual([ride.ring, ride.sprocket], [Number(row.ring), Number(row.sprocket_used)]);
  }
});

test('a climb takes what is left out from the model, and balance where it is asked for', async () => {
  const [row] = (await rows('lap-model/single-climb')).filter(({ sprockets }) => sprockets.endsWith('30'));
  const time = (more) => climbed(row, more).ride?.timeS ?? null;
  const reserve = (reserveKj) => ({ rider: { bodyKg: 62, kitKg: 2, powerW: 220, reserveKj }, budgetJ: undefined });
  assert.ok(time(reserve(20)) < time(reserve(10)), 'a fifth of the reserve');
  assert.equal(time(reserve(10)), time({ ...reserve(10), budgetJ: 2000 }));
  const bike = { massKg: 9, rings: [30], sprockets: [12, 16, 22, 30, 40] };
  const steep = { bike, ground: { surface: 'firm grass' }, gradientPercent: 25, budgetJ: 0 };
  const { ride } = climbed(row, steep);
  assert.ok(ride.speedMPerS > 0.8 && ride.speedMPerS < 1.2);
  assert.equal(time({ ...steep, limits: { balance: false } }), ride.timeS);
  assert.equal(time({ ...steep, limits: {} }), null);
  assert.equal(time({ ...steep, bike: { ...bike, gearsToAvoid: [[30, 40]] } }), null);
  const priced = (priceSPerJ) => time({ budgetJ: 4000, priceSPerJ });
  assert.equal(priced(0), time({ budgetJ: 4000 }), 'for nothing all of it is spent');
  assert.ok(priced(0) < priced(0.002) && priced(0.002) < priced(0.004) && priced(0.1) < time({ budgetJ: 0 }) + 1e-4);
  assert.throws(() => climbed(row, { priceSPerJ: -1 }), /price of a joule must be 0 to 0\.1 s\/J/);
  assert.throws(() => climbed(row, { budgetJ: -1 }), /budget of the effort must be 0 to 50000 J/);
  assert.throws(() => climbed(row, { budgetKj: 1 }), /budgetKj is not known here; .*budgetJ/);
  assert.throws(() => climbed(row, { gradientPercent: 46 }), /slope must be 0 to 45/);
});

test('a rider’s own peak and reserve take the place of the estimates', () => {
  const asked = (rider, climb) =>
    api.rideOrRun({
      rider: { bodyKg: 62, kitKg: 2, powerW: 220, lowestCadenceRpm: 55, ...rider },
      bike: { massKg: 8.9, rings: [50, 34], sprockets: [11, 14, 18, 23, 30], circumferenceMm: 2161 },
      ground: { surface: 'wet soft grass' },
      gradients: [0.09],
      climb: { lengthM: 60, ...climb },
    }).rows[0];
  assert.deepEqual(asked({}).limits, ['gear']);
  assert.deepEqual(asked({ peakPowerW: 450 }).limits, ['gear', 'force']);
  assert.deepEqual(asked({ reserveKj: 18 }), asked({}, { reserveKj: 18 }));
  assert.deepEqual(
    [18, 1].map((reserveKj) => asked({ reserveKj }).advice.forcedW !== null),
    [true, false],
  );
  assert.throws(() => asked({ peakPowerW: 100 }), /peak power must be 200 to 8000 W/);
});

test('the crossover is that of the table', async () => {
  const table = await rows('crossover-reference');
  assert.ok(table.length >= 18);
  for (const row of table) {
    const { crossover } = ask({
      surface: row.surface,
      ring: Number(row.chainring_teeth),
      sprocket: Number(row.sprocket_teeth),
      lowestCadenceRpm: Number(row.min_cadence_rpm),
    });
    close(crossover.gearGradient, row.i_gear, 'gear');
    close(crossover.energyGradient, row.i_energy, 'energy');
    close(crossover.flipGradient, row.flip_gradient, 'flip');
    assert.equal(crossover.reason, row.flip_reason);
    const speed = row.flip_reason === 'gear' ? row.v_min_m_per_s : row.v_at_i_energy_m_per_s;
    close(crossover.speedMs, speed, 'speed');
  }
});

test('only masses, power, rings, sprockets and gradients are needed', () => {
  const { rows, crossover } = api.rideOrRun({
    rider: { bodyKg: 61, kitKg: 2, powerW: 215 },
    bike: { massKg: 9, rings: [44, 31], sprockets: [11, 14, 18, 23, 30] },
    gradients: [0, 0.4],
  });
  assert.deepEqual(
    rows.map(({ verdict }) => verdict),
    ['ride', 'foot-forced'],
  );
  assert.ok(rows[1].limits.includes('balance'));
  assert.deepEqual([rows[1].ring, rows[1].sprocket], [31, 30]);
  assert.ok(crossover.flipGradient > 0 && crossover.flipGradient < 0.4);
});

test('a surface gives what is left out, its rolling resistance by the width of the tyre', () => {
  const ride = (ground, tyreWidthMm) =>
    api.rideOrRun({
      rider: { bodyKg: 64, kitKg: 2, powerW: 230 },
      bike: { massKg: 9, rings: [40], sprockets: [11, 15, 20, 28], tyreWidthMm },
      ground,
      gradients: [0.05],
    }).rows[0].rideMs;
  assert.ok(ride({ surface: 'mud' }, 40) > ride({ surface: 'mud' }, 33));
  assert.equal(ride({ surface: 'mud' }, 33), ride({ surface: 'mud' }));
  assert.equal(ride({ surface: 'mud', crr: 0.08 }, 40), ride({ surface: 'mud', crr: 0.08 }, 25));
  assert.equal(ride({ surface: 'firm grass' }, 40), ride(undefined, 25));
  assert.throws(() => ride({ surface: 'lava' }), /there is no ground “lava”/);
});

test('slick ground bites through its grip, and null stands for no crossover', () => {
  const slick = ask({
    surface: 'firm_grass',
    ring: 24,
    sprocket: 50,
    limits: {},
    ground: { crr: 0.03, footFactor: 1.1, frictionMu: 0.2 },
    gradients: [0.12],
  });
  assert.equal(slick.crossover.reason, 'grip');
  close(slick.crossover.flipGradient, 0.1008, 'slip');
  assert.deepEqual(slick.rows[0].limits, ['grip']);
  const easy = ask({ ring: 20, sprocket: 60, lowestCadenceRpm: 20, ground: { crr: 0.004, footFactor: 2 } });
  assert.deepEqual(easy.crossover, { gearGradient: null, energyGradient: null, flipGradient: null, reason: null, speedMs: null });
});

test('what nobody measured is refused in plain words', () => {
  for (const gradient of [-0.05, 0.46]) {
    assert.throws(() => ask({ surface: 'mud', gradients: [gradient] }), /slope must be 0 to 45/);
  }
  assert.throws(() => ask({ surface: 'mud', rider: { bodyKg: 150, kitKg: 2, powerW: 30 } }), /hardly more than standing/);
});

const rider = (powerW) => ({ bodyKg: 80, kitKg: 2, powerW });

test('a stronger rider does not end riding earlier', () => {
  const flips = [250, 350, 480, 501, 600, 1200, 2000].map((powerW) => {
    const bike = { massKg: 8.5, rings: [39], sprockets: [28] };
    const { crossover, rows } = api.rideOrRun({ rider: rider(powerW), bike, limits: { grip: false }, gradients: [0] });
    assert.deepEqual(rows[0].limits, [], `${powerW} W on the level`);
    for (const value of Object.values(crossover)) assert.ok(typeof value !== 'number' || Number.isFinite(value));
    return crossover.gearGradient ?? Infinity;
  });
  assert.deepEqual(
    flips,
    flips.toSorted((a, b) => a - b),
  );
});

test('a gear that spins out is held back, and its verdict goes by that', () => {
  const { rows, crossover } = ask({
    surface: 'firm_grass',
    ring: 24,
    sprocket: 50,
    gradients: [0, 0.15, 0.4],
    rider: { bodyKg: 70, kitKg: 2, powerW: 250 },
  });
  assert.ok(rows[0].heldMs < rows[0].footMs && rows[0].footMs < rows[0].rideMs);
  assert.equal(rows[0].verdict, 'foot');
  assert.equal(rows[1].heldMs, rows[1].rideMs);
  assert.equal(rows[2].heldMs, null);
  close(crossover.flipGradient, 0.189, 'first end uphill');
});

test('undefined counts as left out', () => {
  const plain = ask({ surface: 'mud', gradients: [0.1], limits: {}, ground: {} });
  const bare = ask({ surface: 'mud', gradients: [0.1], limits: undefined, ground: undefined, air: undefined });
  assert.deepEqual(bare, plain);
  assert.deepEqual(ask({ surface: 'mud', gradients: [0.1], limits: {}, ground: { crr: undefined } }), plain);
});

test('a key that is not known is refused by name, however deep and in every function', () => {
  assert.throws(() => ask({ surface: 'mud', gradient: [0.1] }), /gradient is not known here; known are rider, bike/);
  assert.throws(() => ask({ surface: 'mud', ground: { frictionMU: 0.3 } }), /frictionMU is not known here; .*frictionMu/);
  const table = { rings: [40], sprockets: [11, 30], circumferenceMm: 2100 };
  assert.throws(() => api.gearTable({ ...table, cadenceRpm: [80] }), /cadenceRpm/);
  assert.deepEqual(api.gearTable({ ...table, cadencesRpm: undefined }), api.gearTable(table));
  const stretches = [{ lengthM: 100, gradientPercent: 2, ground: 'mud', cornerKmH: 20 }];
  const bike = { massKg: 8.5, rings: [39], sprockets: [28] };
  assert.throws(() => api.lap({ rider: rider(250), bike, course: { stretches } }), /cornerKmH is not known here; .*cornerKmh/);
});

test('what is no object is refused', () => {
  for (const nothing of [7, null, undefined]) assert.throws(() => api.rideOrRun(nothing), /one object/);
  assert.throws(() => ask({ surface: 'mud', gradients: 0.1 }), /in gradients: a list .* is expected, not 0\.1/);
});

test('what does not fit is named by its place', () => {
  const bike = { massKg: 8.5, rings: [36], sprockets: [32] };
  const whole = { rider: rider(250), bike, gradientsPercent: [10] };
  const wrong = (more, words) => assert.throws(() => api.rideOrRun({ ...whole, ...more }), words);
  wrong(
    { bike: { ...bike, rings: [44, '32'] } },
    /in bike\.rings\[1\]: a whole number of 0 or more is expected, not the text "32"/,
  );
  wrong({ rider: { ...rider(250), bodyKg: null } }, /in rider\.bodyKg: a number is expected, not null/);
  wrong({ rider: {} }, /in rider: bodyKg is missing/);
  wrong({ gradientsPercent: [5, 60] }, /in gradientsPercent\[1\]: slope must be 0 to 45/);
  wrong({ gradients: [0.1] }, /either gradientsPercent or gradients/);
});

test('a slope in percent is the same as a fraction', () => {
  const bike = { massKg: 8.5, rings: [36], sprockets: [32] };
  const one = (more) => api.rideOrRun({ rider: rider(250), bike, ...more }).rows[0];
  assert.deepEqual(one({ gradientsPercent: [12] }), one({ gradients: [0.12] }));
  assert.equal(one({ gradients: [0.12] }).gradientPercent, 12);
});

test('the gear’s limit and the speed below which running wins are two numbers', () => {
  const climb = { lengthM: 40, dismountRemountS: 3 };
  const { rows, gearLimit, running, crossover, likelyShare } = ask({ surface: 'mud', gradients: [0.12], climb });
  close(gearLimit.speedMs, ((2.095 * 36) / 32) * (50 / 60), 'gear limit');
  close(gearLimit.gradient, crossover.gearGradient, 'its slope');
  assert.ok(gearLimit.flipLow < crossover.flipGradient && crossover.flipGradient < gearLimit.flipHigh);
  const [row] = rows;
  close(row.crossoverSpeedMs, 40 / (40 / row.footMs + 3), 'running wins below');
  assert.ok(row.crossoverSpeedLowMs < row.crossoverSpeedMs && row.crossoverSpeedMs < row.crossoverSpeedHighMs);
  assert.ok(row.crossoverSpeedMs < gearLimit.speedMs);
  assert.ok(running.gradientLow < running.gradient && likelyShare === 0.75);
  const long = ask({ surface: 'mud', gradients: [0.12] });
  close(long.rows[0].crossoverSpeedMs, row.footMs, 'without dismount');
  close(long.running.gradient, crossover.energyGradient, 'the same energy');
  assert.throws(() => ask({ surface: 'mud', climb: { length: 40 } }), /length is not known here/);
});
