// Tyre and position through the JavaScript module, against rows of the sourced tables in tests/reference/data.

import assert from 'node:assert/strict';
import { readFile } from 'node:fs/promises';
import { before, test } from 'node:test';
import { API } from './harness.mjs';

const api = await import(new URL('remount.js', API));

before(() => api.default());

/** The rows of a table without quoted cells in the columns used, numbers as numbers. */
async function rows(name) {
  const text = await readFile(new URL(`../reference/data/${name}.csv`, import.meta.url), 'utf8');
  const [head, ...lines] = text
    .trim()
    .split('\n')
    .map((line) => line.trim().split(/,(?=(?:[^"]*"[^"]*")*[^"]*$)/));
  const value = (cell) => (cell === '' || Number.isNaN(Number(cell)) ? cell : Number(cell));
  return lines.map((line) => Object.fromEntries(head.map((column, index) => [column, value(line[index] ?? '')])));
}

const near = (found, expected, within, what) =>
  assert.ok(Math.abs(found - expected) <= within, `${what}: ${found}, expected ${expected}`);

test('the width of a tyre and its verdict', async () => {
  const table = await rows('tyre-width-examples');
  for (const row of table) {
    const { mountedMm, arcMm, verdict } = api.tyreWidth({
      labelMm: row.label_mm,
      rimInnerMm: row.rim_inner_mm || 18,
      measuringRimMm: row.measuring_rim_mm || undefined,
      limitMm: row.limit_mm,
      construction: row.construction === 'tubular' ? 'tubular' : 'clincher',
    });
    near(mountedMm, row.linear_mm, 0.0501, 'linear');
    if (row.arc_mm !== '') near(arcMm, row.arc_mm, 0.001, 'arc');
    assert.equal(verdict, row.verdict.replace(' ', '-'));
  }
  assert.ok(table.length >= 18);
});

test('the air spring', async () => {
  const table = await rows('tyre-air-spring-examples');
  for (const row of table) {
    const spring = api.airSpring({
      widthMm: row.width_mm,
      rimInnerMm: row.rim_inner_mm,
      outerRadiusMm: row.outer_radius_mm,
      loadN: row.load_n,
      pressureBar: row.pressure_bar,
    });
    near(spring.deflectionMm, row.deflection_closed_mm, 0.01, 'deflection');
    near(spring.dropFraction * 100, row.drop_percent, 0.06, 'drop');
    near(spring.bottomingReserve, row.bottoming_reserve, 0.01, 'reserve');
    near(spring.contactAreaCm2, row.contact_area_cm2, 0.01, 'area');
  }
  assert.ok(table.length >= 7);
});

test('pressures, and none where floor and mark exclude one another', async () => {
  const table = await rows('tyre-pressure-examples');
  for (const row of table) {
    const found = api.tyrePressure({
      riderKg: row.rider_kg,
      bikeKg: row.bike_kg,
      widthMm: row.width_mm,
      construction: row.construction,
      terrain: row.terrain,
      style: row.style,
      frontShare: row.front_share,
      maxTyreBar: row.max_bar || undefined,
      hookless: row.hookless === 'yes',
    });
    if (row.limits.startsWith('conflict')) {
      assert.deepEqual([found.frontPsi, found.rearPsi, found.frontBar, found.rearBar], [null, null, null, null]);
      assert.match(found.notes[0], /^No pressure suits/);
    } else {
      near(found.frontPsi, row.front_psi, 0.006, 'front');
      near(found.rearPsi, row.rear_psi, 0.006, 'rear');
      near(found.frontBar, row.front_bar, 0.0006, 'front');
      near(found.rearBar, row.rear_bar, 0.0006, 'rear');
      assert.ok(found.notes.length >= 3);
    }
  }
  assert.ok(table.length >= 17);
  const tyre = { widthMm: 33, construction: 'tubular', terrain: 'mixed', style: 'normal' };
  const apart = api.tyrePressure({ riderKg: 60, kitKg: 2, bikeKg: 8, ...tyre });
  assert.deepEqual(apart, api.tyrePressure({ riderKg: 60, bikeKg: 10, ...tyre }));
  const road = { ...tyre, construction: 'tubeless', riderKg: 60, widthMm: 26 };
  near(api.tyrePressure(road).frontBar, 2.29, 0.01, 'by the mounted width');
  assert.equal(api.tyrePressure({ ...road, labelMm: 25 }).frontBar, 3);
  assert.equal(api.tyrePressure({ ...road, minMarkedBar: 3.5 }).frontBar, 3.5);
  assert.throws(() => api.tyrePressure({ ...road, minMarkedBar: 40 }), /tyre pressure must be/);
  // With a tube, what is usual at the least falls with the width: 60 psi at 33 mm on rocks.
  const rocks = { riderKg: 50, construction: 'clincher', terrain: 'rocky', style: 'smooth' };
  near(api.tyrePressure({ ...rocks, widthMm: 33 }).frontPsi, 60, 0.01, 'floor');
  near(api.tyrePressure({ ...rocks, widthMm: 44 }).frontPsi, 60 * 0.75 ** 1.5, 0.01, 'floor of a wide tyre');
});

test('a road tyre rolls closer to its size', () => {
  assert.equal(api.wheel({ designation: '25-622' }).uncertaintyPercent, 0.6);
  assert.equal(api.wheel({ designation: '34-622' }).uncertaintyPercent, 1.5);
});

test('a position carried over', async () => {
  const table = await rows('position-transfer-examples');
  for (const row of table) {
    const found = api.carryPosition({
      saddleHeightMm: row.road_saddle_height_mm,
      setbackMm: row.road_setback_mm,
      seatAngleDeg: row.road_seat_angle_deg,
      crankMm: row.road_crank_mm,
      soleStackMm: row.road_sole_stack_mm,
      tipToBarMm: row.road_tip_to_bar_mm,
      barDropMm: row.road_bar_drop_mm,
      crossCrankMm: row.cx_crank_mm,
      crossSoleStackMm: row.cx_sole_stack_mm,
      crossSeatAngleDeg: row.cx_seat_angle_deg,
      lowerByMm: row.lower_by_mm,
      barUpByMm: row.bar_up_by_mm,
      barCloserByMm: row.bar_closer_by_mm,
    });
    near(found.saddleHeightMm, row.out_saddle_height_cx_mm, 0.001, 'height');
    near(found.saddleVerticalMm, row.out_saddle_vertical_mm, 0.001, 'vertical');
    near(found.railShiftForwardMm, row.out_rail_shift_forward_mm, 0.001, 'rails');
    near(found.barDropMm, row.out_bar_drop_mm, 0.001, 'drop');
    near(found.tipToBarMm, row.out_tip_to_bar_mm, 0.001, 'tape');
    near(found.targetXMm, row.out_target_x_mm, 0.001, 'x');
    near(found.targetYMm, row.out_target_y_mm, 0.001, 'y');
  }
  assert.ok(table.length >= 8);
});

const front = (row) => ({
  stackMm: row.stack_mm,
  reachMm: row.reach_mm,
  headAngleDeg: row.head_angle_deg,
  topCapMm: row.top_cap_mm,
  clampHeightMm: row.stem_clamp_height_mm,
});

test('where a stem puts the bar', async () => {
  const table = await rows('stem-examples');
  for (const row of table) {
    const stem = { stemLengthMm: row.stem_length_mm, stemAngleDeg: row.stem_angle_deg, spacersMm: row.spacers_mm };
    const { barXMm, barYMm } = api.stemPosition({ ...front(row), ...stem });
    near(barXMm, row.bar_x_mm, 0.001, 'x');
    near(barYMm, row.bar_y_mm, 0.001, 'y');
  }
  assert.ok(table.length >= 10);
});

test('the stem search answers with every row, nearest first', async () => {
  const table = await rows('stem-solver-example');
  const [{ target_x_mm: targetXMm, target_y_mm: targetYMm }] = table;
  const search = { ...front(table[0]), targetXMm, targetYMm, toleranceMm: 5, maxSpacersMm: 30 };
  const found = api.stemSearch(search);
  assert.deepEqual(
    found.map(({ stemLengthMm, stemAngleDeg, spacersMm }) => [stemLengthMm, stemAngleDeg, spacersMm]),
    table.map((row) => [row.stem_length_mm, row.stem_angle_deg, row.spacers_mm]),
  );
  for (const [index, { missMm }] of found.entries()) near(missMm, table[index].miss_mm, 0.001, 'miss');
  assert.deepEqual(api.stemSearch({ ...search, targetXMm: 900 }), []);
  assert.deepEqual(api.stemSearch(search), api.stemSearch({ ...search, toleranceMm: undefined, maxSpacersMm: undefined }));
});

test('what is outside its limits is refused in words', () => {
  const tyre = { labelMm: 34, rimInnerMm: 21, measuringRimMm: 21, limitMm: 33, construction: 'tubeless' };
  assert.throws(() => api.tyreWidth({ ...tyre, labelMm: Number.NaN }), /tyre width must be 18 to 65 mm/);
  assert.throws(() => api.tyreWidth({ ...tyre, rimInnerMm: 40 }), /rim must be narrower/);
  assert.throws(() => api.tyreWidth({ ...tyre, construction: 'solid' }), /solid/);
  const spring = { widthMm: 34, rimInnerMm: 21, outerRadiusMm: 345, loadN: 400, pressureBar: 2 };
  assert.throws(() => api.airSpring({ ...spring, pressureBar: Infinity }), /pressure must be/);
  const stem = { stackMm: 560, reachMm: 380, headAngleDeg: 72, topCapMm: 12, clampHeightMm: 40 };
  assert.throws(() => api.stemSearch({ ...stem, targetXMm: Number.NaN, targetYMm: 600 }), /two numbers/);
});
