// @ts-check
// Unpacks the engine by a small engine of its own, on the page a little at a time: what happens meanwhile there is heard.

import { breath } from './breath.js';

/** Bytes that a slow phone unpacks, or puts together, within a frame or two. */
const AT_ONCE = 100_000;

/**
 * The module in a packed file. Throws when that is damaged.
 * @param {Uint8Array} unpacker
 * @param {Uint8Array} packed
 * @returns {Promise<Uint8Array>}
 */
export async function unpack(unpacker, packed) {
  const { instance } = await WebAssembly.instantiate(/** @type {BufferSource} */ (unpacker));
  const { memory, room, begin, go_on, unpacked, unpacked_length } = /** @type {any} */ (instance.exports);
  const at = room(packed.length);
  new Uint8Array(memory.buffer).set(packed, at);
  const unpacking = begin(at, packed.length);
  let left = unpacking ? 1 : -1;
  while (left > 0) {
    left = go_on(unpacking, AT_ONCE);
    if (globalThis.document) await breath();
  }
  if (left < 0) throw new Error('damaged');
  const from = unpacked(unpacking);
  return new Uint8Array(memory.buffer).slice(from, from + unpacked_length(unpacking));
}
