// Serves a folder until interrupted: node serve.mjs FOLDER

import { startServer } from './static-server.mjs';

const PREFERRED_PORT = 8080;

const folder = process.argv[2];
const { address } = await startServer(folder, { port: PREFERRED_PORT }).catch((error) => {
  if (error.code !== 'EADDRINUSE') throw error;
  return startServer(folder);
});
console.log(`${folder} is served at ${address} (Ctrl-C ends it)`);
