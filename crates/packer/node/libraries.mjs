// What the page takes from packages, bundled into it.

import { Decoder } from './node_modules/lzma1/lib/decoder.js';
import { InputBuffer, OutputBuffer } from './node_modules/lzma1/lib/streams.js';
import morphdom from './node_modules/morphdom/dist/morphdom-esm.js';

/** What is in a .lzma file. Throws when it is damaged. Only the decoder is taken from lzma1, which also packs. */
globalThis.unpackLzma = (packed) => {
  const output = new OutputBuffer();
  new Decoder().decompress(new InputBuffer(packed), output);
  return output.toArray();
};

/** Makes one element the same as another, touching only what differs. */
globalThis.morph = morphdom;
