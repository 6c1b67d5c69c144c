// The five steps as people walk them: from a blank page to the end, on a phone and on a desk, with taps and screens
// counted. What is typed by keyboard into a field that has the cursor is no tap; everything else that a finger does is,
// the keyboard's own key for the next field too.

import assert from 'node:assert/strict';
import { test } from 'node:test';

import { eventually, five, JOINT, open as openPage, stepNow, toStep } from '../harness.mjs';

const SIZES = { phone: { width: 360, height: 740 }, desk: { width: 1280, height: 800 } };
const open = (t, size, options = {}) =>
  openPage(t, { page: JOINT, ...options, context: { viewport: size, hasTouch: size === SIZES.phone, ...options.context } });
const words = async (locator) => (await locator.innerText()).replace(/[\u00a0\u202f]/g, ' ');

/** A hand that counts: taps, and how far the page has to be moved to reach what is tapped, in screens. */
function hand(page) {
  const count = { taps: 0, screens: 0 };
  /** Brings a place into the part of the window that nothing covers, as a thumb would: no farther than needed. */
  const reach = async (locator) => {
    await locator.waitFor();
    const moved = await locator.evaluate(async (element) => {
      const rest = (time) => new Promise((then) => setTimeout(then, time));
      // What the page scrolls by itself is no work of the hand.
      await rest(50);
      const before = scrollY;
      const [bar, walk] = ['.stuck', '.walk'].map((name) => document.querySelector(name)?.getBoundingClientRect());
      const inside = element.closest('.stuck, .walk');
      const box = element.getBoundingClientRect();
      const [top, foot] = [bar?.bottom ?? 0, Math.min(walk?.top ?? innerHeight, innerHeight)];
      if (!inside && box.bottom > foot) scrollBy({ top: box.bottom - foot + 8, behavior: 'instant' });
      if (!inside && box.top < top) scrollBy({ top: box.top - top - 8, behavior: 'instant' });
      return Math.abs(scrollY - before) / innerHeight;
    });
    count.screens += moved;
  };
  return {
    count,
    reach,
    async tap(locator) {
      await reach(locator);
      count.taps += 1;
      await locator.click();
    },
    async key(name) {
      count.taps += 1;
      await page.keyboard.press(name);
    },
    type: (text) => page.keyboard.type(text),
    /** A choice of a list: one tap opens it, one takes the line. */
    async choose(locator, value) {
      await reach(locator);
      count.taps += 2;
      await locator.selectOption(value);
    },
  };
}

const next = (page) => page.locator('.walk').getByRole('button', { name: /^Next/ });
const pick = (page, name) => page.locator('.pictures').getByText(name, { exact: true });

/** From the blank page to the verdict of an own joint. */
async function owner(page, thumb) {
  await thumb.tap(pick(page, 'coupler'));
  await thumb.tap(next(page));
  await thumb.tap(page.getByRole('button', { name: /none of these/ }));
  await thumb.tap(page.locator('#tube_width_mm'));
  await thumb.type('2 1/2');
  await thumb.key('Enter');
  await thumb.type('2 1/2');
  await thumb.key('Enter');
  await thumb.type('11 ga');
  await thumb.key('Enter');
  await thumb.type('7/16');
  await thumb.tap(page.locator('.marks').getByText('3 radial lines', { exact: false }).first());
}

for (const [name, size] of Object.entries(SIZES)) {
  test(`an owner: own joint to verdict, and on to a repair's sheet, ${name}`, async (t) => {
    const visit = await open(t, size);
    const { page } = visit;
    assert.equal(await page.locator('.answer .verdict').count(), 0, 'no verdict of an example');
    assert.match(await words(page.locator('.so-far')), /No answer yet: 5/);
    assert.equal(await page.locator('#tube_width_mm').inputValue(), '', 'nobody has measured it');
    const thumb = hand(page);
    await owner(page, thumb);
    if (size === SIZES.phone) await thumb.tap(next(page));
    await page.locator('.answer .verdict').waitFor();
    await thumb.reach(page.locator('.answer .says'));
    const first = { ...thumb.count };
    t.diagnostic(`${name}: own joint to verdict: ${first.taps} taps, ${first.screens.toFixed(1)} screens scrolled`);
    assert.match(await words(page.locator('.answer')), /does not hold.*Do not tow/s);
    assert.ok(first.taps <= 9, `${first.taps} taps`);
    assert.ok(first.screens <= 6, `${first.screens} screens`);
    const on = page.locator('.answer').getByRole('button', { name: /repairs? holds?/ });
    await on.waitFor();
    await thumb.tap(on);
    const sheet = page.locator('.repair-table').getByRole('link', { name: /^Work sheet/ }).first();
    await thumb.tap(sheet);
    await page.getByRole('table', { name: 'Passes of the wrench' }).first().waitFor();
    const then = thumb.count.taps - first.taps;
    t.diagnostic(`${name}: verdict to a repair's sheet: ${then} taps`);
    assert.ok(then <= 3, `${then} taps`);
    visit.clean();
  });

  test(`a forum: a link shows its answer without a tap, one thing is changed and copied back, ${name}`, async (t) => {
    const visit = await open(t, size, { context: { permissions: ['clipboard-read', 'clipboard-write'] } });
    const { page } = visit;
    await five(page, { width: '2.5', depth: '2.5', wall: '0.12' });
    const sent = await page.getByLabel('The text to copy').inputValue();
    const link = sent.trim().split('\n').at(-1);
    await page.evaluate(() => localStorage.clear());
    const other = await visit.browser.newPage();
    await other.setViewportSize(size);
    await other.goto(link);
    await other.locator('html[data-ready]').waitFor({ state: 'attached' });
    await other.locator('.answer .verdict').waitFor();
    const seen = await other.locator('.so-far .verdict').evaluate((element) => {
      const box = element.getBoundingClientRect();
      return box.top >= 0 && box.bottom <= innerHeight;
    });
    assert.ok(seen, 'the answer is in sight');
    assert.match(await words(other.locator('[data-link=whole]')), /Wall thickness: 0\.12 in/);
    const thumb = hand(other);
    if (size === SIZES.phone) await thumb.tap(other.locator('.walk').getByRole('button', { name: 'Back' }));
    await thumb.tap(other.locator('#tube_wall_mm'));
    await other.locator('#tube_wall_mm').fill('1/4');
    await toStep(other, 5);
    await other.getByRole('button', { name: 'Copy as Markdown' }).click();
    await other.waitForFunction(async () => (await navigator.clipboard.readText()).includes('t-0.25in'));
    t.diagnostic(`${name}: forum: ${thumb.count.taps} taps to the field`);
    assert.match(await other.evaluate(() => navigator.clipboard.readText()), /coupler on .*\]\(http/);
    visit.clean();
  });

  test(`a shop: a hanger on 3 × 3 × 3/16, its stock, two repairs compared, ${name}`, async (t) => {
    const visit = await open(t, size);
    const { page } = visit;
    const thumb = hand(page);
    await thumb.tap(pick(page, 'spring hanger'));
    await five(page, { width: '3', depth: '3', wall: '3/16' });
    await page.locator('#tube_material').selectOption('a500-b');
    await toStep(page, 5);
    const rows = page.locator('.repair-table > tbody > tr:has(th)');
    await rows.first().waitFor();
    // What the shop has not takes its repairs out of the list.
    await thumb.tap(page.locator('#shop > summary'));
    const chips = page.locator('.chips label');
    assert.ok((await chips.count()) > 0);
    const chip = chips.filter({ hasText: /weld/i }).first();
    if ((await chip.count()) > 0) {
      await thumb.tap(chip);
      await eventually(async () => assert.doesNotMatch(await words(page.locator('.repair-table')), /welded in/));
      await page.reload();
      await rows.first().waitFor();
      assert.equal(await page.locator('.chips label', { hasText: /weld/i }).first().locator('input').isChecked(), false, 'kept');
    }
    const compare = page.locator('.repair-table').getByRole('button', { name: /^Compare/ });
    await thumb.tap(compare.nth(0));
    await thumb.tap(compare.nth(1));
    const two = page.locator('.compared-two');
    await two.waitFor();
    assert.equal(await two.locator('svg').count(), 2, 'both drawn');
    assert.ok((await two.locator('[data-differs]').count()) > 0, 'differences marked');
    t.diagnostic(`${name}: shop: ${thumb.count.taps} taps`);
    // Everything speaks of the hanger; only the link's head keeps its old word.
    for (let step = 5; step > 0; step -= 1) {
      await toStep(page, step);
      await page.evaluate(() => {
        for (const details of document.querySelectorAll('.joint details:not(.examples)')) details.open = true;
      });
      const said = (await words(page.locator('.joint'))).replaceAll(/#v1\S+/g, '');
      const where = said.match(/.{0,40}coupler.{0,40}/gi)?.filter((text) => step > 1 || !/^coupler$/.test(text.trim()));
      if (step > 1) assert.deepEqual(where ?? [], [], `step ${step}`);
    }
    visit.clean();
  });
}

test('no step is longer than three screens of a phone', async (t) => {
  const visit = await open(t, SIZES.phone);
  const { page } = visit;
  await five(page);
  await page.locator('.repair-table tbody tr').first().waitFor({ state: 'attached' });
  for (const step of [1, 2, 3, 4, 5]) {
    await toStep(page, step);
    const { long, wide } = await page.evaluate(() => ({
      long: document.querySelector('.step[data-now]').getBoundingClientRect().height / innerHeight,
      wide: document.documentElement.scrollWidth - innerWidth,
    }));
    t.diagnostic(`step ${step}: ${long.toFixed(2)} screens`);
    assert.ok(long <= 3, `step ${step} is ${long} screens long`);
    assert.ok(wide <= 0, `step ${step} is ${wide} px too wide`);
  }
  visit.clean();
});

test('on a desk the answer and its drawing are in sight beside what is entered', async (t) => {
  const visit = await open(t, SIZES.desk);
  const { page } = visit;
  await five(page);
  await page.evaluate(() => scrollTo(0, 0));
  const inSight = (selector) =>
    page.locator(selector).first().evaluate((element) => {
      const box = element.getBoundingClientRect();
      return box.top >= 0 && box.bottom <= innerHeight && box.left >= 0 && box.right <= innerWidth;
    });
  for (const selector of ['.answer .says', '.own-section svg', '#tube_width_mm']) {
    assert.ok(await inSight(selector), selector);
  }
  visit.clean();
});

test('nothing in hints, reasons and sheets is smaller than 16 px, no label a letter a line, no choice cut', async (t) => {
  for (const size of Object.values(SIZES)) {
    const visit = await open(t, size);
    const { page } = visit;
    await five(page);
    await page.locator('.repair-table tbody tr').first().waitFor({ state: 'attached' });
    for (const step of [1, 2, 3, 4, 5]) {
      await toStep(page, step);
      await page.evaluate(() => {
        for (const details of document.querySelectorAll('.joint details')) details.open = true;
      });
      const bad = await page.evaluate(() => {
        const found = [];
        const walker = document.createTreeWalker(document.querySelector('.joint'), NodeFilter.SHOW_TEXT);
        for (let node = walker.nextNode(); node; node = walker.nextNode()) {
          const element = node.parentElement;
          const text = node.textContent.trim();
          if (!text || element.closest('svg, option, thead, .visually-hidden, [hidden], .print-only') || element.getClientRects().length === 0) continue;
          const style = getComputedStyle(element);
          if (parseFloat(style.fontSize) < 16) found.push(`${style.fontSize}: ${text.slice(0, 40)}`);
          const range = document.createRange();
          range.selectNodeContents(node);
          const box = range.getBoundingClientRect();
          if (text.length > 6 && box.width > 0 && box.width < 24) found.push(`narrow: ${text.slice(0, 40)}`);
        }
        return found.slice(0, 10);
      });
      assert.deepEqual(bad, [], `step ${step} at ${size.width}`);
    }
    visit.clean();
  }
});

test('found damage leads, whatever the numbers say: answer, line, link and repairs', async (t) => {
  const visit = await open(t, SIZES.phone);
  const { page, browser } = visit;
  // A joint that holds.
  await five(page, { wall: '1/4', bolt: 'unc-3.8' });
  await page.locator('#group-support > summary').click();
  await page.locator('#support').selectOption('solid');
  await toStep(page, 2);
  const oval = page.locator('[data-field=found_oval]');
  await oval.getByText('yes', { exact: true }).click();
  await page.getByLabel('Hole, the longest way').fill('5/8');
  await page.getByLabel('Hole, the shortest way').fill('9/16');
  assert.match(await words(page.locator('.so-far')), /Do not tow.*sound/s);
  await toStep(page, 3);
  await page.locator('#group-joint > summary').click();
  assert.equal(await page.locator('#hole_mm').inputValue(), '5/8', 'the long way is the hole');
  await toStep(page, 4);
  assert.match(await words(page.locator('.answer')), /Do not tow.*A hole is oval/s);
  const text = await page.getByLabel('The text to copy').inputValue();
  assert.match(text, /DO NOT TOW\. Found: An oval/);
  await page.evaluate(() => localStorage.clear());
  const other = await browser.newPage();
  await other.goto(text.trim().split('\n').at(-1));
  await other.locator('.answer .verdict').waitFor();
  assert.match(await words(other.locator('.answer')), /Do not tow.*A hole is oval/s);
  assert.match(await words(other.locator('[data-link=whole]')), /Hole in the tube: 0\.625 in/);
  visit.clean();
});

test('one yes is enough: a measure alone finds the damage', async (t) => {
  const visit = await open(t, SIZES.desk);
  const { page } = visit;
  await five(page);
  await toStep(page, 2);
  await page.locator('[data-field=found_oval]').getByText('yes', { exact: true }).click();
  await page.getByLabel('Hole, the longest way').fill('5/8');
  await page.getByLabel('Hole, the shortest way').fill('9/16');
  await page.locator('[data-field=found_oval]').getByText('no', { exact: true }).click();
  // Measured again, it is oval all the same.
  await page.getByLabel('Hole, the longest way').fill('11/16');
  await eventually(async () => assert.match(await words(page.locator('.so-far')), /Do not tow/));
  visit.clean();
});

test('a repair says was and now, keeps the place, and Back undoes it, after a reload too', async (t) => {
  const visit = await open(t, SIZES.phone);
  const { page } = visit;
  await five(page);
  await toStep(page, 5);
  const rows = page.locator('.repair-table > tbody > tr:has(th)');
  await rows.first().waitFor();
  for (const reload of [false, true]) {
    const button = rows.first().getByRole('button', { name: /^Try/ });
    // The list of the joint that is there, not of the one before.
    await page.locator('.repairs:not([data-stale])').waitFor();
    await button.waitFor();
    await hand(page).reach(button);
    // The place on the screen: of the list that was pressed in.
    const place = () => page.evaluate(() => document.querySelector('.repairs').getBoundingClientRect().top);
    const before = await place();
    // Where it is, as a finger does: the driver's own way to click scrolls.
    const { x, y, width, height } = await button.boundingBox();
    await page.mouse.click(x + width / 2, y + height / 2);
    const line = page.locator('.was-now');
    await line.waitFor();
    assert.match(await words(line), /was.*does not hold.*now.*(holds|close)/s);
    assert.equal(await page.evaluate(() => document.activeElement.id), 'was-now');
    const moved = Math.abs((await place()) - before);
    assert.ok(await line.evaluate((element) => element.getBoundingClientRect().top >= 0 && element.getBoundingClientRect().bottom <= innerHeight), 'the line is in sight');
    assert.ok(moved < 740, `moved by ${moved} px`);
    if (reload) {
      await page.reload();
      await page.locator('#own-joint[data-live]').waitFor();
      assert.equal(await stepNow(page), 5, 'the step is kept');
      assert.match(await words(page.locator('.was-now')), /was.*does not hold/s);
    }
    await page.goBack();
    await eventually(async () => assert.equal(await page.locator('.was-now').count(), 0));
    await eventually(async () => assert.match(await words(page.locator('.so-far')), /does not hold/));
    assert.equal(await stepNow(page), 5);
    assert.equal(await page.locator('[data-link]').count(), 0, 'no link was opened');
  }
  visit.clean();
});

test('Back goes from step to step and loses nothing typed', async (t) => {
  const visit = await open(t, SIZES.phone);
  const { page } = visit;
  await toStep(page, 3);
  await page.locator('#tube_width_mm').fill('2 1/2');
  await page.locator('#tube_wall_mm').fill('3 lb');
  await page.goBack();
  await eventually(async () => assert.equal(await stepNow(page), 2));
  await page.goForward();
  await eventually(async () => assert.equal(await stepNow(page), 3));
  assert.equal(await page.locator('#tube_width_mm').inputValue(), '2 1/2');
  assert.equal(await page.locator('#tube_wall_mm').inputValue(), '3 lb');
  for (const step of [1, 2, 3, 4, 5]) {
    await toStep(page, step);
    await page.reload();
    await page.locator('#own-joint[data-live]').waitFor();
    assert.equal(await stepNow(page), step, 'the step is kept');
    assert.equal(await page.locator('#tube_width_mm').inputValue(), '2 1/2', `step ${step}`);
    assert.equal(await page.locator('#tube_wall_mm').inputValue(), '3 lb', `step ${step}`);
    assert.equal(await page.locator('[data-link]').count(), 0, `step ${step}: called a link`);
    assert.equal(await page.locator('.answer .verdict').count(), 0, 'no answer to what is not measured');
  }
  visit.clean();
});

test('another tab is told of, and the reader says which joint counts', async (t) => {
  const visit = await open(t, SIZES.desk);
  const { page, browser, server } = visit;
  await five(page);
  const other = await browser.newPage();
  await other.goto(server.address + JOINT);
  await other.locator('html[data-ready]').waitFor({ state: 'attached' });
  await toStep(other, 3);
  await other.locator('#tube_width_mm').fill('4');
  const told = page.locator('[data-tab=other]');
  await told.waitFor();
  await page.getByRole('button', { name: "Take the other tab's" }).click();
  assert.equal(await page.locator('#tube_width_mm').inputValue(), '4');
  assert.ok(await told.isHidden());
  visit.clean();
});

test('gauges, thousandths, fractions: a keyboard with letters, and what it is in inches', async (t) => {
  const visit = await open(t, SIZES.phone);
  const { page } = visit;
  await toStep(page, 3);
  for (const input of await page.locator('.five input[type=text]').all()) {
    assert.equal(await input.getAttribute('inputmode'), 'text');
  }
  await page.locator('#tube_material').selectOption('a500-b');
  await page.locator('#tube_wall_mm').fill('11 ga');
  assert.match(await words(page.locator('#tube_wall_mm-hint')), /0\.12 in|0\.1196 in/);
  assert.match(await words(page.locator('#tube_wall_mm-hint')), /steel/);
  await page.locator('#tube_material').selectOption('6061-t6');
  assert.match(await words(page.locator('#tube_wall_mm-hint')), /0\.09\d* in.*aluminum/s);
  await page.locator('#tube_wall_mm').fill('120 thou');
  assert.ok(await page.locator('#tube_wall_mm-error').isHidden());
  await page.getByRole('button', { name: /Wall thickness: I do not know/ }).click();
  assert.match(await words(page.locator('.five')), /worst wall/);
  await page.locator('#bolt-find').fill('M12');
  assert.equal(await page.locator('#bolt').inputValue(), 'm12');
  assert.ok((await page.locator('#bolt optgroup').count()) >= 1);
  // US readers start from US sizes.
  for (const group of await page.locator('.group > summary').all()) await group.click();
  const defaults = await page.locator('.left').evaluate((left) => [
    ...[...left.querySelectorAll('input[type=text]')].flatMap((input) => [input.value, input.placeholder]),
    ...[...left.querySelectorAll('.hint')].map((hint) => /Default: (.*)\.$/.exec(hint.textContent)?.[1] ?? ''),
  ]);
  for (const odd of ['63/64', '2.362', '1653', '3.54', '5.118', '0.197', '12.99']) {
    assert.deepEqual(defaults.filter((text) => text.includes(odd)), [], odd);
  }
  visit.clean();
});
