#!/usr/bin/env node
// Puts a Brotli and a gzip form beside each file of the built site that gets smaller by it, for hosts that send such
// files as they are. `scripts/serve` does.
//
//   node scripts/compress.mjs [DIR]

import { readdir, readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { promisify } from 'node:util';
import { brotliCompress, constants, gzip } from 'node:zlib';

const dir = process.argv[2] ?? fileURLToPath(new URL('../dist', import.meta.url));
const TEXTS = /\.(html|js|css|wasm|svg|ts|webmanifest)$/;

const forms = {
  br: (bytes) =>
    promisify(brotliCompress)(bytes, {
      params: {
        [constants.BROTLI_PARAM_QUALITY]: 11,
        [constants.BROTLI_PARAM_SIZE_HINT]: bytes.length,
      },
    }),
  gz: (bytes) => promisify(gzip)(bytes, { level: 9 }),
};

const files = (await readdir(dir, { recursive: true })).filter((name) => TEXTS.test(name));
await Promise.all(
  files.map(async (name) => {
    const bytes = await readFile(join(dir, name));
    for (const [ending, form] of Object.entries(forms)) {
      const small = await form(bytes);
      if (small.length < bytes.length) await writeFile(join(dir, `${name}.${ending}`), small);
    }
  }),
);
