'use strict';

/**
 * Starts the engine that travels inside the page.
 *
 * Resolves to the engine's exported functions. Rejects with an `Error` whose message can be shown to the reader.
 */
async function startEngine() {
  requireWebAssembly();
  try {
    await wasm_bindgen({ module_or_path: engineBytes() });
  } catch (cause) {
    throw new Error(`The engine in this page cannot be started. The page may not have arrived whole: load or copy it again. (${cause.message})`, { cause });
  }
  return wasm_bindgen;
}

function requireWebAssembly() {
  if (typeof WebAssembly === 'undefined') {
    throw new Error(
      'This page computes with WebAssembly, which this browser lacks or has switched off. ' +
        'Allow it in the browser’s settings or open the page in another browser.',
    );
  }
}

let unpackedEngine;

/** The engine's WebAssembly, unpacked when it is first asked for. */
function engineBytes() {
  unpackedEngine ??= unpackLzma(bytesFromBase64(document.getElementById('engine').textContent));
  return unpackedEngine;
}

function bytesFromBase64(text) {
  if (Uint8Array.fromBase64) return Uint8Array.fromBase64(text);
  return Uint8Array.from(atob(text), (character) => character.charCodeAt(0));
}
