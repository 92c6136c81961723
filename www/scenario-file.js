// @ts-check
// Bench, box of parts, rack and courses as one file: {"remount": "scenario", "version": 1, "bench": {…}, "bikes": […], "courses": […]}.

import { plainCourse, riddenOwn, written } from './course.js';
import { find } from './dom.js';
import { save } from './download.js';
import * as engine from './engine.js';
import { flush } from './fields.js';
import { parsed } from './json.js';
import { openBikes } from './rack.js';
import { entriesOf, plain, texts } from './rack-file.js';
import { keep, kept, names } from './storage.js';
import { change, show } from './update.js';

/** @typedef {import('./course.js').Plain} Plain */

export const KIND = 'scenario';
const VERSION = 1;
const FILE = 'remount-all.json';
/** More are hardly anybody's, and would fill the browser's storage. */
const MOST_COURSES = 100;

export const offerSaving = () => find('save-all').addEventListener('click', saveAll);

function saveAll() {
  flush();
  save(FILE, JSON.stringify(everything(), null, 1), 'application/json');
  show(engine.fileSaved(FILE));
}

function everything() {
  const [mine, others] = engine.filedBench();
  return {
    remount: KIND,
    version: VERSION,
    bench: { mine: Object.fromEntries(mine), 'not-mine': Object.fromEntries(others) },
    ridden: riddenOwn() ?? undefined,
    bikes: engine.filedRack().map(plain),
    courses: names().flatMap((name) => {
      const course = plainCourse(parsed(kept(name) ?? ''));
      return course ? [{ ...course, name }] : [];
    }),
  };
}

/**
 * Takes a file as everything, or says why not.
 * @param {string} file
 * @param {string} text
 */
export function takeScenario(file, text) {
  const { remount: _, version, bench = {}, ridden, bikes = [], courses = [], ...rest } = entriesOf(parsed(text));
  if (version !== VERSION) return refuse(file, engine.RackFileFault.OtherVersion);
  const plainCourses = Array.isArray(courses) ? courses.map(plainCourse) : [null];
  const isSound = isObject(bench) && Array.isArray(bikes) && !plainCourses.includes(null);
  if (!isSound) return refuse(file, engine.RackFileFault.Foreign);
  const strange = Object.keys(rest);
  flush();
  const { mine, 'not-mine': others, ...unknown } = entriesOf(bench);
  for (const name of Object.keys(unknown)) strange.push(name);
  const lists = [texts(mine, strange), texts(others, strange)];
  const course = plainCourse(ridden);
  if (ridden !== undefined && !course) strange.push('ridden');
  if (bikes.length > 0) openBikes(file, bikes);
  const counts = keepAll(/** @type {Plain[]} */ (plainCourses));
  const rows = course ? [course.name, course.stretches.join('\n')] : [];
  change(engine.openFile(file, lists[0], lists[1], rows, course?.smoothingM, Uint32Array.from(counts), strange));
}

/**
 * Keeps courses beside those that are kept; how many are new, and how many the browser did not keep.
 * @param {Plain[]} courses
 */
function keepAll(courses) {
  let [added, failed] = [0, Math.max(0, courses.length - MOST_COURSES)];
  for (const course of courses.slice(0, MOST_COURSES)) {
    const name = nameFor(course);
    if (name === null) continue;
    if (keep(name, written({ ...course, name }))) added += 1;
    else failed += 1;
  }
  // As if another window had kept them.
  if (added > 0) dispatchEvent(new StorageEvent('storage'));
  return [added, failed];
}

/**
 * A name that is free, null where the very course is kept.
 * @param {Plain} course
 */
function nameFor(course) {
  for (let number = 1; ; number += 1) {
    const name = number === 1 ? course.name : `${course.name} ${number}`;
    const there = kept(name);
    if (there === null) return name;
    const own = plainCourse(parsed(there));
    if (own && String(own.stretches) === String(course.stretches) && own.smoothingM === course.smoothingM) return null;
  }
}

/** @param {unknown} value */
const isObject = (value) => typeof value === 'object' && value !== null && !Array.isArray(value);

/**
 * @param {string} file
 * @param {engine.RackFileFault} why
 */
const refuse = (file, why) => show(engine.refuseFile(file, why));
