#!/usr/bin/env node
// Holds the built page to its size, as a visitor's browser receives it (Brotli, quality 11).
// The median page of 2025 weighs about 2,600 kB; this one is for a phone beside a trailer.

import { readdir, readFile } from 'node:fs/promises';
import { extname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { brotliCompressSync, constants } from 'node:zlib';

const dist = fileURLToPath(new URL('../dist', import.meta.url));
const LIMITS = {
  // The aim was 150 kB; forms, catalogue, drawings and the whole calculation came to twice that, the
  // ten lessons to 51 kB on top, drawing joints by lot to 11, placing every part and asking every way out
  // of the joint to 17. This is a ceiling against growth, not a
  // size to be proud of.
  '.wasm': { most: 375_000, warn: 373_000 },
  '.js': { most: 12_000 },
  // Ten lessons in words, with two still drawings each: it is read while the program loads.
  '.html': { most: 49_000 },
  '.css': { most: 12_000 },
};
const TOTAL = 445_000;
// Described for developers, or opened by whoever wants to see the checks: never loaded by the page.
const NOT_LOADED = /(\.ts|^checks\.(html|css))$/;

const kb = (bytes) => `${(bytes / 1000).toFixed(1)} kB`;
const sums = new Map();
for (const name of (await readdir(dist, { recursive: true, withFileTypes: true }))
  .filter((entry) => entry.isFile() && !NOT_LOADED.test(entry.name))
  .map((entry) => join(entry.parentPath ?? entry.path, entry.name))) {
  const bytes = await readFile(name);
  const small = brotliCompressSync(bytes, {
    params: {
      [constants.BROTLI_PARAM_QUALITY]: 11,
      [constants.BROTLI_PARAM_SIZE_HINT]: bytes.length,
    },
  });
  const sum = sums.get(extname(name)) ?? { raw: 0, small: 0 };
  sums.set(extname(name), { raw: sum.raw + bytes.length, small: sum.small + small.length });
}

let failed = false;
for (const kind of ['.wasm', '.html']) {
  if (!sums.has(kind)) {
    console.error(`no ${kind} in dist: build the page first`);
    failed = true;
  }
}
for (const [kind, { raw, small }] of [...sums].sort()) {
  const limit = LIMITS[kind];
  const over = limit && small > limit.most;
  const near = limit?.warn && small > limit.warn;
  failed ||= over;
  const verdict = over ? 'TOO LARGE' : near ? 'warning: near the limit' : 'ok';
  console.log(
    `${kind.padEnd(6)} ${kb(raw).padStart(9)} raw ${kb(small).padStart(9)} sent  ` +
      (limit ? `limit ${kb(limit.most)}  ${verdict}` : ''),
  );
}
const total = [...sums.values()].reduce((sum, { small }) => sum + small, 0);
failed ||= total > TOTAL;
console.log(`first visit ${kb(total)} of ${kb(TOTAL)}${total > TOTAL ? '  TOO LARGE' : ''}`);
process.exit(failed ? 1 : 0);
