// Nothing typed is lost: not by other pages, reload, Back, a link, an anchor, or a browser that keeps nothing.

import assert from 'node:assert/strict';
import { test } from 'node:test';

import { eventually, JOINT, open as openPage, toStep } from '../harness.mjs';

const open = (t, options = {}) => openPage(t, { page: JOINT, ...options });
const OTHER = '#v1/coupler/u-us/k-b4ye';
const words = async (locator) => (await locator.innerText()).replace(/[\u00a0\u202f]/g, ' ');
const value = (page, name) => page.locator(`#${name}`).inputValue();
const live = (page) => page.locator('#own-joint[data-live]').waitFor();

/** An own joint: fields, text that cannot be read, a reading, a rate. */
async function enter(page) {
  await toStep(page, 3);
  await page.locator('#tube_width_mm').fill('2 1/2');
  await page.locator('#tube_depth_mm').fill('2 1/2');
  await page.locator('#tube_material').selectOption('a500-b');
  await page.locator('#tube_wall_mm').fill('3/16');
  await page.locator('#bolt').selectOption('unc-3.8');
  await page.locator('#bolt_grade').selectOption('sae-8');
  await toStep(page, 2);
  await page.locator('[data-field=found_hollow]').getByText('yes', { exact: true }).click();
  await page.getByLabel('Narrower at the bolt by').fill('0.05 in');
  await toStep(page, 5);
  await page.getByText('Your own rates').click();
  await page.getByLabel('an hour of labor').fill('120');
}

async function isThere(page, how) {
  await live(page);
  assert.equal(await value(page, 'tube_width_mm'), '2 1/2', how);
  assert.equal(await value(page, 'tube_material'), 'a500-b', how);
  assert.equal(await value(page, 'tube_wall_mm'), '3/16', how);
  assert.equal(await value(page, 'bolt'), 'unc-3.8', how);
  assert.equal(await value(page, 'trace-dent'), '0.05 in', how);
  assert.match(await words(page.locator('.so-far')), /Do not tow/, `${how}: the hollow is forgotten`);
  assert.equal(await value(page, 'rate-0'), '120', how);
  assert.equal(await page.locator('[data-link]').count(), 0, `${how}: called a link`);
}

test('stays over other pages, reload and Back', async (t) => {
  const visit = await open(t);
  const { page } = visit;
  await enter(page);
  // At once, before the address has followed.
  await page.getByRole('link', { name: 'Lessons' }).first().click();
  await page.waitForURL('**/lessons/index.html');
  await page.goBack();
  await isThere(page, 'Back');
  assert.match(page.url(), /#v1\/coupler\/.*b-2\.5in/);
  await page.reload();
  await isThere(page, 'reload');
  await visit.go('care.html');
  await page.getByRole('link', { name: 'Your joint' }).first().click();
  await isThere(page, 'by the contents');
  await eventually(async () => assert.match(page.url(), /#v1\/coupler\/.*b-2\.5in/));
  await visit.go('words.html');
  await visit.go(JOINT);
  await isThere(page, 'opened anew');
  visit.clean();
});

test('what cannot be read stays too, and is still named', async (t) => {
  const visit = await open(t);
  const { page } = visit;
  await toStep(page, 3);
  await page.locator('#tube_width_mm').fill('2 1/2');
  await page.locator('#tube_wall_mm').fill('3 lb');
  for (const again of [() => page.reload(), () => visit.go('index.html').then(() => visit.go(JOINT))]) {
    await again();
    await live(page);
    assert.equal(await value(page, 'tube_width_mm'), '2 1/2');
    assert.equal(await value(page, 'tube_wall_mm'), '3 lb');
    await toStep(page, 3);
    assert.match(await words(page.locator('#tube_wall_mm-error')), /Wall thickness/);
  }
  visit.clean();
});

test('an anchor of the page leads there and leaves the joint in the address', async (t) => {
  const visit = await open(t, { address: OTHER });
  const { page } = visit;
  await page.locator('.stuck a').click();
  assert.match(page.url(), /#v1\/coupler\/u-us\/k-b4ye$/);
  assert.equal(await page.evaluate(() => document.activeElement.id), 'verdict-title');
  await page.locator('.skip').focus();
  await page.keyboard.press('Enter');
  await eventually(async () => assert.equal(await page.evaluate(() => document.activeElement.id), 'main'));
  assert.match(page.url(), /#v1\/coupler\/u-us\/k-b4ye$/);
  visit.clean();
});

test('a link wins, and takes the place of the own joint only once it is changed', async (t) => {
  const visit = await open(t);
  const { page } = visit;
  await enter(page);
  await visit.go('index.html');
  await visit.go(JOINT + OTHER);
  await page.locator('[data-link=whole]').waitFor();
  assert.equal(await value(page, 'tube_width_mm'), '2');
  // Nothing was changed: the own joint is still kept, on this page and for the next visit.
  await page.reload();
  await page.locator('[data-link=whole]').waitFor();
  assert.equal(await value(page, 'tube_width_mm'), '2');
  await page.getByRole('button', { name: 'Back to my own joint' }).click();
  await isThere(page, 'own joint');
  await visit.go('index.html');
  await visit.go(JOINT + OTHER);
  await page.locator('[data-link=whole]').waitFor();
  await toStep(page, 3);
  await page.locator('#tube_width_mm').fill('4');
  await visit.go('index.html');
  await visit.go(JOINT);
  await live(page);
  assert.equal(await value(page, 'tube_width_mm'), '4', 'changed, it is the own joint');
  visit.clean();
});

test('neither an example nor a damaged link takes the place of the own joint', async (t) => {
  const visit = await open(t);
  const { page } = visit;
  await enter(page);
  await toStep(page, 1);
  await page.getByText('Look at a made-up joint first').click();
  await page.getByRole('button', { name: 'Small boat trailer, steel' }).click();
  await visit.go('index.html');
  await visit.go(JOINT);
  await isThere(page, 'after an example');
  await visit.go('index.html');
  await visit.go(`${JOINT}#v1/coupler/u-us/b-3in/k-zzzz`);
  await page.locator('[data-link=damaged]').waitFor();
  assert.equal(await value(page, 'tube_width_mm'), '2 1/2');
  await visit.go('index.html');
  await visit.go(JOINT);
  await isThere(page, 'after a damaged link');
  visit.clean();
});

test('one press forgets it all, and one brings it back', async (t) => {
  const visit = await open(t);
  const { page } = visit;
  await enter(page);
  await page.getByRole('button', { name: 'Forget it and start over' }).click();
  assert.equal(await value(page, 'tube_width_mm'), '');
  assert.equal(await value(page, 'trace-dent'), '');
  const kept = () => page.evaluate(() => Object.keys(localStorage).filter((key) => /joint|traces|rates/.test(key)));
  assert.deepEqual(await kept(), []);
  await page.getByRole('button', { name: 'Bring it back' }).click();
  await isThere(page, 'brought back');
  await page.getByRole('button', { name: 'Forget it and start over' }).click();
  await visit.go('index.html');
  await visit.go(JOINT);
  await live(page);
  assert.equal(await value(page, 'tube_width_mm'), '');
  visit.clean();
});

test('a browser that keeps nothing is told of, and the address still holds the joint', async (t) => {
  for (const refuse of [
    // Storage that throws when it is touched, and storage that is full.
    () => Object.defineProperty(window, 'localStorage', { get: () => { throw new DOMException('no', 'SecurityError'); } }),
    () => { Storage.prototype.setItem = () => { throw new DOMException('full', 'QuotaExceededError'); }; },
  ]) {
    const visit = await open(t, { before: (page) => page.addInitScript(refuse) });
    const { page } = visit;
    assert.match(await words(page.locator('.keeping')), /keeps nothing.*Copy the link/);
    await toStep(page, 3);
    await page.locator('#tube_width_mm').fill('2 1/2');
    await page.waitForURL((url) => url.hash.includes('b-2.5in'));
    await page.getByRole('link', { name: 'Lessons' }).first().click();
    await page.waitForURL('**/lessons/index.html');
    await page.goBack();
    await live(page);
    assert.equal(await value(page, 'tube_width_mm'), '2.5');
    await page.reload();
    await live(page);
    assert.equal(await value(page, 'tube_width_mm'), '2.5');
    visit.clean();
  }
});

test('light or dark goes along to the other pages', async (t) => {
  const visit = await open(t, { context: { colorScheme: 'light' } });
  const { page } = visit;
  const ground = () => page.evaluate(() => getComputedStyle(document.body).backgroundColor);
  const light = await ground();
  await page.getByLabel('Light or dark').selectOption('dark');
  for (const name of ['care.html', 'lessons/grip.html', JOINT]) {
    await visit.go(name);
    assert.notEqual(await ground(), light, name);
  }
  assert.equal(await page.getByLabel('Light or dark').inputValue(), 'dark');
  visit.clean();
});
