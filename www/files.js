// @ts-check
// Files given to the page: recorded tracks, saved courses, racks and everything at once, chosen or dropped. They are read here and go nowhere.

import { takeCourse } from './course.js';
import { find } from './dom.js';
import * as engine from './engine.js';
import { takeRack } from './rack.js';
import { kindOf, KIND as RACK } from './rack-file.js';
import { KIND as ALL, takeScenario } from './scenario-file.js';
import { change } from './update.js';

/**
 * Takes a file as what it calls itself, or as what it was chosen for, or says why not; gives back where.
 * @param {File} file
 * @param {string} [chosenFor]
 */
async function take(file, chosenFor) {
  const isLarge = file.size > Number(find('lap-file').dataset.largest);
  const text = isLarge ? null : await file.text().catch(() => null);
  const kind = text === null ? chosenFor : kindOf(text);
  const isAll = text !== null && kind === ALL;
  if (isAll || kind === RACK || chosenFor === RACK) {
    if (isAll) takeScenario(file.name, text);
    else takeRack(file, text);
    find('rack').setAttribute('open', '');
    return isAll ? 'notices' : 'rack';
  }
  change(isLarge ? engine.refuse(file.name, engine.FileFault.TooLarge) : courseIn(file, text));
  return 'lap-drop';
}

/**
 * @param {File} file
 * @param {string | null} text
 */
function courseIn(file, text) {
  if (text === null) return engine.refuse(file.name, engine.FileFault.Unreadable);
  if (text.trimStart().startsWith('{')) return takeCourse(file.name, text, file.name);
  return engine.takeTrack(file.name, text);
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
