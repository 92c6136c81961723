// lap, courseFromGpx and search, as a script uses them.

import assert from 'node:assert/strict';
import { readFile } from 'node:fs/promises';
import { test } from 'node:test';
import { API } from './harness.mjs';

const api = await import(new URL('remount.js', API));

const RIDER = { bodyKg: 64, kitKg: 2, powerW: 230 };
const BIKE = { massKg: 9, rings: [44, 31], sprockets: [11, 13, 15, 18, 21, 24, 28, 32], circumferenceMm: 2150 };
const COURSE = {
  stretches: [
    { lengthM: 200, gradientPercent: 0, ground: 'firm grass' },
    { lengthM: 2, gradientPercent: 0, ground: 'firm grass', obstacleS: 1 },
    { lengthM: 30, gradientPercent: 3, ground: 'mud', cornerKmh: 14 },
    { lengthM: 40, gradientPercent: 25, ground: 'mud' },
    { lengthM: 150, gradientPercent: -6, ground: 'packed gravel' },
  ],
};
const fixture = (name) => readFile(new URL(`../reference/data/gpx/${name}.gpx`, import.meta.url), 'utf8');

test('a lap has a plan that covers it, with the obstacle and the wall on foot', () => {
  const lap = api.lap({ rider: RIDER, bike: BIKE, course: COURSE });
  assert.ok(lap.timeLowS <= lap.timeS && lap.timeS <= lap.timeHighS);
  assert.equal(lap.plan[0].fromM, 0);
  assert.ok(Math.abs(lap.plan.at(-1).toM - 422) < 1e-6);
  const feet = lap.plan.filter(({ mode }) => mode === 'foot');
  assert.ok(
    feet.some(({ fromM, toM, reason }) => fromM <= 200 && toM >= 202 && reason === null),
    JSON.stringify(feet),
  );
  assert.ok(
    feet.some(({ fromM, toM, reason }) => fromM > 202 && toM >= 272 - 5 && reason),
    JSON.stringify(feet),
  );
  const inGear = lap.gears.reduce((sum, { timeS }) => sum + timeS, 0);
  const planned = lap.plan.reduce((sum, { timeS }) => sum + timeS, 0);
  assert.ok(Math.abs(planned - lap.timeS) < 1e-6);
  const onFoot = feet.reduce((sum, { timeS }) => sum + timeS, 0);
  assert.ok(onFoot > 5 && Math.abs(onFoot - lap.onFootS) < 0.1 && Math.abs(inGear + lap.onFootS - lap.timeS) < 0.1);
  const end = lap.trace.at(-1);
  assert.ok(Math.abs(end.atM - 422) < 1e-6 && Math.abs(end.timeS - lap.timeS) < 1e-6, 'the trace reaches the line');
  assert.ok(
    lap.dismounts.length > 0 && lap.dismounts.length <= feet.length && lap.dismounts.every(({ mode }) => mode === 'foot'),
  );
  assert.ok(lap.trace.length > 422 / 6 && lap.trace.every(({ speedMs }) => speedMs > 0));
});

test('a lap on a reserve says what it takes, and one at a steady power is as ever', () => {
  const ask = { rider: RIDER, bike: BIKE, course: COURSE };
  const lap = api.lap(ask);
  assert.ok(lap.highestPowerW > 240 && lap.priceSPerJ > 0 && lap.chargedJ > 0);
  assert.ok(Math.abs(lap.chargedJ - lap.repaidJ) < 0.02 * 230 * lap.timeS, 'what is spent comes back by the line');
  assert.deepEqual(
    lap.onFoot.map(({ why }) => why).filter((why) => why === 'obstacle'),
    ['obstacle'],
  );
  assert.ok(lap.trace.every(({ powerW, spentJ }) => powerW >= 0 && Number.isFinite(spentJ)));
  const last = api.lap({ ...ask, effort: { budgetJ: 3000 } });
  assert.ok(last.timeS < lap.timeS && last.priceSPerJ < lap.priceSPerJ);
  assert.ok(api.lap({ ...ask, effort: { repaidShare: 0.7 } }).timeS < api.lap({ ...ask, effort: { repaidShare: 0.3 } }).timeS);
  const steady = api.lap({ ...ask, effort: { model: 'steady' } });
  assert.deepEqual([steady.chargedJ, steady.priceSPerJ, steady.trace[0].powerW], [null, null, null]);
  assert.throws(() => api.lap({ ...ask, effort: { budgetJ: -1 } }), /budget/);
  assert.throws(() => api.lap({ ...ask, effort: { model: 'sprint' } }), /types describe/);
  assert.throws(() => api.lap({ ...ask, draws: 3 }), /draws must be 8 to 64/);
  assert.equal(lap.against, null);
  const same = api.lap({ ...ask, against: BIKE }).against;
  assert.deepEqual([same.gainedS, same.gainedLowS, same.verdict, same.turnedBy], [0, 0, 'alike', []]);
  const hopeless = api.lap({ ...ask, draws: 16, against: { ...BIKE, rings: [56], sprockets: [11] } }).against;
  assert.ok(hopeless.gainedHighS < 0 && hopeless.verdict === 'bike');
  assert.ok(hopeless.turnedBy.every(({ quantity, at, above }) => quantity && at > 0 && above.draws > 0));
});

test('wind counts by the way a stretch leads', () => {
  const round = (turn) => ({
    stretches: [0, 90, 180, 270].map((heading) => ({
      lengthM: 200,
      gradientPercent: 0,
      ground: 'firm grass',
      headingDeg: (heading + turn) % 360,
    })),
  });
  const time = (course, wind) => api.lap({ rider: RIDER, bike: BIKE, course, wind }).timeS;
  const calm = time(round(0));
  const windy = time(round(0), { speedMPerS: 5, fromDeg: 40 });
  assert.ok(windy > calm + 1, `${windy} s in the wind, ${calm} s without`);
  assert.ok(Math.abs(time(round(30), { speedMPerS: 5, fromDeg: 70 }) - windy) < 0.3, 'both turned together');
  const nowhere = { stretches: round(0).stretches.map(({ headingDeg, ...stretch }) => stretch) };
  assert.ok(Math.abs(time(nowhere, { speedMPerS: 5, fromDeg: 40 }) - calm) < 1e-9);
});

test('costlier dismounts make the lap slower', () => {
  const cheap = api.lap({ rider: RIDER, bike: BIKE, course: COURSE, costs: { gettingOffS: 0.5, gettingOnS: 0.5 } });
  const dear = api.lap({ rider: RIDER, bike: BIKE, course: COURSE, costs: { gettingOffS: 5, gettingOnS: 5 } });
  assert.ok(dear.timeS > cheap.timeS + 8);
});

test('a wider tyre makes a lap quicker through mud, and no other', () => {
  const on = (tyreWidthMm, course = COURSE) => api.lap({ rider: RIDER, bike: { ...BIKE, tyreWidthMm }, course }).timeS;
  assert.equal(on(33), on(undefined));
  assert.ok(on(45) < on(33) && on(33) < on(25));
  const dry = { stretches: COURSE.stretches.map((stretch) => ({ ...stretch, ground: 'firm grass' })) };
  assert.equal(on(45, dry), on(25, dry));
});

test('what is wrong is said in words', () => {
  const ask =
    (course, rider = RIDER) =>
    () =>
      api.lap({ rider, bike: BIKE, course });
  assert.throws(ask({ stretches: [] }), /no stretch/);
  assert.throws(
    ask({ stretches: [{ lengthM: 10, gradientPercent: 0, ground: 'lava' }] }),
    /there is no ground “lava”; there are tarmac/,
  );
  assert.throws(ask(COURSE, { ...RIDER, powerW: 5 }), /power/);
  const corner = (cornerKmh) => ask({ stretches: [{ lengthM: 10, gradientPercent: 0, ground: 'mud', cornerKmh }] });
  assert.throws(corner(0), /2\.88 to 90 km\/h/);
  for (const course of [null, undefined, { stretches: null }])
    assert.throws(ask(course), /not of the form that the types describe/);
  const search = (more) => () =>
    api.search({ rider: RIDER, bike: BIKE, course: COURSE, smallestRing: 34, largestRing: 44, ...more });
  assert.throws(search({ smallestRing: 46 }), /smallestRing is larger/);
  assert.throws(search({ pairDifferences: [10, 8] }), /pairDifferences/);
  assert.throws(search({ cassettes: [] }), /cassettes has none/);
  assert.throws(search({ colour: 3 }), /unknown field `colour`/);
});

test('a recorded track becomes a course that can be ridden', async () => {
  const { course, report } = api.courseFromGpx(await fixture('recorded-walk'), { smoothingM: 60, ground: 'mud' });
  assert.ok(report.points > 50 && report.lengthM > 100 && report.smoothingM === 60);
  assert.ok(course.stretches.every(({ ground }) => ground === 'mud'));
  const length = course.stretches.reduce((sum, { lengthM }) => sum + lengthM, 0);
  assert.ok(Math.abs(length - report.lengthM) < 0.01);
  assert.ok(api.lap({ rider: RIDER, bike: BIKE, course }).timeS > 10);
  assert.equal(api.courseFromGpx(await fixture('recorded-walk')).report.smoothingM, 40);
  assert.equal(api.courseFromGpx(await fixture('recorded-walk'), null).report.lapsFromM, 0);
  const walk = await fixture('recorded-walk');
  const part = api.courseFromGpx(walk, { fromM: 100, toM: 250 }).report;
  assert.ok(Math.abs(part.lengthM - 150) < 1, part.lengthM);
  assert.throws(() => api.courseFromGpx(walk, { fromM: 90000 }), /nothing of the track lies between/);
  assert.ok(report.climbWrittenM >= report.climbRecordedM - 1e-9 && report.climbSmoothedM >= report.climbM - 1e-9);
  const read = api.courseFromGpx(walk);
  assert.deepEqual([read.usable, read.notUsableBecause], [true, null]);
  const ridge = Array.from({ length: 60 }, (_, i) => `<trkpt lat="${50 + i * 5e-5}" lon="6"><ele>${5 * i}</ele></trkpt>`).join(
    '',
  );
  const wall = api.courseFromGpx(`<gpx><trk><trkseg>${ridge}</trkseg></trk></gpx>`);
  assert.equal(wall.usable, false);
  assert.match(wall.notUsableBecause, /steeper than 45/);
  for (const text of ['', 'no xml', '<gpx/>', await fixture('without-elevation')]) {
    assert.throws(() => api.courseFromGpx(text), Error, text.slice(0, 20));
  }
});

test('a search reports its progress, ranks what it found and can be stopped', () => {
  const ask = {
    rider: RIDER,
    bike: BIKE,
    course: COURSE,
    smallestRing: 34,
    largestRing: 44,
    pairDifferences: [8, 10],
    cassettes: [BIKE.sprockets, [11, 13, 16, 20, 25, 32, 40]],
  };
  const heard = [];
  const rows = api.search(ask, (done, total) => void heard.push([done, total]));
  assert.deepEqual(heard.at(-1), [rows.length, rows.length]);
  assert.equal(rows.length, (11 + 3 + 2 + 1) * 2);
  assert.ok(rows.every((row, index) => index === 0 || rows[index - 1].scoreS <= row.scoreS));
  assert.ok(rows.some(({ unbeaten }) => unbeaten) && rows.some(({ unbeaten }) => !unbeaten));
  assert.ok(
    rows.every(({ planned }) => planned),
    'so few are all planned in full',
  );
  const { timeS } = api.lap({
    rider: RIDER,
    course: COURSE,
    bike: { ...BIKE, rings: rows[0].rings, sprockets: rows[0].sprockets },
  });
  assert.ok(Math.abs(rows[0].timeS - timeS) < 1e-9);
  const few = api.search({ ...ask, rings: [36, 40, 44], sprocketCounts: [8] });
  assert.deepEqual([...new Set(few.map(({ rings }) => rings.join('/')))].sort(), ['36', '40', '44', '44/36']);
  assert.ok(few.every(({ sprockets }) => sprockets.length === 8));
  assert.throws(() => api.search({ ...ask, sprocketCounts: [3] }), /leave nothing to try/);
  const most = { ...ask, smallestRing: 30, largestRing: 50, cassettes: undefined };
  const stopped = api.search(most, () => false);
  assert.ok(stopped.length > 0 && stopped.length <= 50);
  assert.throws(
    () =>
      api.search(ask, () => {
        throw new Error('no');
      }),
    /callback/,
  );
});
