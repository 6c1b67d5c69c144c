#!/usr/bin/env node
// A small file server for the built page, with the headers that a production host should send.
// Used by scripts/serve and by the browser checks; needs nothing but Node.
//
//   node scripts/serve.mjs [--dir dist] [--port 8080] [--host 127.0.0.1] [--base /]

import { createReadStream } from 'node:fs';
import { stat } from 'node:fs/promises';
import { createServer } from 'node:http';
import { networkInterfaces } from 'node:os';
import { extname, join, resolve, sep } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';

const TYPES = {
  '.css': 'text/css; charset=utf-8',
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
  '.png': 'image/png',
  '.svg': 'image/svg+xml',
  '.ts': 'text/plain; charset=utf-8',
  '.txt': 'text/plain; charset=utf-8',
  '.wasm': 'application/wasm',
  '.webmanifest': 'application/manifest+json; charset=utf-8',
};

// The page may be framed on purpose: an instructor shows one figure inside a course page, and there
// is nothing here to sign in to or to steal. Everything else is as tight as the page allows;
// 'wasm-unsafe-eval' is what every engine asks for to compile WebAssembly.
export const POLICY = [
  "default-src 'none'",
  "script-src 'self' 'wasm-unsafe-eval'",
  "style-src 'self'",
  "img-src 'self' data:",
  "connect-src 'self'",
  "frame-src 'self'",
  "manifest-src 'self'",
  "worker-src 'self'",
  "base-uri 'none'",
  "form-action 'none'",
  'frame-ancestors *',
].join('; ');

export const HEADERS = {
  'Content-Security-Policy': POLICY,
  'Permissions-Policy': 'camera=(), geolocation=(), microphone=(), payment=(), usb=()',
  'Referrer-Policy': 'no-referrer',
  'X-Content-Type-Options': 'nosniff',
};

/** What pages of other hosts may load: the calculation and the element of a figure. */
const FOR_OTHERS = /^api\//;

/** The compressed forms that may lie beside a file, best first; scripts/compress.mjs puts them there. */
const FORMS = [
  ['br', '.br'],
  ['gzip', '.gz'],
];

/** The file to send: a compressed form where the browser takes it and it is not older than the file itself. */
async function form(file, found, accepted) {
  const taken = new Set(
    (accepted ?? '')
      .split(',')
      .map((part) => part.trim().split(/\s*;\s*q=/))
      .filter(([, quality]) => quality === undefined || Number(quality) > 0)
      .map(([name]) => name),
  );
  for (const [encoding, ending] of FORMS) {
    if (!taken.has(encoding)) continue;
    const small = await stat(file + ending).catch(() => null);
    if (small?.isFile() && small.mtimeMs >= found.mtimeMs) return { path: file + ending, size: small.size, encoding };
  }
  return { path: file, size: found.size };
}

/** A name that carries the hash of its content never changes meaning. */
const HASHED = /-[0-9a-f]{8,20}(_bg)?\.(css|d\.ts|js|svg|wasm)$/;

/**
 * Serves a folder, or the one that a function names at the time. `base` is the path under which it stands; `change(path, headers)` may return
 * `{ status, headers }` to stand in for a host that misbehaves.
 */
export async function serve({ dir, port = 0, host = '127.0.0.1', base = '/', change } = {}) {
  const server = createServer(async (request, response) => {
    const root = resolve(typeof dir === 'function' ? dir() : dir);
    const send = (status, text, extra = {}) => {
      response.writeHead(status, { ...HEADERS, 'Content-Type': TYPES['.txt'], ...extra });
      response.end(text);
    };
    if (request.method !== 'GET' && request.method !== 'HEAD') {
      return send(405, 'Only GET and HEAD.\n', { Allow: 'GET, HEAD' });
    }
    let path;
    try {
      path = decodeURIComponent(new URL(request.url, 'http://x').pathname);
    } catch {
      return send(400, 'The address cannot be read.\n');
    }
    if (base !== '/' && path === base.slice(0, -1)) return send(308, '', { Location: base });
    if (!path.startsWith(base)) return send(404, 'Not found.\n');
    let file = join(root, path.slice(base.length));
    if (path.endsWith('/')) file = join(file, 'index.html');
    if (!file.startsWith(root + sep) || path.includes('\0')) return send(404, 'Not found.\n');
    const found = await stat(file).catch(() => null);
    if (!found?.isFile()) return send(404, 'Not found.\n');
    const sent = await form(file, found, request.headers['accept-encoding']);
    const headers = {
      ...HEADERS,
      'Cache-Control': HASHED.test(file) ? 'public, max-age=31536000, immutable' : 'no-cache',
      'Content-Length': sent.size,
      'Content-Type': TYPES[extname(file)] ?? 'application/octet-stream',
      'Last-Modified': found.mtime.toUTCString(),
      Vary: 'Accept-Encoding',
      ...(sent.encoding && { 'Content-Encoding': sent.encoding }),
      ...(FOR_OTHERS.test(path.slice(base.length)) && { 'Access-Control-Allow-Origin': '*' }),
    };
    const changed = change?.(path, headers);
    if (changed?.status) return send(changed.status, 'Not served, on purpose.\n');
    response.writeHead(200, { ...headers, ...changed?.headers });
    if (request.method === 'HEAD') return response.end();
    createReadStream(sent.path).on('error', () => response.destroy()).pipe(response);
  });
  await new Promise((ready, failed) => {
    server.once('error', failed);
    server.listen(port, host, ready);
  });
  return {
    address: `http://${host.includes(':') ? `[${host}]` : host}:${server.address().port}${base}`,
    port: server.address().port,
    close: () =>
      new Promise((closed) => {
        server.close(closed);
        server.closeAllConnections();
      }),
  };
}

async function main() {
  const { values } = parseArgs({
    options: {
      dir: { type: 'string', default: fileURLToPath(new URL('../dist', import.meta.url)) },
      port: { type: 'string', default: '8080' },
      host: { type: 'string', default: '127.0.0.1' },
      base: { type: 'string', default: '/' },
    },
  });
  try {
    const running = await serve({ ...values, port: Number(values.port) });
    if (values.host === '0.0.0.0' || values.host === '::') {
      for (const { address, family, internal } of Object.values(networkInterfaces()).flat()) {
        if (family === 'IPv4' && !internal) {
          console.log(`The page is at http://${address}:${running.port}${values.base} for other devices on this network.`);
        }
      }
      console.log(`The page is at http://127.0.0.1:${running.port}${values.base} on this machine.`);
    } else {
      console.log(`The page is at ${running.address}`);
    }
    console.log('Stop with Ctrl-C.');
    for (const signal of ['SIGINT', 'SIGTERM']) {
      process.once(signal, () => running.close().then(() => process.exit(0)));
    }
  } catch (error) {
    if (error.code === 'EADDRINUSE') {
      console.error(`Port ${values.port} is taken; give another one with --port N.`);
    } else {
      console.error(error.message);
    }
    process.exit(1);
  }
}

if (process.argv[1] === fileURLToPath(import.meta.url)) await main();
