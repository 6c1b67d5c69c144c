// Bench day: what is typed stays and is fitted; a file comes back whole; what cannot be is refused by name.

import assert from 'node:assert/strict';
import { readFile } from 'node:fs/promises';
import { test } from 'node:test';

import { eventually, open as openPage } from '../harness.mjs';

const open = (t, options = {}) => openPage(t, { page: 'bench.html', ...options });

const press = (page, name) => page.getByRole('button', { name, exact: true }).click();
const cell = (page, column, line) => page.getByRole('textbox', { name: `${column}, line ${line}`, exact: true });

test('the invented example is marked, fitted and plotted, with the line that does not fit', async (t) => {
  const visit = await open(t);
  const { page } = visit;
  await page.getByText('Nothing yet.').waitFor();
  await press(page, 'Open the invented example');
  await page.getByText('Invented readings').waitFor();
  await page.getByText('Line 5 took more torque than the others say.').waitFor();
  const rows = page.locator('.came-out tbody tr');
  assert.equal(await rows.count(), 4);
  for (const row of await rows.all()) {
    const [value, between] = [await row.locator('td').nth(0).textContent(), await row.locator('td').nth(1).textContent()];
    assert.match(value, /\d/);
    assert.match(between, /\d.* … .*\d/);
    assert.match(await row.locator('td').nth(2).textContent(), /^\d+(, \d+)*$/);
  }
  assert.equal(await page.locator('.plots svg').count(), 4);
  assert.ok((await page.locator('.plots svg').first().locator('circle.dot').count()) >= 5);
  for (const format of ['Letter', 'A4']) {
    const pdf = (await page.pdf({ format })).toString('latin1');
    const count = (pdf.match(/\/Type\s*\/Page[^s]/g) ?? []).length;
    t.diagnostic(`report: ${count} pages, ${format}`);
    assert.ok(count <= 5, `${count} pages of ${format}`);
  }
  // One press brings back what was here before.
  await press(page, 'Put back what was here');
  await page.getByText('Nothing yet.').waitFor();
  visit.clean();
});

test('what is typed is kept over reload, comes out as a file and back, and is never lost', async (t) => {
  const visit = await open(t);
  const { page } = visit;
  await page.locator('#piece-wall').fill('3/16');
  await page.locator('#piece-wall').blur();
  await cell(page, 'torque', 1).fill('8');
  await cell(page, 'torque', 1).blur();
  await cell(page, 'dent of one face, bolt tight', 1).fill('1/64"');
  await cell(page, 'dent of one face, bolt tight', 1).blur();
  await press(page, 'Add a line');
  await cell(page, 'torque', 5).fill('much');
  await cell(page, 'torque', 5).blur();
  await page.getByText('Line 5, torque: ').waitFor();
  const typed = async () => [
    await page.locator('#piece-wall').inputValue(),
    await cell(page, 'torque', 1).inputValue(),
    await cell(page, 'dent of one face, bolt tight', 1).inputValue(),
    await cell(page, 'torque', 5).inputValue(),
  ];
  const all = ['3/16 in', '8 lb-ft', '1/64"', 'much'];
  assert.deepEqual(await typed(), all);
  // A unit that was meant stays the same amount.
  await page.locator('#bench-units').selectOption('metric');
  assert.deepEqual(await typed(), all);
  await page.reload();
  await cell(page, 'torque', 5).waitFor();
  assert.deepEqual(await typed(), all);

  const [saved] = await Promise.all([page.waitForEvent('download'), press(page, 'Save as CSV')]);
  const text = await readFile(await saved.path(), 'utf8');
  await press(page, 'Clear all readings');
  await eventually(async () => assert.equal(await page.locator('.readings tbody tr').count(), 4));
  await press(page, 'Put back what was here');
  await eventually(async () => assert.deepEqual(await typed(), all));
  await page.getByRole('button', { name: 'Remove line 1' }).click();
  await eventually(async () => assert.equal(await page.locator('.readings tbody tr').count(), 4));
  const pick = (body) =>
    page.locator('input[type=file]').setInputFiles({ name: 'bench.csv', mimeType: 'text/csv', buffer: Buffer.from(body) });
  await pick('a,b\n1,2\n');
  await page.getByRole('alert').filter({ hasText: 'this page did not save it' }).waitFor();
  await pick(text.replace('bare,dry', 'bore,dry'));
  await page.getByRole('alert').filter({ hasText: /line \d+ of it is not understood/ }).waitFor();
  assert.equal(await page.locator('.readings tbody tr').count(), 4, 'nothing was changed');
  await pick(text);
  await eventually(async () => assert.deepEqual(await typed(), all));
  assert.equal(await page.getByRole('alert').filter({ hasText: /./ }).count(), 0);
  visit.clean();
});

test('the torque to stop at follows the bolt, and pieces that cannot be are refused by name', async (t) => {
  const visit = await open(t);
  const { page } = visit;
  const stop = page.locator('.stop');
  const before = await stop.innerText();
  assert.match(before, /Stop at \d+(\.\d+)?\slb-ft dry and at \d+(\.\d+)?\slb-ft waxed/);
  await page.locator('#choice-bolt').selectOption('unc-3.8');
  await eventually(async () => assert.notEqual(await stop.innerText(), before));
  for (const [typed, said] of [
    ['9 in', /^Wall: /],
    ['thin', /^Wall: /],
  ]) {
    await page.locator('#piece-wall').fill(typed);
    await page.locator('#piece-wall').blur();
    await eventually(async () => assert.match(await stop.innerText(), said));
    assert.equal(await page.locator('#piece-wall').inputValue(), typed);
  }
  visit.clean();
});

for (const colorScheme of ['light', 'dark']) {
  test(`breaks no accessibility rule and is no wider than a phone, ${colorScheme}`, async (t) => {
    const visit = await open(t, { context: { viewport: { width: 360, height: 740 }, colorScheme } });
    const { page } = visit;
    await visit.axe();
    await press(page, 'Open the invented example');
    await page.getByText('Line 5 took').waitFor();
    await visit.axe();
    const wide = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
    assert.ok(wide <= 0, `${wide} px too wide`);
    visit.clean();
  });
}
