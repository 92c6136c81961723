// The functions of the module, ready to be called once it is imported.

import { start } from './unstarted.js';

export * from './unstarted.js';

await start();

export default async function init() {}
