// The lap as riders ride in plain JavaScript, by the algorithm of gear-math's `Lap::on_reserve` and as quick as it would go, to
// tell what WebAssembly gains.
//
//   node tests/bench/reserve/lap.mjs [40 or 44/31]
//
// Course, rider and bikes are those of `reserve_single` and `reserve_pair` in src/lib.rs, which must give the same times to 0.1 s: a sum in another
// order may turn a shift.

import { MEADOW } from '../meadow.mjs';
import { Field, Gearing } from './field.mjs';
import { Hunt } from './hunt.mjs';
import { fall, Planner } from './planner.mjs';
import { HABITS, REPAID, SUSTAINABLE, USUAL_PRICE } from './rider.mjs';
import { SLOWEST, Way } from './way.mjs';

/** `Fineness::QUICK`. */
const FINENESS = {
  step: 5,
  speeds: 20,
  nearSpeeds: 8,
  reach: 0.25,
  cranks: [0.72, 1.45],
  ahead: 400,
  prices: [3, 4],
  near: 0.007,
};
const DOUBT = 0.8;
const ABOUT_FEET = [SLOWEST, 4.5];
const BEYOND = 1.1;
const ROOM_BELOW = 0.9;
const WITH_SHIFTS = 1.01;
const HIGHEST = 0.98;

class Search {
  constructor(segments, rings, sprockets) {
    this.way = new Way(segments, FINENESS.step);
    this.gearing = new Gearing(rings, sprockets);
  }

  quickest() {
    const { way } = this;
    const free = new Field(
      FINENESS.speeds,
      1,
      Array.from(way.ceilings, (ceiling) => even([SLOWEST, ceiling])),
    );
    this.lookAhead(free, USUAL_PRICE);
    const laps = this.hunted(free, USUAL_PRICE, { speed: 5, gear: 0 }, FINENESS.prices[0]);
    const nearest = laps.nearest();
    laps.doubted = this.doubted(free, laps.price(), nearest);
    const field = new Field(FINENESS.nearSpeeds, this.gearing.count, this.near(laps, nearest));
    field.continueFrom(free);
    const { speed, gear } = nearest.end;
    const begin = gear < 0 ? nearest.end : { speed, gear: this.gearing.best(speed, SUSTAINABLE) };
    return this.hunted(field, laps.price() * WITH_SHIFTS, begin, FINENESS.prices[1]).nearest();
  }

  planner(price, geared, doubt) {
    return new Planner(this.way, this.gearing, price, geared, FINENESS.cranks, doubt);
  }

  lookAhead(field, price) {
    const steps = this.way.stepsIn(FINENESS.ahead);
    field.begin(steps, price);
    this.planner(price, false).back(field, steps);
    field.repeat();
  }

  hunted(field, first, from, most) {
    let lap = this.lap(field, this.planner(first, field.gears > 1), from);
    const scale = SUSTAINABLE * lap.time;
    const hunt = new Hunt(HIGHEST / REPAID, FINENESS.near * scale, scale);
    for (let tried = 1; ; tried += 1) {
      const price = hunt.take(lap);
      if (price === undefined || tried === most) return hunt;
      lap = this.lap(field, this.planner(price, field.gears > 1), lap.end);
    }
  }

  lap(field, planner, begin) {
    planner.back(field, field.end);
    const ridden = planner.flying(field, begin);
    field.repeat();
    return ridden;
  }

  /** The laps if getting off took longer or less long, where that may make another lap. */
  doubted(free, price, nearest) {
    const lap = (doubt) => this.lap(free.copy(), this.planner(price, false, doubt), nearest.end);
    const { way } = this;
    const { moments } = nearest;
    let [atWill, part] = [false, false];
    moments.forEach(({ riding }, at) => {
      const begins = at > 0 && moments[at - 1].riding !== riding;
      if (begins) [atWill, part] = [atWill || part, false];
      part = !riding && (begins || at === 0 ? !way.blocked[at] : part && !way.blocked[at]);
    });
    const nearly = ({ riding, entry }, at) =>
      riding && HABITS.off + free.foot[at] + fall(entry) - free.line.move(at, 0).nearest(entry) < DOUBT;
    return [...(atWill || part ? [lap(DOUBT)] : []), ...(moments.some(nearly) ? [lap(-DOUBT)] : [])];
  }

  near(laps, nearest) {
    return Array.from(this.way.ceilings, (ceiling, at) => {
      const likely = within(about(nearest, at), ceiling);
      const others = [...laps.laps, ...laps.doubted].map((lap) => within(about(lap, at), ceiling));
      const beyond = others.filter(([low, high]) => low * BEYOND < likely[0] || high > likely[1] * BEYOND);
      const wider = ([low, high], other) => [Math.min(low, other[0]), Math.max(high, other[1])];
      return { possible: beyond.reduce(wider, likely), likely };
    });
  }
}

const even = (possible) => ({ possible, likely: possible });

function about({ moments }, at) {
  const [before, here] = [moments[(at + moments.length - 1) % moments.length], moments[at % moments.length]];
  if (!before.riding || !here.riding) return ABOUT_FEET;
  return [here.entry / (1 + FINENESS.reach), here.entry * (1 + FINENESS.reach)];
}

const within = ([low, high], ceiling) => [Math.max(Math.min(low, ROOM_BELOW * ceiling), SLOWEST), Math.min(high, ceiling)];

/** Time of the lap, s, with the price of what it took beyond nothing. */
function lapTime(rings, sprockets) {
  const { time, unclosed, price, net } = new Search(MEADOW, rings, sprockets).quickest();
  return time + unclosed + price * net;
}

const SPROCKETS = { 40: [11, 13, 15, 17, 19, 21, 24, 28, 32, 37, 42], '44/31': [11, 13, 15, 18, 21, 24, 28, 32] };
const ROUNDS = 40;

const wanted = process.argv[2] ?? '40';
const rings = wanted.split('/').map(Number);
let least = Infinity;
for (let round = 0; round < ROUNDS; round += 1) {
  const started = performance.now();
  lapTime(rings, SPROCKETS[wanted]);
  least = Math.min(least, performance.now() - started);
}
console.log(`${wanted}: ${least.toFixed(3)} ms at best`);
console.log(`  ${lapTime(rings, SPROCKETS[wanted]).toFixed(9)} s`);
