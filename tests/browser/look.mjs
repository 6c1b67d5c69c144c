#!/usr/bin/env node
// Takes pictures of every built page, phone, laptop and projector, light and dark, into tests/browser/shots, to be looked at.
//
//   node tests/browser/look.mjs [PAGE …]

import { mkdir } from 'node:fs/promises';
import { chromium } from 'playwright-core';

import { DIST, PAGES, PROGRAM, SHOTS, shot } from './harness.mjs';
import { serve } from '../../scripts/serve.mjs';

const WIDTHS = { 360: 740, 1280: 800, 1920: 1080 };
const asked = process.argv.slice(2);

await mkdir(SHOTS, { recursive: true });
const server = await serve({ dir: () => DIST });
const browser = await chromium.launch({ executablePath: process.env.CHROMIUM ?? '/usr/bin/chromium', args: ['--no-sandbox', '--disable-gpu'] });
for (const [width, height] of Object.entries(WIDTHS)) {
  for (const colorScheme of ['light', 'dark']) {
    const context = await browser.newContext({ viewport: { width: Number(width), height }, colorScheme, reducedMotion: 'reduce' });
    const page = await context.newPage();
    for (const name of asked.length > 0 ? asked : PAGES) {
      await page.goto(server.address + name);
      if (PROGRAM.test(name.split('#')[0])) await page.locator('html[data-ready]').waitFor({ state: 'attached' });
      console.log(await shot(page, `page-${name.replace(/[^a-z]+/g, '-')}-${width}-${colorScheme}`));
    }
    await context.close();
  }
}
await browser.close();
server.close();
