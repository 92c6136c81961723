
/**
 * Starts the engine with its WebAssembly: bytes, an address, a response or a promise of any; without one, that beside this file.
 */
export async function start(wasm = beside()) {
  await __wbg_init({ module_or_path: wasm });
}

/** The same at once, with bytes or a compiled module; without either, Node reads the file beside this one. */
export function startSync(module = beside()) {
  if (module instanceof URL) throw new Error('startSync needs the bytes of remount_bg.wasm here: only Node reads them by itself');
  initSync({ module });
}

// Node cannot fetch a file: it reads it. Bundlers for browsers would stumble over an import of what only Node has.
function beside() {
  const url = new URL('remount_bg.wasm', import.meta.url);
  const files = url.protocol === 'file:' && globalThis.process?.getBuiltinModule?.('node:fs');
  return files ? files.readFileSync(url) : url;
}
