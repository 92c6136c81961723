// @ts-check
// Courses kept in this browser, or saved as a file.

import { listCourses } from './box-courses.js';
import { ridden, takeCourse, written } from './course.js';
import { all, field, find } from './dom.js';
import { save } from './download.js';
import * as engine from './engine.js';
import { forget, keep, kept, names } from './storage.js';
import { change } from './update.js';

/** The name that a course was last kept or chosen under, and its own name, by which it is told whether it is still ridden. */
let own = { kept: '', ridden: '' };
/** Name that another course is kept under and that was asked about. */
let asked = '';

/** The button of the course that is ridden is pressed. @type {import('./update.js').Part} */
export function showChosen() {
  const order = `course=${field('course').value}`;
  for (const button of all('#lap-chooser [data-write]')) button.ariaPressed = String(button.dataset.write === order);
}

/** A kept course can be chosen again once another is ridden. @type {import('./update.js').Part} */
export function showKept() {
  if (field('kept').value && !isRidden()) field('kept').value = '';
}

const isRidden = () => engine.courseName() === own.ridden;

/** @param {string} name */
function rideAs(name) {
  own = { kept: name, ridden: engine.courseName() ?? '' };
}

export function offerKept() {
  find('keep').addEventListener('click', keepRidden);
  find('save-course').addEventListener('click', saveRidden);
  find('kept').addEventListener('change', chooseKept);
  find('forget').addEventListener('click', forgetKept);
  addEventListener('storage', list);
  list();
}

/**
 * @param {engine.CourseNote} note
 * @param {string} [name]
 */
function tell(note, name = '') {
  find('kept-says').textContent = engine.courseNote(note, name);
}

/**
 * What became of a course that was to be chosen, where that is done.
 * @param {engine.CourseNote} note
 * @param {string} name
 */
function tellChooser(note, name) {
  find('chosen-says').textContent = engine.courseNote(note, name);
}

/**
 * The same of what was kept or saved. What is painted over a course becomes part of that.
 * @param {engine.CourseNote} note
 * @param {string} name
 */
function tellWithPaint(note, name) {
  tell(note, name);
  const isPainted = field('paint').value.trim() !== '';
  if (isPainted) find('kept-says').append(` ${engine.courseNote(engine.CourseNote.Painted, name)}`);
}

function saveRidden() {
  const course = ridden();
  if (!course) return tell(engine.CourseNote.None);
  const file = `${course.name.replace(/[^\p{L}\p{N}]+/gu, '-')}.json`;
  save(file, written(course), 'application/json');
  tellWithPaint(engine.CourseNote.Saved, file);
}

function keepRidden() {
  const course = ridden();
  if (!course) return tell(engine.CourseNote.None);
  const name = field('keep-name').value.trim() || course.name;
  if (isOfAnother(name)) {
    asked = name;
    return tell(engine.CourseNote.OfAnother, name);
  }
  keepAs(name, written({ ...course, name }));
}

/**
 * Whether another course would be lost, which was not asked about before.
 * @param {string} name
 */
const isOfAnother = (name) => kept(name) !== null && name !== asked && !(name === own.kept && isRidden());

/**
 * @param {string} name
 * @param {string} text
 */
function keepAs(name, text) {
  asked = '';
  rideAs(name);
  if (keep(name, text)) tellWithPaint(engine.CourseNote.Kept, name);
  else tell(engine.CourseNote.Forbidden);
  list();
}

/** Lists what is kept, also in another window. */
function list() {
  const select = field('kept');
  const chosen = select.value;
  const known = names();
  select.replaceChildren(new Option('', ''), ...known.map((name) => new Option(name)));
  select.value = known.includes(chosen) ? chosen : '';
  find('kept-row').hidden = known.length === 0;
  listCourses(known);
}

function chooseKept() {
  const name = field('kept').value;
  if (!name) return;
  const text = kept(name);
  if (text === null) return lost(name);
  find('chosen-says').textContent = '';
  const update = takeCourse(name, text);
  rideAs(name);
  change(update);
}

/** @param {string} name */
function lost(name) {
  list();
  field('kept').value = '';
  tellChooser(engine.CourseNote.Lost, name);
}

function forgetKept() {
  const name = field('kept').value;
  if (!name) return;
  tellChooser(forget(name) ? engine.CourseNote.Forgotten : engine.CourseNote.Forbidden, name);
  list();
  find(find('kept-row').hidden ? 'lap-open' : 'kept').focus();
}
