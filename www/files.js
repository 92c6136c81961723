// @ts-check
// Files given to the page: recorded tracks, saved courses, racks and everything at once, chosen or dropped. They are read here and go nowhere.

import { takeCourse } from './course.js';
import { decoded } from './decoded.js';
import { find } from './dom.js';
import * as engine from './engine.js';
import { takeRack } from './rack.js';
import { kindOf, KIND as RACK } from './rack-file.js';
import { KIND as ALL, takeScenario } from './scenario-file.js';
import { readTrack } from './track.js';
import { change } from './update.js';

/** Bytes in which it shows whether a file is JSON. */
const HEAD = 1000;

/** How many files were given so far: what is read of an earlier one is no longer wanted. */
let given = 0;

/**
 * Takes a file as what it calls itself, or as what it was chosen for, or says why not; gives back where.
 * @param {File} file
 * @param {string} [chosenFor]
 */
async function take(file, chosenFor) {
  given += 1;
  const mine = given;
  const isLarge = file.size > Number(find('lap-file').dataset.largest);
  const isText = !isLarge && (chosenFor === RACK || (await isJson(file)));
  const text = isText ? await textOf(file) : null;
  const kind = text === null ? chosenFor : kindOf(text);
  const isAll = text !== null && kind === ALL;
  if (isAll || kind === RACK || chosenFor === RACK) {
    if (isAll) takeScenario(file.name, text);
    else takeRack(file, text);
    find('rack').setAttribute('open', '');
    return isAll ? 'notices' : 'rack';
  }
  if (isLarge) change(engine.refuse(file.name, engine.FileFault.TooLarge));
  else if (text === null) await takeTrack(file, mine);
  else change(takeCourse(file.name, text, file.name));
  return 'lap-drop';
}

/** @param {File} file */
const isJson = async (file) => Boolean((await textOf(file.slice(0, HEAD)))?.trimStart().startsWith('{'));

/**
 * What a file says; null where the browser cannot read it.
 * @param {Blob} file
 */
const textOf = (file) => file.arrayBuffer().then(decoded, () => null);

/**
 * Has a track read, and says so meanwhile.
 * @param {File} file
 * @param {number} mine
 */
async function takeTrack(file, mine) {
  const says = find('chosen-says');
  says.textContent = engine.courseNote(engine.CourseNote.Reading, file.name);
  const numbers = await readTrack(file).catch(() => null);
  if (mine !== given) return;
  says.textContent = '';
  if (numbers) change(engine.takeTrack(file.name, numbers));
  else change(engine.refuse(file.name, engine.FileFault.Unreadable));
}

export function takeFiles() {
  find('lap-open').addEventListener('click', () => find('lap-file').click());
  follow('lap-file');
  follow('rack-file', RACK);
  // Anywhere on the page: a file dropped beside the section would make the browser leave the page for it.
  document.addEventListener('dragover', drag);
  document.addEventListener('drop', drag);
  document.addEventListener('dragleave', () => find('lap-drop').classList.remove('over'));
}

/**
 * @param {string} id
 * @param {string} [chosenFor]
 */
function follow(id, chosenFor) {
  find(id).addEventListener('change', async ({ target }) => {
    const chooser = /** @type {HTMLInputElement} */ (target);
    const file = chooser.files?.[0];
    const place = file && (await take(file, chosenFor));
    if (place === 'notices') find(place).scrollIntoView({ block: 'center' });
    chooser.value = '';
  });
}

/** @param {DragEvent} event */
async function drag(event) {
  if (!event.dataTransfer?.types.includes('Files')) return;
  event.preventDefault();
  find('lap-drop').classList.toggle('over', event.type === 'dragover');
  if (event.type === 'drop') await drop(event);
}

/** @param {DragEvent} event */
async function drop({ target, dataTransfer }) {
  const outside = !find('lap').contains(/** @type {Node} */ (target));
  const file = dataTransfer?.files[0];
  const place = file ? await take(file) : 'lap-drop';
  if (outside || place !== 'lap-drop') find(place).scrollIntoView({ block: 'center' });
}
