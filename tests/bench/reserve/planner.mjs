// The pass back, which finds what it is worth to be anywhere, and the ride forward by it: src/course/reserve/{planner,back,forward}.rs.

import { HABITS, SUSTAINABLE } from './rider.mjs';
import { NEVER, Rule } from './rule.mjs';
import { OFF_SPEED, paces } from './way.mjs';

const SAME = 1e-9;
const FALL = 1e3;
const LEAST_GAIN = 1e-9;
const LIKELY = 2;
const MOST_LAPS = 5;
const ON_FOOT = { speed: 0, gear: -1 };

export const fall = (speed) => (speed <= OFF_SPEED + SAME ? 0 : FALL);

export class Planner {
  constructor(way, gearing, price, geared, [slowest, fastest], doubt = 0) {
    Object.assign(this, { way, gearing, price, geared, slowest, fastest });
    this.gears = geared ? gearing.count : 1;
    this.off = HABITS.off + doubt;
    this.rule = new Rule(way, gearing, price);
    this.paces = paces(way, price);
    this.byRing = new Float64Array(gearing.ring.at(-1) + 1);
  }

  gear(index) {
    return this.geared ? index : -1;
  }

  /** The crank at 1 m/s in the gear that suits a speed best. */
  suits(speed) {
    return this.gearing.rpm[this.gearing.best(speed, SUSTAINABLE)];
  }

  isPedalled(gear, suits) {
    const rpm = this.gearing.rpm[gear];
    return !this.geared || (rpm >= this.slowest * suits && rpm <= this.fastest * suits);
  }

  pace(at) {
    return this.paces[this.way.segment[at]];
  }

  footCost(at) {
    const { speed, charge } = this.pace(at);
    return (this.way.length[at] / speed) * (1 + this.price * charge) + this.way.extra[at];
  }

  setOff(at) {
    return this.way.mounted(at, this.pace(at).speed);
  }

  /** Fills a field in front of a place whose values stand. */
  back(field, from) {
    const powers = new Float64Array(field.size).fill(SUSTAINABLE);
    for (let at = from - 1; at >= 0; at -= 1) {
      for (let node = 0; node < field.nodes; node += 1) this.ride(field, at, node, powers);
      const speed = this.setOff(at);
      const riding = speed === undefined ? Infinity : HABITS.on + this.ridingOn(field, at, speed, powers);
      field.foot[at] = Math.min(this.footCost(at) + field.foot[at + 1], riding);
      const { size } = field;
      field.values.set(field.riding.subarray(at * size, (at + 1) * size), at * size);
      if (this.geared) for (let node = 0; node < field.nodes; node += 1) this.shift(field, at, node);
      this.getOff(field, at);
    }
  }

  enter(field, at, speed) {
    const next = (at + 1) * field.nodes;
    this.rule.enter(at, speed, field.speeds[next], field.speeds[next + field.nodes - 1]);
  }

  ride(field, at, node, powers) {
    const { rule } = this;
    const speed = field.speeds[at * field.nodes + node];
    this.enter(field, at, speed);
    const suits = this.suits(speed);
    let coasts = false;
    for (let gear = 0; gear < field.gears; gear += 1) {
      const slot = gear * field.nodes + node;
      field.riding[at * field.size + slot] = NEVER;
      if (!this.isPedalled(gear, suits)) continue;
      rule.best(this.gear(gear), field.line.move(at + 1, gear), node, powers[slot]);
      field.riding[at * field.size + slot] = rule.cost;
      powers[slot] = rule.power;
      coasts ||= rule.power <= 0;
    }
    if (!coasts) return;
    for (let gear = 0; gear < field.gears; gear += 1) {
      if (this.isPedalled(gear, suits)) continue;
      rule.idle(field.line.move(at + 1, gear), node);
      field.riding[at * field.size + gear * field.nodes + node] = rule.cost;
    }
  }

  ridingOn(field, at, speed, powers) {
    const node = field.line.move(at, 0).piece(speed, 0);
    this.enter(field, at, speed);
    const suits = this.suits(speed);
    let least = NEVER;
    for (let gear = 0; gear < field.gears; gear += 1) {
      if (!this.isPedalled(gear, suits)) continue;
      this.rule.best(this.gear(gear), field.line.move(at + 1, gear), node, powers[gear * field.nodes + node]);
      least = Math.min(least, this.rule.cost);
    }
    return least;
  }

  shift(field, at, node) {
    const { ring, rear, front } = this.gearing;
    const { ridden: line, gears, nodes } = field;
    const square = field.speeds[at * nodes + node] ** 2;
    const [slow, slower] = [Math.sqrt(Math.max(square - rear, 0)), Math.sqrt(Math.max(square - front, 0))];
    const piece = line.move(at, 0).piece(slow, node);
    const lower = line.piece(slower, node);
    this.byRing.fill(NEVER);
    let best = NEVER;
    for (let gear = 0; gear < gears; gear += 1) {
      line.move(at, gear);
      this.byRing[ring[gear]] = Math.min(this.byRing[ring[gear]], line.value(slow, piece));
      best = Math.min(best, line.value(slower, lower));
    }
    for (let gear = 0; gear < gears; gear += 1) {
      const place = at * field.size + gear * nodes + node;
      field.values[place] = Math.min(field.values[place], this.byRing[ring[gear]], best);
    }
  }

  getOff(field, at) {
    const off = this.off + field.foot[at];
    for (let slot = 0; slot < field.size; slot += 1) {
      const cost = off + fall(field.speeds[at * field.nodes + (slot % field.nodes)]);
      const place = at * field.size + slot;
      if (cost < field.values[place]) field.values[place] = cost;
    }
  }

  /** Rides laps from a state until one ends as it began. */
  flying(field, begin) {
    let ridden = this.forward(field, begin);
    for (let lap = 1; lap < MOST_LAPS && !isLike(ridden.begin, ridden.end); lap += 1) ridden = this.forward(field, ridden.end);
    return ridden;
  }

  forward(field, begin) {
    const moments = [];
    let state = begin;
    let [time, net] = [0, 0];
    for (let at = 0; at < field.end; at += 1) {
      const moment = this.next(field, at, state);
      moments.push(moment);
      state = moment.state;
      time += moment.charged + moment.lost;
      net += moment.charge * moment.charged;
    }
    return { moments, begin, end: state, price: this.price, time, net, unclosed: field.atLine(state) - field.atLine(begin) };
  }

  next(field, at, { speed, gear }) {
    if (gear < 0) return this.afterFoot(field, at, 0);
    const place = at * field.nodes;
    const held = Math.min(Math.max(speed, field.speeds[place]), field.speeds[place + field.nodes - 1]);
    const ahead = this.ahead(field, at, held, gear);
    if (this.off + field.foot[at] + fall(held) < ahead.cost) return this.afterFoot(field, at, this.off);
    return this.ridden(at, ahead, 0);
  }

  afterFoot(field, at, off) {
    const speed = this.setOff(at);
    const ahead = speed === undefined ? undefined : this.ahead(field, at, speed, -1);
    if (ahead && HABITS.on + ahead.cost < this.footCost(at) + field.foot[at + 1]) return this.ridden(at, ahead, off + HABITS.on);
    const pace = this.pace(at);
    const charged = this.way.length[at] / pace.speed;
    return { state: ON_FOOT, riding: false, entry: pace.speed, charge: pace.charge, charged, lost: off + this.way.extra[at] };
  }

  ahead(field, at, speed, from) {
    let best = from < 0 ? { cost: NEVER, end: 0, power: 0, gear: 0, entry: speed } : this.aheadIn(field, at, speed, from);
    const others = [];
    for (let gear = 0; gear < this.gears; gear += 1) {
      if (gear === from) continue;
      const entry = Math.sqrt(Math.max(speed * speed - (from < 0 ? 0 : this.gearing.loss(from, gear)), 0));
      others.push({ value: field.ridden.move(at, gear).nearest(entry), entry, gear });
    }
    others.sort((a, b) => a.value - b.value);
    const tried = from < 0 ? others.length : LIKELY;
    for (const { entry, gear } of others.slice(0, tried)) {
      const other = this.aheadIn(field, at, entry, gear);
      if (other.cost < best.cost - LEAST_GAIN) best = other;
    }
    return best;
  }

  aheadIn(field, at, entry, gear) {
    const { rule } = this;
    this.enter(field, at, entry);
    const line = field.line.move(at + 1, gear);
    const node = field.nodes >> 1;
    if (this.isPedalled(gear, this.suits(entry))) rule.surely(this.gear(gear), line, node, SUSTAINABLE);
    else rule.idle(line, node);
    return { cost: rule.cost, end: rule.end, power: rule.power, gear, entry };
  }

  ridden(at, { cost, end, power, gear, entry }, lost) {
    const mean = 0.5 * (entry + end);
    const charge = cost < NEVER ? this.rule.charge(this.gear(gear), mean, power) : 0;
    return { state: { speed: end, gear }, riding: true, entry, charge, charged: this.way.length[at] / mean, lost };
  }
}

function isLike(one, other) {
  if (one.gear < 0 || other.gear < 0) return one.gear === other.gear;
  return one.gear === other.gear && Math.abs(one.speed - other.speed) < 1e-3 * one.speed;
}
