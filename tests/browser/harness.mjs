// What every journey needs: the built page on a free port, a real browser, and a record of all that
// went wrong in it.
//
//   const visit = await open(t, { ... });   // closes itself with the test `t`
//   await visit.page.getByRole(...).click();
//   visit.clean();                          // fails on any error, violation or failed request
//
// Run with: npm test (in tests/browser), after scripts/setup and a build.

import assert from 'node:assert/strict';
import { access, mkdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { after } from 'node:test';
import { fileURLToPath } from 'node:url';
import { chromium } from 'playwright-core';

import { serve } from '../../scripts/serve.mjs';

export const DIST = fileURLToPath(new URL('../../dist', import.meta.url));
export const SHOTS = fileURLToPath(new URL('./shots', import.meta.url));
const AXE = fileURLToPath(new URL('./node_modules/axe-core/axe.min.js', import.meta.url));
const CHROMIUM = process.env.CHROMIUM ?? '/usr/bin/chromium';

// In ms, long enough for a machine that is busy with other things.
const PATIENCE = 240_000;

// Nothing of the browser's own may reach the network or the user's profile.
const FLAGS = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

/** The page of the reader's own joint. */
export const JOINT = 'joint.html';

/** The lessons, in the order in which they are read. */
export const LESSONS = ['spring', 'torque', 'grip', 'slip', 'share', 'hollow', 'stand', 'road', 'leak', 'look'];

/** The page of a lesson. */
export const lessonPage = (id) => `lessons/${id}.html`;

/** Every page. */
export const PAGES = [
  'index.html',
  JOINT,
  'lessons/index.html',
  ...LESSONS.map(lessonPage),
  'class.html',
  'handout.html',
  'bench.html',
  'speaker.html',
  'method.html',
  'checks.html',
  'words.html',
  'sources.html',
  'care.html',
  'api.html',
  'paper.html',
];

/** The pages that load a program. */
export const PROGRAM = /^(index\.html|joint\.html|paper\.html|handout\.html|bench\.html|lessons\/(?!index).*)?$/;

/** Sizes that journeys look at: a small phone, a usual one, a desk, two projectors. */
export const SIZES = {
  small: { width: 320, height: 640 },
  phone: { width: 390, height: 844 },
  desk: { width: 1280, height: 800 },
  projector: { width: 1280, height: 720 },
  hall: { width: 1920, height: 1080 },
};

/** The browser of this file's journeys. Starting one takes longer than most of them. */
let started;
after(async () => (await started)?.close());

/** A context of its own: nothing that one journey keeps on the device is there in the next. */
async function context(options) {
  started ??= chromium.launch({ executablePath: CHROMIUM, headless: true, args: FLAGS });
  return (await started).newContext(options);
}

/**
 * Opens the built page as a device would that has never seen it.
 *
 * @param {import('node:test').TestContext} t  closes everything at its end
 * @param {object} [options]
 * @param {string} [options.base]    path under which the page stands, `/` or `/x/y/`
 * @param {Function} [options.change] lets the server misbehave, see scripts/serve.mjs
 * @param {{dir: string}} [options.pages] which build is served; it may change its folder under the journey
 * @param {string} [options.page]    the page, from the folder of the front page
 * @param {string} [options.address] fragment or query added to the address
 * @param {boolean} [options.ready]  wait until the page's program runs (default: yes with script)
 * @param {Function} [options.before] called with the page before it loads anything
 * @param {object} [options.context] options of the browser context: viewport, javaScriptEnabled …
 */
export async function open(t, options = {}) {
  const { base = '/', change, pages = { dir: DIST }, page: path = '', address = '', before, context: settings = {} } = options;
  const scripts = settings.javaScriptEnabled !== false;
  const ready = options.ready ?? (scripts && PROGRAM.test(path));
  await access(join(DIST, 'index.html')).catch(() => {
    throw new Error('there is no dist/index.html: build the pages first (scripts/serve or scripts/test)');
  });
  const server = await serve({ dir: () => pages.dir, base, change });
  t.after(() => server.close());
  const browser = await context({
    viewport: SIZES.desk,
    // What is kept on the device has journeys of its own; in the others it would only load along.
    serviceWorkers: 'block',
    ...settings,
  });
  t.after(() => browser.close());
  // No limit on the page, only an end to waiting for what never comes.
  browser.setDefaultTimeout(PATIENCE);
  const page = await browser.newPage();
  const faults = [];
  record(page, faults);
  await before?.(page, browser);
  const response = await page.goto(server.address + path + address);
  if (ready) await page.locator('html[data-ready]').waitFor({ state: 'attached' });
  /** Goes on to another page, as a link does, and waits for what the first one was waited for. */
  const go = async (to) => {
    await page.goto(server.address + to);
    if (scripts && PROGRAM.test(to.split('#')[0])) await page.locator('html[data-ready]').waitFor({ state: 'attached' });
  };
  return {
    page,
    browser,
    server,
    response,
    go,
    faults,
    /** Fails when anything was written to the console as an error, thrown, refused or not found. */
    clean() {
      assert.deepEqual(faults, [], 'the browser reported faults');
    },
    /** Takes the faults that a journey caused on purpose off the record. */
    expect(pattern) {
      const found = faults.filter((fault) => pattern.test(fault));
      assert.ok(found.length > 0, `expected a fault like ${pattern}, got ${JSON.stringify(faults)}`);
      faults.splice(0, faults.length, ...faults.filter((fault) => !pattern.test(fault)));
      return found;
    },
    shot: (name) => shot(page, name),
    axe: (settings) => axe(page, settings),
  };
}

// Violations of the content policy come as console errors; so do failed loads.
function record(page, faults) {
  page.on('console', (message) => {
    // The driver's own remark; see serviceWorkers above.
    if (/Service Worker registration blocked by Playwright/.test(message.text())) return;
    // Whoever leaves a page at once has not waited for its icons; a journey of their own looks at them.
    if (/Error while trying to use the following icon from the Manifest/.test(message.text())) return;
    if (message.type() === 'error' || message.type() === 'warning') {
      faults.push(`console ${message.type()}: ${message.text()}`);
    }
  });
  page.on('pageerror', (error) => faults.push(`page error: ${error.message}`));
  page.on('requestfailed', (request) => {
    // An old address goes on to its page before the one that it led to has come.
    if (request.isNavigationRequest() && request.failure()?.errorText === 'net::ERR_ABORTED') return;
    // Whoever leaves a page at once has not waited for its icon, its style sheet, its manifest, its program.
    if (/\/((icon|style)-[^/]*|[^/]*_bg\.wasm|app\.webmanifest)$/.test(request.url()) && request.failure()?.errorText === 'net::ERR_ABORTED') return;
    faults.push(`request failed: ${request.url()} ${request.failure()?.errorText}`);
  });
  page.on('response', (response) => {
    if (response.status() >= 400) faults.push(`status ${response.status()}: ${response.url()}`);
  });
}

/** Repeats a check until it passes; if it never does, what it said last. */
export async function eventually(check) {
  const end = performance.now() + PATIENCE;
  for (;;) {
    try {
      return await check();
    } catch (error) {
      if (performance.now() > end) throw error;
    }
    await new Promise((then) => setTimeout(then, 50));
  }
}

/**
 * Reads clocks of the processor time, in ms, that the page's main thread has used: all of it, and what
 * went into the page's own work with style and layout, which leaves out painting. They stand still while
 * the machine does something else, so a limit on them means the same on a busy machine.
 */
export async function processorClock(page) {
  const devtools = await page.context().newCDPSession(page);
  await devtools.send('Performance.enable', { timeDomain: 'threadTicks' });
  return async () => {
    const { metrics } = await devtools.send('Performance.getMetrics');
    const ms = (wanted) => 1000 * metrics.find(({ name }) => name === wanted).value;
    return {
      all: ms('ThreadTime'),
      own: ms('ScriptDuration') + ms('RecalcStyleDuration') + ms('LayoutDuration'),
    };
  };
}

/**
 * Processor time of a figure's steps, in ms: for each of `count` places of a slider the figure's own
 * work and the layout that it causes. Caches that others have emptied cost time too, so of each step
 * the least of four rounds counts.
 */
export async function stepTimes(page, slider, count) {
  const clock = await processorClock(page);
  const input = await slider.elementHandle();
  const step = (share) =>
    input.evaluate(async (input, share) => {
      const frame = globalThis.requestAnimationFrame;
      // What the page asks to be run with the next picture is run at once, to time that alone.
      globalThis.requestAnimationFrame = (call) => {
        call(performance.now());
        return 0;
      };
      const [min, max] = [Number(input.min), Number(input.max)];
      input.value = String(min + (max - min) * share);
      input.dispatchEvent(new Event('input', { bubbles: true }));
      // What was put off until the event is over.
      await new Promise((then) => {
        const channel = new MessageChannel();
        channel.port1.onmessage = then;
        channel.port2.postMessage(null);
      });
      input.closest('section').getBoundingClientRect();
      globalThis.requestAnimationFrame = frame;
    }, share);
  const least = Array(count).fill(Infinity);
  for (let round = 0; round < 4; round += 1) {
    for (let i = 0; i < count; i += 1) {
      // Not in order, so that each step has something to change.
      const at = (i * 7) % count;
      const before = await clock();
      await step(at / (count - 1));
      const after = await clock();
      least[at] = Math.min(least[at], after.own - before.own);
    }
  }
  return least;
}

/** The value below which a share of the times lies. */
export const quantile = (times, share) =>
  [...times].sort((a, b) => a - b)[Math.ceil(share * times.length) - 1];

/** The step of the joint page that is shown. */
export const stepNow = async (page) => Number(await page.locator('.joint').getAttribute('data-step'));

/** Walks to a step of the joint page by its own buttons. */
export async function toStep(page, wanted) {
  for (let now = await stepNow(page); now !== wanted; now = await stepNow(page)) {
    const name = now < wanted ? /^Next/ : /^Back$/;
    await page.locator('.walk').getByRole('button', { name }).click();
    await page.waitForFunction((was) => Number(document.querySelector('.joint').dataset.step) !== was, now);
  }
}

/** Gives the five measurements, those of the joint that the page starts with where nothing else is said. */
export async function five(page, given = {}) {
  const { width = '2', depth = '3', wall = '1/8', bolt = 'unc-1.2', grade = 'sae-5' } = given;
  await toStep(page, 3);
  await page.locator('#tube_width_mm').fill(width);
  await page.locator('#tube_depth_mm').fill(depth);
  await page.locator('#tube_wall_mm').fill(wall);
  await page.locator('#bolt').selectOption(bolt);
  // What stands there already is chosen by touching it.
  await page.locator('#bolt_grade').selectOption('unknown');
  await page.locator('#bolt_grade').selectOption(grade);
}

/** Keeps a picture of the whole page in tests/browser/shots (not in the repository). */
export async function shot(page, name) {
  await mkdir(SHOTS, { recursive: true });
  const path = join(SHOTS, `${name}.png`);
  await page.screenshot({ path, fullPage: true, animations: 'disabled' });
  return path;
}

/** Every rule in light, and in dark those that ask for colors: names, roles and order do not change with them. */
const RULES = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];
const OF_COLORS = { type: 'rule', values: ['color-contrast', 'link-in-text-block'] };

/**
 * Runs the accessibility rules and fails on any violation, naming rule and element. The rules come
 * in as text, because the content policy refuses a script tag.
 */
export async function axe(page, settings = {}) {
  if (!(await page.evaluate(() => 'axe' in globalThis))) await page.evaluate(await readFile(AXE, 'utf8'));
  const dark = await page.evaluate(() => matchMedia('(prefers-color-scheme: dark)').matches);
  const result = await page.evaluate((given) => globalThis.axe.run(document, given), { runOnly: dark ? OF_COLORS : RULES, ...settings });
  assert.ok(result.passes.length > 0, 'no accessibility rule applied: the page did not load');
  const found = result.violations.flatMap(({ id, help, nodes }) =>
    nodes.map((node) => `${id}: ${help}: ${node.target.join(' ')}`),
  );
  assert.deepEqual(found, [], 'accessibility rules broken');
  // No rule asks for it any more, but a field that stands twice is labeled once.
  const twice = await page.evaluate(() => {
    const ids = [...document.querySelectorAll('[id]')].map((element) => element.id);
    return ids.filter((id, index) => ids.indexOf(id) !== index);
  });
  assert.deepEqual(twice, [], 'ids given twice');
}
