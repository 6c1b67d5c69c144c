#!/usr/bin/env node
// Holds every page to its size, as a visitor's browser receives it the first time (Brotli, quality 11): the page
// itself and all that it loads by itself. The median page of 2025 weighs about 2,600 kB; these are for a phone beside
// a trailer.

import { readdir, readFile } from 'node:fs/promises';
import { join, posix } from 'node:path';
import { fileURLToPath } from 'node:url';
import { brotliCompressSync, constants } from 'node:zlib';

const dist = fileURLToPath(new URL('../dist', import.meta.url));

// What was aimed at, and the ceiling against growth. A program holds forms, drawings and the calculation that they
// ask; no single library is to blame for its size (DEVELOPERS.md, Numbers).
const REFERENCE = { aim: 60, most: 60 };
const LIMITS = [
  { page: /^index\.html$/, aim: 230, most: 235 },
  { page: /^joint\.html$/, aim: 330, most: 380 },
  { page: /^(paper|handout|bench)\.html$/, aim: 330, most: 330 },
  // Every figure is there twice, of inch stock and of metric stock: 6 kB.
  { page: /^(lessons|embed)\/(?!index)/, aim: 220, most: 229 },
  { page: /./, ...REFERENCE },
];

const kb = (bytes) => `${(bytes / 1000).toFixed(1).padStart(6)} kB`;

const sizes = new Map();
/** A file as it is sent. */
async function sent(file) {
  if (!sizes.has(file)) {
    const bytes = await readFile(join(dist, file));
    const params = {
      [constants.BROTLI_PARAM_QUALITY]: 11,
      [constants.BROTLI_PARAM_SIZE_HINT]: bytes.length,
    };
    sizes.set(file, brotliCompressSync(bytes, { params }).length);
  }
  return sizes.get(file);
}

/**
 * The files that a page loads by itself: what stands in its head and what its own script tag names. A picture for the
 * home screen is loaded by whoever puts the page there; what sw.js keeps comes once the page is there and runs.
 */
function loads(page, html) {
  const head = html.slice(0, html.indexOf('<body>')).replace(/<link rel="apple-touch-icon"[^>]*>/, '');
  const named = [...head.matchAll(/(?:href|src|data-js|data-wasm)="([^"#]+)"/g)].map(([, file]) => file);
  return new Set(named.map((file) => posix.join(posix.dirname(page), file)));
}

const files = await readdir(dist, { recursive: true });
const pages = files.filter((name) => name.endsWith('.html')).sort();
let failed = false;
if (!pages.includes('index.html')) {
  console.error('no index.html in dist: build the pages first');
  failed = true;
}
for (const page of pages) {
  const html = await readFile(join(dist, page), 'utf8');
  const { aim, most } = LIMITS.find((limit) => limit.page.test(page));
  let total = await sent(page);
  const parts = [`page ${kb(total)}`];
  for (const file of loads(page, html)) {
    const size = await sent(file);
    total += size;
    if (/\.(wasm|css)$/.test(file)) parts.push(`${posix.extname(file).slice(1)} ${kb(size)}`);
  }
  const over = total > most * 1000;
  failed ||= over;
  const verdict = over ? 'TOO LARGE' : total > aim * 1000 ? `over the aim of ${aim} kB` : 'ok';
  console.log(`${page.padEnd(21)} ${kb(total)} of ${most} kB  ${verdict.padEnd(22)} ${parts.join(', ')}`);
}
process.exit(failed ? 1 : 0);
