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
    Object.assign(this, { end: 0.5, power: 0.5, cost: 0.5, at: 0.5, charged: 0.5, growth: 0.5 });
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
    const square = this.speed * this.speed;
    const share = (2 * this.length) / EFFECTIVE_MASS;
    let end = this.speed;
    for (let round = 0; round < 3; round += 1) {
      end = Math.sqrt(Math.max(square + share * (force - this.force(0.5 * (this.speed + end))), 0));
    }
    return end;
  }

  work(end) {
    return 0.5 * EFFECTIVE_MASS * (end * end - this.speed * this.speed) + this.length * this.force(0.5 * (this.speed + end));
  }

  allowed(end) {
    return Math.max(Math.min(end, this.high), this.low);
  }

  endNear(power, guess) {
    let end = guess;
    for (let round = 0; round < 12; round += 1) {
      const inverse = 1 / (this.speed + end);
      const given = 2 * power * this.length * inverse;
      const growth = BEARING[1] + this.way.air * (this.speed + end);
      const step = (this.work(end) - given) / (EFFECTIVE_MASS * end + 0.5 * this.length * growth + given * inverse);
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
    this.charged = 0;
    this.growth = 0;
    this.at = Math.max(this.end, this.low);
    this.aim(gear, flat, this.power);
    this.judge(gear, line, piece, this.at);
  }

  idle(gear, line, node) {
    this.cost = NEVER;
    this.end = 0;
    this.power = 0;
    if (!(this.low <= this.high) || this.coast < this.low) return;
    this.judge(gear, line, node, Math.min(this.coast, this.high));
    this.judge(gear, line, node, this.low);
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
    this.guess(gear, from);
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
      this.guess(gear, power);
    }
    return piece;
  }

  /** Charge, and its growth with the speed at the end, of a power up to the end in `at`. */
  guess(gear, power) {
    const mean = 0.5 * (this.speed + this.at);
    const rpm = this.rpm(gear, mean, power);
    const charged = charge(power, rpm);
    this.charged = charged === Infinity ? 0 : charged;
    this.growth = 0;
    if (heldOf(peakAt(rpm)) >= SUSTAINABLE) return;
    const quicker = charge(power, (1 + NUDGE) * rpm);
    const known = quicker !== Infinity && charged !== Infinity;
    this.charged = known ? charged : 0;
    this.growth = known ? (quicker - charged) / (2 * NUDGE * mean) : 0;
  }

  /** Moves the end in `at` to where more speed costs what it is worth by a slope, and gives the power. */
  aim(gear, slope, from) {
    const end = this.at;
    const sum = this.speed + end;
    const quicker = this.length / (sum * sum * end);
    const turning = (this.price * this.length * this.growth) / (sum * end);
    const gain = quicker * (1 + this.price * this.charged) - slope - turning;
    const joules = (0.5 * EFFECTIVE_MASS) / ETA + from * quicker;
    const power = powerWorth(gain / (this.price * joules), this.rpm(gear, 0.5 * sum, from), from);
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
