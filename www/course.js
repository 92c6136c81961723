// @ts-check
// A course as a text: {"remountCourse": 1, "name": …, "smoothingM": 40, "stretches": ["120; 1.5; firm grass", …]}.

import * as engine from './engine.js';
import { parsed } from './json.js';

const VERSION = 1;
/** Characters, as the field for a name allows. */
const LONGEST_NAME = 60;

/**
 * Takes a course that was written as a text, or says why not.
 * @param {string} from Where it comes from, which names it if it does not name itself.
 * @param {string} text
 * @param {string} [file] The file it comes from; without one the browser kept it.
 */
export function takeCourse(from, text, file) {
  const course = parsed(text);
  if (course === undefined) return engine.refuse(from, engine.FileFault.Foreign);
  if (course?.remountCourse !== VERSION || !areTexts(course.stretches)) {
    return engine.refuse(from, engine.FileFault.OtherVersion);
  }
  const name = (typeof course.name === 'string' && course.name.trim()) || from;
  const smoothing = typeof course.smoothingM === 'number' ? course.smoothingM : undefined;
  return engine.takeRows(name, course.stretches.join('\n'), smoothing, file);
}

/**
 * The rows of a course that was written as a text; null where it is none.
 * @param {string} text
 */
export function rowsOf(text) {
  const stretches = parsed(text)?.stretches;
  return areTexts(stretches) ? stretches.join('\n') : null;
}

/** @typedef {{ name: string, smoothingM?: number, stretches: string[] }} Plain */

/**
 * A course that is part of another file; null where it is none.
 * @param {unknown} value
 * @returns {Plain | null}
 */
export function plainCourse(value) {
  const { name, smoothingM, stretches } = /** @type {Record<string, any>} */ (value ?? {});
  if (typeof name !== 'string' || !name.trim() || !areTexts(stretches)) return null;
  return { name: name.slice(0, LONGEST_NAME), smoothingM: typeof smoothingM === 'number' ? smoothingM : undefined, stretches };
}

/**
 * A list of anything else might refuse to become a text.
 * @param {unknown} list
 */
const areTexts = (list) => Array.isArray(list) && list.every((item) => typeof item === 'string');

/**
 * A course of the engine, ready to be kept; null where it has no rows.
 * @param {string[]} course Its name and its rows.
 * @returns {Plain | null}
 */
const ofEngine = ([name, rows]) => (rows ? { name, smoothingM: engine.smoothingM(), stretches: rows.trim().split('\n') } : null);

/** The course that is ridden; nothing while its file is still to be chosen. */
export const ridden = () => ofEngine(engine.course());

/** The rider's own course that is ridden, without what paint changes; nothing where it is another. */
export const riddenOwn = () => ofEngine(engine.ownCourse());

/**
 * A course written as a text.
 * @param {Plain} course
 */
export const written = (course) => JSON.stringify({ remountCourse: VERSION, ...course }, null, 1);
