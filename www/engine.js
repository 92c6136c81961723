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

const UNSEEN_AFTER = 500; // milliseconds

/** The engine, compiled: workers start with the same. @type {WebAssembly.Module} */
export let compiled;

/**
 * The engine, packed behind what unpacks it: as it stands in the page, or in a script beside it.
 * @typedef {{ text: string } | { beside: string }} Packed
 */

/**
 * Starts the engine, or throws an `Error` whose message can be shown to the reader.
 * @param {(packed: Packed, due: Promise<void>) => Promise<WebAssembly.Module | undefined>} elsewhere Compiles it off the page
 * once that is due, where it can.
 */
export async function start(elsewhere) {
  if (typeof WebAssembly === 'undefined') throw new Error(LACKING);
  try {
    const packed = packedHere();
    // What lies beside the page is fetched after all that the first screen is made of.
    const due = 'beside' in packed ? painted() : Promise.resolve();
    compiled = (await elsewhere(packed, due)) ?? (await compile(packed));
    await startWith(compiled);
  } catch (cause) {
    const why = /** @type {Error} */ (cause).message;
    const because = POLICY.test(why) ? FORBIDDEN : INCOMPLETE;
    throw new Error(`The engine in this page cannot be started. ${because} (${why})`, { cause });
  }
}

/** @returns {Packed} */
function packedHere() {
  const holder = find('engine');
  const beside = holder.getAttribute('value');
  return beside === null ? { text: String(holder.textContent) } : { beside };
}

/** After the next frame, or soon, where nothing is painted because nobody looks. @returns {Promise<void>} */
const painted = () =>
  new Promise((go) => {
    requestAnimationFrame(() => setTimeout(go));
    setTimeout(go, UNSEEN_AFTER);
  });

/**
 * Unpacks and compiles the engine, on the page or in a worker.
 * @param {Packed} packed
 */
export async function compile(packed) {
  const text = 'text' in packed ? packed.text : await read(packed.beside);
  const parts = text.split(' ').map(fromBase64);
  return WebAssembly.compile(/** @type {BufferSource} */ (await unpack(parts[0], parts[1])));
}

/**
 * What the engine's script says when it is run.
 * @param {string} script
 * @returns {Promise<string>}
 */
async function read(script) {
  const own = /** @type {any} */ (globalThis);
  await (own.document ? run(script) : own.importScripts(script));
  const said = own.remountEngine;
  delete own.remountEngine;
  return said;
}

/**
 * @param {string} src
 * @returns {Promise<void>}
 */
function run(src) {
  return new Promise((done, fail) => {
    const onerror = () => fail(new Error(`${src} is missing`));
    document.head.append(Object.assign(document.createElement('script'), { src, onload: done, onerror }));
  });
}

/** @param {WebAssembly.Module} module */
export const startWith = (module) => init({ module_or_path: module });

/** @param {string} text */
function fromBase64(text) {
  if (Uint8Array.fromBase64) return Uint8Array.fromBase64(text);
  return Uint8Array.from(atob(text), (character) => character.charCodeAt(0));
}
