// Chance that can be repeated: the same seed gives the same numbers (mulberry32, public domain).

export class Chance {
  constructor(seed) {
    this.state = seed >>> 0;
  }

  /** A number from 0 to below 1. */
  share() {
    this.state = (this.state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(this.state ^ (this.state >>> 15), 1 | this.state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  }

  /** A whole number below `end`. */
  below(end) {
    return Math.floor(this.share() * end);
  }

  one(list) {
    return list[this.below(list.length)];
  }

  /** Up to `most` things that `make` makes. */
  some(most, make) {
    return Array.from({ length: this.below(most + 1) }, make);
  }
}
