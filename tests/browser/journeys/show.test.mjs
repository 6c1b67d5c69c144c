// Showing the lessons to a class: every slide on every screen, keys, the address, a show of hands, the speaker's window,
// the plan.

import assert from 'node:assert/strict';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { test } from 'node:test';

import { DIST, eventually, LESSONS, lessonPage, open, SHOTS, SIZES } from '../harness.mjs';

/** Opens a lesson as it is shown. */
async function show(t, { page: path = lessonPage('spring'), address = '#present', ...options } = {}) {
  const visit = await open(t, { page: path, address, ...options });
  await visit.page.locator('html[data-present]').waitFor({ state: 'attached' });
  await drawn(visit.page);
  return visit;
}

const drawn = (page) => page.evaluate(() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))));
const where = (page) => page.evaluate(() => `${location.pathname.match(/([a-z]+)\.html/)[1]} ${location.hash.slice(1).split('&')[0].replace(/^present-?/, '')}`);
const place = (page) => page.locator('.place').innerText();

/** The next step, and the next page where the lesson ends; the place after it. */
async function press(page, key) {
  const before = await where(page);
  await page.keyboard.press(key);
  await page.waitForFunction((was) => {
    const now = `${location.pathname.match(/([a-z]+)\.html/)?.[1]} ${location.hash.slice(1).split('&')[0].replace(/^present-?/, '')}`;
    return now !== was && 'present' in document.documentElement.dataset && document.querySelector('.place')?.textContent;
  }, before);
  return where(page);
}

/** What a slide does wrong: lettering too small, outside the screen, in each other's way, covered. */
const faults = (page, { crowded = true } = {}) =>
  page.evaluate((crowded) => {
    const { innerWidth: width, innerHeight: height } = window;
    const found = [];
    const main = document.getElementById('main');
    const bar = document.querySelector('.present-bar').getBoundingClientRect();
    const texts = [];
    const walker = document.createTreeWalker(main, NodeFilter.SHOW_TEXT);
    for (let node = walker.nextNode(); node; node = walker.nextNode()) {
      const element = node.parentElement;
      const words = node.textContent.trim();
      if (!words || element.closest('template, defs, title, desc, .visually-hidden') || !element.checkVisibility()) continue;
      // A choice that is not shown but can be reached by keys, and the lesson's name for who listens.
      const around = element.closest('label, h1');
      if (around && getComputedStyle(around).clipPath !== 'none') continue;
      const range = document.createRange();
      range.selectNodeContents(node);
      let size = parseFloat(getComputedStyle(element).fontSize);
      const svg = element.ownerSVGElement;
      if (svg) {
        const box = svg.getBoundingClientRect();
        size *= Math.min(box.width / svg.viewBox.baseVal.width, box.height / svg.viewBox.baseVal.height);
      }
      texts.push({ words: words.slice(0, 40), size, svg, element, boxes: [...range.getClientRects()], box: element.getBoundingClientRect() });
    }
    for (const field of main.querySelectorAll('input')) {
      if (!field.checkVisibility() || (field.closest('label') && getComputedStyle(field.closest('label')).clipPath !== 'none')) continue;
      const box = field.getBoundingClientRect();
      const letters = field.matches('[type=radio], [type=range]') ? Infinity : parseFloat(getComputedStyle(field).fontSize);
      texts.push({ words: `field ${field.id}`, size: letters, element: field, boxes: [box], box });
      if (letters < Infinity && field.scrollWidth > field.clientWidth + 1) found.push(`${field.id}: ${field.value} does not fit its field`);
    }
    for (const { words, size, element, boxes } of texts) {
      if (size < height / 27) found.push(`${words}: ${size.toFixed(1)} px of ${height}`);
      for (const box of boxes) {
        if (box.left < -1 || box.top < -1 || box.right > width + 1 || box.bottom > height + 1) found.push(`${words}: outside the screen`);
        if (element.closest('.present-bar')) continue;
        if (Math.min(box.right, bar.right) - Math.max(box.left, bar.left) > 2 && Math.min(box.bottom, bar.bottom) - Math.max(box.top, bar.top) > 2) found.push(`${words}: under the bar`);
        const [x, y] = [(box.left + box.right) / 2, (box.top + box.bottom) / 2];
        const top = document.elementFromPoint(x, y);
        if (top && !element.ownerSVGElement && top !== element && !element.contains(top) && !top.contains(element)) found.push(`${words}: covered by ${top.outerHTML.slice(0, 60)}`);
      }
    }
    const lettering = crowded ? texts.filter(({ svg }) => svg) : [];
    for (const [i, a] of lettering.entries()) {
      for (const b of lettering.slice(i + 1)) {
        const wide = Math.min(a.box.right, b.box.right) - Math.max(a.box.left, b.box.left);
        const high = Math.min(a.box.bottom, b.box.bottom) - Math.max(a.box.top, b.box.top);
        if (wide > 2 && high > 0.3 * Math.min(a.box.height, b.box.height)) found.push(`${a.words} × ${b.words}`);
      }
    }
    if (main.scrollHeight > main.clientHeight + 1) found.push(`${main.scrollHeight - main.clientHeight} px have to be scrolled`);
    return [...new Set(found)];
  }, crowded);

for (const size of ['projector', 'hall']) {
  for (const units of ['us', 'metric']) {
    test(`every slide fits ${SIZES[size].width} × ${SIZES[size].height}, ${units}`, async (t) => {
      const { page, clean } = await show(t, { address: `#present&units=${units}`, context: { viewport: SIZES[size] } });
      const wrong = [];
      for (let i = 0; ; i += 1) {
        const at = await where(page);
        await page.locator('html[data-ready]').waitFor({ state: 'attached' });
        const pressed = page.locator(`[data-act=units-${units}][aria-pressed=true]`);
        await pressed.waitFor({ state: 'attached' });
        await drawn(page);
        const note = async (what, options) => wrong.push(...(await faults(page, options)).map((fault) => `${at}${what}: ${fault}`));
        await note('');
        if (size === 'hall') await page.screenshot({ path: join(SHOTS, `show-${units}-${String(i).padStart(3, '0')}-${at.replace(' ', '-')}.png`) });
        const figure = page.locator('.live-figure:visible');
        if (await figure.count()) {
          const choices = await figure.locator('input[type=radio]').all();
          const sliders = await figure.locator('input[type=range]').all();
          for (const choice of choices.length ? choices : [undefined]) {
            await choice?.evaluate((input) => input.click());
            await drawn(page);
            for (const slider of sliders) {
              // On the larger screen all is as large as on the smaller one, in parts of its height.
              for (const share of size === 'hall' ? [0.5] : [1, 0, 0.5]) {
                await slider.evaluate((input, share) => {
                  input.value = String(Number(input.min) + share * (input.max - input.min));
                  input.dispatchEvent(new Event('input', { bubbles: true }));
                }, share);
                await drawn(page);
                // At the ends of a slider labels of a plot may come close; they do on the page itself.
                await note(` ${await choice?.evaluate((c) => c.value)} ${share}`, { crowded: share === 0.5 });
              }
            }
          }
        }
        const last = at.startsWith(LESSONS.at(-1)) && (await place(page)).match(/^(\d+) of \1$/);
        if (last) break;
        // Where something has to be scrolled, a fault by now, the key does that first.
        await page.evaluate(() => document.getElementById('main').scrollTo(0, 1e6));
        await press(page, 'PageDown');
      }
      assert.deepEqual([...new Set(wrong)].slice(0, 60), [], `${wrong.length} faults`);
      clean();
    });
  }
}

test('a whole class by keys alone, with two wrong turns, a reload and a blank screen; the second window follows and leads', async (t) => {
  const { page, browser, server, clean } = await show(t, { context: { viewport: SIZES.projector } });
  const speaker = await browser.newPage();
  await speaker.goto(`${server.address}speaker.html`);
  const status = speaker.locator('.lead-on .status');
  await eventually(async () => assert.match(await status.innerText(), /^Following/));
  const follows = async () => {
    const [lesson] = (await where(page)).split(' ');
    const [now, of] = (await place(page)).match(/\d+/g);
    await eventually(async () => {
      assert.equal(await speaker.locator('.lesson-notes:visible').getAttribute('data-lesson'), lesson);
      assert.match(await speaker.locator('.lead-on .lead').innerText(), new RegExp(`step ${now} of ${of}`));
      assert.equal(await speaker.locator('.lesson-notes [data-now]:visible').count(), 1);
    });
  };
  await page.bringToFront();
  const seen = [await where(page)];
  for (let steps = 0; steps < 90; steps += 1) {
    seen.push(await press(page, ['PageDown', 'ArrowRight', ' ', 'ArrowDown'][steps % 4]));
    if (steps % 7 === 0) await follows();
    if (steps === 12 || steps === 40) {
      // A wrong turn, and back on the way.
      const was = seen.at(-1);
      await press(page, 'PageUp');
      assert.equal(await press(page, 'PageDown'), was);
      await press(page, 'Home');
      await page.goBack();
      await eventually(async () => assert.equal(await where(page), was));
    }
    if (steps === 25) {
      await page.reload();
      await page.locator('html[data-present]').waitFor({ state: 'attached' });
      await eventually(async () => assert.equal(await where(page), seen.at(-1)));
      await follows();
    }
    if (steps === 33) {
      await page.keyboard.press('b');
      assert.ok(await page.locator('.present-blank').isVisible());
      await eventually(async () => assert.equal(await speaker.getByRole('button', { name: 'picture back' }).count(), 1));
      await page.keyboard.press('PageDown');
      assert.ok(await page.locator('.present-blank').isHidden());
      assert.equal(await where(page), seen.at(-1), 'the key that brings the picture back moved on');
    }
  }
  assert.equal(new Set(seen).size, seen.length, 'a step came twice');
  assert.ok(new Set(seen.map((at) => at.split(' ')[0])).size >= 5, 'few lessons in ninety steps');
  // Now the second window leads.
  const was = await where(page);
  await speaker.getByRole('button', { name: 'next', exact: true }).click();
  await eventually(async () => assert.notEqual(await where(page), was));
  await speaker.keyboard.press('PageUp');
  await eventually(async () => assert.equal(await where(page), was));
  await speaker.getByRole('button', { name: 'blank' }).click();
  await eventually(async () => assert.ok(await page.locator('.present-blank').isVisible()));
  await speaker.getByRole('button', { name: 'picture back' }).click();
  await eventually(async () => assert.ok(await page.locator('.present-blank').isHidden()));
  await page.keyboard.press('Escape');
  await eventually(async () => assert.match(await status.innerText(), /^No lesson heard/));
  clean();
});

test('keys are heard wherever the focus is, and fields keep the ones they need', async (t) => {
  const { page, clean, axe } = await show(t, { context: { viewport: SIZES.projector } });
  await page.locator('html[data-ready]').waitFor({ state: 'attached' });
  await axe();
  await press(page, 'PageDown');
  await axe();
  // By keys into the answers, an arrow there chooses; Enter locks it in.
  await page.keyboard.press('Tab');
  await page.keyboard.press(' ');
  await page.keyboard.press('ArrowDown');
  assert.equal(await where(page), 'spring guess', 'an arrow in a choice moved on');
  await page.keyboard.press('Enter');
  await page.locator('.predict[data-done]').waitFor();
  assert.equal(await press(page, 'PageDown'), 'spring drawing');
  const slider = page.locator('#spring-turn');
  await slider.focus();
  const before = Number(await slider.inputValue());
  await page.keyboard.press('ArrowRight');
  await eventually(async () => assert.equal(Number(await slider.inputValue()), before + 1, 'the slider does not have its arrow'));
  await eventually(async () => assert.equal(await where(page), 'spring drawing'));
  // The same control goes on from the drawing to the plot.
  assert.equal(await press(page, 'PageDown'), 'spring plot');
  await eventually(async () => assert.equal(Number(await slider.inputValue()), before + 1, 'a page key moved the slider'));
  await eventually(async () => assert.ok(await slider.evaluate((input) => input === document.activeElement), 'the focus is lost'));
  await page.keyboard.press('Home');
  await eventually(async () => assert.equal(await where(page), 'spring plot'));
  const exact = page.locator('#spring-turn-exact');
  // Home is the slider's own key; what the field says follows with the next picture.
  await eventually(async () => assert.match(await exact.inputValue(), /^0/));
  await exact.fill('');
  await page.keyboard.type('25 ');
  await eventually(async () => assert.match(await exact.inputValue(), /^25 /));
  // A click in the margin, a button, a word that is explained.
  await page.mouse.click(640, 3);
  assert.equal(await press(page, 'PageDown'), 'spring told');
  await page.locator('.present-bar').getByRole('button', { name: 'next' }).click();
  await eventually(async () => assert.equal(await where(page), 'spring why'));
  await page.getByRole('link', { name: 'thread', exact: true }).click();
  await page.locator('.present-panel:visible h2').waitFor();
  await eventually(async () => assert.match(await page.locator('.present-panel').innerText(), /thread/));
  await page.keyboard.press('Escape');
  await eventually(async () => assert.ok(await page.locator('.present-panel').isHidden()));
  await eventually(async () => assert.equal(await where(page), 'spring why'));
  assert.equal(await press(page, ' '), 'spring worked');
  // A number and Enter; a number may be taken back.
  await page.keyboard.press('3');
  await eventually(async () => assert.match(await place(page), /go to 3/));
  await page.keyboard.press('Escape');
  await eventually(async () => assert.match(await place(page), /^\d+ of \d+$/));
  await page.keyboard.press('2');
  await page.keyboard.press('Enter');
  await eventually(async () => assert.equal(await where(page), 'spring guess'));
  // Nobody has guessed any more.
  await page.keyboard.press('g');
  await eventually(async () => assert.equal(await page.locator('.predict[data-done], .option[data-mine], .predict :checked').count(), 0));
  await eventually(async () => assert.equal(Number(await slider.inputValue()), 0));
  // The slides are laid out anew a moment after the units; what was opened meanwhile stays.
  await page.keyboard.press('u');
  await page.keyboard.press('?');
  await page.locator('[data-act=units-metric][aria-pressed=true]').waitFor({ state: 'attached' });
  await drawn(page);
  await drawn(page);
  await eventually(async () => assert.equal(await page.locator('.present-panel li').count(), 13));
  await axe();
  clean();
});

test('Esc leads to the same step of the whole page, reload and Back to the same slide', async (t) => {
  const { page, clean } = await show(t, { page: lessonPage('grip'), address: '#present-worked', context: { viewport: SIZES.projector } });
  assert.equal(await where(page), 'grip worked');
  await press(page, 'PageDown');
  await page.reload();
  await eventually(async () => assert.equal(await where(page), 'grip faded'));
  await page.goBack();
  await eventually(async () => assert.equal(await where(page), 'grip worked'));
  await page.goForward();
  await eventually(async () => assert.equal(await where(page), 'grip faded'));
  await page.keyboard.press('Escape');
  assert.equal(await page.evaluate(() => location.hash), '');
  assert.ok(await page.locator('.problem.faded').evaluate((step) => step.getBoundingClientRect().top < innerHeight && step.getBoundingClientRect().bottom > 0), 'another place');
  assert.ok((await page.locator('[data-step]:visible').count()) > 5);
  await page.reload();
  await page.locator('html[data-ready]').waitFor({ state: 'attached' });
  assert.ok((await page.locator('[data-step]:visible').count()) > 5, 'it begins again by itself');
  await page.getByRole('button', { name: 'Show this lesson step by step' }).click();
  await eventually(async () => assert.equal(await where(page), 'grip hook'));
  await page.goBack();
  await eventually(async () => assert.ok((await page.locator('[data-step]:visible').count()) > 5));
  // Old addresses.
  await page.goto(`${page.url().split('#')[0]}#present-last`);
  await eventually(async () => assert.equal(await where(page), 'grip own'));
  clean();
});

test('hands are counted by keys and taps, shown as bars, kept and cleared', async (t) => {
  const { page, clean } = await show(t, { context: { viewport: SIZES.projector } });
  await page.locator('html[data-ready]').waitFor({ state: 'attached' });
  await page.keyboard.press('h');
  assert.equal(await where(page), 'spring guess');
  for (const votes of ['3', '12', '6']) {
    await page.keyboard.type(votes);
    await page.keyboard.press('Enter');
  }
  const last = page.locator('.hands').nth(3);
  await last.getByRole('button', { name: /one more/ }).click();
  await last.getByRole('button', { name: /one more/ }).click();
  await last.getByRole('button', { name: /one less/ }).click();
  const widths = () => page.locator('.votes').evaluateAll((all) => all.map((bar) => Math.round(bar.getBoundingClientRect().width)));
  const [a, b, c, d] = await widths();
  assert.ok(Math.abs(a / b - 3 / 12) < 0.03 && Math.abs(c / b - 6 / 12) < 0.03 && Math.abs(d / b - 1 / 12) < 0.03, String([a, b, c, d]));
  assert.deepEqual(await faults(page), []);
  await page.screenshot({ path: join(SHOTS, 'show-hands.png') });
  // They stay for the slide of replies, and over a reload and another lesson.
  await page.goto(`${page.url().split('#')[0]}#present-told`);
  await page.reload();
  await page.locator('html[data-present]').waitFor({ state: 'attached' });
  await drawn(page);
  assert.deepEqual(await page.locator('.hands input').evaluateAll((all) => all.map(({ value }) => value)), ['3', '12', '6', '1']);
  assert.deepEqual(await faults(page), []);
  await page.keyboard.press('c');
  assert.equal(await page.locator('.hands:visible').count(), 0);
  clean();
});

test('a plan opens as it was chosen, in its order, and prints on one page', async (t) => {
  const visit = await open(t, { page: 'class.html' });
  const { page, clean } = visit;
  const line = (id) => page.locator(`.plan-list [data-lesson=${id}]`);
  for (const id of LESSONS) if (!['spring', 'hollow', 'grip'].includes(id)) await line(id).getByRole('checkbox').uncheck();
  for (let i = 0; i < 5; i += 1) await line('hollow').getByRole('button', { name: /^up/ }).click();
  await line('hollow').getByRole('textbox').fill('half an hour');
  await line('hollow').getByRole('textbox').press('Tab');
  assert.match(await line('hollow').getByRole('alert').innerText(), /whole number from 1 to 240/);
  assert.equal(await line('hollow').getByRole('textbox').inputValue(), 'half an hour');
  await line('hollow').getByRole('textbox').fill('25');
  await page.getByRole('radio', { name: 'metric' }).check();
  await page.getByRole('checkbox', { name: 'with the math' }).uncheck();
  await page.getByLabel('Title on the plan').fill('Trailer shop, first evening');
  await visit.axe();
  await page.reload();
  assert.equal(await page.locator('.plan-list :checked').count(), 3, 'what was chosen is lost');
  for (const format of ['Letter', 'A4']) {
    await page.evaluate(() => (document.documentElement.dataset.print = 'plan'));
    await page.evaluate(() => document.querySelectorAll('details').forEach((fold) => (fold.open = true)));
    const pdf = (await page.pdf({ format })).toString('latin1');
    assert.equal((pdf.match(/\/Type\s*\/Page[^s]/g) ?? []).length, 1, format);
  }
  await page.evaluate(() => delete document.documentElement.dataset.print);
  await page.getByRole('link', { name: 'Open it in the room' }).click();
  const seen = [];
  for (;;) {
    await page.locator('html[data-present]').waitFor({ state: 'attached' });
    await page.locator('[data-act=units-metric][aria-pressed=true]').waitFor({ state: 'attached' });
    const at = await where(page);
    seen.push(at);
    if (at === 'grip own') break;
    await press(page, 'PageDown');
  }
  assert.deepEqual([...new Set(seen.map((at) => at.split(' ')[0]))], ['hollow', 'spring', 'grip']);
  assert.deepEqual(seen.filter((at) => /worked|faded|solo/.test(at)), []);
  assert.ok(await page.locator('.present-bar').getByRole('button', { name: 'next' }).isDisabled());
  clean();
});

test('all ten lessons with their sums fit one page of plan', async (t) => {
  const { page, clean } = await open(t, { page: 'class.html' });
  await page.evaluate(() => (document.documentElement.dataset.print = 'plan'));
  await page.evaluate(() => document.querySelectorAll('details').forEach((fold) => (fold.open = true)));
  for (const format of ['Letter', 'A4']) {
    const pdf = (await page.pdf({ format, path: join(SHOTS, `plan-${format}.pdf`) })).toString('latin1');
    assert.equal((pdf.match(/\/Type\s*\/Page[^s]/g) ?? []).length, 1, format);
  }
  clean();
});

test('a phone is told to turn or to read; on its side it shows the lesson', async (t) => {
  const { page, clean } = await show(t, { context: { viewport: { width: 360, height: 740 } } });
  assert.match(await page.locator('.present-turn').innerText(), /Turn the phone/);
  await page.setViewportSize({ width: 740, height: 360 });
  assert.ok(await page.locator('.present-turn').isHidden());
  const small = await page.locator('.hook p').evaluate((p) => parseFloat(getComputedStyle(p).fontSize));
  assert.ok(small >= 13, `${small} px`);
  await page.setViewportSize({ width: 360, height: 740 });
  await page.locator('.present-turn').getByRole('button').click();
  assert.ok((await page.locator('[data-step]:visible').count()) > 5);
  clean();
});

test('no step is lost on screens of other shapes', async (t) => {
  for (const viewport of [{ width: 1024, height: 768 }, { width: 1280, height: 800 }, { width: 1080, height: 1920 }]) {
    const { page, clean } = await show(t, { page: lessonPage('stand'), context: { viewport } });
    await page.locator('html[data-ready]').waitFor({ state: 'attached' });
    const shown = new Set();
    for (;;) {
      const at = await where(page);
      for (;;) {
        const { lines, rest } = await page.evaluate(() => {
          const main = document.getElementById('main');
          const lines = [...main.querySelectorAll('.step li, .step p, .step legend, .option span')].filter((e) => {
            const box = e.getBoundingClientRect();
            return e.checkVisibility() && box.height > 0 && box.top < innerHeight && box.bottom > 0;
          });
          return { lines: lines.map((e) => e.textContent.trim().slice(0, 60)), rest: main.scrollHeight - main.clientHeight - main.scrollTop };
        });
        for (const text of lines) shown.add(text);
        if (rest <= 2) break;
        await page.keyboard.press('PageDown');
        await drawn(page);
        assert.equal(await where(page), at, 'moved on before all was seen');
      }
      if (at === 'stand own') break;
      await press(page, 'PageDown');
    }
    const all = await page.locator('.hook p, .why p, .why li, .worked li, .predict legend, .predict .option span, .predict .reply, .problem > p:not(.actions, .reply), .problem > ol > li').evaluateAll((e) => e.map((one) => one.textContent.trim().slice(0, 60)));
    assert.deepEqual(all.filter((text) => text && !shown.has(text)), [], JSON.stringify(viewport));
    clean();
  }
});

test('from a folder without a server the show goes on, and the second window follows or says why not', async (t) => {
  const { browser } = await open(t, { page: 'class.html' });
  const page = await browser.newPage();
  await page.setViewportSize(SIZES.projector);
  await page.goto(`${pathToFileURL(join(DIST, lessonPage('hollow'))).href}#present`);
  await page.locator('html[data-present]').waitFor({ state: 'attached' });
  assert.match(await page.locator('.present-panel').innerText(), /figures stand still/);
  await page.keyboard.press('PageDown');
  assert.ok(await page.locator('.present-panel').isHidden());
  assert.equal(await where(page), 'hollow guess');
  const speaker = await browser.newPage();
  await speaker.goto(pathToFileURL(join(DIST, 'speaker.html')).href);
  const status = speaker.locator('.lead-on .status');
  await eventually(async () => assert.match(await status.innerText(), /^Following|opened from a folder/));
  const follows = (await status.innerText()).startsWith('Following');
  t.diagnostic(follows ? 'the window follows' : 'the window says that it cannot follow');
  await speaker.getByRole('button', { name: 'next', exact: true }).click();
  if (follows) await eventually(async () => assert.equal(await where(page), 'hollow drawing'));
  else assert.match(await speaker.locator('.lead-on .lead').innerText(), /step 2/);
});
