// The hunt for the price at which a lap takes its budget, which is nothing here: src/course/reserve/{hunt,laps}.rs.

const USUAL_SLOPE = 4;
const FURTHEST = 0.5;
const SAME_PRICE = 2e-4;
const SAME_S = 0.005;
const TIE_S = 1e-6;

const costOf = (lap, price) => lap.time + lap.unclosed + price * lap.net;
const clamp = (value, low, high) => Math.min(Math.max(value, low), high);

export class Hunt {
  constructor(highest, near, scale) {
    Object.assign(this, { highest, near, scale, laps: [], doubted: [] });
  }

  /** Takes a lap and says which price to try next; none where a lap is known to be as good at it. */
  take(lap) {
    const gain = this.cost(lap.price) - costOf(lap, lap.price);
    this.laps.push(lap);
    const price = this.price();
    const same = Math.abs(price / lap.price - 1) <= SAME_PRICE || Math.abs(lap.net) < this.near;
    const settled = gain < 0 ? gain > -SAME_S : same || gain < SAME_S;
    return settled ? undefined : price;
  }

  price() {
    const last = this.laps.at(-1);
    const usual = last.price * Math.exp(clamp((USUAL_SLOPE * last.net) / this.scale, -FURTHEST, FURTHEST));
    return Math.min(this.even() ?? usual, this.highest);
  }

  cost(price) {
    return this.laps.reduce((least, lap) => Math.min(least, costOf(lap, price)), Infinity);
  }

  even() {
    const over = this.laps.filter((lap) => lap.net > 0);
    const under = this.laps.filter((lap) => !(lap.net > 0));
    let [best, highest] = [undefined, -Infinity];
    for (const one of over) {
      for (const other of under) {
        const price = (other.time + other.unclosed - one.time - one.unclosed) / (one.net - other.net);
        const held = clamp(price, Math.min(one.price, other.price), Math.max(one.price, other.price));
        if (this.cost(held) >= highest) [best, highest] = [held, this.cost(held)];
      }
    }
    return best;
  }

  /** Of the laps that are best at the price found, the one nearest to the budget. */
  nearest() {
    const price = this.even() ?? this.laps.at(-1).price;
    const least = this.cost(price) + TIE_S;
    const among = this.laps.filter((lap) => costOf(lap, price) <= least);
    const lap = among.reduce((best, one) => (Math.abs(one.net) < Math.abs(best.net) ? one : best));
    return { ...lap, price };
  }
}
