// What it is worth to be somewhere, by place, gear and speed, and the gears of a bike: src/course/reserve/{field,range,gearing}.rs.

import { BIKE, charge, EFFECTIVE_MASS, HABITS, SUSTAINABLE } from './rider.mjs';
import { NEVER } from './rule.mjs';

const SAME = 1e-9;
const OUTSIDE = 0.3;
const [SPEED_BIN, POWER_BIN, SPEED_BINS, POWER_BINS] = [0.15, 60, 100, 10];

export class Gearing {
  constructor(rings, sprockets) {
    const gears = rings.flatMap((ring, place) =>
      sprockets.map((sprocket) => ({ place, rpm: (60 * sprocket) / (BIKE.wheel * ring) })),
    );
    this.count = gears.length;
    this.rpm = Float64Array.from(gears, ({ rpm }) => rpm);
    this.ring = Int32Array.from(gears, ({ place }) => place);
    const lost = (seconds) => (2 * BIKE.efficiency * SUSTAINABLE * seconds) / EFFECTIVE_MASS;
    [this.rear, this.front] = [lost(HABITS.rear), lost(HABITS.front)];
    this.table = new Uint8Array(SPEED_BINS * POWER_BINS);
    for (let bin = 0; bin < this.table.length; bin += 1) {
      const speed = (Math.floor(bin / POWER_BINS) + 0.5) * SPEED_BIN;
      this.table[bin] = this.suits(speed, ((bin % POWER_BINS) + 0.5) * POWER_BIN);
    }
  }

  suits(speed, power) {
    const taken = (gear) => charge(power, this.rpm[gear] * speed);
    let best = 0;
    for (let gear = 1; gear < this.count; gear += 1) {
      const [one, other] = [taken(best), taken(gear)];
      if (other < one || (other === one && this.rpm[gear] > this.rpm[best])) best = gear;
    }
    return best;
  }

  best(speed, power) {
    const row = Math.min(Math.floor(speed * (1 / SPEED_BIN)), SPEED_BINS - 1);
    const column = Math.min(Math.floor(power * (1 / POWER_BIN)), POWER_BINS - 1);
    return this.table[row * POWER_BINS + column];
  }

  loss(from, to) {
    if (from === to) return 0;
    return this.ring[from] === this.ring[to] ? this.rear : this.front;
  }
}

/** The values in one gear at one place: a window on a field, moved about rather than made anew. */
export class Line {
  constructor(field, values) {
    this.speeds = field.speeds;
    this.squares = field.squares;
    this.inverses = field.inverses;
    this.values = values;
    this.nodes = field.nodes;
    this.gears = field.gears;
    this.first = 0;
    this.from = 0;
  }

  move(at, gear) {
    this.first = at * this.nodes;
    this.from = (at * this.gears + gear) * this.nodes;
    return this;
  }

  speed(node) {
    return this.speeds[this.first + node];
  }

  piece(speed, guess) {
    const { speeds, first } = this;
    const last = this.nodes - 2;
    let piece = Math.min(guess, last);
    while (piece < last && speed > speeds[first + piece + 1]) piece += 1;
    while (piece > 0 && speed < speeds[first + piece]) piece -= 1;
    return piece;
  }

  slope(piece) {
    return (this.values[this.from + piece + 1] - this.values[this.from + piece]) * this.inverses[this.first + piece];
  }

  at(speed, piece) {
    return this.values[this.from + piece] + this.slope(piece) * (speed * speed - this.squares[this.first + piece]);
  }

  value(speed, guess) {
    const holds = speed >= this.speed(0) - SAME && speed <= this.speed(this.nodes - 1) + SAME;
    return holds ? this.at(speed, this.piece(speed, guess)) : NEVER;
  }

  nearest(speed) {
    return this.value(Math.min(Math.max(speed, this.speed(0)), this.speed(this.nodes - 1)), 0);
  }
}

export class Field {
  constructor(nodes, gears, ranges) {
    Object.assign(this, { nodes, gears, end: ranges.length - 1, size: nodes * gears });
    this.speeds = new Float64Array(nodes * ranges.length);
    ranges.forEach((range, at) => {
      this.speeds.set(nodesOf(range, nodes), at * nodes);
    });
    this.squares = this.speeds.map((speed) => speed * speed);
    this.inverses = this.squares.map((square, slot) => 1 / (this.squares[slot + 1] - square));
    this.values = new Float64Array(this.size * ranges.length).fill(NEVER);
    this.riding = new Float64Array(this.size * ranges.length).fill(NEVER);
    this.foot = new Float64Array(ranges.length).fill(NEVER);
    this.line = new Line(this, this.values);
    this.ridden = new Line(this, this.riding);
  }

  copy() {
    const copy = Object.create(Field.prototype);
    Object.assign(copy, this, { values: this.values.slice(), riding: this.riding.slice(), foot: this.foot.slice() });
    copy.line = new Line(copy, copy.values);
    copy.ridden = new Line(copy, copy.riding);
    return copy;
  }

  set(at, value) {
    for (let slot = 0; slot < this.size; slot += 1) {
      this.values[at * this.size + slot] = value(this.speeds[at * this.nodes + (slot % this.nodes)]);
    }
  }

  begin(at, price) {
    this.foot[at] = 0;
    const mass = EFFECTIVE_MASS / BIKE.efficiency;
    this.set(at, (speed) => -price * 0.5 * mass * speed * speed);
  }

  atLine({ speed, gear }) {
    return gear < 0 ? this.foot[0] : this.line.move(0, gear).nearest(speed);
  }

  repeat() {
    const { end, size, values } = this;
    let base = NEVER;
    for (let slot = 0; slot < size; slot += 1) base = Math.min(base, values[slot]);
    for (let slot = 0; slot < size; slot += 1) values[end * size + slot] = values[slot] - base;
    this.foot[end] = this.foot[0] - base;
  }

  continueFrom(free) {
    this.foot[this.end] = free.foot[0];
    const line = free.line.move(0, 0);
    this.set(this.end, (speed) => line.nearest(speed));
  }
}

/** Speeds in equal ratios: all that are possible, and closer together those that are likely. */
function nodesOf({ possible: [slowest, fastest], likely: [low, high] }, count) {
  const [below, above] = [Math.log(low / slowest), Math.log(fastest / high)];
  const outside = Math.round(OUTSIDE * count);
  const part = (length) => (length > SAME ? Math.max(1, Math.round((outside * length) / (below + above))) : 0);
  const [under, over] = [part(below), part(above)];
  const ratios = (slow, fast, number) => Array.from({ length: number }, (_, step) => slow * (fast / slow) ** (step / number));
  return [
    ...ratios(slowest, low, under),
    ...ratios(low, high, count - 1 - under - over),
    ...ratios(high, fastest, over),
    fastest,
  ];
}
