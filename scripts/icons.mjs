#!/usr/bin/env node
// Draws the icons of the home screen from web/icon.svg, with the browser that the checks use. They are kept in the
// repository; run this when the drawing has changed.
//
//   node scripts/icons.mjs

import { readFile, writeFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { fileURLToPath } from 'node:url';

const here = (path) => fileURLToPath(new URL(path, import.meta.url));
const { chromium } = createRequire(here('../tests/browser/package.json'))('playwright-core');

const drawing = await readFile(here('../web/icon.svg'), 'utf8');
const browser = await chromium.launch({ executablePath: process.env.CHROMIUM ?? '/usr/bin/chromium', args: ['--no-sandbox'] });
// A device cuts a round one to its own form: all that counts stands within the middle four fifths.
for (const [name, size, margin, ground] of [
  ['icon-180', 180, 10, '#fbfaf5'],
  ['icon-192', 192, 0, 'transparent'],
  ['icon-512', 512, 0, 'transparent'],
  ['icon-round-512', 512, 72, '#fbfaf5'],
]) {
  const page = await browser.newPage({ viewport: { width: size, height: size } });
  const inner = size - 2 * margin;
  await page.setContent(
    `<body style="margin:0;background:${ground}">${drawing.replace('<svg ', `<svg width="${inner}" height="${inner}" style="display:block;margin:${margin}px" `)}</body>`,
  );
  await writeFile(here(`../web/icons/${name}.png`), await page.screenshot({ omitBackground: ground === 'transparent' }));
  await page.close();
}
await browser.close();
