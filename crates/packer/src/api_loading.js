const wasmUrl = new URL('remount_bg.wasm', import.meta.url);

// Node cannot fetch a file: it reads it.
const wasmSource = wasmUrl.protocol === 'file:' ? (await import('node:fs/promises')).readFile(wasmUrl) : wasmUrl;

await __wbg_init({ module_or_path: wasmSource });

export default async function init() {}
