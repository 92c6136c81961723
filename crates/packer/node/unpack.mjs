// Bundled into the page, where it unpacks the engine. Only the decoder is taken from lzma1, which also packs.

import { Decoder } from './node_modules/lzma1/lib/decoder.js';
import { InputBuffer, OutputBuffer } from './node_modules/lzma1/lib/streams.js';

/** What is in a .lzma file. Throws when it is damaged. */
globalThis.unpackLzma = (packed) => {
  const output = new OutputBuffer();
  new Decoder().decompress(new InputBuffer(packed), output);
  return output.toArray();
};
