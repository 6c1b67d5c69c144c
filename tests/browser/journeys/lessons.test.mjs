// The lessons: guess, move, read, solve, go to the calculator.

import assert from 'node:assert/strict';
import { join } from 'node:path';
import { test } from 'node:test';

import { eventually, LESSONS, lessonPage, open as openPage, quantile, SHOTS, SIZES, stepTimes } from '../harness.mjs';

/** Opens a lesson's page, by default the third. */
const open = (t, options = {}) => openPage(t, { page: lessonPage('grip'), ...options });

const lesson = (page, id) => page.locator(`#${id}`);
const said = (page, id) => lesson(page, id).locator('[data-at=said]').innerText();
const picture = (page, name, of) => of.screenshot({ path: join(SHOTS, `${name}.png`) });

/** After the next picture: moves are gathered until then. */
const drawn = (page) =>
  page.evaluate(() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))));

/** Moves a slider as a finger does. */
const slide = async (page, slider, share) => {
  await slider.evaluate((input, share) => {
    const [min, max] = [Number(input.min), Number(input.max)];
    input.value = String(min + share * (max - min));
    input.dispatchEvent(new Event('input', { bubbles: true }));
  }, share);
  await drawn(page);
};

const commit = async (page, id, option = 0) => {
  const form = lesson(page, id).locator('form.predict');
  await form.locator('input[type=radio]').nth(option).check();
  await form.locator('[data-act=commit]').click();
};

/** The answer to a problem as the page itself gives it at the foot of the problem. */
const solution = (problem) =>
  problem.evaluate((problem) => {
    const name = problem.querySelector('[data-answer]').dataset.answer;
    return problem.querySelector(`.solution [data-v="${name}"]`).textContent;
  });

test('there are ten lessons in the list, and each leads to the one before and the next', async (t) => {
  const { page, go, clean } = await open(t, { page: 'lessons/index.html' });
  const listed = await page.locator('.lesson-list > li > a').evaluateAll((links) => links.map((a) => a.getAttribute('href')));
  assert.deepEqual(listed, LESSONS.map((id) => `../${lessonPage(id)}`));
  await page.locator('.lesson-list > li > a').first().click();
  for (const [i, id] of LESSONS.entries()) {
    await page.waitForURL(`**/${lessonPage(id)}`);
    assert.equal(await page.locator('a[rel=prev]').count(), i === 0 ? 0 : 1, id);
    if (i + 1 < LESSONS.length) await page.locator('a[rel=next]').click();
  }
  assert.equal(await page.locator('a[rel=next]').count(), 0);
  await page.locator('a[rel=prev]').click();
  await page.waitForURL(`**/${lessonPage(LESSONS.at(-2))}`);
  clean();
});

test('every lesson: nothing moves before a guess; then the figure follows and answers it', async (t) => {
  const { page, go, clean } = await open(t);
  for (const id of LESSONS) {
    await go(lessonPage(id));
    const section = lesson(page, id);
    const controls = section.locator('.live-figure .controls');
    assert.ok(await controls.evaluate((c) => c.disabled), `${id}: can be moved before a guess`);
    await section.locator('[data-act=commit]').click();
    assert.match(await section.locator('.predict .outcome').innerText(), /Choose one/, id);
    const right = await section.locator('.option[data-right]').count();
    assert.equal(right, 1, `${id}: one right answer`);
    const wrong = await section.locator('.option').evaluateAll((all) =>
      all.findIndex((option) => !option.hasAttribute('data-right')),
    );
    await section.locator('.because input').fill('it looks that way');
    await commit(page, id, wrong);
    assert.ok(!(await controls.evaluate((c) => c.disabled)), `${id}: still locked`);
    assert.ok(await section.locator('[data-at=guess]').isHidden(), `${id}: answered before anything moved`);

    const before = { said: await said(page, id), drawing: await section.locator('[data-at=drawing]').innerHTML() };
    const sliders = section.locator('input[type=range]');
    const heard = new Set([before.said]);
    for (const group of await section.locator('.live-figure .stands').all()) {
      await group.locator('input[type=radio]').nth(1).check();
      await drawn(page);
      heard.add(await said(page, id));
    }
    for (let i = 0; i < (await sliders.count()); i += 1) {
      for (const share of [0.35, 1, 0.7]) {
        await slide(page, sliders.nth(i), share);
        heard.add(await said(page, id));
      }
      assert.match(await sliders.nth(i).getAttribute('aria-valuetext'), /\d/, id);
    }
    assert.ok(heard.size >= 3, `${id}: its words do not follow: ${[...heard].join(' | ')}`);
    assert.notEqual(await section.locator('[data-at=drawing]').innerHTML(), before.drawing, id);
    const guess = await section.locator('[data-at=guess]').innerText();
    assert.match(guess, /^You guessed: “.+” because it looks that way\. Look again\. ./u, id);
    const words = await said(page, id);
    await eventually(async () =>
      assert.equal(await section.locator('[data-at=told]').textContent(), words, `${id}: not read out`),
    );

    await section.locator('[data-act=reset]').click();
    assert.equal(await said(page, id), before.said, `${id}: does not go back to its start`);
  }
  clean();
});

test('every lesson: an exact field takes any unit and refuses in words', async (t) => {
  const { page, go, clean } = await open(t);
  for (const id of LESSONS) {
    await go(lessonPage(id));
    const section = lesson(page, id);
    await section.locator('[data-act=skip]').click();
    const exact = section.locator('[data-exact]').first();
    const slider = section.locator('input[type=range]').first();
    const most = await slider.evaluate((input) => input.max);
    await slide(page, slider, 1);
    const text = await exact.inputValue();
    await slide(page, slider, 0.2);
    await exact.fill(text);
    await exact.press('Tab');
    const reached = await slider.evaluate((input) => Number(input.value));
    assert.ok(Math.abs(reached - most) <= 0.01 * Math.abs(most), `${id}: ${text} → ${reached} of ${most}`);
    await exact.fill('rather a lot');
    await exact.press('Tab');
    const fault = section.locator('.turn .error').first();
    assert.ok(await fault.isVisible(), id);
    assert.ok((await fault.innerText()).length > 10, id);
    assert.equal(await exact.inputValue(), 'rather a lot', `${id}: what was typed is lost`);
    assert.equal(await exact.getAttribute('aria-invalid'), 'true', id);
    await slide(page, slider, 0.5);
    assert.ok(await fault.isHidden(), `${id}: the fault stays`);
  }
  clean();
});

test('every lesson: problems tell right from wrong and help with the step', async (t) => {
  const { page, go, clean } = await open(t);
  for (const id of LESSONS) {
    await go(lessonPage(id));
    for (const kind of ['faded', 'solo']) {
      const problem = lesson(page, id).locator(`.problem.${kind}`);
      const answer = problem.locator('.answer');
      const reply = problem.locator('.reply');
      await answer.fill('many');
      await problem.locator('[data-act=check]').click();
      assert.ok((await reply.innerText()).length > 10, `${id} ${kind}`);
      await answer.fill('0.000001');
      await answer.press('Enter');
      assert.match(await reply.innerText(), /\./, `${id} ${kind}`);
      assert.equal(await answer.getAttribute('aria-invalid'), 'true', `${id} ${kind}: takes anything`);
      assert.ok((await problem.locator('.hint').count()) >= 1, `${id} ${kind}`);
      const right = await solution(problem);
      await answer.fill(right);
      await answer.press('Enter');
      assert.match(await reply.innerText(), /^Right/, `${id} ${kind}: ${right}`);
      assert.ok(await problem.evaluate((p) => p.hasAttribute('data-solved')), `${id} ${kind}`);
      for (const near of await problem.locator('[data-near]').evaluateAll((all) => all.map((n) => n.textContent))) {
        assert.ok(near.length > 10, `${id} ${kind}`);
      }
    }
  }
  clean();
});

test('a number without its unit is told so', async (t) => {
  const { page, go, clean } = await open(t);
  const problem = lesson(page, 'grip').locator('.problem.faded');
  const pounds = Number((await solution(problem)).replace(/[^\d.]/g, ''));
  await problem.locator('.answer').fill((pounds * 0.00444822).toFixed(3));
  await problem.locator('.answer').press('Enter');
  assert.match(await problem.locator('.reply').innerText(), /right in kN.*read as lbf/);
  clean();
});

test('every lesson leads to the calculator with its joint', async (t) => {
  const { page, go, clean } = await open(t);
  for (const id of LESSONS) {
    await go(lessonPage(id));
    const link = lesson(page, id).locator('[data-at=joint]');
    const href = await link.getAttribute('href');
    assert.match(href, /^\.\.\/joint\.html#v1\/coupler\//, id);
    await link.click();
    await page.locator('[data-link=whole]').waitFor();
    assert.ok((await page.locator('#own-joint .verdict').count()) > 0, `${id}: no verdict`);
  }
  clean();
});

test('the numbers of worked examples follow the figure and the units', async (t) => {
  const { page, go, clean } = await open(t, { page: lessonPage('road') });
  const section = lesson(page, 'road');
  await section.locator('[data-act=skip]').click();
  const number = (name) => section.locator(`.worked [data-v=${name}]`).first().innerText();
  const before = await number('hardest');
  await slide(page, section.locator('input[type=range]').first(), 0.9);
  assert.notEqual(await number('hardest'), before);
  assert.match(await number('hardest'), /lbf$/);
  await page.locator('[data-act=units-metric]').click();
  await drawn(page);
  assert.match(await number('hardest'), /kN$/);
  assert.match(await section.locator('.problem.solo [data-v=tongue]').first().innerText(), /kN$/);
  // One choice for all pages: the other lessons and the calculator follow.
  await go(lessonPage('slip'));
  assert.equal(await page.locator('[data-act=units-metric]').getAttribute('aria-pressed'), 'true');
  await go('joint.html');
  assert.ok(await page.getByRole('radio', { name: /^metric/ }).isChecked());
  clean();
});

// What only the readers of one system write.
const US = /\d\s?(in|lbf|lb-ft|ksi|°F|lbf\/in)\b|grade \d|\d\/\d/;
const METRIC = /\d\s?(mm|kN|N·m|MPa|°C|kN\/mm)|class \d|\bM1[026]\b/;

test('every lesson: other units bring the other stock at the same steps, and nothing is lost', async (t) => {
  const { page, go, clean } = await open(t);
  const units = async (which) => {
    await page.locator(`[data-act=units-${which}]`).click();
    await drawn(page);
  };
  for (const id of LESSONS) {
    await go(lessonPage(id));
    await units('us');
    const section = lesson(page, id);
    await section.locator('.because input').fill('it looks that way');
    await commit(page, id, 1);
    const sliders = section.locator('input[type=range]');
    const stands = () =>
      sliders.evaluateAll((all) => all.map(({ min, max, value }) => (Number(value) - min) / (max - min)));
    const figure = () =>
      section.evaluate((section) => {
        const shown = '.live-figure :is(svg text, .said, .facts td, label), [data-v]';
        const fields = [...section.querySelectorAll('[data-exact]')].map((field) => field.value);
        return [...[...section.querySelectorAll(shown)].map((e) => e.textContent), ...fields].join('\n');
      });
    for (let i = 0; i < (await sliders.count()); i += 1) await slide(page, sliders.nth(i), i === 0 ? 0.6 : 1);
    const answer = section.locator('.problem.solo .answer');
    await answer.fill('5,630');
    await answer.press('Enter');
    const before = { stands: await stands(), figure: await figure(), said: await said(page, id) };
    assert.doesNotMatch(before.figure, METRIC, id);
    await units('metric');
    const other = await figure();
    assert.doesNotMatch(other, US, id);
    assert.match(other, METRIC, id);
    for (const [i, at] of (await stands()).entries()) {
      assert.ok(Math.abs(at - before.stands[i]) <= 0.05, `${id}: ${at} for ${before.stands[i]}`);
    }
    assert.equal(await answer.inputValue(), '5,630', id);
    assert.equal(await section.locator('.problem.solo .reply').innerText(), '', `${id}: an answer to other numbers`);
    assert.equal(await section.locator('form.predict[data-done] .option[data-mine]').count(), 1, id);
    assert.match(await section.locator('[data-at=guess]').innerText(), /it looks that way/, id);
    const right = await solution(section.locator('.problem.faded'));
    await section.locator('.problem.faded .answer').fill(right);
    await section.locator('.problem.faded .answer').press('Enter');
    assert.match(await section.locator('.problem.faded .reply').innerText(), /^Right/, `${id}: ${right}`);
    await units('us');
    assert.deepEqual(await stands(), before.stands, id);
    assert.equal(await figure(), before.figure, id);
    assert.equal(await said(page, id), before.said, id);
    assert.equal(await answer.inputValue(), '5,630', id);
  }
  clean();
});

test('what was typed exactly, or cannot be read, is there again after the units were changed', async (t) => {
  const { page, clean } = await open(t, { page: lessonPage('hollow') });
  const section = lesson(page, 'hollow');
  await section.locator('[data-act=skip]').click();
  const wall = section.locator('[data-exact=wall]');
  const units = (which) => page.locator(`[data-act=units-${which}]`).click();
  await wall.fill('0.133');
  await wall.press('Tab');
  await units('metric');
  assert.match(await wall.inputValue(), /^3\.5\s?mm$/);
  await units('us');
  assert.match(await wall.inputValue(), /^0\.133\s?in$/);
  await wall.fill('eleven gauge');
  await wall.press('Tab');
  await units('metric');
  assert.equal(await wall.inputValue(), 'eleven gauge');
  assert.equal(await wall.getAttribute('aria-invalid'), 'true');
  clean();
});

test('what is drawn can be dragged, by mouse and by finger', async (t) => {
  const { page, go, clean } = await open(t);
  const section = lesson(page, 'grip');
  await section.locator('[data-act=skip]').click();
  // The load is pulled sideways, to the right.
  const grip = section.locator('.p-load .grip, .grip').last();
  await grip.scrollIntoViewIfNeeded();
  const from = await grip.boundingBox();
  const slider = section.locator('input[type=range]').nth(1);
  const before = await slider.inputValue();
  const [x, y] = [from.x + from.width / 2, from.y + from.height / 2];
  await page.mouse.move(x, y);
  await page.mouse.down();
  await page.mouse.move(x + 30, y + 8, { steps: 5 });
  await page.mouse.up();
  await drawn(page);
  assert.notEqual(await slider.inputValue(), before);
  const held = await slider.inputValue();
  await page.mouse.move(x + 90, y);
  await drawn(page);
  assert.equal(await slider.inputValue(), held, 'it goes on after it was let go');
  clean();
});

test('a part lights up on drawing and plot together', async (t) => {
  const { page, go, clean } = await open(t);
  const figure = lesson(page, 'grip').locator('.live-figure');
  await figure.locator('[data-at=drawing] .p-clamp line').first().hover({ force: true });
  assert.ok((await figure.locator('[data-at=drawing] .p-clamp.hot').count()) > 0);
  assert.ok((await figure.locator('[data-at=plot] .p-clamp.hot').count()) > 0);
  clean();
});

test('a lesson can be done from the keyboard alone', async (t) => {
  const { page, go, clean } = await open(t);
  const [id] = LESSONS;
  await go(lessonPage(id));
  const section = lesson(page, id);
  await section.locator('form.predict input[type=radio]').first().focus();
  await page.keyboard.press('Escape');
  const slider = section.locator('input[type=range]').first();
  assert.ok(await slider.evaluate((s) => s === document.activeElement), 'the figure is not handed over');
  const before = await slider.inputValue();
  await page.keyboard.press('ArrowRight');
  await page.keyboard.press('PageUp');
  await drawn(page);
  assert.notEqual(await slider.inputValue(), before);
  // On to the last problem, every stop visible and with a ring.
  const seen = new Set();
  for (let i = 0; i < 60 && !seen.has(`${id}-solo-answer`); i += 1) {
    await page.keyboard.press('Tab');
    const stop = await page.evaluate(() => {
      const element = document.activeElement;
      // A choice shows its ring round the whole label.
      const style = getComputedStyle(element.closest('.kinds label') ?? element);
      return { id: element.id, ring: style.outlineStyle !== 'none' && parseFloat(style.outlineWidth) >= 2, name: element.outerHTML.slice(0, 80) };
    });
    assert.ok(stop.ring, `no focus ring on ${stop.name}`);
    seen.add(stop.id);
  }
  assert.ok(seen.has(`${id}-solo-answer`), [...seen].join(' '));
  await page.keyboard.type('1 mm');
  await page.keyboard.press('Enter');
  assert.ok((await section.locator('.problem.solo .reply').innerText()).length > 5);
  clean();
});

test('reads in full without script: text, figures, tables, replies, answers', async (t) => {
  const { page, go } = await open(t, { context: { javaScriptEnabled: false } });
  for (const id of LESSONS) {
    await go(lessonPage(id));
    const section = lesson(page, id);
    assert.equal(await section.locator('.live-figure .drawn svg').first().isVisible(), true, id);
    assert.ok((await section.locator('.predict .reply:visible').count()) >= 2, id);
    assert.ok(await section.locator('.controls').isHidden(), `${id}: controls that do nothing`);
    assert.ok((await section.locator('.solution').count()) === 2, id);
    assert.ok((await section.locator('.said').first().innerText()).length > 20, id);
    assert.ok((await section.locator('math').count()) > 0, `${id}: no formula`);
  }
});

for (const colorScheme of ['light', 'dark']) {
  test(`breaks no accessibility rule with everything open, ${colorScheme}`, async (t) => {
    const visit = await open(t, { context: { colorScheme, viewport: SIZES.phone } });
    const { page } = visit;
    for (const id of LESSONS) {
      await visit.go(lessonPage(id));
      await commit(page, id);
      await slide(page, lesson(page, id).locator('input[type=range]').first(), 0.6);
      await page.evaluate(() => document.querySelectorAll('details').forEach((d) => (d.open = true)));
      await visit.axe();
      await picture(page, `lesson-${id}-${colorScheme}`, lesson(page, id));
    }
    visit.clean();
  });
}

test('nothing is wider than the smallest phone, nor at four times the size', async (t) => {
  const { page, go, clean } = await open(t, { context: { viewport: SIZES.small } });
  for (const id of LESSONS) {
    await go(lessonPage(id));
    await commit(page, id);
    await page.evaluate(() => document.querySelectorAll('details').forEach((d) => (d.open = true)));
    const wide = await page.evaluate(() =>
      [...document.querySelectorAll('main *')]
        .filter((e) => !e.closest('svg') && !e.closest('details:not([open])') && e.getBoundingClientRect().right > innerWidth + 1)
        .map((e) => e.outerHTML.slice(0, 90)),
    );
    assert.deepEqual(wide, [], id);
    const small = await page.evaluate(() =>
      [...document.querySelectorAll('main :is(button, input, summary, a.button)')]
        .filter((e) => e.checkVisibility() && Math.min(e.getBoundingClientRect().height, e.getBoundingClientRect().width) < 20)
        .map((e) => e.outerHTML.slice(0, 90)),
    );
    assert.deepEqual(small, [], `${id}: too small for a finger`);
  }
  clean();
});

test('in forced colours every line of every figure stays visible', async (t) => {
  const { page, go, clean } = await open(t, { context: { forcedColors: 'active' } });
  for (const id of LESSONS) {
    await go(lessonPage(id));
    const { hidden, count } = await page.locator(`#${id} .live-figure`).evaluate((figure) => {
      const paper = getComputedStyle(document.body).backgroundColor;
      const marks = [...figure.querySelectorAll('.drawing :is(line, path, circle, rect):not(defs *)')];
      const hidden = marks
        .filter((mark) => {
          const { stroke, fill, strokeWidth } = getComputedStyle(mark);
          const drawn = stroke !== 'none' && stroke !== paper && parseFloat(strokeWidth) > 0;
          return !drawn && (fill === 'none' || fill === paper);
        })
        .map((mark) => mark.outerHTML.slice(0, 90));
      return { hidden, count: marks.length };
    });
    assert.ok(count > 10, `${id}: ${count} marks`);
    assert.deepEqual(hidden, [], id);
  }
  clean();
});

test('nothing moves by itself', async (t) => {
  const { page, go, clean } = await open(t, { context: { reducedMotion: 'reduce' } });
  for (const id of LESSONS) {
    await go(lessonPage(id));
    await commit(page, id);
    await slide(page, lesson(page, id).locator('input[type=range]').first(), 0.8);
    assert.equal(await page.evaluate(() => document.getAnimations().length), 0, id);
  }
  clean();
});

test('a step of any figure takes 8 ms of processor time or less, 19 times in 20', async (t) => {
  const { page, go, clean } = await open(t);
  for (const id of LESSONS) {
    await go(lessonPage(id));
    await commit(page, id);
    const times = await stepTimes(page, lesson(page, id).locator('input[type=range]').first(), 40);
    const p95 = quantile(times, 0.95);
    t.diagnostic(`${id}: 95th percentile ${p95.toFixed(1)} ms`);
    assert.ok(p95 <= 8, `${id}: ${p95} ms`);
  }
  clean();
});

test('the page does not move when the lessons come alive', async (t) => {
  const { page, go, clean } = await open(t, {
    context: { viewport: SIZES.phone },
    before: async (page) => {
      await page.addInitScript(() => {
        globalThis.shifts = [];
        new PerformanceObserver((list) => {
          for (const entry of list.getEntries()) if (!entry.hadRecentInput) globalThis.shifts.push(entry.value);
        }).observe({ type: 'layout-shift', buffered: true });
      });
    },
    address: '#grip',
  });
  await page.waitForTimeout(500);
  const shift = await page.evaluate(() => globalThis.shifts.reduce((a, b) => a + b, 0));
  assert.ok(shift <= 0.02, `layout shift ${shift}`);
  clean();
});

test('one lesson prints alone, without controls and answers', async (t) => {
  const { page, go, clean } = await open(t);
  const [id] = LESSONS;
  await go(lessonPage(id));
  await page.evaluate(() => {
    window.print = () => {
      globalThis.printed = document.documentElement.dataset.print;
    };
  });
  await lesson(page, id).locator('[data-act=print-lesson]').click();
  assert.equal(await page.evaluate(() => globalThis.printed), 'lesson');
  await page.emulateMedia({ media: 'print' });
  const sections = await page.locator('main > section:visible').evaluateAll((all) => all.map((s) => s.id));
  assert.deepEqual(sections, [id]);
  assert.ok(await lesson(page, id).locator('.controls').isHidden());
  assert.ok(await lesson(page, id).locator('.solution').first().isHidden());
  await page.pdf({ path: join(SHOTS, 'lesson.pdf'), format: 'A4', preferCSSPageSize: true });
  clean();
});
