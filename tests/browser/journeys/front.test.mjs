// The front page: three figures that follow at once, and a check of five measurements.

import assert from 'node:assert/strict';
import { test } from 'node:test';

import { eventually, open } from '../harness.mjs';

const words = async (locator) => (await locator.innerText()).replace(/[\u00a0\u202f]/g, ' ');

/** The short check, asked for. */
async function shortCheck(page) {
  await page.getByRole('button', { name: 'Check it here' }).click();
  await page.locator('#short-check[data-live]').waitFor();
  return page.locator('#short-check');
}

test('three figures move without a guess before', async (t) => {
  const { page, clean } = await open(t);
  for (const id of ['spring', 'slip']) {
    const section = page.locator(`section[data-lesson=${id}]`);
    const before = await words(section.locator('[data-at=said]'));
    const slider = section.locator('input[type=range]').first();
    assert.ok(await slider.isEnabled(), id);
    await slider.evaluate((input) => {
      input.value = input.max;
      input.dispatchEvent(new Event('input', { bubbles: true }));
    });
    await eventually(async () => assert.notEqual(await words(section.locator('[data-at=said]')), before, id));
    assert.ok(await section.locator('[data-at=guess]').isHidden(), id);
  }
  assert.ok(await page.locator('#opening-turn').isEnabled());
  clean();
});

test('five measurements give one line, and the way to all of it', async (t) => {
  const asked = [];
  const visit = await open(t, { change: (path) => void asked.push(path) });
  const { page } = visit;
  assert.ok(!asked.some((path) => /joint-.*wasm/.test(path)), 'nobody asked for it yet');
  const check = await shortCheck(page);
  assert.equal(await page.evaluate(() => document.activeElement.id), 'tube_width_mm', 'the first field is written in at once');
  assert.equal(await check.locator('.verdict').count(), 0, 'no verdict of an example');
  await check.locator('#tube_width_mm').fill('3');
  await check.locator('#tube_wall_mm').fill('much');
  assert.match(await words(check.locator('.short')), /Wall thickness/);
  await check.locator('#tube_wall_mm').fill('1/8');
  // An answer to three of five would be that of another joint.
  assert.match(await words(check.locator('.short')), /No answer yet: 3/);
  assert.equal(await check.locator('.verdict').count(), 0);
  await check.locator('#tube_depth_mm').fill('3');
  await check.locator('#bolt-find').fill('1/2');
  await check.locator('.marks').getByText('3 radial lines').click();
  assert.match(await words(check.locator('.short')), /does not hold.*Assumed for the rest/s);
  await check.getByRole('link').click();
  await page.waitForURL(/joint\.html#v1\/coupler\//);
  await page.locator('html[data-ready]').waitFor({ state: 'attached' });
  assert.equal(await page.locator('#tube_width_mm').inputValue(), '3');
  assert.equal(await page.locator('#tube_wall_mm').inputValue(), '1/8', 'as it was typed');
  assert.equal(await page.locator('[data-link]').count(), 0, 'it is the own joint, no link that was sent');
  visit.clean();
});

test('the short check breaks no accessibility rule and fits a phone', async (t) => {
  for (const colorScheme of ['light', 'dark']) {
    const visit = await open(t, { context: { viewport: { width: 360, height: 740 }, colorScheme } });
    const check = await shortCheck(visit.page);
    await check.locator('#tube_width_mm').fill('3');
    await visit.axe();
    const wide = await visit.page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
    assert.ok(wide <= 0, `${wide} px too wide`);
    await visit.shot(`front-checked-${colorScheme}`);
    visit.clean();
  }
});

test('says so when the check cannot be loaded', async (t) => {
  const visit = await open(t, { change: (path) => /joint-.*\.wasm$/.test(path) && { status: 404 } });
  await visit.page.getByRole('button', { name: 'Check it here' }).click();
  await visit.page.locator('html[data-dead=missing]').waitFor({ state: 'attached' });
  assert.match(await words(visit.page.locator('#trouble')), /not on the server/);
  visit.expect(/404|missing/);
  visit.clean();
});
