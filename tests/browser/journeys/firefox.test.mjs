// The same pages in Firefox: each loads, its program starts, and a first number follows the reader.

import assert from 'node:assert/strict';
import { test } from 'node:test';
import puppeteer from 'puppeteer-core';

import { DIST, JOINT, LESSONS, PAGES, PROGRAM } from '../harness.mjs';
import { serve } from '../../../scripts/serve.mjs';

const FIREFOX = process.env.FIREFOX ?? '/usr/bin/firefox-esr';
const PATIENCE = 120_000;

/** What the reader moves first on a page, and where a number then follows. */
const FIRST = {
  'index.html': ['#fig-opening input[type=range]', '#fig-opening .said'],
  [JOINT]: ['#tube_wall_mm', '#own-joint .answer'],
  'paper.html': ['.papers input[type=radio]', '.paper'],
  'handout.html': ['input[name=what]', '.handed'],
  'bench.html': ['#choice-bolt', '.stop'],
  ...Object.fromEntries(LESSONS.map((id) => [`lessons/${id}.html`, [`#${id} [data-control]`, `#${id} [data-at=drawing]`]])),
};

/** The joint that a page is opened with, where it has none of its own. */
const ADDRESS = { 'paper.html': '#v1/coupler/u-us/k-b4ye', 'handout.html': '#sheets/blue7/1/easy/us/2' };

/** The five measurements of a joint; before them it has no answer. */
const FIVE = { tube_width_mm: '2', tube_depth_mm: '3', tube_wall_mm: '1/8', bolt: 'unc-1.2', bolt_grade: 'sae-8' };

test('every page loads in Firefox, its program starts, and a first number follows', async (t) => {
  const server = await serve({ dir: DIST });
  t.after(() => server.close());
  const browser = await puppeteer.launch({
    browser: 'firefox',
    executablePath: FIREFOX,
    headless: true,
    extraPrefsFirefox: { 'dom.serviceWorkers.enabled': false, 'network.captive-portal-service.enabled': false, 'network.connectivity-service.enabled': false },
  });
  t.after(() => browser.close());
  const page = await browser.newPage();
  page.setDefaultTimeout(PATIENCE);
  const faults = [];
  page.on('pageerror', (error) => faults.push(error.message));
  page.on('console', (message) => message.type() === 'error' && faults.push(message.text()));
  for (const name of PAGES) {
    await page.goto(server.address + name + (ADDRESS[name] ?? ''), { timeout: PATIENCE });
    assert.ok(await page.$eval('h1', (h1) => h1.getBoundingClientRect().height > 0), name);
    assert.ok(await page.$eval('#device', (device) => !device.hidden), `${name}: the foot`);
    if (!PROGRAM.test(name)) continue;
    await page.waitForSelector('html[data-ready]');
    const [control, follows] = FIRST[name];
    // A guess comes before the figure.
    await page.evaluate(() => document.querySelector('[data-act=skip]')?.click());
    if (name === JOINT) {
      await page.evaluate((five) => {
        for (const [id, value] of Object.entries(five)) {
          const field = document.getElementById(id);
          field.value = value;
          for (const event of ['input', 'change']) field.dispatchEvent(new Event(event, { bubbles: true }));
        }
      }, FIVE);
      await page.waitForFunction(() => /\d/.test(document.querySelector('#own-joint .answer').textContent));
      // On to the step with the measurements.
      for (const step of ['2', '3']) {
        await page.$eval('.walk .main', (next) => next.click());
        await page.waitForSelector(`.joint[data-step="${step}"]`);
      }
    }
    const seen = () => page.$eval(follows, (element) => element.innerHTML.replace(/[^0-9]+/g, ' '));
    const before = await seen();
    const input = await page.waitForSelector(control);
    const type = await input.evaluate((element) => element.type);
    await input.evaluate((element) => element.scrollIntoView({ block: 'center', behavior: 'instant' }));
    if (type === 'radio') {
      const others = await page.$$(control);
      await others[1].evaluate((element) => element.click());
    } else {
      await input.focus();
      if (type === 'text') {
        await input.evaluate((element) => element.select());
        await page.keyboard.type('3/16');
      } else {
        for (const key of ['Home', 'ArrowRight', 'ArrowRight']) await page.keyboard.press(key);
      }
    }
    let after = before;
    for (let i = 0; i < 400 && after === before; i += 1) {
      await new Promise((then) => setTimeout(then, 50));
      after = await seen();
    }
    assert.match(after, /\d/, name);
    assert.ok(after !== before, `${name}: a number follows`);
  }
  assert.deepEqual(faults, []);
});
