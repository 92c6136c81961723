// The best way through a step at a price of a charged joule: src/course/reserve/{entry,rule}.rs. A step is entered once and tried
// in every gear; what was found stands in the fields, so that nothing is allocated on the way.

import { BEARING, BIKE, charge, EFFECTIVE_MASS, HABITS, heldOf, peakAt, powerWorth, REPAID, SUSTAINABLE } from './rider.mjs';
import { SLOWEST } from './way.mjs';

export const NEVER = 1e5;
const SAME = 1e-9;
const STRONGEST = 3000;
const NEAR = 5e-3;
const TRIED = 0.1;
const MOST_PIECES = 12;
const FLAT = 0.5;
const NUDGE = 0.01;
const ETA = BIKE.efficiency;

export class Rule {
  constructor(way, gearing, price) {
    Object.assign(this, { way, gearing, price });
    Object.assign(this, { length: 0.5, held: 0.5, speed: 0.5, coast: 0.5, low: 0.5, high: 0.5 });
    Object.assign(this, { end: 0.5, power: 0.5, cost: 0.5, at: 0.5 });
  }

  /** Enters a step at a speed that must end within a range. */
  enter(at, speed, slowest, fastest) {
    const { way } = this;
    this.length = way.length[at];
    this.held = way.held[at];
    this.speed = speed;
    this.coast = 0;
    this.low = Infinity;
    this.high = fastest;
    if (speed < SLOWEST - SAME || way.blocked[at] === 1) return;
    const braked = Math.sqrt(Math.max(speed * speed - 2 * HABITS.braking * this.length, 0));
    this.coast = this.endUnder(0);
    this.low = Math.max(Math.min(braked, this.coast), Math.min(HABITS.balance, speed), slowest);
    if (way.grip[at] * speed < STRONGEST) this.high = Math.min(fastest, this.endUnder(way.grip[at]));
  }

  force(speed) {
    return this.held + (BEARING[1] + this.way.air * speed) * speed;
  }

  endUnder(force) {
    const share = (2 * this.length) / EFFECTIVE_MASS;
    const square = 1 + 0.25 * share * this.way.air;
    const linear = 2 * this.speed + 0.5 * share * (BEARING[1] + 2 * this.way.air * this.speed);
    const gained = share * (force - this.force(this.speed));
    const root = linear * linear + 4 * square * gained;
    return root < 0 ? 0 : Math.max(this.speed + (2 * gained) / (linear + Math.sqrt(root)), 0);
  }

  work(end) {
    return 0.5 * EFFECTIVE_MASS * (end * end - this.speed * this.speed) + this.length * this.force(0.5 * (this.speed + end));
  }

  allowed(end) {
    return Math.max(Math.min(end, this.high), this.low);
  }

  endNear(power, guess) {
    const given = 2 * power * this.length;
    let end = guess;
    for (let round = 0; round < 12; round += 1) {
      const sum = this.speed + end;
      const work = this.work(end);
      const growth = BEARING[1] + this.way.air * sum;
      const step = (work * sum - given) / (sum * (EFFECTIVE_MASS * end + 0.5 * this.length * growth) + Math.max(work, 0));
      end = Math.max(end - step, TRIED);
      if (Math.abs(step) < NEAR * end) break;
    }
    return end;
  }

  rpm(gear, mean, power) {
    return this.gearing.rpm[gear < 0 ? this.gearing.best(mean, power) : gear] * mean;
  }

  charge(gear, mean, power) {
    return charge(power, this.rpm(gear, mean, power));
  }

  /** Looks for the best end in a gear, from a power; none where nothing is possible. A gear below none is the best one. */
  best(gear, line, node, power) {
    this.cost = NEVER;
    this.end = 0;
    this.power = 0;
    if (!(this.low <= this.high)) return;
    const piece = this.found(gear, line, node, power);
    this.judge(gear, line, piece, this.at);
    const pedalled = this.power;
    if (pedalled > 0 && pedalled < SUSTAINABLE && this.coast >= this.low) this.judge(gear, line, piece, this.coast);
    const flat = line.slope(0);
    if (flat <= FLAT * line.slope(piece)) return;
    this.at = Math.max(this.end, this.low);
    this.aim(gear, flat, this.power);
    this.judge(gear, line, piece, this.at);
  }

  /** The best way without drive. */
  idle(line, node) {
    this.restore(0, 0, NEVER);
    if (!(this.low <= this.high) || this.coast < this.low) return;
    this.roll(line, node, Math.min(this.coast, this.high));
    this.roll(line, node, this.low);
  }

  roll(line, node, end) {
    const time = (2 * this.length) / (this.speed + end);
    const cost = time * (1 - this.price * REPAID) + line.at(end, line.piece(end, node));
    if (cost < this.cost) this.restore(end, 0, cost);
  }

  /** The best of all nodes as well. */
  surely(gear, line, node, power) {
    this.best(gear, line, node, power);
    const { end, power: found, cost } = this;
    let least = cost;
    let best = -1;
    for (let other = 0; other < line.nodes; other += 1) {
      const speed = line.speed(other);
      if (speed < this.low || speed > this.high) continue;
      this.cost = NEVER;
      this.judge(gear, line, other, speed);
      if (this.cost < least) [least, best] = [this.cost, other];
    }
    this.restore(end, found, cost);
    if (best < 0) return;
    this.judge(gear, line, best, line.speed(best));
    const other = [this.end, this.power, this.cost];
    this.best(gear, line, best, this.power);
    if (!(this.cost < other[2])) this.restore(...other);
  }

  restore(end, power, cost) {
    this.end = end;
    this.power = power;
    this.cost = cost;
  }

  /** The piece of the best end, which is left in `at`. */
  found(gear, line, node, from) {
    this.at = this.allowed(this.speed);
    let power = from;
    let piece = line.piece(this.at, node);
    let lowest = 0;
    let highest = line.nodes - 2;
    for (let round = 0; round < MOST_PIECES; round += 1) {
      power = this.aim(gear, line.slope(piece), power);
      const target = line.piece(this.at, piece);
      if (target === piece) return piece;
      const between = target > piece ? piece + 1 : piece;
      if (target > piece) lowest = between;
      else highest = piece - 1;
      if (lowest > highest) {
        this.at = this.allowed(line.speed(between));
        return piece;
      }
      piece = Math.min(Math.max(target, lowest), highest);
      this.at = Math.min(Math.max(this.at, line.speed(piece)), line.speed(piece + 1));
    }
    return piece;
  }

  /** What the charge of a power grows by with the logarithm of the cadence. */
  growth(power, rpm, charged) {
    if (heldOf(peakAt(rpm)) >= SUSTAINABLE) return 0;
    return (charge(power, (1 + NUDGE) * rpm) - charged) / NUDGE;
  }

  /** Moves the end in `at` to where more speed costs what it is worth by a slope, and gives the power. */
  aim(gear, slope, from) {
    const end = this.at;
    const sum = this.speed + end;
    const rpm = this.rpm(gear, 0.5 * sum, from);
    const charged = charge(from, rpm);
    const growth = charged === Infinity ? Infinity : this.growth(from, rpm, charged);
    const known = growth === Infinity ? 0 : charged - growth;
    const quicker = this.length / (sum * sum * end);
    const gain = quicker * (1 + this.price * known) - slope;
    const joules = (0.5 * EFFECTIVE_MASS) / ETA + from * quicker;
    const power = powerWorth(gain / (this.price * joules), rpm, from);
    if (power > 0) {
      this.at = this.allowed(this.endNear(ETA * power, end));
      return power;
    }
    this.at = this.allowed((1 - this.price * REPAID) * quicker >= slope ? this.coast : this.low);
    return 0;
  }

  /** Takes an end where it costs less than what was found. */
  judge(gear, line, piece, end) {
    const sum = this.speed + end;
    const time = (2 * this.length) / sum;
    const power = Math.max(this.work(end) / (ETA * time), 0);
    const charged = charge(power, this.rpm(gear, 0.5 * sum, power));
    if (charged === Infinity) return;
    const cost = time * (1 + this.price * charged) + line.at(end, line.piece(end, piece));
    if (cost < this.cost) this.restore(end, power, cost);
  }
}
