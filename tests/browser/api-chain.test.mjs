// The chain from JavaScript: the answers, the states, and errors in plain words.

import assert from 'node:assert/strict';
import { readFile } from 'node:fs/promises';
import { before, test } from 'node:test';
import { API } from './harness.mjs';

const api = await import(new URL('remount.js', API));

const CAGE = {
  pulleyCentresMm: 75,
  guideTeeth: 11,
  tensionTeeth: 11,
  gapMm: 12.5,
  guideAngleDeg: 10,
  rearStopDeg: -75,
  foreStopDeg: 65,
};
const FRAME = { chainstayMm: 425, bottomBracketDropMm: 65 };
const BIKE = { rings: [44, 31], sprockets: [11, 13, 15, 18, 21, 24, 28, 32], ...FRAME, cage: CAGE };

before(() => api.default());

test('chain gives the window, the chain to fit and every gear', () => {
  const answer = api.chain(BIKE);
  assert.deepEqual(Object.keys(answer), [
    'shortestLinks',
    'longestLinks',
    'shortestExactLinks',
    'longestExactLinks',
    'recommendedLinks',
    'bigBigPlusTwoLinks',
    'capacityTeeth',
    'gears',
  ]);
  assert.equal(answer.recommendedLinks, 108);
  assert.equal(answer.gears.length, 16);
  assert.deepEqual(Object.keys(answer.gears[0]), ['ring', 'sprocket', 'cageAngleDeg', 'linksOver', 'state', 'chainAngleDeg']);
  for (const { cageAngleDeg, linksOver, state } of answer.gears) {
    assert.ok(cageAngleDeg > -75 && cageAngleDeg < 65);
    assert.equal(linksOver, 0);
    assert.equal(state, 'comfortable');
  }
});

async function reference(name) {
  const table = new URL(`../reference/data/${name}.csv`, import.meta.url);
  const [header, ...lines] = (await readFile(table, 'utf8'))
    .trim()
    .split('\n')
    .map((line) => line.split(','));
  return lines.map((line) => Object.fromEntries(header.map((name, place) => [name, line[place]])));
}

test('shortest and longest chain and the capacity are those of the reference', async () => {
  const rows = (await reference('chain-reference')).filter(({ kind }) => kind === 'capacity');
  assert.equal(rows.length, 4);
  for (const row of rows) {
    const of = (name) => Number(row[name]);
    const answer = api.chain({
      rings: [of('ring_large'), of('ring_small')],
      sprockets: [of('sprocket_small'), of('sprocket_large')],
      chainstayMm: of('chainstay'),
      bottomBracketDropMm: of('bb_drop'),
      cage: { ...CAGE, pulleyCentresMm: of('cage') },
    });
    assert.deepEqual([answer.shortestLinks, answer.longestLinks], [of('shortest_even'), of('longest_even')], row.id);
    assert.ok(Math.abs(answer.shortestExactLinks - of('shortest_links')) < 1e-4, row.id);
    assert.ok(Math.abs(answer.longestExactLinks - of('longest_links')) < 1e-4, row.id);
    assert.ok(Math.abs(answer.capacityTeeth - of('capacity_teeth')) < 1e-3, row.id);
  }
});

test('the reference set-up with a short cage comes out link for link', async () => {
  const rows = await reference('chain-gear-table-46-33-11-34-short-cage');
  const numbers = (name) => [...new Set(rows.map((row) => Number(row[name])))].sort((a, b) => a - b);
  const { gears } = api.chain({
    ...FRAME,
    rings: numbers('ring'),
    sprockets: numbers('sprocket'),
    cage: { ...CAGE, pulleyCentresMm: 55 },
    links: Number(rows[0].links),
  });
  let compared = 0;
  for (const row of rows) {
    const gear = gears.find(({ ring, sprocket }) => ring === Number(row.ring) && sprocket === Number(row.sprocket));
    if (row.cage_angle_deg) assert.ok(Math.abs(gear.cageAngleDeg - Number(row.cage_angle_deg)) < 0.001, JSON.stringify(row));
    else assert.equal(gear.cageAngleDeg, null);
    assert.ok(Math.abs(gear.linksOver - (Number(row.long_by_links) - Number(row.short_by_links))) < 0.006, JSON.stringify(row));
    compared += 1;
  }
  assert.equal(compared, 22);
});

test('states are words, and beyond the forward limit no angle is given', () => {
  const at = (links) => api.chain({ ...BIKE, links }).gears.find(({ ring, sprocket }) => ring === 44 && sprocket === 32);
  const early = { ...BIKE, cage: { ...CAGE, foreStopDeg: 60 } };
  const tight = api.chain({ ...early, links: 108 }).gears.find(({ ring, sprocket }) => ring === 44 && sprocket === 32);
  assert.equal(tight.state, 'tight-but-usual');
  assert.equal(tight.cageAngleDeg, null);
  assert.ok(tight.linksOver < 0);
  assert.equal(at(102).state, 'too-tight');
  const { gears } = api.chain({ ...BIKE, links: 116 });
  const slack = gears.find(({ ring, sprocket }) => ring === 31 && sprocket === 11);
  assert.equal(slack.state, 'slack');
  assert.ok(slack.linksOver > 0 && slack.cageAngleDeg === null);
});

test('chainLength is the path at one cage angle', () => {
  const { lengthMm, lengthLinks } = api.chainLength({ ring: 46, sprocket: 28, ...FRAME, cage: CAGE, cageAngleDeg: 0 });
  assert.ok(Math.abs(lengthMm - 1472.8451) < 0.001, `${lengthMm}`);
  assert.ok(Math.abs(lengthLinks - lengthMm / 12.7) < 1e-9);
});

test('a chain length solved for its angle gives the links back', () => {
  const { gears, recommendedLinks } = api.chain(BIKE);
  for (const { ring, sprocket, cageAngleDeg } of gears) {
    const { lengthLinks } = api.chainLength({ ring, sprocket, ...FRAME, cage: CAGE, cageAngleDeg });
    assert.ok(Math.abs(lengthLinks - recommendedLinks) < 1e-6);
  }
});

test('what cannot be is refused in plain words', () => {
  assert.throws(() => api.chain({ ...BIKE, links: 109 }), /cannot be closed/);
  assert.throws(() => api.chain({ ...BIKE, chainstayMm: 42 }), /chainstay length must be 350 to 550 mm/);
  assert.throws(
    () => api.chain({ ...BIKE, cage: { ...CAGE, pulleyCentresMm: 30 } }),
    /guide pulley and tension pulley run into each other/,
  );
  assert.throws(
    () => api.chainLength({ ring: 44, sprocket: 32, ...FRAME, cage: CAGE, cageAngleDeg: 120 }),
    /cage angle must be −90 to 90/,
  );
});
