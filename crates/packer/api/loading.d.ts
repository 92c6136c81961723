/** What the engine's WebAssembly may be given as. */
export type EngineSource = BufferSource | WebAssembly.Module | Response | URL | string;

/**
 * Starts the engine of `remount/unstarted`; until then its functions cannot be called. `remount` starts it by itself.
 *
 * @param wasm `remount_bg.wasm`: bytes, an address or a response; left out, the file beside this module.
 * @throws When it cannot be had or is not WebAssembly.
 */
export function start(wasm?: EngineSource | Promise<EngineSource>): Promise<void>;

/**
 * The same at once. Browsers refuse it on a page's own thread for a module of this size; workers and Node do not.
 *
 * @param module The bytes of `remount_bg.wasm` or what was compiled of them; may be left out in Node.
 * @throws When they are missing or are not WebAssembly.
 */
export function startSync(module?: BufferSource | WebAssembly.Module): void;

/**
 * Resolves when the functions of this module can be called.
 *
 * They can be as soon as the module is imported; calling this, once or often, does no harm.
 */
export default function init(): Promise<void>;
