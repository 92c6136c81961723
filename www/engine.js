// @ts-check
// The engine that travels inside the page: its functions, and how it is started.

import { unpackLzma } from '../crates/packer/node/libraries.mjs';
import init from '../target/packer/page/remount.js';
import { find } from './dom.js';

export * from '../target/packer/page/remount.js';

const LACKING =
  'This page computes with WebAssembly, which this browser lacks or has switched off. ' +
  'Allow it in the browser’s settings or open the page in another browser.';

const INCOMPLETE = 'The page may not have arrived whole: load or copy it again.';
const FORBIDDEN =
  'The server that sent the page forbids WebAssembly: its Content-Security-Policy lacks ‘wasm-unsafe-eval’. ' +
  'Whoever runs the server can add it; opened from a file the page needs no leave.';
/** What browsers say where a policy is in the way. */
const POLICY = /content security policy|unsafe-eval|\bCSP\b/i;

/** @type {Uint8Array | undefined} */
let unpacked;

/** The engine's WebAssembly, unpacked when it is first asked for. */
export function bytes() {
  unpacked ??= unpackLzma(fromBase64(String(find('engine').textContent)));
  return unpacked;
}

/** Starts the engine, or throws an `Error` whose message can be shown to the reader. */
export async function start() {
  if (typeof WebAssembly === 'undefined') throw new Error(LACKING);
  try {
    await startWith(bytes());
  } catch (cause) {
    const why = /** @type {Error} */ (cause).message;
    const because = POLICY.test(why) ? FORBIDDEN : INCOMPLETE;
    throw new Error(`The engine in this page cannot be started. ${because} (${why})`, { cause });
  }
}

/**
 * Starts the engine from its unpacked bytes.
 * @param {Uint8Array} module
 */
export const startWith = (module) => init({ module_or_path: module });

/** @param {string} text */
function fromBase64(text) {
  if (Uint8Array.fromBase64) return Uint8Array.fromBase64(text);
  return Uint8Array.from(atob(text), (character) => character.charCodeAt(0));
}
