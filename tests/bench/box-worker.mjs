// Rides its share of the laps of a box, as a worker of the page does.

import { parentPort, workerData } from 'node:worker_threads';
import init, * as engine from '../../target/packer/page/remount.js';

const { bytes, index, count } = workerData;
await init({ module_or_path: bytes });
parentPort.on('message', ({ box, rows, laps, inFull }) => {
  if (!engine.boxErrand(box, rows)) throw new Error('nothing to ride');
  const mine = laps.filter((_, place) => place % count === index);
  parentPort.postMessage(mine.flatMap((lap) => [...engine.boxLap(lap, inFull)]));
});
parentPort.postMessage('ready');
