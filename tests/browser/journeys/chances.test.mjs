// How sure it is: many joints like the reader's, drawn by lot while the page lives on.

import assert from 'node:assert/strict';
import { test } from 'node:test';

import { five, JOINT, open as openPage, SIZES, toStep } from '../harness.mjs';

/** The page with the five measurements in, at its answer. */
async function open(t, options = {}) {
  const visit = await openPage(t, { page: JOINT, ...options });
  await five(visit.page);
  await toStep(visit.page, 4);
  await visit.page.locator('#chances-title').click();
  return visit;
}

/** Types into a field of another step while the answer stays in sight. */
const type = (page, field, value) =>
  page.locator(`#${field}`).evaluate((input, value) => {
    input.value = value;
    for (const event of ['input', 'change']) input.dispatchEvent(new Event(event, { bubbles: true }));
  }, value);

/** Does something that has the joints drawn anew, and waits until the page has set about it: that may be over between two looks. */
async function anew(page, act) {
  await page.evaluate(() => {
    globalThis.setAbout = new Promise((done) => {
      new MutationObserver((_, observer) => {
        if (!document.querySelector('.chances[data-stale]')) return;
        observer.disconnect();
        done();
      }).observe(document.body, { subtree: true, childList: true, attributeFilter: ['data-stale'] });
    });
  });
  await act();
  await page.evaluate(() => globalThis.setAbout);
}

const words = async (locator) => (await locator.innerText()).replace(/[\u00a0\u202f]/g, ' ');

/** Chooses by a drawing of the first step. */
const choose = (page, field, name) => page.locator(`#${field} input[value="${name}"]`).evaluate((input) => input.click());

/** The section once it belongs to what the form says. */
async function settled(page) {
  const section = page.locator('.chances:not([data-stale])');
  await section.locator('.outcomes').waitFor();
  return section;
}

const share = (text, of) => Number(of.exec(text)?.[1]);

test('says what would be seen on many such joints, and follows the form', async (t) => {
  const { page, clean } = await open(t);
  const thin = await words((await settled(page)).locator('.outcomes'));
  const clicks = (text) => share(text, /In (\d[\d.]*) % of joints like this the wrench clicks/);
  const slips = (text) => share(text, /(\d[\d.]*) % slip/);
  assert.ok(clicks(thin) < 5, thin);
  assert.ok(slips(thin) > 50, thin);
  // What the owner asks first stands first.
  assert.match(await words(page.locator('.chances p').first()), /Then nearly all of 100 joints built like this one would slip/);
  // Something to stand on turns it round.
  await anew(page, () => type(page, 'tube_wall_mm', '1/2'));
  const section = await settled(page);
  const thick = await words(section.locator('.outcomes'));
  assert.ok(clicks(thick) > 95, thick);
  assert.ok(slips(thick) < slips(thin), thick);
  assert.match(await words(section), /20,000 joints like yours/);
  clean();
});

test('shows the spread, what makes the difference, and where it comes from', async (t) => {
  const { page, clean } = await open(t);
  const section = await settled(page);
  const rows = section.locator('.restack tbody tr');
  assert.equal(await rows.count(), 3);
  const [low, middle, high] = await rows.first().locator('td').evaluateAll((cells) =>
    cells.map((cell) => parseFloat(cell.textContent.replace(/[^\d.]/g, ''))),
  );
  assert.ok(low < middle && middle < high, `${low} ${middle} ${high}`);
  assert.match(await words(section.locator('.matters')), /friction between the faces \d+ %/);
  const drawing = section.locator('svg');
  assert.match(await drawing.locator('title').textContent(), /Clamp load that is reached/);
  assert.ok((await drawing.locator('text', { hasText: 'target' }).count()) === 1);
  await section.locator('div summary').click();
  const sources = await (await page.request.get(new URL('sources.html', page.url()).href)).text();
  const spreads = section.locator('details li');
  assert.ok((await spreads.count()) >= 5);
  for (const link of await spreads.locator('a').all()) {
    const target = await link.getAttribute('href');
    const [file, id] = target.split('#');
    assert.equal(file, 'sources.html');
    assert.ok(sources.includes(`id="${id}"`), `${target} is in the list of sources`);
  }
  clean();
});

test('the page answers while joints are drawn', async (t) => {
  const { page, clean } = await open(t);
  await settled(page);
  // A message to itself comes back as soon as the page is free: how often it does while joints are drawn says into
  // how many pieces the work is cut, however fast the machine is.
  const { turns, longest, whole } = await page.locator('#tube_wall_mm').evaluate(async (field) => {
    const drawing = () => document.querySelector('.chances[data-stale]') !== null;
    const channel = new MessageChannel();
    const turn = () =>
      new Promise((then) => {
        channel.port1.onmessage = then;
        channel.port2.postMessage(null);
      });
    field.value = '0.2';
    field.dispatchEvent(new Event('input', { bubbles: true }));
    while (!drawing()) await turn();
    const begin = performance.now();
    let [turns, longest, before] = [0, 0, begin];
    while (drawing()) {
      await turn();
      const now = performance.now();
      // Turns that wait for the reader to come to rest are not counted, only those behind a piece of work.
      if (now - before > 2) turns += 1;
      longest = Math.max(longest, now - before);
      before = now;
    }
    return { turns, longest, whole: before - begin };
  });
  t.diagnostic(`${turns} pieces, the longest ${longest.toFixed(0)} ms of ${whole.toFixed(0)} ms`);
  // In one piece where nothing is cut; a busy machine lets several pieces pass between two messages.
  assert.ok(turns >= 4, `joints are drawn in ${turns} pieces`);
  clean();
});

test('where nobody knows the clamp, no chances are made up', async (t) => {
  const { page, clean } = await open(t);
  await anew(page, () => choose(page, 'member', 'round-tube'));
  const section = await settled(page);
  assert.equal(await section.locator('svg').count(), 0);
  assert.equal(await section.locator('.outcomes li').count(), 1);
  clean();
});

test('a safety chain counts on no friction, so no share of grip is shown', async (t) => {
  const { page, clean } = await open(t);
  await settled(page);
  await anew(page, () => choose(page, 'joint', 'chain-bracket'));
  const section = await settled(page);
  assert.doesNotMatch(await words(section), /grip|slip under/);
  assert.equal(await section.locator('.restack tbody tr').count(), 2);
  clean();
});

test('fits the smallest phone', async (t) => {
  const { page, clean } = await open(t, { context: { viewport: SIZES.small } });
  const section = await settled(page);
  await section.locator('div summary').click();
  const wide = await section.evaluate((e) => e.scrollWidth - e.clientWidth);
  assert.ok(wide <= 0, `${wide} px too wide`);
  clean();
});
