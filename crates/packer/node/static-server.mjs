import { once } from 'node:events';
import { createServer } from 'node:http';
import sirv from 'sirv';

/**
 * Serves a folder on 127.0.0.1, reading each file anew, with more headers by its path, and tells of each request. Port 0 takes any free port.
 *
 * Resolves to the address to open and a function that closes the server.
 */
export async function startServer(folder, { port = 0, headersOf = () => ({}), onRequest = () => {} } = {}) {
  const setHeaders = (response, path) => {
    for (const [name, value] of Object.entries(headersOf(path))) response.setHeader(name, value);
  };
  const files = sirv(folder, { dev: true, setHeaders });
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
