// What a joint leaves on paper and as a file: each paper prints alone, what is typed stays, a file comes back whole, and
// nothing is made from a part of a joint.

import assert from 'node:assert/strict';
import { readFile } from 'node:fs/promises';
import { test } from 'node:test';

import { eventually, open as openPage } from '../harness.mjs';

const PAGE = 'paper.html';
const open = (t, options = {}) => openPage(t, { page: PAGE, ...options });

/** A joint of the corpus of links. */
async function link(name) {
  const text = await readFile(new URL(`../../links/v1/${name}.txt`, import.meta.url), 'utf8');
  return text.split('\n', 1)[0].trim();
}

/** A tube as it was found, and with a welded sleeve. */
const REPAIR = `#${await link('default-us')}+${await link('welded-sleeve-default-width-in-inches')}`;

const choose = (page, name) => page.getByRole('radio', { name, exact: true }).check({ force: true });

/** Pages that the browser's own printing makes. */
async function pages(page, format) {
  const pdf = (await page.pdf({ format })).toString('latin1');
  return (pdf.match(/\/Type\s*\/Page[^s]/g) ?? []).length;
}

test('each paper prints alone: the sheet on two pages, the page for the owner on one', async (t) => {
  const visit = await open(t, { address: REPAIR });
  const { page } = visit;
  for (const [name, heading, most] of [
    ['Work sheet', 'Work sheet', 2],
    ['For the owner', 'What was done on your trailer', 1],
    ['Record', 'Record', 2],
    ['Picture', 'Picture', 1],
  ]) {
    await choose(page, name);
    await page.locator('.paper').getByRole('heading', { name: heading, level: 2 }).waitFor();
    for (const format of ['Letter', 'A4']) {
      const count = await pages(page, format);
      t.diagnostic(`${name}: ${count} pages, ${format}`);
      assert.ok(count <= most, `${name}: ${count} pages of ${format}`);
    }
  }
  visit.clean();
});

test('the record stays over reload, and its looks follow the date', async (t) => {
  const visit = await open(t, { address: REPAIR });
  const { page } = visit;
  await choose(page, 'Record');
  await page.locator('#record-date').fill('2026-11-30');
  await page.locator('#record-by').fill('A. Made-Up');
  await page.locator('#record-torque-1').fill('75 lb-ft');
  await page.locator('#record-torque-1').blur();
  await page.getByRole('rowheader', { name: '2027-02-28' }).waitFor();
  await page.reload();
  await choose(page, 'Record');
  assert.equal(await page.locator('#record-torque-1').inputValue(), '75 lb-ft');
  await choose(page, 'For the owner');
  await page.getByText('Done on 2026-11-30 by A. Made-Up.').waitFor();
  // Another joint has a record of its own, and this one is still there afterwards.
  await visit.go(`${PAGE}#${await link('welded-sleeve-default-width-in-inches')}`);
  await choose(page, 'Record');
  assert.equal(await page.locator('#record-torque-1').inputValue(), '');
  await page.goBack();
  await choose(page, 'Record');
  await eventually(async () => assert.equal(await page.locator('#record-torque-1').inputValue(), '75 lb-ft'));
  visit.clean();
});

test('a file brings joint, repair and record back; what is no such file is refused with its reason', async (t) => {
  const visit = await open(t, { address: REPAIR });
  const { page } = visit;
  await choose(page, 'Record');
  await page.locator('#record-by').fill('A. Made-Up');
  await page.locator('#record-by').blur();
  const [saved] = await Promise.all([page.waitForEvent('download'), page.getByRole('button', { name: 'Save as a file' }).click()]);
  const text = await readFile(await saved.path(), 'utf8');
  assert.equal(JSON.parse(text).record.by, 'A. Made-Up');
  const pick = (body) =>
    page.locator('input[type=file]').setInputFiles({ name: 'joint.json', mimeType: 'application/json', buffer: Buffer.from(body) });
  const refused = (why) => page.getByRole('alert').filter({ hasText: why }).waitFor();

  await pick('{"clampwright": 1, "joint"');
  await refused(/not a file of this page/);
  await pick('{"other": 1}');
  await refused(/there is no joint in it/);
  await pick(text.replace('"clampwright": 1', '"clampwright": 2'));
  await refused(/newer version/);
  await pick(text.replace('/u-us', '/u-us/b-3in'));
  await refused(/damaged/);
  await pick('x'.repeat(70_000));
  await refused(/too large/);
  assert.equal(await page.locator('#record-by').inputValue(), 'A. Made-Up', 'what was here is still here');

  await page.getByRole('button', { name: 'Clear this record' }).click();
  await eventually(async () => assert.equal(await page.locator('#record-by').inputValue(), ''));
  await page.evaluate(() => (location.hash = ''));
  await page.getByText('There is no joint here yet.').waitFor();
  await pick(text);
  await page.locator('#record-by').waitFor();
  await eventually(async () => assert.equal(await page.locator('#record-by').inputValue(), 'A. Made-Up'));
  assert.equal(new URL(page.url()).hash, REPAIR);
  visit.clean();
});

test('the picture is saved as PNG and SVG, with drawing, answer and address', async (t) => {
  const visit = await open(t, { address: REPAIR });
  const { page } = visit;
  await choose(page, 'Picture');
  await eventually(async () => assert.ok(await page.locator('.paper img.whole').evaluate((img) => img.complete && img.naturalWidth > 0)));
  const save = async (name) => {
    const [file] = await Promise.all([page.waitForEvent('download'), page.getByRole('button', { name }).click()]);
    return readFile(await file.path());
  };
  const svg = (await save('Save as SVG')).toString();
  assert.match(svg, /^<svg xmlns/);
  assert.match(svg, /joint\.html#v1/);
  const png = await save('Save as PNG');
  assert.equal(png.subarray(1, 4).toString(), 'PNG');
  assert.equal(png.readUInt32BE(16), 1600);
  visit.clean();
});

test('nothing is made from a part of a joint', async (t) => {
  const visit = await open(t, { address: REPAIR.slice(0, -2) });
  const { page } = visit;
  await page.getByText('This link holds only part of a joint').waitFor();
  assert.equal(await page.locator('.paper table').count(), 0);
  visit.clean();
});

for (const colorScheme of ['light', 'dark']) {
  test(`no paper breaks an accessibility rule or is wider than a phone, ${colorScheme}`, async (t) => {
    const visit = await open(t, { address: REPAIR, context: { viewport: { width: 360, height: 740 }, colorScheme } });
    const { page } = visit;
    for (const name of ['Work sheet', 'For the owner', 'Record', 'Picture']) {
      await choose(page, name);
      await visit.axe();
      const wide = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
      assert.ok(wide <= 0, `${name}: ${wide} px too wide`);
    }
    visit.clean();
  });
}
