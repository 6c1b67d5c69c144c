// What an old joint tells: a dent, an oval hole, a wrench that stopped.

import assert from 'node:assert/strict';
import { test } from 'node:test';

import { eventually, JOINT, open as openPage, toStep } from '../harness.mjs';

const open = (t, options = {}) => openPage(t, { page: JOINT, ...options });

const words = async (locator) => (await locator.innerText()).replace(/[\u00a0\u202f]/g, ' ');
/** Says yes to a question of the second step. */
async function found(page, ...names) {
  await toStep(page, 2);
  for (const name of names) await page.locator(`[data-field=found_${name}]`).getByText('yes', { exact: true }).click();
}
const told = (page) => page.locator('.traces .outcomes');

test('works back from what was measured to what happened', async (t) => {
  const { page, clean } = await open(t);
  assert.equal(await told(page).count(), 0, 'nothing is said before anything was measured');
  await found(page, 'hollow', 'spin');
  await page.getByLabel('Narrower at the bolt by').fill('0.05');
  const dent = await words(told(page));
  const [, clamp, low, high] = /about (\d+) lbf; .* from (\d+) lbf to (\d+) lbf/.exec(dent).map(Number);
  assert.ok(low < clamp && clamp < high, dent);
  // A deeper dent took more.
  await page.getByLabel('Narrower at the bolt by').fill('0.1');
  const deeper = Number(/about (\d+) lbf/.exec(await words(told(page)))[1]);
  assert.ok(deeper > clamp, `${deeper} after ${clamp}`);
  await page.getByLabel('The torque stopped rising at').fill('25 ft lb');
  assert.match(await words(told(page)), /nut factor was between/);
  clean();
});

test('an oval hole says stop', async (t) => {
  const { page, clean } = await open(t);
  await found(page, 'oval');
  await page.getByLabel('Hole, the longest way').fill('5/8');
  assert.match(await words(told(page)), /give both/);
  await page.getByLabel('Hole, the shortest way').fill('9/16');
  assert.match(await words(told(page)), /has slipped: the hole is longer by 1\/16 in.*do not tow/s);
  // Round again: nothing has slipped.
  await page.getByLabel('Hole, the longest way').fill('9/16');
  assert.match(await words(told(page)), /still round/);
  assert.doesNotMatch(await words(told(page)), /do not tow/);
  clean();
});

test('what cannot be is named with what is taken, and stays as typed', async (t) => {
  const { page, clean } = await open(t);
  await found(page, 'hollow');
  const dent = page.getByLabel('Narrower at the bolt by');
  for (const [text, said] of [
    ['3 lb', /Narrower at the bolt by/],
    ['9 in', /9 in.*0 in to 2 in/],
    ['-1', /0 in/],
  ]) {
    await dent.fill(text);
    const error = page.locator('#trace-dent-error');
    assert.match(await words(error), said);
    assert.equal(await dent.inputValue(), text);
    assert.equal(await dent.getAttribute('aria-invalid'), 'true');
    assert.equal(await told(page).count(), 0, text);
  }
  await dent.fill('');
  assert.ok(await page.locator('#trace-dent-error').isHidden());
  clean();
});

test('a bare number keeps the unit that it was typed in', async (t) => {
  const { page, clean } = await open(t);
  await found(page, 'hollow');
  await page.getByLabel('Narrower at the bolt by').fill('0.05');
  const before = await words(told(page));
  assert.match(before, /A dent of 0\.05 in/);
  await page.getByLabel('metric: mm, kN').check();
  assert.match(await words(told(page)), /A dent of 1\.27 mm/);
  assert.equal(await words(page.locator('.traces .field:visible .unit').first()), 'in');
  clean();
});
