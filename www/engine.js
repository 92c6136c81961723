'use strict';

/**
 * Unpacks the engine that travels inside the page and starts it.
 *
 * Resolves to the engine's exported functions. Rejects with an `Error` whose message can be shown to the reader.
 */
async function startEngine() {
  requireBrowser();
  await wasm_bindgen({ module_or_path: unpackedEngine() });
  return wasm_bindgen;
}

function requireBrowser() {
  if (typeof WebAssembly === 'undefined') {
    throw new Error(
      'This page computes with WebAssembly, which this browser lacks or has switched off. ' +
        'Allow it in the browser’s settings or open the page in another browser.',
    );
  }
  if (typeof DecompressionStream === 'undefined') {
    throw new Error('This browser is too old to unpack the page. Open it in a browser from spring 2023 or later.');
  }
}

/** The engine as a response, so that the browser compiles it while it is still being unpacked. */
function unpackedEngine() {
  const packed = bytesFromBase64(document.getElementById('engine').textContent);
  const unpacked = new Blob([packed]).stream().pipeThrough(new DecompressionStream('gzip'));
  return new Response(unpacked, { headers: { 'Content-Type': 'application/wasm' } });
}

function bytesFromBase64(text) {
  if (Uint8Array.fromBase64) return Uint8Array.fromBase64(text);
  return Uint8Array.from(atob(text), (character) => character.charCodeAt(0));
}
