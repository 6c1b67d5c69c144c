// A fabricator's way: compare repairs, open a work sheet, put the repair in, print it; and the same from
// another page's script.

import assert from 'node:assert/strict';
import { test } from 'node:test';

import { eventually, five, JOINT, open as openPage, toStep, processorClock } from '../harness.mjs';

const open = (t, options = {}) => openPage(t, { page: JOINT, ...options });

/** The default joint, measured, with all of its repairs shown. */
async function repairs(page, material) {
  await five(page);
  if (material) await page.locator('#tube_material').selectOption(material);
  await toStep(page, 5);
  await rows(page).first().waitFor();
  const all = page.getByRole('button', { name: /^Show all/ });
  if (await all.count()) await all.click();
}

/** The words of an element, with ordinary blanks. */
const words = async (locator) => (await locator.innerText()).replace(/[\u00a0\u202f]/g, ' ');

const rows = (page) => page.locator('.repair-table > tbody > tr');

/** The sheet of a repair, on its own page. */
async function sheetOf(page, name) {
  await page.getByRole('link', { name }).first().click();
  const sheet = page.locator('.paper');
  await sheet.getByRole('table', { name: 'Passes of the wrench' }).waitFor();
  return sheet;
}

test('a work sheet says what to cut, drill and tighten, and what to take care of', async (t) => {
  const visit = await open(t);
  const { page } = visit;
  // In steel a welded sleeve is among the repairs.
  await repairs(page, 'a500-b');
  await page.getByRole('rowheader', { name: /Sleeve through both faces/ }).first().waitFor();
  const cost = await words(rows(page).first().locator('[data-name="cost"]'));
  const sheet = await sheetOf(page, /^Work sheet: Sleeve through both faces/);
  const cut = await words(sheet.getByRole('table', { name: 'To cut' }));
  assert.match(cut, /\d × sleeve/);
  assert.match(cut, /\b3 in \(\+/, 'as long as the tube is deep');
  const holes = await words(sheet.getByRole('table', { name: 'Holes' }));
  assert.match(holes, /[46] in walls of the tube/);
  assert.match(holes, /in or \d+(\.\d+)? mm/, 'a drill of either list');
  const rounds = sheet.getByRole('table', { name: 'Passes of the wrench' });
  assert.equal(await rounds.locator('tbody tr').count(), 4);
  assert.match(await words(rounds), /snug.*lb-ft/s);
  assert.match(await words(sheet), /flush with the outside of the tube, 3 in apart/);
  assert.match(await words(sheet), /Order of the bolts.*\d, \d/s);
  assert.match(await words(sheet), /50 to 100 miles/);
  assert.match(await words(sheet), /Local codes/);
  assert.match(await words(sheet), /Costs are in USD, with prices and times of 20\d\d-\d\d/);
  assert.match(await words(sheet), /draw a paint mark/);
  assert.match(await words(sheet), /Plain hex nuts/);
  const total = await words(sheet.getByRole('table', { name: /Material and time/ }).locator('tr').last());
  assert.match(total, /together/);
  assert.match(cost, /^\d+ USD$/, 'money has a name');
  assert.ok(Number(total.match(/(\d+)(?: USD)?$/)[1]) >= parseFloat(cost), 'the first row is the cheapest');
  await page.goBack();
  await page.locator('html[data-ready]').waitFor({ state: 'attached' });
  await page.getByLabel('metric: mm, kN').check();
  await rows(page).first().waitFor();
  assert.match(await words((await sheetOf(page, /^Work sheet: Sleeve through both faces/)).getByRole('table', { name: 'To cut' })), /76\.2 mm/);
  visit.clean();
});

test('where nothing holds, the page says what comes nearest and what stands against it', async (t) => {
  const { page, clean } = await open(t);
  await repairs(page);
  await toStep(page, 3);
  await page.locator('#group-trailer > summary').click();
  await page.locator('#trailer_mass_kg').fill('4500 kg');
  await toStep(page, 5);
  const told = page.locator('.repairs:not([data-stale]) p', { hasText: 'What comes nearest' });
  await told.waitFor();
  assert.match(await words(told), /What comes nearest: .+ \(.+\)\. What still rules it out: .+\? It uses \d[\d.,]* % of its capacity\. ./s);
  clean();
});

test('the sheet of a repair that was put in has its door as long as the repair stands', async (t) => {
  const visit = await open(t);
  const { page } = visit;
  await repairs(page);
  await rows(page).first().getByRole('button', { name: /^Try/ }).click();
  const door = page.getByRole('link', { name: 'Work sheet', exact: true });
  await door.click();
  // From the joint as it was, though the form now holds the repaired one.
  const chosen = page.locator('.paper');
  await chosen.getByRole('table', { name: 'To cut' }).waitFor();
  assert.match(await words(chosen), /\d × (sleeve|block)/);
  await visit.shot('work-sheet');
  await page.goBack();
  await page.locator('html[data-ready]').waitFor({ state: 'attached' });
  await page.getByRole('button', { name: /^Undo/ }).click();
  await eventually(async () => assert.equal(await door.count(), 0));
  visit.clean();
});

test('another script gets repairs and work sheets, within a fifth of a second', async (t) => {
  const visit = await open(t);
  const clock = await processorClock(visit.page);
  const calc = await visit.page.evaluateHandle(async () => {
    const calc = await import('./api/clampwright.js');
    await calc.init();
    return calc;
  });
  for (const change of [
    {},
    { tube_material: 'a500-b' },
    { tube_material: 'a500-b', bolt: 'm10', bolt_grade: 'iso-8.8', tube_depth_mm: 50.8, tube_width_mm: 76.2 },
  ]) {
    const times = [];
    for (let i = 0; i < 7; i += 1) {
      const { all: before } = await clock();
      await calc.evaluate((calc, change) => void calc.repairs({ ...calc.defaults(), ...change }), change);
      const { all: after } = await clock();
      times.push(after - before);
    }
    const { tried, best, sheet } = await calc.evaluate((calc, change) => {
      const joint = { ...calc.defaults(), ...change };
      const { tried, list, cheapest } = calc.repairs(joint);
      const best = list[cheapest];
      return { tried, best, sheet: best && calc.workSheet(joint, best.input, { hour: 60 }) };
    }, change);
    // What else the machine does only ever adds.
    const time = Math.min(...times);
    t.diagnostic(`${tried} repairs in ${time.toFixed(0)} ms of processor time, with their JSON`);
    assert.ok(tried >= 2000);
    assert.equal(sheet.kind, best.kind);
    assert.ok(sheet.cautions.length > 2);
    assert.equal(sheet.tightening.torque.unit, 'N·m');
    assert.ok(sheet.work.cost <= best.work.cost, 'at 60 an hour in place of 90');
    assert.ok(time < 200, `${time} ms`);
  }
  const { refused, rates } = await calc.evaluate((calc) => {
    const thrown = (call) => {
      try {
        call();
      } catch ({ name, errors }) {
        return { name, ...errors[0] };
      }
    };
    return {
      refused: thrown(() => calc.workSheet({ tube_wall_mm: 900 }, {})),
      rates: thrown(() => calc.repairs({}, { hour: 'much' })),
    };
  });
  assert.equal(refused.name, 'CalculationError');
  assert.equal(refused.field, 'tube_wall_mm');
  assert.equal(rates.code, 'not-rates');
  visit.clean();
});
