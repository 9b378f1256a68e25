// SPDX-License-Identifier: Apache-2.0
// Serves the viewer on loopback; its questions to the archive go on to the service from the same address, so that the
// browser sees one origin. Arguments: address of the service, port (0: any). Prints the viewer's address; ends with
// its standard input, so that it never outlives who started it.
import fs from 'node:fs';
import http from 'node:http';
import path from 'node:path';
import { fileURLToPath } from 'node:url';

const here = path.dirname(fileURLToPath(import.meta.url));
const dist = path.join(here, 'ohif-app', 'dist');
const TYPES = {
  '.css': 'text/css',
  '.html': 'text/html; charset=utf-8',
  '.ico': 'image/x-icon',
  '.js': 'text/javascript',
  '.json': 'application/json',
  '.mjs': 'text/javascript',
  '.png': 'image/png',
  '.svg': 'image/svg+xml',
  '.wasm': 'application/wasm',
  '.woff2': 'font/woff2',
};
// Nothing is fetched from or sent to another address, whatever the viewer would like.
const SAFE = {
  'Content-Security-Policy':
    "default-src 'self' data: blob:; script-src 'self' 'unsafe-inline' 'unsafe-eval' blob:; style-src 'self' 'unsafe-inline'",
  'X-Content-Type-Options': 'nosniff',
};

/**
 * @param {{service: URL, port: number, answered?: (line: object) => void}} options answered is told every answer of
 *     the service
 * @returns {Promise<http.Server>} listening
 */
export function serveViewer({ service, port, answered = () => {} }) {
  const server = http.createServer((request, response) => {
    const own = `127.0.0.1:${server.address().port}`;
    if (request.headers.host !== own && request.headers.host !== own.replace('127.0.0.1', 'localhost')) {
      response.writeHead(421, SAFE).end(); // a foreign name that was pointed at this machine
    } else if (request.url.startsWith('/dicomweb/')) {
      passOn(request, response, service, answered);
    } else {
      file(request, response);
    }
  });
  return new Promise((listening, failed) => {
    server.on('error', failed);
    server.listen(port, '127.0.0.1', () => listening(server));
  });
}

function passOn(request, response, service, answered) {
  const told = (status) =>
    answered({ method: request.method, url: request.url, accept: request.headers.accept, status });
  const onward = http.request(
    { host: service.hostname, port: service.port, path: request.url, method: request.method, headers: request.headers },
    (answer) => {
      told(answer.statusCode);
      response.writeHead(answer.statusCode, answer.headers);
      answer.pipe(response);
    },
  );
  onward.on('error', (problem) => {
    told(502);
    if (!response.headersSent) response.writeHead(502, { 'Content-Type': 'text/plain' });
    response.end(`The service does not answer: ${problem.message}\n`);
  });
  request.pipe(onward);
}

/** A file of the viewer; every other address is one of its pages. */
function file(request, response) {
  const wanted = path.join(dist, path.normalize(decoded(request.url)));
  let found = path.join(dist, 'index.html');
  if (request.url.split('?')[0] === '/app-config.js') {
    found = path.join(here, 'app-config.js');
  } else if (wanted.startsWith(dist + path.sep) && fs.statSync(wanted, { throwIfNoEntry: false })?.isFile()) {
    found = wanted;
  }
  const type = TYPES[path.extname(found)] ?? 'application/octet-stream';
  response.writeHead(200, { ...SAFE, 'Content-Type': type });
  fs.createReadStream(found).pipe(response);
}

function decoded(url) {
  try {
    return decodeURIComponent(url.split('?')[0]).replaceAll('\0', '');
  } catch {
    return '/';
  }
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const server = await serveViewer({ service: new URL(process.argv[2]), port: Number(process.argv[3] ?? 0) });
  process.stdout.write(`http://127.0.0.1:${server.address().port}/\n`);
  process.stdin.resume().on('end', () => process.exit(0));
}
