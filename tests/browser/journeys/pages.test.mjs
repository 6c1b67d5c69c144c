// The pages together: each loads, says what it is, leads to the others, and is found at its old address.

import assert from 'node:assert/strict';
import { readdir, readFile } from 'node:fs/promises';
import { test } from 'node:test';

import { eventually, JOINT, open, PAGES, PROGRAM } from '../harness.mjs';

const PHONE = { width: 360, height: 740 };
const LINKS = new URL('../../links/', import.meta.url);

/** Most screens of a phone that a page may be long; the joint's own is in steps some day. */
const SCREENS = 12;

/** Opens the front page; the journey goes on to the others. */
async function each(t, options, look) {
  const visit = await open(t, options);
  for (const name of PAGES) {
    if (options.context?.javaScriptEnabled === false) await visit.page.goto(visit.server.address + name);
    else await visit.go(name);
    await look(visit.page, name, visit);
  }
  visit.clean();
}

/** What one walk over every page found; the tests below ask it in turn. */
let walked;
const walk = (t) =>
  (walked ??= (async () => {
    const found = new Map();
    await each(t, {}, async (page, name, { server }) => {
      found.set(name, {
        ...(await page.evaluate(() => ({
          title: document.title,
          description: document.querySelector('meta[name=description]').content,
          lang: document.documentElement.lang,
          headings: document.querySelectorAll('h1').length,
          marked: [...document.querySelectorAll('.masthead [aria-current]')].map((a) => ({ href: a.href, as: a.getAttribute('aria-current') })),
          ids: [...document.querySelectorAll('[id]')].map(({ id }) => id),
          links: [...document.querySelectorAll('a[href]')].map((a) => a.href),
          loaded: performance.getEntriesByType('resource').map((entry) => entry.name),
        }))),
        own: server.address,
      });
    });
    return found;
  })());

test('every page loads without a fault, with its own title, description and one heading of the first rank', async (t) => {
  const seen = new Map();
  for (const [name, { title, description, headings, lang }] of await walk(t)) {
    assert.ok(title.includes('Clampwright') && title.length < 90, `${name}: ${title}`);
    assert.ok(description.length > 60 && description.length < 220, `${name}: ${description.length} ${description}`);
    for (const text of [title, description]) {
      assert.ok(!seen.has(text), `${name} and ${seen.get(text)} both say: ${text}`);
      seen.set(text, name);
    }
    assert.equal(headings, 1, name);
    assert.equal(lang, 'en', name);
  }
});

test('every page tells where the reader is', async (t) => {
  for (const [name, { marked }] of await walk(t)) {
    assert.equal(marked.length, 1, `${name}: ${marked.length} marked`);
    for (const { href, as } of marked) assert.ok(as !== 'page' || href.endsWith(name), `${name}: ${href}`);
  }
});

test('all links among the pages lead somewhere', async (t) => {
  const pages = await walk(t);
  let count = 0;
  for (const [name, { links, own }] of pages) {
    for (const href of links) {
      assert.ok(href.startsWith(own), `${name}: ${href} leaves the site`);
      const to = href.slice(own.length);
      const [file, id] = to.split('#');
      const there = pages.get(file || 'index.html');
      assert.ok(there, `${name} leads to ${to}`);
      if (id && !id.includes('/') && !id.startsWith('present')) {
        assert.ok(there.ids.includes(id), `${name} leads to ${to}, which has no such place`);
      }
      count += 1;
    }
  }
  assert.ok(count > 300);
});

test('reads without script: text and drawings on every page, and nothing loaded that would not run', async (t) => {
  const asked = [];
  await each(
    t,
    { context: { javaScriptEnabled: false }, change: (path) => void asked.push(path) },
    async (page, name) => {
      assert.ok(await page.locator('h1').isVisible(), name);
      assert.ok((await page.locator('main').innerText()).length > 150, name);
      assert.equal(await page.locator('#trouble').isVisible(), false, name);
    },
  );
  assert.deepEqual(asked.filter((path) => /\.(js|wasm)$/.test(path)), []);
});

/** The small scripts of the pages for whoever teaches. */
const OF_A_CLASS = { 'class.html': ['plan.js'], 'speaker.html': ['speaker.js'] };

test('a page for reference loads no program', async (t) => {
  for (const [name, { loaded }] of await walk(t)) {
    if (PROGRAM.test(name)) continue;
    const scripts = loaded.filter((address) => /\.(js|wasm)$/.test(address)).map((address) => address.replace(/.*\/|-[0-9a-f]{16}/g, ''));
    assert.deepEqual(scripts.sort(), ['foot.js', 'page.js', ...(OF_A_CLASS[name] ?? [])].sort(), name);
  }
});

for (const colorScheme of ['light', 'dark']) {
  test(`no page breaks an accessibility rule, ${colorScheme}`, async (t) => {
    await each(t, { context: { viewport: PHONE, colorScheme, reducedMotion: 'reduce' } }, async (page, name, visit) => {
      await page.evaluate(() => document.querySelectorAll('details.fold').forEach((d) => (d.open = true)));
      try {
        await visit.axe();
      } catch (error) {
        throw new Error(`${name}: ${error.message}`);
      }
    });
  });
}

test('no page is wider than a phone, longer than twelve of its screens, or jumps while it comes up', async (t) => {
  // Counted from the first moment: what moves before the journey can ask is what a reader sees.
  const count = (page) =>
    page.addInitScript(() => {
      globalThis.shifts = 0;
      globalThis.moved = [];
      new PerformanceObserver((list) => {
        for (const entry of list.getEntries()) {
          if (entry.hadRecentInput) continue;
          globalThis.shifts += entry.value;
          for (const { node, previousRect: was, currentRect: is } of entry.sources) {
            const name = node?.id || node?.className || node?.nodeName || 'gone';
            globalThis.moved.push(`${name} ${[was.x, was.y, was.width, was.height]} -> ${[is.x, is.y, is.width, is.height]}`);
          }
        }
      }).observe({ type: 'layout-shift', buffered: true });
    });
  await each(t, { before: count, context: { viewport: PHONE } }, async (page, name, visit) => {
    // What jumps for every reader does so again; a frame that a busy machine cut in two does not.
    const jumped = () => page.evaluate(() => globalThis.shifts > 0.02 && globalThis.moved.join('; '));
    const once = await jumped();
    if (once) {
      t.diagnostic(`${name} jumped once: ${once}`);
      await visit.go(name);
    }
    const { wide, high, shifts, moved } = await page.evaluate(() => ({
      wide: document.documentElement.scrollWidth - innerWidth,
      high: document.documentElement.scrollHeight / innerHeight,
      shifts: globalThis.shifts,
      moved: globalThis.moved,
    }));
    t.diagnostic(`${name}: ${high.toFixed(1)} screens, layout shift ${shifts.toFixed(3)}`);
    assert.ok(wide <= 0, `${name} is ${wide} px too wide`);
    assert.ok(shifts <= 0.02, `${name}: layout shift ${shifts.toFixed(3)}: ${moved.join('; ')}`);
    if (name !== JOINT) assert.ok(high <= SCREENS, `${name}: ${high.toFixed(1)} screens`);
    if (name === 'index.html') assert.ok(high <= 9, `the front page: ${high.toFixed(1)} screens`);
    const across = () => page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
    await page.setViewportSize({ ...PHONE, width: 320 });
    assert.ok((await across()) <= 0, `${name} is too wide at 320`);
    await page.setViewportSize(PHONE);
    await page.evaluate(() => document.querySelectorAll('details').forEach((d) => (d.open = true)));
    assert.ok((await across()) <= 0, `${name}, unfolded, is too wide`);
  });
});

test('a word and a source are unfolded for whoever is sent to them', async (t) => {
  const visit = await open(t, { page: 'lessons/grip.html' });
  const { page } = visit;
  await page.locator('a[href*="words.html#"]').first().click();
  await page.waitForURL('**/words.html#*');
  assert.ok(await page.locator('dt:target').isVisible());
  await visit.go('method.html');
  await page.locator('a[href*="sources.html#"]').first().click();
  await page.waitForURL('**/sources.html#*');
  await eventually(async () => assert.ok(await page.locator('li:target').isVisible()));
  await eventually(async () => {
    const top = await page.locator('li:target').evaluate((li) => li.getBoundingClientRect().top);
    assert.ok(top >= 0 && top < 800, `${top}`);
  });
  visit.clean();
});

test('reference pages print in full, folded or not', async (t) => {
  const visit = await open(t, { page: 'words.html' });
  for (const name of ['words.html', 'sources.html']) {
    await visit.go(name);
    await visit.page.evaluate(() => dispatchEvent(new Event('beforeprint')));
    await visit.page.emulateMedia({ media: 'print' });
    for (const fold of await visit.page.locator('details.fold').all()) {
      assert.ok(await fold.locator('dd, li').last().isVisible(), name);
    }
    await visit.page.emulateMedia({ media: 'screen' });
    await visit.page.evaluate(() => dispatchEvent(new Event('afterprint')));
    assert.equal(await visit.page.locator('details.fold[open]').count(), 0, 'folded again');
  }
  visit.clean();
});

test('every place of the one page of the first versions is found', async (t) => {
  const pages = await walk(t);
  const visit = await open(t);
  const { page, server } = visit;
  // Where a place is depends on the address and one small script: nothing else is loaded.
  await page.route('**', (route) => (/\/old\b/.test(route.request().url()) || route.request().resourceType() === 'document' ? route.continue() : route.abort()));
  const anchors = (await readFile(new URL('anchors.txt', LINKS), 'utf8')).split('\n').filter((line) => line && !line.startsWith('#'));
  assert.ok(anchors.length > 200);
  const front = pages.get('index.html').ids;
  const landed = new Map();
  for (const anchor of anchors) {
    await page.goto('about:blank');
    await page.goto(`${server.address}#${anchor}`, { waitUntil: 'commit' });
    const stays = front.includes(anchor) || anchor.startsWith('opening');
    await page.waitForURL((url) => stays || url.pathname !== '/', { waitUntil: 'domcontentloaded' });
    const at = await page.evaluate(() => location.pathname);
    const there = pages.get(at.slice(1) || 'index.html')?.ids.includes(anchor);
    assert.ok(there || (anchor.startsWith('opening') && at === '/'), `#${anchor} → ${at}`);
    landed.set(anchor, at);
  }
  assert.equal(landed.get('hollow'), '/lessons/hollow.html');
  assert.equal(landed.get('term-preload'), '/words.html');
  assert.equal(landed.get('method'), '/method.html');
  assert.equal(landed.get('your-trailer'), '/joint.html');
});

test('every joint that was ever sent opens on its page, from the front page too', async (t) => {
  const names = (await readdir(new URL('v1/', LINKS))).filter((name) => name.endsWith('.txt'));
  assert.ok(names.length >= 9);
  const visit = await open(t, { page: JOINT });
  const { page, server } = visit;
  for (const name of names) {
    const link = (await readFile(new URL(`v1/${name}`, LINKS), 'utf8')).split('\n')[0];
    for (const way of [`#${link}`, `?s=${link}`, `index.html#${link}`, `?fbclid=x#${link}`]) {
      await page.goto('about:blank');
      await page.goto(server.address + way);
      await page.waitForURL((url) => url.pathname === `/${JOINT}` && url.href.includes(link));
      await page.locator('[data-link=whole]').waitFor();
    }
  }
  // Into the address of a page that is open already.
  await visit.go('index.html');
  await page.evaluate(() => { location.hash = '#v1/coupler/u-us/k-b4ye'; });
  await page.waitForURL('**/joint.html#v1/coupler/u-us/k-b4ye');
  // Damaged ones go there too, and are told apart there.
  await page.goto(`${server.address}#v1/coupler/u-us/b-2.5in/k-zzzz`);
  await page.locator('[data-link=damaged]').waitFor();
  visit.clean();
});
