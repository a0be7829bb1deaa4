/** A small server for the built app: files of one folder, with the headers a production host should send. */
import { createReadStream } from 'node:fs';
import { createServer, type IncomingMessage, type Server, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import { extname } from 'node:path';
import { fileAt } from './files.ts';
import { isHashed, securityHeaders, typeOf } from './headers.ts';

export interface Served {
  /** Where the app is, with a slash at the end. */
  readonly address: string;
  readonly port: number;
  close(): Promise<void>;
}

export type ServeProblem = 'port-taken' | 'port-forbidden' | 'host-unknown' | 'failed';

export type Serving =
  | { readonly ok: true; readonly served: Served }
  | { readonly ok: false; readonly problem: ServeProblem; readonly message: string };

/**
 * Serves a folder until closed.
 * @param at.host the address to listen on; a loopback address keeps it on this machine.
 * @param at.port 0 lets the system choose a free one.
 */
export function serve(
  folder: string,
  at: { readonly host: string; readonly port: number },
): Promise<Serving> {
  const server = createServer((request, response) => answer(folder, request, response));
  return new Promise((done) => {
    server.once('error', (error: NodeJS.ErrnoException) => done(failure(error)));
    server.listen(at.port, at.host, () => {
      const { port } = server.address() as AddressInfo;
      done({
        ok: true,
        served: { address: `http://${reachable(at.host)}:${port}/`, port, close: () => close(server) },
      });
    });
  });
}

function answer(folder: string, request: IncomingMessage, response: ServerResponse): void {
  const refuse = (status: number, words: string, headers: Record<string, string> = {}): void => {
    response.writeHead(status, { ...securityHeaders, 'Content-Type': typeOf('.txt'), ...headers });
    response.end(`${words}\n`);
  };
  if (request.method !== 'GET' && request.method !== 'HEAD')
    return refuse(405, 'Only GET and HEAD.', { Allow: 'GET, HEAD' });
  const path = (request.url ?? '/').split(/[?#]/, 1)[0]!;
  const file = fileAt(folder, path);
  if (!file) return refuse(404, 'No such file.');
  const tag = `"${file.bytes.toString(36)}-${Math.round(file.modifiedMs).toString(36)}"`;
  const headers = {
    ...securityHeaders,
    'Content-Type': typeOf(extname(file.path)),
    'Cache-Control': isHashed(path) ? 'public, max-age=31536000, immutable' : 'no-cache',
    ETag: tag,
  };
  if (request.headers['if-none-match'] === tag) {
    response.writeHead(304, headers).end();
    return;
  }
  response.writeHead(200, { ...headers, 'Content-Length': String(file.bytes) });
  if (request.method === 'HEAD') {
    response.end();
    return;
  }
  // A build that replaces the file meanwhile: end this answer, not the server.
  createReadStream(file.path)
    .on('error', () => response.destroy())
    .pipe(response);
}

function failure(error: NodeJS.ErrnoException): Serving {
  const problems: Readonly<Record<string, ServeProblem>> = {
    EADDRINUSE: 'port-taken',
    EACCES: 'port-forbidden',
    EADDRNOTAVAIL: 'host-unknown',
    ENOTFOUND: 'host-unknown',
  };
  return { ok: false, problem: problems[error.code ?? ''] ?? 'failed', message: error.message };
}

/** The host as it stands in an address opened on this machine: "every address" is no address. */
function reachable(host: string): string {
  if (host === '0.0.0.0') return '127.0.0.1';
  if (host === '::') return '[::1]';
  return host.includes(':') ? `[${host}]` : host;
}

function close(server: Server): Promise<void> {
  return new Promise((done) => {
    server.close(() => done());
    server.closeAllConnections();
  });
}
