// These pages on the device: without a signal, with a newer build over an older one, put there and taken off.

import assert from 'node:assert/strict';
import { cp, mkdtemp, readdir, readFile, rename, rm, writeFile } from 'node:fs/promises';
import { createHash } from 'node:crypto';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { test } from 'node:test';

import { DIST, eventually, JOINT, open, PAGES, PROGRAM, toStep } from '../harness.mjs';

const ON = '#device-keep[data-state=on]';
const allow = { serviceWorkers: 'allow' };
const kept = (page) => page.evaluate(async () => (await caches.keys()).sort());
const ready = (page) => page.locator('html[data-ready]').waitFor({ state: 'attached' });

/** Takes the connection away from everything, as a server that is gone does. */
async function cut(visit) {
  await visit.server.close();
}

/** A later build of the same pages: another style sheet under another name, and a mark on the front page. */
async function newer(t, from) {
  const folder = await mkdtemp(join(tmpdir(), 'clampwright-build-'));
  t.after(() => rm(folder, { recursive: true, force: true }));
  await cp(from, folder, { recursive: true });
  const names = await readdir(folder, { recursive: true });
  const old = names.find((name) => /^style-[0-9a-f]{16}\.css$/.test(name));
  const style = `${await readFile(join(folder, old), 'utf8')}\n/* build B */\n`;
  const name = `style-${createHash('sha256').update(style).digest('hex').slice(0, 16)}.css`;
  await rename(join(folder, old), join(folder, name));
  await writeFile(join(folder, name), style);
  const worker = join(folder, 'sw.js');
  let script = (await readFile(worker, 'utf8')).replace(/const BUILD = '[0-9a-f]+'/, "const BUILD = 'bbbbbbbbbbbbbbbb'");
  for (const file of names) {
    if (/\.(br|gz)$/.test(file)) await rm(join(folder, file));
    if (!file.endsWith('.html')) continue;
    let html = (await readFile(join(folder, file), 'utf8')).replaceAll(old, name);
    if (file === 'index.html') html = html.replace('<html ', '<html data-build="b" ');
    await writeFile(join(folder, file), html);
  }
  for (const file of [...names.filter((n) => n.endsWith('.html')), name]) {
    const hash = createHash('sha256').update(await readFile(join(folder, file))).digest('hex');
    script = file === name
      ? script.replace(new RegExp(`'${old}': '[0-9a-f]+'`), `'${name}': '${hash}'`)
      : script.replace(new RegExp(`'${file}': '[0-9a-f]+'`), `'${file}': '${hash}'`);
  }
  await writeFile(worker, script);
  return { folder, style: name, old };
}

test('after the first visit every page works without a signal, from any folder', async (t) => {
  const visit = await open(t, { base: '/x/y/', context: allow });
  const { page } = visit;
  await page.locator(ON).waitFor();
  assert.match((await kept(page)).join(), /^clampwright http:\/\/127\.0\.0\.1:\d+\/x\/y\/ [0-9a-f]{16}$/);
  await cut(visit);
  for (const name of PAGES) {
    await page.goto(visit.server.address + name);
    assert.ok(await page.locator('h1').isVisible(), name);
    if (PROGRAM.test(name)) await ready(page);
  }
  // It still works, and an address without a file's name is known too.
  await page.goto(visit.server.address);
  await ready(page);
  await page.goto(`${visit.server.address}${JOINT}#v1/coupler/u-us/k-b4ye`);
  await page.locator('[data-link=whole]').waitFor();
  await page.goto(`${visit.server.address}lessons/hollow.html`);
  await ready(page);
  await page.getByRole('button', { name: 'Skip' }).click();
  const before = await page.locator('[data-at=said]').innerText();
  await page.locator('#hollow-turn').press('End');
  await eventually(async () => assert.notEqual(await page.locator('[data-at=said]').innerText(), before));
  await visit.shot('offline');
});

test('a page is fresh wherever there is a connection, and never gets a part of another build', async (t) => {
  const pages = { dir: DIST };
  const asked = [];
  const visit = await open(t, { context: allow, pages, change: (path) => void asked.push(path) });
  const { page } = visit;
  await page.locator(ON).waitFor();
  const [first] = await kept(page);
  const b = await newer(t, DIST);
  pages.dir = b.folder;
  asked.length = 0;
  await page.reload();
  await ready(page);
  // The page of build B with the style of build B, while the worker of build A is still there.
  assert.equal(await page.locator('html').getAttribute('data-build'), 'b');
  assert.match(await page.locator('link[rel=stylesheet]').getAttribute('href'), new RegExp(b.style));
  assert.ok(asked.includes(`/${b.style}`) && !asked.some((path) => path.includes(b.old)));
  // It says so, waits, and what both have in common is not loaded again.
  const line = page.locator('#newer-build');
  await line.getByRole('button', { name: 'Use it now' }).waitFor();
  assert.match(await line.innerText(), /newer version/);
  assert.deepEqual(asked.filter((path) => path.endsWith('.wasm')), []);
  assert.equal((await kept(page)).length, 2);
  assert.ok((await kept(page)).includes(first));
  await visit.axe();
  await visit.shot('newer-build');
  // Typed meanwhile, and not lost by the press.
  await page.goto(visit.server.address + JOINT);
  await page.locator('#own-joint[data-live]').waitFor();
  await toStep(page, 3);
  await page.locator('#tube_width_mm').fill('2 1/2');
  await line.getByRole('button', { name: 'Use it now' }).click();
  await eventually(async () => {
    const now = await kept(page);
    assert.ok(now.length === 1 && now[0].endsWith('bbbbbbbbbbbbbbbb'), `${now}`);
  });
  await page.locator('#own-joint[data-live]').waitFor();
  await eventually(async () => assert.equal(await page.locator('#tube_width_mm').inputValue(), '2 1/2'));
  assert.equal(await line.innerText(), '');
  // And without a signal it is build B whole.
  await page.locator(ON).waitFor();
  await cut(visit);
  await page.goto(visit.server.address);
  await ready(page);
  assert.equal(await page.locator('html').getAttribute('data-build'), 'b');
});

test('a build that does not arrive whole is not kept', async (t) => {
  const pages = { dir: DIST };
  const visit = await open(t, { context: allow, pages });
  const { page } = visit;
  await page.locator(ON).waitFor();
  const before = await kept(page);
  const b = await newer(t, DIST);
  // Half of it is still the old one, as on a host that is just being filled.
  await cp(join(DIST, 'care.html'), join(b.folder, 'care.html'));
  pages.dir = b.folder;
  const refused = page.evaluate(async () => {
    const registration = await navigator.serviceWorker.getRegistration();
    const found = new Promise((then) => registration.addEventListener('updatefound', () => then(registration.installing)));
    await registration.update().catch(() => {});
    const coming = await found;
    return new Promise((then) => {
      const look = () => coming.state === 'redundant' && then(coming.state);
      coming.addEventListener('statechange', look);
      look();
    });
  });
  assert.equal(await refused, 'redundant');
  assert.deepEqual(await kept(page), before);
});

test('one press takes it off and one puts it back; nothing else of the host is touched', async (t) => {
  const visit = await open(t, { page: 'care.html', context: allow });
  const { page } = visit;
  await page.locator(ON).waitFor();
  await page.evaluate(() => caches.open('of another site'));
  await page.getByRole('button', { name: 'Take them off' }).click();
  await page.locator('#device-keep[data-state=off]').waitFor();
  assert.deepEqual(await kept(page), ['of another site']);
  // It stays off, on every page.
  await visit.go('words.html');
  await page.locator('#device-keep[data-state=off]').waitFor();
  assert.equal(await page.evaluate(async () => (await navigator.serviceWorker.getRegistrations()).length), 0);
  await page.getByRole('button', { name: 'Keep them here' }).click();
  await page.locator(ON).waitFor();
  assert.equal((await kept(page)).length, 2);
  // At once after one another, too.
  await page.getByRole('button', { name: 'Take them off' }).click();
  await page.getByRole('button', { name: 'Keep them here' }).click();
  await page.locator(ON).waitFor();
  await cut(visit);
  await page.goto(`${visit.server.address}method.html`);
  assert.ok(await page.locator('h1').isVisible());
});

test('can be put on a home screen', async (t) => {
  const visit = await open(t, { base: '/x/', page: 'lessons/index.html', context: allow });
  const { page } = visit;
  const devtools = await page.context().newCDPSession(page);
  const { url, errors, data } = await devtools.send('Page.getAppManifest');
  assert.deepEqual(errors, []);
  assert.equal(url, `${visit.server.address}app.webmanifest`);
  const manifest = JSON.parse(data);
  assert.equal(new URL(manifest.start_url, url).href, `${visit.server.address}index.html`);
  const { installabilityErrors } = await devtools.send('Page.getInstallabilityErrors');
  // A browser without a window puts nothing anywhere; all else would be a fault of ours.
  assert.deepEqual(installabilityErrors.filter(({ errorId }) => errorId !== 'in-incognito'), []);
  for (const { src, sizes } of [...manifest.icons, { src: 'icon-180.png', sizes: '180x180' }]) {
    const size = await page.evaluate(async (address) => {
      const picture = await createImageBitmap(await (await fetch(address)).blob());
      return `${picture.width}x${picture.height}`;
    }, new URL(src, url).href);
    assert.equal(size, sizes, src);
  }
  for (const { url: to } of manifest.shortcuts) assert.equal((await fetch(new URL(to, url))).status, 200, to);
});

test('light or dark is chosen in the foot of any page, units on any with numbers, and both are remembered', async (t) => {
  const visit = await open(t, { page: 'care.html', context: { colorScheme: 'light' } });
  const { page } = visit;
  const ground = () => page.evaluate(() => getComputedStyle(document.body).backgroundColor);
  const light = await ground();
  await page.getByLabel('Light or dark').selectOption('dark');
  const dark = await ground();
  assert.notEqual(dark, light);
  for (const name of ['index.html', 'lessons/grip.html', 'words.html']) {
    await visit.go(name);
    assert.equal(await ground(), dark, name);
    assert.equal(await page.getByLabel('Light or dark').inputValue(), 'dark', name);
  }
  await page.getByLabel('Light or dark').selectOption('');
  await visit.go('lessons/grip.html');
  assert.equal(await ground(), light);
  await page.getByRole('button', { name: 'metric' }).first().click();
  for (const name of ['lessons/hollow.html', 'index.html', JOINT]) {
    await visit.go(name);
    if (name === JOINT) await toStep(page, 3);
    await eventually(async () => assert.match(await page.locator('main').innerText(), /\d[\u00a0\u202f ](mm|kN)\b/, name));
  }
  visit.clean();
});
