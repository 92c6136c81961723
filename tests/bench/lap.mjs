// The lap of gear-math in plain JavaScript, written for speed in the same way, to tell what WebAssembly gains.
//
//   node tests/bench/lap.mjs
//
// Same course, rider, set-ups and steps as `cargo run --release --example course_bench`, which must print the same
// times. The formulas and their sources stand in crates/gear-math/src/course and src/rider.

import { GROUNDS, MEADOW } from './meadow.mjs';

const GRAVITY = 9.81;
const RIDER = { body: 64, kit: 2, power: 230, efficiency: 0.23, standing: 1.5, slowest: 50, fastest: 120 };
const BIKE = { mass: 9, wheel: 2.15, efficiency: 0.96, load: 1.2, inertia: 0.14 };
const AIR = { density: 1.2, area: 0.4, spokes: 0.0044, foot: 0.01 };
const BEARING = [0.091, 0.0087];
const LEGS = { peak: 1000, usable: 0.5, optimal: 115 };
const STANCE = { rear: 0.55, lean: 1050 / 1020 };
const SHIFTING = { preferred: 80, window: 0.15, rear: 0.2, front: 0.6, loyalty: 0.15, gain: 0.03, room: 0.15 };
const MOUNTING = { off: 1.5, on: 1.5, braking: 3 };
const BALANCE = 1.2;
const RUN_IN = 400;
const RUN_OUT = 200;
const LEAST_ROLLING = 0.3;
const STEP = 1;

const MASS = RIDER.body + RIDER.kit + BIKE.mass;
const RADIUS = BIKE.wheel / (2 * Math.PI);
const EFFECTIVE_MASS = MASS + BIKE.inertia / (RADIUS * RADIUS);
const DRAG = 0.5 * AIR.density * (AIR.area + AIR.spokes);
const DRIVE = BIKE.efficiency * RIDER.power;
const STRENGTH = BIKE.efficiency * LEGS.usable * LEGS.peak;
const FASTEST_LEGS = (2 * LEGS.optimal) / 60;

function polynomial(coefficients, x) {
  return coefficients.reduce((sum, c) => sum * x + c, 0);
}

// Speed on foot on the same energy, walking or running.
function footSpeed(foot, percent) {
  const i = Math.max(0, percent) / 100;
  const energy = RIDER.power / RIDER.efficiency - RIDER.standing * RIDER.body;
  const burden = RIDER.body + RIDER.kit + BIKE.load * BIKE.mass;
  const drag = AIR.foot * RIDER.body;
  const run = burden * (polynomial([155.4, -30.4, -43.3, 46.3, 19.5, 3.6], i) + (foot - 1) * 3.6);
  const walked = burden * (polynomial([280.5, -58.7, -76.8, 51.9, 19.6, 2.5], i) + (foot - 1) * 2.5);
  const walk = Math.min(walked, run);
  const transition = Math.max(0.8, 2.1 - (1.3 / 30) * ((Math.atan(i) * 180) / Math.PI));
  const economical = Math.max(0.45, 1 - 1.4 * i);
  const cost = (v) => {
    if (v >= transition) return run;
    if (v <= economical) return walk;
    const hurry = (v - economical) / (transition - economical);
    return walk + (run - walk) * hurry * hurry;
  };
  let [low, high] = [0, 12];
  for (let step = 0; step < 60; step += 1) {
    const v = 0.5 * (low + high);
    if ((cost(v) + drag * v * v) * v > energy) high = v;
    else low = v;
  }
  return 0.5 * (low + high);
}

// The course in steps, with the end of the lap before it and the beginning of the next after it.
function terrain(segments) {
  const lap = [];
  segments.forEach((segment, number) => {
    const count = Math.max(1, Math.ceil(segment.length / STEP - 1e-9));
    const [rolling, foot, friction] = GROUNDS[segment.ground];
    const i = segment.percent / 100;
    const cosine = 1 / Math.hypot(i, 1);
    const weight = MASS * GRAVITY;
    const unloading = 1 - friction * STANCE.lean;
    const slip = (friction * (STANCE.rear - rolling * STANCE.lean)) / unloading - rolling;
    const length = segment.length / count;
    const speed = footSpeed(foot, segment.percent);
    const cell = {
      length,
      resistance: weight * i * cosine + rolling * weight * cosine + BEARING[0],
      grip: unloading > 0 ? Math.max(0, weight * cosine * (slip + rolling)) : Infinity,
      corner: segment.corner ?? Infinity,
      ceiling: Infinity,
      footTime: length / speed + (segment.obstacle ?? 0) / count,
      footSpeed: speed,
      blocked: segment.obstacle !== undefined,
      segment: number,
    };
    for (let step = 0; step < count; step += 1) lap.push({ ...cell });
  });
  const before = [];
  for (let way = 0, at = lap.length - 1; way < RUN_IN; at = (at + lap.length - 1) % lap.length) {
    before.unshift({ ...lap[at] });
    way += lap[at].length;
  }
  const after = [];
  for (let way = 0, at = 0; way < RUN_OUT; at = (at + 1) % lap.length) {
    after.push({ ...lap[at] });
    way += lap[at].length;
  }
  const cells = [...before, ...lap, ...after];
  let ahead = Infinity;
  for (let at = cells.length - 1; at >= 0; at -= 1) {
    const cell = cells[at];
    cell.ceiling = Math.min(cell.corner, ahead);
    ahead = Math.min(cell.corner, Math.sqrt(cell.ceiling ** 2 + 2 * MOUNTING.braking * cell.length));
  }
  return { cells, from: before.length, to: before.length + lap.length };
}

function driveAt(turns) {
  const share = turns / FASTEST_LEGS;
  return Math.min(DRIVE, 4 * STRENGTH * share * Math.max(0, 1 - share));
}

function forceAt(resistance, v) {
  return resistance + (BEARING[1] + DRAG * v) * v;
}

function atForce(length, resistance, force, entry) {
  const square = 2 * EFFECTIVE_MASS + DRAG * length;
  const half = EFFECTIVE_MASS * entry - 0.5 * BEARING[1] * length;
  const root = half * half - square * (resistance - force) * length;
  return root < 0 ? 0 : Math.max(0, (half + Math.sqrt(root)) / square);
}

function firstGuess(length, resistance, power, entry) {
  const guess = entry + (0.5 * length * (power / entry - forceAt(resistance, entry))) / (EFFECTIVE_MASS * entry);
  if (guess > 0.7 * entry && guess < 1.4 * entry) return guess;
  const cubic = 2 * EFFECTIVE_MASS + DRAG * length;
  const lowest = Math.max(0, (EFFECTIVE_MASS * entry) / cubic);
  return Math.max(lowest, atForce(length, resistance, 0, entry)) + Math.cbrt((power * length) / cubic);
}

function atPower(length, resistance, power, entry) {
  if (power <= 0) return atForce(length, resistance, 0, entry);
  const cubic = 2 * EFFECTIVE_MASS + DRAG * length;
  const square = BEARING[1] * length - 2 * EFFECTIVE_MASS * entry;
  const linear = resistance * length;
  const work = power * length;
  let v = firstGuess(length, resistance, power, entry);
  for (let step = 0; step < 30; step += 1) {
    const value = ((cubic * v + square) * v + linear) * v - work;
    const moved = value / ((3 * cubic * v + 2 * square) * v + linear);
    v -= moved;
    if (Math.abs(moved) <= 1e-6 * v) break;
  }
  return v;
}

function meanSpeed(length, resistance, grip, power, entry) {
  const driven = atPower(length, resistance, power, entry);
  return power > grip * driven ? atForce(length, resistance, grip, entry) : driven;
}

function gearsOf(rings, sprockets) {
  const preferred = SHIFTING.preferred / 60;
  const gears = rings.flatMap((ring) =>
    sprockets.map((sprocket) => {
      const development = (BIKE.wheel * ring) / sprocket;
      const kept = (side) => preferred * (1 + side * SHIFTING.window) * development;
      return { ring, development, logarithm: Math.log(development), low: kept(-1), high: kept(1) };
    }),
  );
  gears.sort((a, b) => a.development - b.development);
  gears.forEach((gear, at) => {
    const next = gears.slice(at + 1).find((other) => other.ring === gear.ring);
    if (next) gear.high = Math.max(gear.high, next.low * (1 + SHIFTING.room));
  });
  gears[0].low = 0;
  gears[gears.length - 1].high = Infinity;
  return gears;
}

function firstGear(gears, speed) {
  const wanted = Math.log((speed * 60) / SHIFTING.preferred);
  let best = 0;
  for (let at = 1; at < gears.length; at += 1) {
    if (Math.abs(wanted - gears[at].logarithm) < Math.abs(wanted - gears[best].logarithm)) best = at;
  }
  return best;
}

function bestGear(gears, speed, now) {
  const wanted = Math.log((speed * 60) / SHIFTING.preferred);
  const misfit = (at) => Math.abs(wanted - gears[at].logarithm) + (gears[at].ring === gears[now].ring ? 0 : SHIFTING.loyalty);
  let best = 0;
  for (let at = 1; at < gears.length; at += 1) if (misfit(at) < misfit(best)) best = at;
  return misfit(best) + SHIFTING.gain < misfit(now) ? best : now;
}

function rideOf(ground, gears) {
  const lowest = gears[0].development;
  const slowest = Math.max((RIDER.slowest / 60) * lowest, BALANCE);
  const spin = (RIDER.fastest / 60) * gears[gears.length - 1].development;
  const drive = driveAt(slowest / lowest) / slowest;
  const rising = ground.cells.map((cell) => Math.min(drive, cell.grip) - forceAt(cell.resistance, slowest) >= 0);
  return { cells: ground.cells, gears, slowest, spin, rising };
}

function goesOn(ride, at, speed) {
  return speed >= ride.slowest || (ride.rising[at] && speed >= LEAST_ROLLING);
}

// One step from the state in `from` to the one in `to`; false where riding is not possible.
function step(ride, at, from, to) {
  const cell = ride.cells[at];
  if (cell.blocked) return false;
  let { gear, coast } = from;
  const entry = from.speed;
  if (!(coast > 0)) {
    coast = 0;
    const kept = ride.gears[gear];
    if (entry < kept.low || entry > kept.high) {
      const best = bestGear(ride.gears, entry, gear);
      if (best !== gear) {
        coast = ride.gears[best].ring === kept.ring ? SHIFTING.rear : SHIFTING.front;
        gear = best;
      }
    }
  }
  const { length, resistance, grip } = cell;
  const undriven = Math.min(1, (coast * entry) / length);
  const power = driveAt(entry / ride.gears[gear].development) * (1 - undriven);
  let exit = 2 * meanSpeed(length, resistance, grip, power, entry) - entry;
  if (exit > ride.spin) exit = Math.max(ride.spin, 2 * meanSpeed(length, resistance, grip, 0, entry) - entry);
  exit = Math.min(exit, cell.ceiling);
  if (!goesOn(ride, at, exit)) return false;
  const time = (2 * length) / (entry + exit);
  to.time = from.time + time;
  to.speed = exit;
  to.gear = gear;
  to.coast = undriven < 1 ? 0 : Math.max(0, coast - time);
  return true;
}

function beats(one, other) {
  const slower = other.speed - one.speed;
  if (slower > 1e-3 || one.number === other.number) return false;
  const makeUp = (Math.max(0, slower) * one.speed * EFFECTIVE_MASS) / DRIVE;
  const gear = one.gear === other.gear ? Math.max(0, one.coast - other.coast) : 1 + one.coast;
  const lead = other.time - one.time - makeUp - gear;
  return lead > 0 || (lead === 0 && one.number < other.number);
}

function dropBeaten(runs) {
  for (let kept = 0; kept < runs.length; ) {
    const run = runs[kept];
    if (runs.length > 1 && runs.some((other) => beats(other, run))) {
      runs[kept] = runs[runs.length - 1];
      runs.pop();
    } else kept += 1;
  }
}

const ON_FOOT = -1;

function quickest(ride, start) {
  const count = ride.cells.length;
  const runs = [{ time: 0, ...start, number: 0 }];
  const footFrom = new Int32Array(count);
  const setOff = [0];
  let foot = Infinity;
  for (let at = 0; at < count; at += 1) {
    let from = ON_FOOT;
    for (const run of runs) {
      if (run.time + MOUNTING.off < foot) {
        foot = run.time + MOUNTING.off;
        from = run.number;
      }
    }
    footFrom[at] = from;
    if (from === ON_FOOT) {
      const time = foot + MOUNTING.on;
      const speed = Math.max(LEAST_ROLLING, ride.cells[Math.max(0, at - 1)].footSpeed);
      const hopeless = runs.some((run) => run.speed >= speed && run.time + run.coast + 1 < time);
      if (!hopeless && !ride.cells[at].blocked && goesOn(ride, at, speed)) {
        const run = { time, speed, gear: firstGear(ride.gears, speed), coast: 0, number: setOff.length };
        if (!runs.some((other) => beats(other, run))) {
          runs.push(run);
          setOff.push(at);
          dropBeaten(runs);
        }
      }
    }
    foot += ride.cells[at].footTime;
    for (let place = 0; place < runs.length; ) {
      if (step(ride, at, runs[place], runs[place])) place += 1;
      else runs.splice(place, 1);
    }
    dropBeaten(runs);
  }
  const best = runs.reduce((a, b) => (a && a.time <= b.time ? a : b), undefined);
  const onFoot = new Uint8Array(count).fill(1);
  let place = count;
  let riding = best && best.time <= foot ? best.number : undefined;
  for (;;) {
    if (riding === undefined) {
      place = Math.min(place, count - 1);
      while (footFrom[place] === ON_FOOT && place > 0) place -= 1;
      riding = footFrom[place];
    }
    onFoot.fill(0, setOff[riding], place);
    if (riding === 0) return onFoot;
    place = setOff[riding];
    riding = undefined;
  }
}

// Follows the plan and adds up what the page shows: time, shifts and the trace.
function lap(segments, rings, sprockets) {
  const ground = terrain(segments);
  const ride = rideOf(ground, gearsOf(rings, sprockets));
  const first = ground.cells[0];
  const steady = meanSpeed(1e6, first.resistance, first.grip, DRIVE, 5);
  const speed = Math.min(40, steady, first.ceiling);
  const start = { speed, gear: firstGear(ride.gears, speed), coast: 0 };
  const onFoot = quickest(ride, start);
  const result = { time: 0, rear: 0, front: 0, trace: [] };
  let state = { time: 0, ...start };
  let walking = false;
  let lastGear;
  for (let at = 0; at < ground.to; at += 1) {
    const cell = ground.cells[at];
    let time;
    if (onFoot[at]) {
      time = cell.footTime + (walking ? 0 : MOUNTING.off);
      walking = true;
    } else {
      let lost = 0;
      if (walking) {
        const mounted = Math.max(LEAST_ROLLING, ground.cells[Math.max(0, at - 1)].footSpeed);
        state = { time: 0, speed: mounted, gear: firstGear(ride.gears, mounted), coast: 0 };
        lost = MOUNTING.on;
      }
      walking = false;
      state.time = 0;
      step(ride, at, state, state);
      time = state.time + lost;
    }
    if (at >= ground.from) {
      result.time += time;
      if (!walking) {
        if (lastGear !== undefined && lastGear !== state.gear) {
          if (ride.gears[lastGear].ring === ride.gears[state.gear].ring) result.rear += 1;
          else result.front += 1;
        }
        lastGear = state.gear;
      }
      result.trace.push({ time: result.time, speed: walking ? cell.footSpeed : state.speed, walking, gear: lastGear });
    }
  }
  return result;
}

const SETUPS = [
  [
    [44, 31],
    [11, 13, 15, 18, 21, 24, 28, 32],
  ],
  [[40], [11, 13, 15, 17, 19, 21, 24, 28, 32, 37, 42]],
];
const LAPS = 200;

for (let warm = 0; warm < 20; warm += 1) for (const [rings, sprockets] of SETUPS) lap(MEADOW, rings, sprockets);
let least = Infinity;
for (let count = 0; count < LAPS; count += 1) {
  const started = performance.now();
  for (const [rings, sprockets] of SETUPS) lap(MEADOW, rings, sprockets);
  least = Math.min(least, performance.now() - started);
}
console.log(`two set-ups: ${least.toFixed(3)} ms at best`);
for (const [rings, sprockets] of SETUPS) {
  const { time, rear, front } = lap(MEADOW, rings, sprockets);
  console.log(`  ${time.toFixed(9)} s, ${rear} + ${front} shifts`);
}
