// @ts-check
// Files given to the page: recorded tracks and saved courses, chosen or dropped. They are read here and go nowhere.

import { takeCourse } from './course.js';
import { find } from './dom.js';
import * as engine from './engine.js';
import { change } from './update.js';

/**
 * Takes a file as the course that is ridden, or says why not.
 * @param {File | undefined} file
 */
async function take(file) {
  if (file) change(await read(file));
}

/** @param {File} file */
async function read(file) {
  if (file.size > Number(find('lap-file').dataset.largest)) return engine.refuse(file.name, engine.FileFault.TooLarge);
  const text = await file.text().catch(() => null);
  if (text === null) return engine.refuse(file.name, engine.FileFault.Unreadable);
  if (text.trimStart().startsWith('{')) return takeCourse(file.name, text);
  return engine.takeTrack(file.name.replace(/\.[^.]*$/, ''), text);
}

export function takeFiles() {
  find('lap-file').addEventListener('change', async ({ target }) => {
    const chooser = /** @type {HTMLInputElement} */ (target);
    await take(chooser.files?.[0]);
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
  await take(dataTransfer?.files[0]);
  if (outside) find('lap-drop').scrollIntoView({ block: 'center' });
}
