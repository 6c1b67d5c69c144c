// The page comes up, and when its program does not, the reader keeps the text and is told why.

import assert from 'node:assert/strict';
import { test } from 'node:test';

import { eventually, five, JOINT, open, SIZES, toStep } from '../harness.mjs';

const notice = (page) => page.locator('#trouble');

/** What must be readable whether or not the program runs. */
async function textIsThere(page) {
  assert.ok(await page.getByRole('heading', { level: 1 }).isVisible(), 'a visible main heading');
  assert.ok((await page.locator('main p').first().innerText()).length > 40, 'a first paragraph');
  const figures = page.locator('figure[data-figure]');
  assert.ok((await figures.count()) > 0, 'figures on the page');
  for (const figure of await figures.all()) {
    assert.ok((await figure.locator('figcaption').innerText()).length > 0, 'a caption');
  }
}

test('reads in full without JavaScript', async (t) => {
  const asked = [];
  const visit = await open(t, {
    context: { javaScriptEnabled: false },
    change: (path) => void asked.push(path),
  });
  await textIsThere(visit.page);
  assert.ok(await notice(visit.page).isHidden());
  await visit.shot('no-script');
  assert.ok(asked.includes('/'), 'the page itself was asked for');
  const program = asked.filter((path) => /\.(js|wasm)$/.test(path));
  assert.deepEqual(program, [], 'nothing is loaded that nobody would use');
  visit.clean();
});

test('the program starts and answers', async (t) => {
  const visit = await open(t);
  await textIsThere(visit.page);
  assert.ok(await notice(visit.page).isHidden());
  await visit.go(JOINT);
  const box = visit.page.locator('#own-joint');
  assert.notEqual(await box.getAttribute('data-live'), null);
  await five(visit.page);
  await toStep(visit.page, 4);
  await eventually(async () => assert.match(await box.locator('.answer').innerText(), /does not hold|do not tow/i));
  await visit.shot('started');
  visit.clean();
});

test('the program is asked for before boot.js runs', async (t) => {
  const visit = await open(t);
  const by = await visit.page.evaluate(() =>
    performance
      .getEntriesByType('resource')
      .filter(({ name }) => name.endsWith('.wasm'))
      .map(({ initiatorType }) => initiatorType),
  );
  assert.deepEqual(by, ['link'], 'once, ahead');
  visit.clean();
});

test('works from a subfolder', async (t) => {
  const visit = await open(t, { base: '/x/y/' });
  await visit.page.locator('#fig-opening [data-live]').first().waitFor();
  await visit.page.getByRole('link', { name: 'Your joint' }).first().click();
  await visit.page.locator('#own-joint[data-live]').waitFor();
  await visit.page.getByRole('link', { name: 'Lessons' }).first().click();
  await visit.page.getByRole('link', { name: 'Friction carries the load' }).click();
  await visit.page.locator('html[data-ready]').waitFor({ state: 'attached' });
  visit.clean();
});

test('sends and states the content policy', async (t) => {
  const visit = await open(t);
  const header = visit.response.headers()['content-security-policy'];
  const meta = await visit.page
    .locator('meta[http-equiv="Content-Security-Policy"]')
    .getAttribute('content');
  for (const rule of [
    "default-src 'none'",
    "script-src 'self' 'wasm-unsafe-eval'",
    "style-src 'self'",
    "connect-src 'self'",
    "frame-src 'self'",
    "manifest-src 'self'",
    "worker-src 'self'",
    "base-uri 'none'",
    "form-action 'none'",
  ]) {
    assert.ok(header.split('; ').includes(rule), `header has ${rule}`);
    assert.ok(meta.split('; ').includes(rule), `meta has ${rule}`);
  }
  assert.equal(visit.response.headers()['x-content-type-options'], 'nosniff');
  // The policy is in force, not only written down.
  const refused = await visit.page.evaluate(() => {
    const script = document.createElement('script');
    script.textContent = 'globalThis.inlineRan = true';
    document.head.append(script);
    return globalThis.inlineRan === undefined;
  });
  assert.ok(refused, 'an inline script did not run');
  visit.expect(/inline script/i);
  visit.clean();
});

test('hashed files may be kept for good, the others are asked for again', async (t) => {
  const seen = new Map();
  const visit = await open(t, {
    before: (page) =>
      page.on('response', (r) => seen.set(new URL(r.url()).pathname, r.headers()['cache-control'])),
  });
  assert.equal(seen.get('/'), 'no-cache');
  const hashed = [...seen].filter(([path]) => /\.(css|js|wasm)$/.test(path));
  assert.ok(hashed.length >= 5, `${hashed.length}`);
  for (const [path, kept] of hashed) assert.match(kept, /immutable/, path);
  // What other pages and the browser know by its name has to be asked for again.
  for (const path of ['joint.html', 'sw.js', 'app.webmanifest', 'api/clampwright.js', 'api/figure.js']) {
    const response = await fetch(visit.server.address + path);
    assert.equal(response.headers.get('cache-control'), 'no-cache', path);
  }
  visit.clean();
});

const FAILURES = [
  {
    name: 'the program is not on the server',
    change: (path) => path.endsWith('.wasm') && { status: 404 },
    step: 'missing',
    sentence: /not on the server/,
    faults: /404|missing|preload/,
  },
  {
    name: 'the loader is not on the server',
    change: (path) => /front-[^/]*\.js$/.test(path) && { status: 404 },
    step: 'import',
    sentence: /did not arrive/,
    faults: /404|import|preload|front-[^/]*\.js net::ERR_ABORTED/,
  },
  {
    name: 'the browser refuses to compile',
    change: (path, headers) =>
      path.endsWith('/') && {
        headers: {
          'Content-Security-Policy': headers['Content-Security-Policy'].replace(" 'wasm-unsafe-eval'", ''),
        },
      },
    step: 'compile',
    sentence: /does not accept it/,
    faults: /compile|WebAssembly|preload/,
  },
];

for (const { name, change, step, sentence, faults } of FAILURES) {
  test(`says so when ${name}`, async (t) => {
    const visit = await open(t, { change, ready: false });
    await visit.page.locator(`html[data-dead="${step}"]`).waitFor({ state: 'attached' });
    assert.match(await notice(visit.page).innerText(), sentence);
    assert.ok(await visit.page.getByRole('button', { name: 'Try again' }).isVisible());
    await textIsThere(visit.page);
    visit.expect(faults);
    visit.clean();
    await visit.shot(`fails-${step}`);
  });
}

test('says so when the connection breaks off, and starts on the second try', async (t) => {
  let broken = true;
  const visit = await open(t, {
    ready: false,
    before: (page) =>
      page.route('**/*.wasm', (route) => (broken ? route.abort('connectionreset') : route.continue())),
  });
  await visit.page.locator('html[data-dead="fetch"]').waitFor({ state: 'attached' });
  assert.match(await notice(visit.page).innerText(), /connection broke off/);
  visit.expect(/ERR_CONNECTION_RESET|fetch|preload/i);
  broken = false;
  await visit.page.getByRole('button', { name: 'Try again' }).click();
  await visit.page.locator('html[data-ready]').waitFor({ state: 'attached' });
  assert.ok(await notice(visit.page).isHidden());
  visit.clean();
});

test('says so when the device is offline', async (t) => {
  const visit = await open(t, {
    ready: false,
    before: async (page, browser) => {
      // The program is asked for ahead of the scripts; the connection goes once they are here.
      const arrived = (file) => page.waitForEvent('requestfinished', (r) => file.test(r.url()));
      const scripts = Promise.all([arrived(/boot-[^/]*\.js$/), arrived(/front-[^/]*\.js$/)]);
      await page.route('**/*.wasm', async (route) => {
        await scripts;
        await browser.setOffline(true);
        await route.abort('internetdisconnected');
      });
    },
  });
  await visit.page.locator('html[data-dead="offline"]').waitFor({ state: 'attached' });
  assert.match(await notice(visit.page).innerText(), /offline/);
  await textIsThere(visit.page);
  visit.expect(/INTERNET_DISCONNECTED|offline|preload/i);
  visit.clean();
});

test('says so when loading is slow, and takes it back when it arrives', async (t) => {
  let release;
  const held = new Promise((resolve) => {
    release = resolve;
  });
  const visit = await open(t, {
    ready: false,
    before: async (page) => {
      await page.clock.install();
      await page.route('**/*.wasm', async (route) => {
        await held;
        await route.continue();
      });
    },
  });
  await visit.page.clock.runFor(8_100);
  assert.match(await notice(visit.page).innerText(), /taking long/);
  release();
  await visit.page.locator('html[data-ready]').waitFor({ state: 'attached' });
  assert.ok(await notice(visit.page).isHidden());
  visit.clean();
});

test('says so when the calculation stops', async (t) => {
  const visit = await open(t);
  await visit.page.evaluate(async () => {
    const loader = await import(document.querySelector('script[data-js]').dataset.js);
    try {
      loader.stopForCheck();
    } catch {
      // The module traps after the notice is written.
    }
  });
  await visit.page.locator('html[data-dead="panic"]').waitFor({ state: 'attached' });
  assert.match(await notice(visit.page).innerText(), /has stopped/);
  visit.expect(/stopped for a check/);
  visit.clean();
});

test('breaks no accessibility rule', async (t) => {
  for (const viewport of [SIZES.small, SIZES.desk]) {
    const visit = await open(t, { context: { viewport } });
    await visit.axe();
    visit.clean();
  }
});
