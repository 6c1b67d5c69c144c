// Shows the lessons for as long as a class lasts and watches whether the page keeps what it should let go.
//
//   node tests/browser/soak.mjs [MINUTES] [FOLDER]     30 minutes of the built pages, by default
//
// Keys alone, as an instructor would press them: on through a lesson, moving what its figure has, one lesson after the
// other, and from the beginning again. After each lesson garbage is collected and what is left is written down. It
// fails when the last third holds over a tenth more than the third before it.

import { execFileSync } from 'node:child_process';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { chromium } from 'playwright-core';

import { serve } from '../../scripts/serve.mjs';
import { DIST, LESSONS, lessonPage, SIZES } from './harness.mjs';

const minutes = Number(process.argv[2] ?? 30);
const dir = process.argv[3] ?? DIST;
if (!(minutes > 0)) throw new Error('node tests/browser/soak.mjs [MINUTES] [FOLDER]: minutes above 0');

const profile = await mkdtemp(join(tmpdir(), 'soak-'));
const server = await serve({ dir: () => dir, base: '/' });
const browser = await chromium.launchPersistentContext(profile, {
  executablePath: process.env.CHROMIUM ?? '/usr/bin/chromium',
  args: ['--no-sandbox', '--disable-gpu', '--no-first-run', '--disable-background-networking'],
  viewport: SIZES.projector,
  serviceWorkers: 'block',
});
const page = browser.pages()[0];
const devtools = await browser.newCDPSession(page);
await devtools.send('Performance.enable');

/** Resident memory of every process of this browser, in MB. */
const resident = () =>
  execFileSync('ps', ['-eo', 'rss=,args='], { encoding: 'utf8', maxBuffer: 1 << 26 })
    .split('\n')
    .filter((line) => line.includes(profile))
    .reduce((sum, line) => sum + parseInt(line, 10) / 1024, 0);

/** What the page holds when garbage is gone. */
async function held() {
  await devtools.send('HeapProfiler.collectGarbage');
  const { metrics } = await devtools.send('Performance.getMetrics');
  const of = (wanted) => metrics.find(({ name }) => name === wanted).value;
  return { heap: of('JSHeapUsedSize') / 2 ** 20, nodes: of('Nodes'), listeners: of('JSEventListeners'), resident: resident() };
}

const rows = [];
const begin = Date.now();
const passed = () => (Date.now() - begin) / 60_000;
const place = () => page.evaluate(() => location.pathname + location.hash);
console.log('minute  lesson   heap MB   nodes  listeners  all processes MB');
for (let i = 0; passed() < minutes; i += 1) {
  const lesson = LESSONS[i % LESSONS.length];
  await page.goto(`${server.address}${lessonPage(lesson)}#present`);
  await page.locator('html[data-present][data-ready]').waitFor({ state: 'attached' });
  // A class looks at a step for a while; the figure is moved all that time.
  for (let step = 0; step < 20; step += 1) {
    const before = await place();
    for (const slider of await page.locator('.live-figure:visible input[type=range]').all()) {
      await slider.focus();
      for (let key = 0; key < 20; key += 1) await page.keyboard.press(key < 10 ? 'ArrowRight' : 'ArrowLeft');
    }
    await page.waitForTimeout(1_000);
    await page.keyboard.press('PageDown');
    await page.waitForTimeout(500);
    const now = await place();
    if (now === before || !now.includes(`${lesson}.html`)) break;
  }
  await page.locator('html[data-ready]').waitFor({ state: 'attached' });
  const row = { minute: passed(), lesson, ...(await held()) };
  rows.push(row);
  console.log(
    `${row.minute.toFixed(1).padStart(6)}  ${lesson.padEnd(7)} ${row.heap.toFixed(1).padStart(8)} ${String(row.nodes).padStart(7)} ${String(row.listeners).padStart(10)} ${row.resident.toFixed(0).padStart(17)}`,
  );
}
await browser.close();
await server.close();
await rm(profile, { recursive: true, force: true });

const middle = (values) => values.sort((a, b) => a - b)[Math.floor(values.length / 2)];
const third = (k, what) => middle(rows.filter(({ minute }) => Math.floor((3 * minute) / minutes) === k).map((row) => row[what]));
let grown = false;
for (const what of ['heap', 'nodes', 'listeners', 'resident']) {
  const [before, last] = [third(1, what), third(2, what)];
  if (!(last <= 1.1 * before)) grown = true;
  console.log(`${what}: ${before.toFixed(1)} in the middle third, ${last.toFixed(1)} in the last`);
}
console.log(grown ? 'FAILED: what is held grows' : `nothing grows in ${minutes} minutes and ${rows.length} lessons`);
process.exit(grown ? 1 : 0);
