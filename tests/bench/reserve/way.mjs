// A course in steps, for the rider of the comparison, and what going on foot takes there: src/course/reserve/way.rs and pace.rs.

import { GROUNDS } from '../meadow.mjs';
import { AIR, BEARING, BIKE, chargeOnFoot, GRAVITY, HABITS, MASS, RIDER, STANCE } from './rider.mjs';

export const SLOWEST = 0.8;
export const OFF_SPEED = 3.5;
const FASTEST = 15;
const ROOM = 0.05;
const LONGER = 0.02;
const RUN = [155.4, -30.4, -43.3, 46.3, 19.5, 3.6];
const WALK = [280.5, -58.7, -76.8, 51.9, 19.6, 2.5];

/** Steps as columns, so that a pass reads them in order. */
export class Way {
  constructor(segments, step) {
    const counts = segments.map(({ length }) => Math.max(1, Math.ceil(length / step - LONGER)));
    this.count = counts.reduce((sum, count) => sum + count, 0);
    for (const column of ['length', 'held', 'grip', 'corner', 'extra']) this[column] = new Float64Array(this.count);
    this.blocked = new Uint8Array(this.count);
    this.segment = new Int32Array(this.count);
    this.segments = segments;
    this.air = AIR.drag;
    let at = 0;
    segments.forEach((segment, number) => {
      for (let step = 0; step < counts[number]; step += 1, at += 1) this.fill(at, segment, number, counts[number]);
    });
    this.ceilings = ceilings(this);
  }

  fill(at, segment, number, count) {
    const [rolling, , friction] = GROUNDS[segment.ground];
    const slope = segment.percent / 100;
    const cosine = 1 / Math.hypot(slope, 1);
    const weight = MASS * GRAVITY;
    const unloading = 1 - friction * STANCE.lean;
    const slip = (friction * (STANCE.rear - rolling * STANCE.lean)) / unloading - rolling;
    this.length[at] = segment.length / count;
    this.held[at] = weight * slope * cosine + rolling * weight * cosine + BEARING[0];
    this.grip[at] = unloading > 0 ? Math.max(0, weight * cosine * (slip + rolling)) : Infinity;
    this.corner[at] = segment.corner ?? Infinity;
    this.extra[at] = (segment.obstacle ?? 0) / count;
    this.blocked[at] = segment.obstacle === undefined ? 0 : 1;
    this.segment[at] = number;
  }

  stepsIn(metres) {
    let left = metres;
    for (let at = 0; at < this.count; at += 1) {
      left -= this.length[at];
      if (left <= 0) return at + 1;
    }
    return this.count;
  }

  /** Speed of the first pedal stroke after getting on from a pace, none where that is too slow. */
  mounted(at, pace) {
    const { ground, percent } = this.segments[this.segment[at]];
    const cosine = 1 / Math.hypot(percent / 100, 1);
    const slowed = GRAVITY * (percent / 100 + GROUNDS[ground][0]) * cosine * 0.5;
    const speed = Math.max(0, Math.min(pace, 2.9) - slowed);
    return speed >= 0.8 && !this.blocked[at] ? Math.min(speed, this.ceilings[at]) : undefined;
  }
}

function ceilings(way) {
  const { count, length, corner, blocked } = way;
  const highest = new Float64Array(count + 1).fill(FASTEST);
  for (let round = 0; round < 2; round += 1) {
    highest[count] = highest[0];
    for (let at = count - 1; at >= 0; at -= 1) {
      const before = corner[(at + count - 1) % count];
      const braked = Math.sqrt(highest[at + 1] ** 2 + 2 * HABITS.braking * length[at]);
      const here = blocked[at] ? OFF_SPEED : Math.min(corner[at], braked, FASTEST);
      highest[at] = Math.max(Math.min(here, before), SLOWEST + ROOM);
    }
  }
  return highest;
}

const polynomial = (coefficients, x) => coefficients.reduce((sum, c) => sum * x + c, 0);

/** Power at the crank that takes as much as a speed on foot. */
function demand({ ground, percent }) {
  const slope = percent / 100;
  const up = Math.max(0, slope);
  const extra = GROUNDS[ground][1] - 1;
  const burden = RIDER.body + RIDER.kit + BIKE.load * BIKE.mass;
  const run = burden * (polynomial(RUN, slope) + extra * RUN[5]);
  const walk = Math.min(burden * (polynomial(WALK, slope) + extra * WALK[5]), run);
  const transition = Math.max(0.8, 2.1 - (1.3 / 30) * ((Math.atan(up) * 180) / Math.PI));
  const economical = Math.max(0.45, 1 - 1.4 * up);
  return (speed) => {
    const hurry = Math.min(1, Math.max(0, (speed - economical) / (transition - economical)));
    const cost = walk + (run - walk) * hurry * hurry + AIR.foot * RIDER.body * speed * speed;
    return RIDER.efficiency * (RIDER.standing * RIDER.body + cost * speed);
  };
}

/** The pace on foot over every stretch at which a metre takes least of time and price. */
export function paces(way, price) {
  return way.segments.map((segment) => {
    const power = demand(segment);
    const cost = (speed) => (1 + price * chargeOnFoot(power(speed))) / speed;
    const speed = lowest(cost);
    return { speed, power: power(speed), charge: chargeOnFoot(power(speed)) };
  });
}

function lowest(cost) {
  const ratio = (5 / 0.2) ** (1 / 96);
  let best = 0.2;
  let least = Infinity;
  for (let step = 0; step <= 96; step += 1) {
    const here = cost(0.2 * ratio ** step);
    if (here < least) [least, best] = [here, 0.2 * ratio ** step];
  }
  let [low, high] = [best / ratio, Math.min(best * ratio, 5)];
  for (let cut = 0; cut < 20; cut += 1) {
    const part = 0.381966 * (high - low);
    if (cost(low + part) < cost(high - part)) high -= part;
    else low += part;
  }
  return 0.5 * (low + high);
}
