import { once } from 'node:events';
import { createServer } from 'node:http';
import sirv from 'sirv';

/**
 * Serves a folder on 127.0.0.1, reading each file anew, and tells of each request. Port 0 takes any free port.
 *
 * Resolves to the address to open and a function that closes the server.
 */
export async function startServer(folder, { port = 0, onRequest = () => {} } = {}) {
  const files = sirv(folder, { dev: true });
  const server = createServer((request, response) => {
    onRequest(request.url);
    files(request, response, () => response.writeHead(404).end('Not found'));
  });
  server.listen(port, '127.0.0.1');
  await once(server, 'listening');
  return { address: `http://127.0.0.1:${server.address().port}/`, close: () => close(server) };
}

async function close(server) {
  server.closeAllConnections();
  server.close();
  await once(server, 'close');
}
