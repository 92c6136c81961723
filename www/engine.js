// @ts-check
// The engine that travels inside the page: its functions, and how it is started.

import init from '../target/packer/page/remount.js';
import { find } from './dom.js';
import { unpack } from './unpack.js';

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

/** The engine, compiled: workers start with the same. @type {WebAssembly.Module} */
export let compiled;

/** Starts the engine, or throws an `Error` whose message can be shown to the reader. */
export async function start() {
  if (typeof WebAssembly === 'undefined') throw new Error(LACKING);
  try {
    const [unpacker, packed] = String(find('engine').textContent).split(' ').map(fromBase64);
    compiled = await WebAssembly.compile(/** @type {BufferSource} */ (await unpack(unpacker, packed)));
    await startWith(compiled);
  } catch (cause) {
    const why = /** @type {Error} */ (cause).message;
    const because = POLICY.test(why) ? FORBIDDEN : INCOMPLETE;
    throw new Error(`The engine in this page cannot be started. ${because} (${why})`, { cause });
  }
}

/** @param {WebAssembly.Module} module */
export const startWith = (module) => init({ module_or_path: module });

/** @param {string} text */
function fromBase64(text) {
  if (Uint8Array.fromBase64) return Uint8Array.fromBase64(text);
  return Uint8Array.from(atob(text), (character) => character.charCodeAt(0));
}
