// combine, as a script uses it: against chain, cageCheck and lap called one by one.

import assert from 'node:assert/strict';
import { test } from 'node:test';
import { API } from './harness.mjs';

const api = await import(new URL('remount.js', API));

const RIDER = { bodyKg: 66, kitKg: 2, powerW: 240 };
const BIKE = { massKg: 9, rings: [44, 32], sprockets: [11, 13, 15, 18, 21, 24, 28, 32], circumferenceMm: 2130 };
const COURSE = {
  stretches: [
    { lengthM: 90, gradientPercent: 0, ground: 'firm grass' },
    { lengthM: 35, gradientPercent: 14, ground: 'firm grass' },
    { lengthM: 80, gradientPercent: -6, ground: 'packed gravel' },
  ],
};
const BOX = {
  chainsets: [[50, 34], [44, 32], [40]],
  cassettes: [
    [11, 13, 15, 18, 21, 24, 28, 32],
    [11, 13, 15, 17, 20, 23, 26, 30],
    [12, 14, 16, 18, 21, 26, 32, 38],
  ],
  derailleurs: [
    { totalCapacityTeeth: 33, largestSprocketTeeth: 32, chainringDifferenceTeeth: 16 },
    { totalCapacityTeeth: 36, largestSprocketTeeth: 36, chainringDifferenceTeeth: 12, pulleyCentresMm: 73 },
  ],
  chainLinks: [110, 104],
};
const ASK = { box: BOX, rider: RIDER, bike: BIKE, course: COURSE };

test('every combination is there once, the quickest first, with the lap that lap itself gives', () => {
  const heard = [];
  const { fitting, notFitting, lead, overBike } = api.combine(ASK, (done, total) => void heard.push([done, total]));
  assert.equal(new Set([...fitting, ...notFitting].map((it) => [it.chainset, it.cassette, it.derailleur].join())).size, 18);
  assert.equal(fitting.length + notFitting.length, 18);
  assert.ok(fitting.length > 3 && notFitting.length > 3);
  assert.ok(fitting.every(({ lapS }, at) => at === 0 || lapS >= fitting[at - 1].lapS));
  const bikeOf = ({ chainset, cassette, gearsToAvoid }) => ({
    ...BIKE,
    rings: BOX.chainsets[chainset],
    sprockets: BOX.cassettes[cassette],
    gearsToAvoid,
  });
  for (const row of fitting) {
    const lap = api.lap({ rider: RIDER, bike: bikeOf(row), course: COURSE });
    assert.ok(row.planned && Math.abs(lap.timeS - row.lapS) < 1e-6, `${row.lapS} s, alone ${lap.timeS} s`);
  }
  const ofBike = api.lap({ rider: RIDER, bike: BIKE, course: COURSE }).timeS;
  assert.ok(Math.abs(overBike.gainS - (ofBike - fitting[0].lapS)) < 1e-6);
  assert.ok(lead.gainLowS <= lead.gainS && lead.gainS <= lead.gainHighS && lead.gainS >= 0);
  const [done, total] = heard.at(-1);
  assert.ok(done === total && done > 18 && heard.every(([before, of]) => before <= of));
});

test('what fits and what does not is what cageCheck and chain say', () => {
  const { fitting, notFitting } = api.combine(ASK);
  const check = ({ chainset, cassette, derailleur }) => {
    const { pulleyCentresMm, ...figures } = BOX.derailleurs[derailleur];
    return api.cageCheck({ rings: BOX.chainsets[chainset], sprockets: BOX.cassettes[cassette], ...figures });
  };
  const WHY = {
    rings: 'ring-difference-too-large',
    'largest-sprocket': 'sprocket-too-large',
    'smallest-sprocket': 'sprocket-too-small',
    cage: 'longer-cage',
  };
  for (const row of notFitting) {
    assert.ok(
      check(row).findings.some(({ kind }) => kind === WHY[row.why]),
      JSON.stringify(row),
    );
  }
  for (const row of fitting) {
    const { verdict, findings, spareTeeth } = check(row);
    const avoid = findings.flatMap(({ gears }) => gears.map(({ ring, sprocket }) => [ring, sprocket]));
    assert.notEqual(verdict, 'does-not-fit');
    assert.deepEqual([row.gearsToAvoid, row.spareTeeth], [avoid, spareTeeth]);
  }
  const cage = { guideTeeth: 11, tensionTeeth: 11, gapMm: 12.5, guideAngleDeg: 10, rearStopDeg: -75, foreStopDeg: 65 };
  for (const row of fitting.filter(({ derailleur }) => derailleur === 1)) {
    const { shortestLinks, recommendedLinks } = api.chain({
      rings: BOX.chainsets[row.chainset],
      sprockets: BOX.cassettes[row.cassette],
      chainstayMm: 425,
      bottomBracketDropMm: 65,
      cage: { ...cage, pulleyCentresMm: 73 },
    });
    assert.ok(row.links >= shortestLinks && row.links <= recommendedLinks, JSON.stringify(row));
    if (row.chain === null) assert.ok(shortestLinks > 110);
    else assert.ok(BOX.chainLinks[row.chain] >= row.links);
  }
});

test('what is left out of a box is the bike’s, or not checked', () => {
  const { fitting, notFitting } = api.combine({ ...ASK, box: {} });
  assert.deepEqual(notFitting, []);
  assert.deepEqual(
    fitting.map(({ chainset, cassette, derailleur, chain }) => [chainset, cassette, derailleur, chain]),
    [[0, 0, null, null]],
  );
  const mounted = (mount) => api.combine({ ...ASK, box: { chainsets: BOX.chainsets }, mount }).notFitting.map(({ why }) => why);
  assert.deepEqual(mounted({ largestRingTeeth: 42 }), ['frame', 'frame']);
  assert.deepEqual(mounted({ sprocketCount: 11 }), ['sprocket-count', 'sprocket-count', 'sprocket-count']);
  const front = [{ largestRingTeeth: 46, chainringDifferenceTeeth: 14 }];
  const shifted = api.combine({ ...ASK, box: { chainsets: BOX.chainsets, frontDerailleurs: front } });
  assert.deepEqual(
    shifted.notFitting.map(({ chainset, why }) => [chainset, why]),
    [[0, 'rings']],
  );
  const steady = api.combine({ ...ASK, effort: { model: 'steady' } }).fitting[0];
  const bike = {
    ...BIKE,
    rings: BOX.chainsets[steady.chainset],
    sprockets: BOX.cassettes[steady.cassette],
    gearsToAvoid: steady.gearsToAvoid,
  };
  const alone = api.lap({ rider: RIDER, bike, course: COURSE, effort: { model: 'steady' } });
  assert.ok(Math.abs(alone.timeS - steady.lapS) < 1);
});

test('what is worth buying gains, and more of it no less', () => {
  const box = { chainsets: [[50]], cassettes: [[11, 12, 13, 15, 17, 19, 21, 24]], derailleurs: [BOX.derailleurs[0]] };
  const bought = (budgetParts) => api.combine({ ...ASK, box, usualParts: true, budgetParts });
  const one = bought(1);
  assert.ok(one.purchases.length > 1 && one.purchases.length <= 3);
  for (const { parts, lapS, gainS, gainLowS, gainHighS } of one.purchases) {
    assert.equal(parts.length, 1);
    assert.ok(Math.abs(gainS - (one.fitting[0].lapS - lapS)) < 1e-6 && gainLowS <= gainS && gainS <= gainHighS);
    const { chainset, cassette, derailleur } = parts[0];
    assert.equal([chainset, cassette, derailleur].filter((part) => part !== null).length, 1);
  }
  assert.ok(one.purchases[0].gainLowS > 0);
  assert.ok(bought(2).purchases[0].lapS < one.purchases[0].lapS + 0.2);
  assert.deepEqual(bought(undefined), one);
  assert.deepEqual(api.combine({ ...ASK, box }).purchases, []);
  assert.throws(() => bought(4), /budgetParts must be 1 to 3/);
});

test('the choice with the least regret is named', () => {
  const { fitting, robust } = api.combine({ ...ASK, robust: true });
  assert.equal(robust.conditions.length, 6);
  const least = Math.min(...robust.choices.map(({ regretS }) => regretS));
  const chosen = robust.choices.find(({ fitting }) => fitting === robust.leastRegret);
  assert.ok(chosen.regretS === least && fitting[robust.leastRegret]);
  assert.ok(robust.choices.every(({ behindS, regretS }) => Math.max(...behindS) === regretS));
  const mud = { stretches: COURSE.stretches.map((stretch) => ({ ...stretch, ground: 'mud' })) };
  const two = api.combine({ ...ASK, courses: [{ course: mud, weight: 5 }] }).robust;
  assert.notDeepEqual(two.choices, robust.choices);
  assert.equal(api.combine(ASK).robust, null);
});

test('it can be stopped, and what is wrong is said', () => {
  const stopped = api.combine({ ...ASK, usualParts: true, robust: true }, () => false);
  assert.deepEqual([stopped.purchases, stopped.robust, stopped.lead], [[], null, null]);
  const ask = (more) => () => api.combine({ ...ASK, ...more });
  assert.throws(ask({ smallestRing: 3 }), /smallestRing is not known here/);
  assert.throws(ask({ box: { rings: [] } }), /rings is not known here/);
  assert.throws(ask({ box: { derailleurs: [{ teeth: 3 }] } }), /teeth is not known here/);
  assert.throws(ask({ box: { chainsets: [] } }), /chainsets or cassettes has none/);
  assert.throws(ask({ box: { chainLinks: [111] } }), /cannot be closed/);
  assert.throws(ask({ box: { chainsets: [[9]] } }), /chainring must be/);
  assert.throws(ask({ courses: [{ course: COURSE, weight: 0 }] }), /weight of a course must be/);
  assert.throws(
    () =>
      api.combine(ASK, () => {
        throw new Error('mine');
      }),
    /the progress callback threw/,
  );
});
