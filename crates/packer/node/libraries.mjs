// What the page takes from packages.

// @ts-expect-error: it comes without types.
import { Decoder } from './node_modules/lzma1/lib/decoder.js';
// @ts-expect-error: it comes without types.
import { InputBuffer, OutputBuffer } from './node_modules/lzma1/lib/streams.js';

/** Makes one element the same as another, touching only what differs. */
export { default as morph } from 'morphdom';

/**
 * What is in a .lzma file. Throws when it is damaged. Only the decoder is taken from lzma1, which also packs.
 * @param {Uint8Array} packed
 * @returns {Uint8Array}
 */
export function unpackLzma(packed) {
  const output = new OutputBuffer();
  new Decoder().decompress(new InputBuffer(packed), output);
  return output.toArray();
}
