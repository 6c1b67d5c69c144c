#!/usr/bin/env node
// How the pages come up on a slow phone: 1.6 Mbit/s, 150 ms there and back, a processor four times slower. Prints for
// each what it takes until it is live, how long its main thread is blocked, how far its layout shifts, how many elements
// it has; and what an auditor says of its performance. scripts/performance runs it.
//
//   scripts/performance [PAGE …]      without --no-audit the auditor too; --no-limits only prints
//
// By the clock all of it is longer on a machine that does other things as well. So what is blocked is measured a second
// time by the processor time of the main thread alone, taken four times, and that is what has a limit. The time until a
// page is live and the auditor's mark have theirs by the clock: they mean something on a machine that is at rest.

import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import { chromium } from 'playwright-core';

import { serve } from '../../scripts/serve.mjs';

const DIST = fileURLToPath(new URL('../../dist', import.meta.url));
const CHROMIUM = process.env.CHROMIUM ?? '/usr/bin/chromium';

/** What is looked at when nothing else is asked for; the auditor leaves out the last. */
const PAGES = ['index.html', 'lessons/hollow.html', 'joint.html', 'method.html'];
const LIMITS = { live: 3000, blocked: 200, shift: 0.02, score: 95 };

const NETWORK = { offline: false, latency: 150, downloadThroughput: 1.6e6 / 8, uploadThroughput: 750e3 / 8 };
const SLOWER = 4;
const PHONE = { viewport: { width: 360, height: 740 }, isMobile: true, hasTouch: true, deviceScaleFactor: 2 };

/** Each page is opened so often; the middle one counts, as other work on the machine only makes it slower. */
const TIMES = 3;

/** A task that takes longer blocks, by what it takes beyond this. */
const TASK_MS = 50;

const { values: asked, positionals } = parseArgs({
  allowPositionals: true,
  options: { audit: { type: 'boolean', default: true }, limits: { type: 'boolean', default: true } },
  allowNegative: true,
});

/** In the page, before anything of it runs. */
function watch() {
  globalThis.seen = { shift: 0, tasks: [], live: 0 };
  new PerformanceObserver((list) => {
    for (const { duration, startTime } of list.getEntries()) globalThis.seen.tasks.push([startTime, duration]);
  }).observe({ type: 'longtask', buffered: true });
  new PerformanceObserver((list) => {
    for (const { value, hadRecentInput } of list.getEntries()) if (!hadRecentInput) globalThis.seen.shift += value;
  }).observe({ type: 'layout-shift', buffered: true });
  new MutationObserver((_, observer) => {
    if (!('ready' in document.documentElement.dataset)) return;
    globalThis.seen.live = performance.now();
    observer.disconnect();
  }).observe(document, { attributes: true, subtree: true, attributeFilter: ['data-ready'] });
}

async function once(address) {
  const profile = await mkdtemp(join(tmpdir(), 'clampwright-'));
  const browser = await chromium.launchPersistentContext(profile, {
    executablePath: CHROMIUM,
    args: ['--no-sandbox', '--disable-gpu', '--no-first-run'],
    ...PHONE,
  });
  try {
    const [page] = browser.pages();
    await page.addInitScript(watch);
    const devtools = await browser.newCDPSession(page);
    await devtools.send('Network.enable');
    await devtools.send('Network.emulateNetworkConditions', NETWORK);
    await devtools.send('Emulation.setCPUThrottlingRate', { rate: SLOWER });
    await page.goto(address, { timeout: 120_000 });
    const program = await page.locator('script[data-wasm]').count();
    if (program > 0) await page.locator('html[data-ready]').waitFor({ state: 'attached', timeout: 120_000 });
    // What is done once it is there counts as well.
    await page.waitForTimeout(2500);
    return await page.evaluate((task) => {
      const { shift, tasks, live } = globalThis.seen;
      const [{ domContentLoadedEventEnd }] = performance.getEntriesByType('navigation');
      const paint = performance.getEntriesByName('first-contentful-paint')[0]?.startTime ?? 0;
      return {
        readable: paint,
        live: live || domContentLoadedEventEnd,
        blocked: tasks.reduce((sum, [, duration]) => sum + Math.max(0, duration - task), 0),
        longest: Math.max(0, ...tasks.map(([, duration]) => duration)),
        shift,
        elements: document.querySelectorAll('*').length,
      };
    }, TASK_MS);
  } finally {
    await browser.close();
    await rm(profile, { recursive: true, force: true });
  }
}

/** How long the main thread is blocked by its own work, in ms of the slower processor. */
async function ownWork(address) {
  const browser = await chromium.launch({ executablePath: CHROMIUM, args: ['--no-sandbox', '--disable-gpu'] });
  try {
    const context = await browser.newContext({ ...PHONE });
    const page = await context.newPage();
    const devtools = await context.newCDPSession(page);
    await devtools.send('Network.enable');
    await devtools.send('Network.emulateNetworkConditions', NETWORK);
    await browser.startTracing(page, { categories: ['devtools.timeline', 'disabled-by-default-devtools.timeline'] });
    await page.goto(address, { timeout: 120_000 });
    if ((await page.locator('script[data-wasm]').count()) > 0) {
      await page.locator('html[data-ready]').waitFor({ state: 'attached', timeout: 120_000 });
    }
    await page.waitForTimeout(1000);
    const { traceEvents } = JSON.parse(await browser.stopTracing());
    const mains = traceEvents.filter(({ name, args }) => name === 'thread_name' && args.name === 'CrRendererMain');
    const threads = mains.map(({ pid, tid }) => traceEvents.filter((event) => event.pid === pid && event.tid === tid));
    // The browser has pages of its own.
    const own = threads.find((events) => events.some(({ args }) => args?.data?.url?.startsWith(new URL(address).origin)));
    const tasks = (own ?? []).filter(({ name, tdur }) => name === 'RunTask' && tdur !== undefined);
    if (tasks.length === 0) throw new Error('the browser traced no task of the page');
    const times = tasks.map(({ tdur }) => (SLOWER * tdur) / 1000);
    return {
      blocked: times.reduce((sum, ms) => sum + Math.max(0, ms - TASK_MS), 0),
      longest: Math.max(...times),
    };
  } finally {
    await browser.close();
  }
}

const middle = (numbers) => [...numbers].sort((a, b) => a - b)[Math.floor(numbers.length / 2)];

/** The auditor's mark for performance, as on its own slow phone. */
async function audit(address) {
  const { default: lighthouse } = await import('lighthouse');
  const { default: puppeteer } = await import('puppeteer-core');
  const browser = await puppeteer.launch({
    executablePath: CHROMIUM,
    args: ['--no-sandbox', '--disable-gpu', '--no-first-run'],
  });
  try {
    const { port } = new URL(browser.wsEndpoint());
    const { lhr } = await lighthouse(address, { port: Number(port), output: 'json', logLevel: 'silent', onlyCategories: ['performance'] });
    if (lhr.runtimeError) throw new Error(lhr.runtimeError.message);
    const ms = (id) => Math.round(lhr.audits[id].numericValue);
    return {
      score: Math.round(lhr.categories.performance.score * 100),
      paint: ms('first-contentful-paint'),
      largest: ms('largest-contentful-paint'),
      blocked: ms('total-blocking-time'),
      index: ms('speed-index'),
    };
  } finally {
    await browser.close();
  }
}

const server = await serve({ dir: DIST });
let failed = false;
const over = (name, value) => {
  if (!asked.limits || value <= LIMITS[name]) return '';
  failed = true;
  return ` (over ${LIMITS[name]})`;
};
try {
  for (const name of positionals.length > 0 ? positionals : PAGES) {
    const runs = [];
    for (let time = 0; time < TIMES; time += 1) {
      const own = await ownWork(server.address + name);
      runs.push({ ...(await once(server.address + name)), work: own.blocked, task: own.longest });
    }
    const { readable, live, blocked, longest, work, task, shift, elements } = Object.fromEntries(
      Object.keys(runs[0]).map((what) => [what, middle(runs.map((run) => run[what]))]),
    );
    console.log(
      `${name.padEnd(22)} readable ${readable.toFixed(0)} ms, live ${live.toFixed(0)} ms${over('live', live)}, ` +
        `blocked by its own work ${work.toFixed(0)} ms${over('blocked', work)} (longest task ${task.toFixed(0)} ms), ` +
        `by the clock ${blocked.toFixed(0)} ms (${longest.toFixed(0)} ms), ` +
        `shift ${shift.toFixed(4)}${over('shift', shift)}, ${elements} elements`,
    );
    if (!asked.audit || name === 'method.html') continue;
    const found = [];
    for (let time = 0; time < TIMES; time += 1) found.push(await audit(server.address + name));
    const best = found.sort((a, b) => a.score - b.score)[Math.floor(TIMES / 2)];
    const low = asked.limits && best.score < LIMITS.score;
    failed ||= low;
    console.log(
      `${''.padEnd(22)} auditor: performance ${best.score}${low ? ` (below ${LIMITS.score})` : ''}; first paint ${best.paint} ms, ` +
        `largest ${best.largest} ms, blocked ${best.blocked} ms, speed index ${best.index} ms`,
    );
  }
} finally {
  await server.close();
}
process.exit(failed ? 1 : 0);
