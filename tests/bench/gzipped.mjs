// A web server that packs what it sends, as hosts do.

import { once } from 'node:events';
import { readFile } from 'node:fs/promises';
import { createServer } from 'node:http';
import { gzipSync } from 'node:zlib';

const TYPES = {
  css: 'text/css',
  html: 'text/html',
  js: 'text/javascript',
  png: 'image/png',
  svg: 'image/svg+xml',
  webmanifest: 'application/manifest+json',
};

/**
 * Serves a folder; gives back its address and a function that closes the server.
 * @param {URL} folder
 */
export async function serveGzipped(folder) {
  const server = createServer(async ({ url }, response) => {
    const path = new URL(url, 'http://site').pathname.slice(1) || 'index.html';
    try {
      const body = gzipSync(await readFile(new URL(path, folder)));
      const type = TYPES[path.split('.').at(-1)] ?? 'application/octet-stream';
      response.writeHead(200, { 'Content-Type': type, 'Content-Encoding': 'gzip' }).end(body);
    } catch {
      response.writeHead(404).end();
    }
  });
  server.listen(0, '127.0.0.1');
  await once(server, 'listening');
  return { address: `http://127.0.0.1:${server.address().port}/`, close: () => server.close() };
}
