// @ts-check
// Files given to the page: recorded tracks, saved courses and racks, chosen or dropped. They are read here and go nowhere.

import { takeCourse } from './course.js';
import { find } from './dom.js';
import * as engine from './engine.js';
import { takeRack } from './rack.js';
import { isRack } from './rack-file.js';
import { change } from './update.js';

/**
 * Takes a file as the course that is ridden or, where it calls itself one, as a rack, or says why not; gives back where.
 * @param {File} file
 */
async function take(file) {
  if (file.size > Number(find('lap-file').dataset.largest)) {
    change(engine.refuse(file.name, engine.FileFault.TooLarge));
    return 'lap-drop';
  }
  const text = await file.text().catch(() => null);
  if (text !== null && isRack(text)) {
    await takeRack(file, text);
    find('rack').setAttribute('open', '');
    return 'rack';
  }
  change(courseIn(file, text));
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
  find('lap-file').addEventListener('change', async ({ target }) => {
    const chooser = /** @type {HTMLInputElement} */ (target);
    const file = chooser.files?.[0];
    if (file) await take(file);
    chooser.value = '';
  });
  // Anywhere on the page: a file dropped beside the section would make the browser leave the page for it.
  document.addEventListener('dragover', drag);
  document.addEventListener('drop', drag);
  document.addEventListener('dragleave', () => find('lap-drop').classList.remove('over'));
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
