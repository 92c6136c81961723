// Boxes of parts round a lap of 3 km, in Node: by the page's engine on two workers, and by a plain loop in JavaScript that asks the
// module about one combination after another. Runs alone too: node tests/bench/boxes.mjs.

import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { Worker } from 'node:worker_threads';
import * as module from '../../dist/api/remount.js';
import init, * as engine from '../../target/packer/page/remount.js';
import { MEADOW } from './meadow.mjs';
import { ms, times } from './statistics.mjs';

const WORKERS = 2;
const ROUNDS = 3;
/** About so many combinations the plain loop tries for all: its laps come with their bands, which takes most of a second each. */
const TRIED = 20;

const WASM = new URL('../../target/packer/page/remount_bg.opt.wasm', import.meta.url);

const range = (from, to) => Array.from({ length: to - from + 1 }, (_, place) => from + place);

/** Rings that go on one crank, cassettes by their sprockets, rear derailleurs as capacity and largest sprocket. */
const SMALL = {
  rings: [34, 36, 38, 42, 46, 50],
  cassettes: [
    [11, 12, 13, 14, 15, 16, 17, 19, 21, 23, 25],
    [11, 12, 13, 14, 15, 17, 19, 21, 24, 27, 30],
    [11, 12, 13, 15, 17, 19, 21, 24, 27, 30, 34],
    [11, 12, 13, 15, 17, 19, 22, 25, 28, 32, 36],
  ],
  rear: [
    [33, 30],
    [39, 36],
  ],
  aim: '2 s',
};
const LARGE = {
  rings: range(24, 52),
  cassettes: range(25, 47).map((largest) => [11, 12, 13, 14, 15, 16, 17, 19, 21, 23, largest]),
  rear: [
    [45, 42],
    [47, 46],
  ],
  aim: '60 s',
};

export async function boxRows() {
  const bytes = readFileSync(WASM);
  await init({ module_or_path: bytes });
  const crew = await Promise.all(range(0, WORKERS - 1).map((index) => ready(bytes, index)));
  try {
    const rows = [...(await rowsOf(crew, SMALL, ROUNDS)), ...(await rowsOf(crew, LARGE, 1))];
    return rows;
  } finally {
    await Promise.all(crew.map((worker) => worker.terminate()));
  }
}

async function ready(bytes, index) {
  const worker = new Worker(new URL('box-worker.mjs', import.meta.url), { workerData: { bytes, index, count: WORKERS } });
  await heard(worker);
  return worker;
}

const heard = (worker) =>
  new Promise((done, fail) => {
    worker.once('message', done);
    worker.once('error', fail);
  });

async function rowsOf(crew, box, rounds) {
  open(box);
  const ridden = [];
  for (let round = 0; round < rounds; round += 1) ridden.push(await ride(crew));
  const { count, laps } = ridden[0];
  const whole = Math.min(...ridden.map(({ duration }) => duration));
  const busy = Math.min(...ridden.map(({ busy }) => busy));
  const plain = loop(box, count);
  return [
    { what: `a box of ${count} combinations, ${laps} laps, ${WORKERS} workers (aim: below ${box.aim})`, figure: ms(whole, 0) },
    { what: 'processor time of it, by workers', figure: ms(busy, 0) },
    {
      what: `the same by a plain loop over the module, bands included, by ${plain.tried} of them`,
      figure: ms(plain.duration, 0),
    },
    { what: 'workers against the plain loop', figure: times(whole / plain.duration) },
  ];
}

/** Opens a bench whose A and B lie in the box. */
function open({ rings, cassettes, rear }) {
  const names = cassettes.map((sprockets) => sprockets.join('-'));
  engine.open('');
  engine.edit([
    ['rings-a', String(rings[0])],
    ['rings-b', String(rings[1])],
    ['cassette-a', names[0]],
    ['cassette-b', names[1]],
    ['capacity', String(rear[0][0])],
    ['largest-sprocket', String(rear[0][1])],
    ['smallest-sprocket', ''],
    ['ring-difference', ''],
    ['pulley-centres', ''],
    ['box-parts', `${rings.join(' ')} / ${names.join(', ')} / ${rear.map((it) => it.join('/')).join(', ')}`],
  ]);
}

/** What the page does once it is told to ride, without showing it. */
async function ride(crew) {
  const [box, rows] = [engine.link(), engine.course()[1]];
  const began = performance.now();
  const before = process.cpuUsage();
  engine.beginBox([], new Float64Array());
  const [, , count] = engine.boxLeft(0);
  while (engine.sortBox(1000));
  let laps = 0;
  for (let [out, inFull] = engine.boxToRide(); out.length > 0; [out, inFull] = engine.boxToRide()) {
    laps = Math.max(laps, out.length);
    const found = crew.map(heard);
    for (const worker of crew) worker.postMessage({ box, rows, laps: out, inFull });
    for (const share of await Promise.all(found)) engine.takeBox(Float64Array.from(share));
  }
  engine.showBox();
  const { user, system } = process.cpuUsage(before);
  return { duration: performance.now() - began, busy: (user + system) / 1000 / WORKERS, count, laps };
}

/** One combination after another through the module, as a script would; of a large box some, for all of them. */
function loop({ rings, cassettes, rear }, count) {
  const pairs = rings.flatMap((one, at) => rings.slice(at + 1).map((other) => [other, one]));
  const chainsets = [...rings.map((ring) => [ring]), ...pairs];
  const all = chainsets.flatMap((chainset) =>
    cassettes.flatMap((cassette) => rear.map((figures) => [chainset, cassette, figures])),
  );
  assert.equal(all.length, count, 'the same combinations');
  const every = Math.max(1, Math.floor(all.length / TRIED));
  const tried = all.filter((_, place) => place % every === 0);
  const began = performance.now();
  for (const [chainset, cassette, figures] of tried) lapOf(chainset, cassette, figures);
  return { duration: ((performance.now() - began) / tried.length) * count, tried: tried.length };
}

const COURSE = {
  stretches: MEADOW.map(({ length, percent, ground, corner, obstacle }) => ({
    lengthM: length,
    gradientPercent: percent,
    ground,
    obstacleS: obstacle,
    cornerKmh: corner && corner * 3.6,
  })),
};

function lapOf(rings, sprockets, [totalCapacityTeeth, largestSprocketTeeth]) {
  const { verdict, findings } = module.cageCheck({ rings, sprockets, totalCapacityTeeth, largestSprocketTeeth });
  if (verdict === 'does-not-fit') return;
  const gearsToAvoid = findings.flatMap(({ gears }) => gears.map(({ ring, sprocket }) => [ring, sprocket]));
  const bike = { massKg: 9, rings, sprockets, circumferenceMm: 2130, gearsToAvoid };
  module.lap({ rider: { bodyKg: 62, kitKg: 2, powerW: 220 }, bike, course: COURSE });
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  for (const { what, figure } of await boxRows()) console.log(`${what.padEnd(84)} ${figure.padStart(12)}`);
}
