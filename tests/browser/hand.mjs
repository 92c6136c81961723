// A hand that does what a rider or mechanic does, counts what that takes, and looks after each step for what it was done for.

import assert from 'node:assert/strict';
import { assertQuiet, frame, openPage, PHONE, SINGLE_FILE } from './harness.mjs';

export const WIDE = { width: 1440, height: 1000 };
/** About what the keyboard of a phone takes of its screen, which the browser makes the page smaller for. Estimate. */
const KEYBOARD = 300;

/** Each kind of screen a job is done on. */
export const SCREENS = [
  { name: 'on a phone', viewport: PHONE, hasTouch: true, isMobile: true },
  { name: 'at a desk', viewport: WIDE },
];

export class Hand {
  presses = 0;
  scrolled = 0;
  steps = 0;
  shared = 0;

  /** @param question Whose verdict, or sign of it, must be in sight after each step. */
  constructor(page, heard, question, { hasTouch = false, viewport }) {
    Object.assign(this, { page, heard, question, isTouch: hasTouch, viewport });
  }

  /** Opens the page as it stands on a screen, for a job that is about this question. */
  static async open(browser, screen, question, options = {}) {
    const { page, heard } = await openPage(browser, SINGLE_FILE, { folded: true, ...screen, ...options });
    return new Hand(page, heard, question, screen);
  }

  /** A tap of a finger or a click. */
  tap(selector) {
    return this.#step(selector, 1, () => this.#touch(selector));
  }

  /** Types over what a field holds: its first touch selects all of it, where it stands on the first screen. */
  type(field, value) {
    const selector = `#${field}`;
    return this.#step(selector, 1 + value.length, async () => {
      await this.#touch(selector);
      await this.#raiseKeyboard(selector);
      await this.page.evaluate(() => document.activeElement.closest('.cell, .sides') || document.activeElement.select());
      await this.page.keyboard.type(value);
    });
  }

  /** Changes a field that decides a section beside its answer. */
  edit(section, field, value) {
    const selector = `#${section} > .edit`;
    return this.#step(selector, 1, async () => {
      await this.#lowerKeyboard();
      await this.#touch(`#by-${section} [data-edits=${field}]`);
      const isList = await this.page.locator(selector).evaluate(({ localName }) => localName === 'select');
      this.presses += isList ? 2 : value.length;
      if (isList) return this.page.selectOption(selector, value);
      await this.#raiseKeyboard(selector);
      return this.page.keyboard.type(value);
    });
  }

  /** Pastes over what a field holds. */
  paste(field, value) {
    return this.#step(`#${field}`, 2, async () => {
      await this.#touch(`#${field}`);
      await this.page.keyboard.press('ControlOrMeta+a');
      await this.page.keyboard.insertText(value);
    });
  }

  /** Empties a field. */
  empty(field) {
    return this.#step(`#${field}`, 2, async () => {
      await this.#touch(`#${field}`);
      await this.#raiseKeyboard(`#${field}`);
      await this.page.keyboard.press('ControlOrMeta+a');
      await this.page.keyboard.press('Delete');
    });
  }

  /** Opens a list and chooses from it. */
  choose(selector, value) {
    return this.#step(selector, 2, async () => {
      await this.#lowerKeyboard();
      await this.page.selectOption(selector, value);
    });
  }

  /** A ready-made value from the list beside a field. */
  pick(field, value) {
    return this.choose(`[data-sets=${field}]`, value);
  }

  /** Opens the chooser of files and takes one. */
  file(selector, path) {
    return this.#step(selector, 2, () => this.page.setInputFiles(selector, path));
  }

  /** A key of the keyboard. */
  press(key) {
    return this.#step(':focus', 1, () => this.page.keyboard.press(key));
  }

  /** Goes on by Tab, or back, until an element has the focus. */
  async tabTo(selector, by = 'Tab') {
    const isThere = () => this.page.locator(selector).evaluate((element) => element === document.activeElement);
    for (let stops = 0; !(await isThere()); stops += 1) {
      assert.ok(stops < 60, `no way to ${selector} by Tab`);
      this.presses += 1;
      await this.#measured(() => this.page.keyboard.press(by));
    }
  }

  /** Says what the job took, and holds it to its limits. */
  async done(job, { presses, phone, desk }) {
    const { width } = this.viewport;
    const [scrolled, least] = this.isTouch ? phone : desk;
    const share = this.shared / this.steps;
    console.log(
      `job ${job} at ${width} px: ${this.presses} presses, ${Math.round(this.scrolled)} px scrolled, verdict and field on one screen in ${this.shared} of ${this.steps} steps`,
    );
    assert.ok(this.presses <= presses, `${this.presses} presses, at most ${presses}`);
    assert.ok(this.scrolled <= scrolled, `${this.scrolled} px scrolled, at most ${scrolled}`);
    assert.ok(share >= least, `on one screen in ${share} of the steps, at least ${least}`);
    const wide = await this.page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
    assert.ok(wide <= 0, `${wide} px wider than the window`);
    assertQuiet(this.heard);
  }

  async #step(selector, presses, act) {
    this.presses += presses;
    await this.#measured(act);
    await frame(this.page);
    const { field, verdict, sign } = await this.page.evaluate(look, { selector, question: this.question });
    assert.ok(verdict || sign, `neither verdict nor sign of ${this.question} is in sight after ${selector}`);
    this.steps += 1;
    if (field && verdict) this.shared += 1;
  }

  async #measured(act) {
    const at = () => this.page.evaluate('scrollY');
    const from = await at();
    await act();
    this.scrolled += Math.abs((await at()) - from);
  }

  async #touch(selector) {
    const target = this.page.locator(selector).first();
    await (this.isTouch ? target.tap() : target.click());
  }

  async #raiseKeyboard(selector) {
    if (!this.isTouch) return;
    const { width, height } = this.viewport;
    await this.page.setViewportSize({ width, height: height - KEYBOARD });
    await this.page.locator(selector).scrollIntoViewIfNeeded();
  }

  async #lowerKeyboard() {
    if (this.isTouch) await this.page.setViewportSize(this.viewport);
  }
}

/**
 * Runs in the page: whether what was touched, the verdict, and its sign are in the window, whole and beside the strip. The strip
 * has the verdict, too: in words on a phone, and of the section in sight or when it has just changed at a desk.
 */
function look({ selector, question }) {
  const strip = document.querySelector('.strip').getBoundingClientRect();
  const isAbove = strip.top < innerHeight / 2;
  const isWhole = (element, from, to) => {
    const { top, bottom, height } = element.getBoundingClientRect();
    return height > 0 && top >= from - 1 && bottom <= to + 1;
  };
  const some = (selector) =>
    [...document.querySelectorAll(selector)].some((element) =>
      isWhole(element, isAbove ? strip.bottom : 0, isAbove ? innerHeight : strip.top),
    );
  const sign = document.getElementById(`at-${question}`);
  const change = document.getElementById('board-change');
  const words = [...sign.querySelectorAll('.told')].filter((element) => element.checkVisibility());
  const isSaid = words.length > 0 && words.every((element) => isWhole(element, 0, innerHeight));
  const isTold = change.textContent.includes(`${sign.previousSibling.textContent}: `) && isWhole(change, 0, innerHeight);
  return {
    field: some(selector),
    verdict: isTold || isSaid || some(`#decide-${question} .verdict-line, #${question} > .answer p:not(.doubt)`),
    sign: sign.textContent !== '' && isWhole(sign, 0, innerHeight),
  };
}
