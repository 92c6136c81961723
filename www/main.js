// @ts-check
// The whole page's script, which is its workers' script too: on the page it starts the page, in a worker it works.

import { answerButtons } from './acts.js';
import { followAddress, openFirst, showLink, showPlace } from './address.js';
import { bikesDue, watchBikes } from './bikes.js';
import { keepAboveKeyboard, spokenSoon, watchBoard } from './board.js';
import { offerBox } from './box.js';
import { breath } from './breath.js';
import { offerKept, showChosen, showKept } from './courses.js';
import { all, find } from './dom.js';
import { offerEdits } from './edits.js';
import * as engine from './engine.js';
import { enterAgain, showFields, showUndo, takeInput, typedSoFar } from './fields.js';
import { takeFiles } from './files.js';
import { followFolds, openAsLeft, restDue } from './folds.js';
import { showFragments, unhold } from './fragments.js';
import { lapDue, watchLap } from './lap.js';
import { offerLink, showCode } from './link.js';
import { offerUnits } from './menus.js';
import { keepOffline } from './offline.js';
import { forgetSaid, offerPaint, showBand } from './paint.js';
import { furnishPictures, repaint } from './pictures.js';
import { mindPresses } from './press.js';
import { readyToPrint } from './print.js';
import { offerRack, showRack } from './rack.js';
import { rove } from './roving.js';
import { followRows } from './rows.js';
import { offerSaving } from './scenario-file.js';
import { offerSearch } from './search.js';
import { showHome } from './sheet.js';
import { awayDue, giveWay, watchSections, writeSections } from './sight.js';
import { offerTables } from './tables.js';
import { offerPictures } from './take.js';
import { stepTeeth } from './teeth.js';
import { change, whenChanged, whenShown } from './update.js';
import { fillLists, openByKey, showUsed } from './used.js';
import { compiledByWorker } from './warm.js';
import { work } from './worker.js';

function connect() {
  whenShown(showFragments, showFields, showHome, showUndo, showLink, showCode, repaint, showBand, showChosen, awayDue);
  whenChanged(lapDue, bikesDue, showKept, restDue, spokenSoon, forgetSaid);
  for (const part of [readyToPrint, followFolds, openByKey, rove, stepTeeth, watchBoard, watchSections, keepAboveKeyboard])
    part();
  for (const part of [watchLap, watchBikes, offerKept, offerRack, offerSearch, offerPaint, offerBox, mindPresses]) part();
  for (const part of [offerLink, offerPictures, offerTables, offerSaving, offerUnits]) part();
}

/** Hears what changes the bench. */
function hear() {
  for (const part of [takeInput, giveWay, followRows, answerButtons, followAddress, takeFiles, offerEdits]) part();
}

async function start() {
  const { dataset } = document.documentElement;
  try {
    await engine.start(compiledByWorker);
  } catch (problem) {
    find('starting').textContent = /** @type {Error} */ (problem).message;
    for (const entry of all('[data-field]')) entry.setAttribute('disabled', '');
    dataset.engine = 'failed';
    return;
  } finally {
    // Not before: its copies would take the line from the engine.
    keepOffline();
  }
  furnishPictures();
  await breath();
  connect();
  await breath();
  openAsLeft();
  fillLists();
  showUsed();
  const first = openFirst();
  await breath();
  const typed = typedSoFar();
  change(first);
  whenChanged(unhold);
  hear();
  enterAgain(typed);
  find('starting').remove();
  delete dataset.awaits;
  await breath();
  await writeSections();
  showRack();
  dataset.engine = 'ready';
  showPlace();
}

if (globalThis.document) breath().then(start);
else work();
