// The reader's own joint: typed as people type, answered at once, repaired, shared, printed.

import assert from 'node:assert/strict';
import { test } from 'node:test';

import { eventually, five, JOINT, open as openPage, SIZES, toStep } from '../harness.mjs';

const open = (t, options = {}) => openPage(t, { page: JOINT, ...options });

const PHONE = { width: 360, height: 740 };

/** The verdict and the number beside it. */
async function answer(page) {
  const verdict = page.locator('.answer .verdict');
  return {
    verdict: await verdict.getAttribute('data-verdict'),
    used: await words(page.locator('.answer .used')),
  };
}

/** The words of an element, with ordinary blanks. */
const words = async (locator) => (await locator.innerText()).replace(/[\u00a0\u202f]/g, ' ');

const field = (page, name) => page.locator(`#${name}`);
const fill = (page, name, text) => field(page, name).fill(text);

async function example(page, name) {
  await toStep(page, 1);
  await page.getByText('Look at a made-up joint first').click();
  await page.getByRole('button', { name }).click();
}

/** The link as "Copy link" would copy it: the last line of the text in clear. */
async function link(page) {
  const text = await page.getByLabel('The text to copy').inputValue();
  return text.trim().split('\n').at(-1);
}

async function openGroup(page, name) {
  await toStep(page, 3);
  await page.locator(`#group-${name} > summary`).click();
}

test('fractions and millimetres give a verdict', async (t) => {
  const visit = await open(t);
  const { page } = visit;
  await toStep(page, 3);
  await fill(page, 'tube_width_mm', '2 1/2');
  await fill(page, 'tube_depth_mm', '60 mm');
  await fill(page, 'tube_wall_mm', '3/16');
  await page.getByLabel('Metal of the tube').selectOption({ label: 'Steel S235' });
  await page.getByRole('combobox', { name: 'Bolt size' }).selectOption({ label: 'M12' });
  // The old grade is not made in that size, and the page says so at that field.
  assert.match(await words(page.locator('#bolt_grade-error')), /not made in this bolt size/);
  await page.getByRole('combobox', { name: 'Marks on the bolt head' }).selectOption('iso-8.8');
  assert.ok(await page.locator('#bolt_grade-error').isHidden());
  const { verdict, used } = await answer(page);
  assert.equal(verdict, 'does-not-hold');
  assert.match(used, /^\d+ %|^\d+\s%/);
  assert.match(await words(page.locator('#tube_depth_mm-hint')), /= 2\.362 in/);
  const checks = await page.locator('.check .question').allInnerTexts();
  assert.ok(checks.length >= 4, `all checks are rows: ${checks}`);
  visit.clean();
});

test('working opens and names formula, numbers, result and source', async (t) => {
  const visit = await open(t);
  await five(visit.page);
  const check = visit.page.locator('[data-check="clamp"]');
  await check.getByText('The math').click();
  const working = await words(check.locator('.working'));
  for (const part of ['T/(K·d)', 'A_t', 'proof load', 'Shigley', 'seen in a copy', 'lbf']) {
    assert.ok(working.includes(part), `working has ${part}`);
  }
  // It stays open when the numbers change.
  await fill(visit.page, 'tube_wall_mm', '1/4');
  assert.ok(await check.locator('.working').isVisible());
  visit.clean();
});

test('a bad entry is named, kept, and the old answer marked as not current', async (t) => {
  const visit = await open(t);
  const { page } = visit;
  await five(page);
  const before = await answer(page);
  await fill(page, 'tube_wall_mm', '3 lb');
  const error = page.locator('#tube_wall_mm-error');
  assert.match(await words(error), /Wall thickness.*lb.*0\.031 in to 0\.984 in/s);
  assert.equal(await field(page, 'tube_wall_mm').getAttribute('aria-invalid'), 'true');
  assert.equal(await field(page, 'tube_wall_mm').inputValue(), '3 lb');
  assert.ok(await page.getByText('Not current:').isVisible());
  assert.deepEqual(await answer(page), before);
  await visit.axe();
  await page.getByRole('button', { name: 'go there' }).click();
  await eventually(async () => assert.equal(await page.evaluate(() => document.activeElement.id), 'tube_wall_mm'));
  await fill(page, 'tube_wall_mm', '3 in');
  assert.match(await words(error), /3 in is outside 0\.031 in to 0\.984 in/);
  await fill(page, 'tube_wall_mm', '3/16');
  assert.ok(await error.isHidden());
  assert.ok(await page.getByText('Not current:').isHidden());
  visit.clean();
});

test('a fault in a closed group opens it', async (t) => {
  const visit = await open(t);
  const { page } = visit;
  await openGroup(page, 'trailer');
  await fill(page, 'trailer_mass_kg', 'heavy');
  await openGroup(page, 'trailer');
  await page.getByRole('button', { name: 'go there' }).click();
  assert.ok(await page.locator('#trailer_mass_kg-error').isVisible());
  visit.clean();
});

test('a repair goes into the form, holds, and can be undone', async (t) => {
  const visit = await open(t);
  const { page } = visit;
  await example(page, 'Small boat trailer, steel');
  const before = await answer(page);
  assert.equal(before.verdict, 'does-not-hold');
  assert.ok(await page.getByText("a made-up joint, nobody's trailer").isVisible());
  const rows = page.locator('.repair-table tbody tr');
  await rows.first().waitFor();
  assert.match(await words(rows.first()), /cheapest/);
  await rows.first().getByRole('button', { name: /^Try/ }).click();
  assert.equal((await answer(page)).verdict, 'holds');
  await toStep(page, 3);
  assert.match(await words(page.locator('#group-support .told')), /\w/);
  await page.getByRole('button', { name: /^Undo/ }).click();
  await eventually(async () => assert.deepEqual(await answer(page), before));
  visit.clean();
});

test('the three examples come out differently and say that they are made up', async (t) => {
  const visit = await open(t);
  const { page } = visit;
  await page.getByText('Look at a made-up joint first').click();
  const buttons = page.locator('.cases button');
  const verdicts = [];
  for (const button of await buttons.all()) {
    await toStep(page, 1);
    await button.click();
    verdicts.push((await answer(page)).verdict);
  }
  assert.deepEqual(verdicts, ['does-not-hold', 'close', 'holds']);
  assert.match(await words(page.locator('.cases')), /Made up/);
  visit.clean();
});

test('own rates change the costs, not the verdicts', async (t) => {
  const visit = await open(t);
  const { page } = visit;
  await five(page);
  await toStep(page, 5);
  const costs = page.locator('.repair-table [data-name="cost"]');
  await costs.first().waitFor();
  const before = await costs.first().innerText();
  await page.getByText('Your own rates').click();
  await page.getByLabel('an hour of labor').fill('900');
  await page.waitForFunction(
    (old) => document.querySelector('.repair-table [data-name="cost"]').innerText !== old,
    before,
  );
  await page.getByLabel('an hour of labor').fill('a lot');
  assert.match(await words(page.locator('#rate-0-error')), /write a number/);
  visit.clean();
});

test('prices by weight are typed in the units of the reader and keep their meaning', async (t) => {
  const visit = await open(t);
  const { page } = visit;
  await five(page);
  await toStep(page, 5);
  await page.locator('.repair-table [data-name="cost"]').first().waitFor();
  await page.getByText('Your own rates').click();
  const pound = page.getByLabel('a pound of steel', { exact: true });
  assert.equal(await pound.inputValue(), '2.27', '5 for a kilogram');
  await pound.fill('4');
  await page.getByLabel('metric: mm, kN').check();
  const kilogram = page.getByLabel('a kilogram of steel', { exact: true });
  assert.equal(await kilogram.inputValue(), '8.82');
  await page.getByLabel('US: in, lbf').check();
  assert.equal(await pound.inputValue(), '4');
  visit.clean();
});

test('switching units changes what is shown, not the joint', async (t) => {
  const visit = await open(t);
  const { page } = visit;
  await five(page, { width: '2 1/2' });
  const before = await answer(page);
  await page.getByLabel('metric: mm, kN').check();
  assert.equal(await field(page, 'tube_width_mm').inputValue(), '2 1/2 in');
  assert.deepEqual(await answer(page), before);
  assert.match(await words(page.locator('.check-groups')), /kN/);
  await page.getByLabel('US: in, lbf').check();
  assert.equal(await field(page, 'tube_width_mm').inputValue(), '2 1/2');
  assert.deepEqual(await answer(page), before);
  visit.clean();
});

test('a link opens exactly that joint and tells what differs', async (t) => {
  const visit = await open(t);
  const { page, browser } = visit;
  await five(page, { width: '2 1/2' });
  await page.getByLabel('Metal of the tube').selectOption({ label: 'Steel S235' });
  const [address, before] = [await link(page), await answer(page)];
  assert.match(address, /#v1\/coupler\/.*b-2\.5in.*\/k-[a-z0-9]{4}$/);
  // The address bar follows by itself.
  await page.waitForURL((url) => url.href === address);
  // Somebody else's device has nothing of this joint.
  await page.evaluate(() => localStorage.clear());
  const other = await browser.newPage();
  await other.goto(address);
  await other.locator('html[data-ready]').waitFor({ state: 'attached' });
  assert.deepEqual(await answer(other), before);
  const told = await words(other.locator('[data-link="whole"]'));
  assert.match(told, /Width of the face under the washer: 2\.5 in/);
  assert.match(told, /Metal of the tube: Steel S235/);
  // Pasting another link into the same tab works too.
  await other.evaluate(() => { location.hash = '#v1/coupler/u-us/k-b4ye'; });
  await other.waitForFunction(() => document.querySelector('#tube_width_mm').value === '2');
  visit.clean();
});

test('copies as link, Markdown and BBCode, and by hand where that is refused', async (t) => {
  const visit = await open(t, { context: { permissions: ['clipboard-read', 'clipboard-write'] } });
  const { page } = visit;
  await five(page);
  await toStep(page, 5);
  const pasted = () => page.evaluate(() => navigator.clipboard.readText());
  await page.getByRole('button', { name: 'Copy link' }).click();
  await page.getByText('Copied.').waitFor();
  assert.match(await pasted(), /does not hold.*\n.*#v1\/coupler\//s);
  await page.getByRole('button', { name: 'Copy as Markdown' }).click();
  await page.waitForFunction(async () => (await navigator.clipboard.readText()).startsWith('['));
  assert.match(await pasted(), /^\[.+\]\(http.+\)$/);
  await page.getByRole('button', { name: /BBCode/ }).click();
  await page.waitForFunction(async () => (await navigator.clipboard.readText()).startsWith('[url='));
  await page.evaluate(() => {
    Object.defineProperty(navigator, 'clipboard', { value: undefined });
  });
  await page.getByRole('button', { name: 'Copy link' }).click();
  await page.getByText(/selected: copy it by hand/).waitFor();
  assert.equal(await page.evaluate(() => document.activeElement.id), 'share-text');
  visit.clean();
});

test('a damaged link is shown and not used until the reader says so', async (t) => {
  const visit = await open(t, { address: '#v1/coupler/u-us/b-2.5in/t-0.25in/k-zzzz' });
  const { page } = visit;
  const note = page.locator('[data-link="damaged"]');
  assert.match(await words(note), /damaged/);
  assert.match(await words(note), /Wall thickness: 0\.25 in/);
  assert.equal(await field(page, 'tube_width_mm').inputValue(), '');
  assert.equal(await page.locator('.answer .verdict').count(), 0, 'a damaged link gives no verdict');
  await page.getByRole('button', { name: 'Use what could be read' }).click();
  assert.equal(await field(page, 'tube_width_mm').inputValue(), '2.5');
  assert.ok(await note.isHidden());
  visit.clean();
});

for (const [name, address, kind, sentence] of [
  ['another version', '#v2/coupler/u-us/b-2.5in/k-zzzz', 'foreign', /another version/],
  ['another calculation', '#x1/thing/b-2', 'foreign', /not a joint that this page knows/],
  ['cut off', '#v1/coupler/u-us/b-2.5in', 'damaged', /end is missing/],
  ['too long', `#v1/coupler/${'b-2.5in/'.repeat(1200)}`, 'too-long', /longer than any/],
]) {
  test(`a link is told apart: ${name}`, async (t) => {
    const visit = await open(t, { address });
    assert.match(await words(visit.page.locator(`[data-link="${kind}"]`)), sentence);
    assert.equal(await field(visit.page, 'tube_width_mm').inputValue(), '');
    assert.equal(await visit.page.locator('.answer .verdict').count(), 0, 'no verdict under it');
    visit.clean();
  });
}

test('a place on the page is no damaged link', async (t) => {
  const visit = await open(t, { address: '#share-text' });
  assert.equal(await visit.page.locator('[data-link]').count(), 0);
  visit.clean();
});

test('the address is written at most twice a second', async (t) => {
  const visit = await open(t, {
    before: (page) =>
      page.addInitScript(() => {
        globalThis.written = [];
        const own = history.replaceState.bind(history);
        history.replaceState = (...given) => {
          globalThis.written.push(performance.now());
          own(...given);
        };
      }),
  });
  await toStep(visit.page, 3);
  // A step is an entry of its own; what counts here is typing.
  await visit.page.evaluate(() => { globalThis.written = []; });
  await field(visit.page, 'tube_width_mm').pressSequentially('44444', { delay: 30 });
  await fill(visit.page, 'tube_width_mm', '3');
  await visit.page.waitForURL((url) => url.hash.includes('b-3in'));
  const written = await visit.page.evaluate(() => globalThis.written);
  // How many there are depends on how slowly the machine types; how close they are does not.
  assert.ok(written.length >= 1, 'never');
  const gaps = written.slice(1).map((time, i) => time - written[i]);
  assert.ok(gaps.every((gap) => gap > 490), `${gaps} ms apart`);
  visit.clean();
});

test('everything can be reached and done by keyboard', async (t) => {
  const visit = await open(t, { context: { reducedMotion: 'reduce' } });
  const { page } = visit;
  await five(page);
  await field(page, 'tube_width_mm').focus();
  await page.keyboard.press('ControlOrMeta+a');
  await page.keyboard.type('3');
  const seen = [];
  for (let step = 0; step < 60; step += 1) {
    await page.keyboard.press('Tab');
    const at = await page.evaluate(() => {
      const { id, tagName, textContent } = document.activeElement;
      const box = document.activeElement.getBoundingClientRect();
      const over = (bar) => {
        const by = bar.getBoundingClientRect();
        return !bar.contains(document.activeElement) && box.bottom > by.top + 1 && box.top < by.bottom - 1 && box.right > by.left && box.left < by.right;
      };
      const under = [...document.querySelectorAll('.stuck, .walk')].some(over);
      return { id, tagName, text: textContent.slice(0, 40), under };
    });
    assert.ok(!at.under, `${at.tagName} ${at.id} ${at.text} is hidden under the bar`);
    seen.push(at.id || at.text);
    if (at.text.includes('What backs up')) {
      await page.keyboard.press('Enter');
      await page.keyboard.press('Tab');
      assert.equal(await page.evaluate(() => document.activeElement.id), 'support');
      await page.keyboard.press('ArrowDown');
      break;
    }
  }
  for (const id of ['tube_depth_mm', 'tube_wall_mm', 'bolt', 'bolt_grade', 'tube_material']) {
    assert.ok(seen.includes(id), `${id} is on the way: ${seen}`);
  }
  assert.equal(await field(page, 'support').inputValue(), 'spreader');
  visit.clean();
});

for (const colorScheme of ['light', 'dark']) {
  test(`breaks no accessibility rule with everything open, ${colorScheme}`, async (t) => {
    for (const viewport of [PHONE, SIZES.desk]) {
      const visit = await open(t, { context: { viewport, colorScheme } });
      await visit.axe();
      await five(visit.page);
      await visit.page.locator('.repair-table tbody tr').first().waitFor({ state: 'attached' });
      for (const step of [1, 2, 3, 4, 5]) {
        await toStep(visit.page, step);
        await visit.page.evaluate(() => {
          for (const details of document.querySelectorAll('details')) details.open = true;
          // What a bar that stays in sight covers just now can be scrolled out from under it.
          for (const bar of document.querySelectorAll('.stuck, .walk')) bar.style.position = 'static';
        });
        await visit.axe();
      }
      visit.clean();
    }
  });
}

test('the reader can choose light or dark', async (t) => {
  const visit = await open(t, { context: { colorScheme: 'light' } });
  const ground = () => visit.page.evaluate(() => getComputedStyle(document.body).backgroundColor);
  const light = await ground();
  await visit.page.getByLabel('Light or dark').selectOption('dark');
  assert.notEqual(await ground(), light);
  await visit.page.getByLabel('Light or dark').selectOption('');
  assert.equal(await ground(), light);
  visit.clean();
});

test('nothing is wider than a phone', async (t) => {
  for (const width of [320, 360]) {
    const visit = await open(t, { context: { viewport: { width, height: 740 } } });
    const { page } = visit;
    await five(page);
    await page.locator('.repair-table tbody tr').first().waitFor({ state: 'attached' });
    for (const step of [1, 2, 3, 4, 5]) {
      await toStep(page, step);
      await page.evaluate(() => {
        for (const details of document.querySelectorAll('#own-joint details')) details.open = true;
      });
      const over = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
      assert.ok(over <= 0, `${over} px too wide at ${width}, step ${step}`);
      await visit.shot(`trailer-${width}-${step}`);
    }
    visit.clean();
  }
});

test('prints the result with inputs, sources and link, and no controls', async (t) => {
  const visit = await open(t);
  const { page } = visit;
  await five(page);
  await toStep(page, 5);
  await page.locator('.repair-table tbody tr').first().waitFor();
  // The button leaves the other sections out while it prints.
  await page.evaluate(() => {
    globalThis.print = () => {
      globalThis.printed = document.documentElement.dataset.print;
    };
  });
  await page.getByRole('button', { name: 'Print', exact: true }).click();
  assert.equal(await page.evaluate(() => globalThis.printed), 'joint');
  await page.emulateMedia({ media: 'print' });
  await page.evaluate(() => {
    document.documentElement.dataset.print = 'joint';
  });
  for (const control of await page.locator('button, input, select, textarea').all()) {
    assert.ok(await control.isHidden(), `hidden on paper: ${await control.evaluate((e) => e.outerHTML.slice(0, 80))}`);
  }
  // Paper shows the working that the reader opened, and no other.
  const working = page.locator('ol.checks details', { hasText: 'T/(K·d)' }).first();
  assert.ok(await working.isHidden());
  await working.evaluate((details) => {
    details.open = true;
  });
  const paper = await words(page.locator('#your-trailer'));
  for (const part of [
    'does not hold',
    'What was put in',
    'Width of the face under the washer',
    '2 in',
    '#v1/coupler/',
    'T/(K·d)',
    'Shigley',
  ]) {
    assert.ok(paper.includes(part), `paper has ${part}`);
  }
  assert.ok(await page.locator('.own-section svg').isVisible());
  const pdf = await page.pdf({ format: 'A4' });
  assert.ok(pdf.length > 20_000);
  visit.clean();
});

test('another page can calculate from this site', async (t) => {
  const visit = await open(t);
  const got = await visit.page.evaluate(async () => {
    const loader = await import('./api/clampwright.js');
    await loader.init();
    const report = loader.evaluate({ tube_wall_mm: 4.0 });
    let refused;
    try {
      loader.evaluate({ tube_wall_mm: 900 });
    } catch (error) {
      refused = { is: error instanceof Error, name: error.name, errors: error.errors };
    }
    return {
      verdict: report.verdict,
      wall: report.input.tube_wall_mm,
      defaults: loader.defaults().tube_width_mm,
      typed: loader.readQuantity('2 1/2 in', 'tube_width_mm').si,
      refused,
    };
  });
  assert.equal(got.verdict, 'does-not-hold');
  assert.equal(got.wall, 4);
  assert.equal(got.defaults, 50.8);
  assert.equal(got.typed, 0.0635);
  assert.deepEqual(
    [got.refused.is, got.refused.name, got.refused.errors[0].code, got.refused.errors[0].field],
    [true, 'CalculationError', 'out-of-range', 'tube_wall_mm'],
  );
  visit.clean();
});
