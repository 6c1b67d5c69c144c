// Hand-outs, their answers, checking and the quiz: from a class word alone, on paper two sides a student, nothing sent.

import assert from 'node:assert/strict';
import { readFile } from 'node:fs/promises';
import { test } from 'node:test';

import { eventually, open as openPage } from '../harness.mjs';

const PAGE = 'handout.html';
const open = (t, options = {}) => openPage(t, { page: PAGE, ...options });

const choose = (page, name) => page.getByRole('radio', { name, exact: true }).check({ force: true });
const text = async (locator) => (await locator.innerText()).replace(/\s+/g, ' ');

/** Pages that the browser's own printing makes. */
async function pages(page, format) {
  const pdf = (await page.pdf({ format })).toString('latin1');
  return (pdf.match(/\/Type\s*\/Page[^s]/g) ?? []).length;
}

async function fill(page, { word = 'BLUE 7', students = '3', level = 'easy', units = 'us' } = {}) {
  await page.locator('#class-word').fill(word);
  await page.locator('#class-students').fill(students);
  await page.locator('#class-level').selectOption(level);
  await page.locator('#class-units').selectOption(units);
}

test('every student gets two sides, at every level, in both units, on both papers', async (t) => {
  const visit = await open(t);
  const { page } = visit;
  for (const units of ['us', 'metric']) {
    for (const level of ['easy', 'middle', 'hard']) {
      await fill(page, { level, units });
      await eventually(async () => assert.equal(await page.locator('.student').count(), 3));
      assert.equal(await page.locator('.student').first().locator('.set svg').count(), 6);
      for (const format of ['Letter', 'A4']) assert.equal(await pages(page, format), 6, `${level}, ${units}, ${format}`);
    }
  }
  visit.clean();
});

test('a sheet depends on nothing but the word; a word that is none and a number that is none are refused by name', async (t) => {
  const visit = await open(t);
  const { page } = visit;
  await page.getByText('Type a class word').waitFor();
  await fill(page);
  const third = await text(page.locator('.student').nth(2));
  await fill(page, { word: 'blue-7!', students: '12' });
  await eventually(async () => assert.equal(await page.locator('.student').count(), 12));
  assert.equal(await text(page.locator('.student').nth(2)), third);
  assert.notEqual(await text(page.locator('.student').nth(3)), third);
  await page.reload();
  await eventually(async () => assert.equal(await text(page.locator('.student').nth(2)), third), 'what was typed is kept');
  for (const bad of ['41', '0', 'many', '']) {
    await page.locator('#class-students').fill(bad);
    await page.getByText(`Students: “${bad}” is not a whole number from 1 to 40.`).waitFor();
    assert.equal(await page.locator('#class-students').inputValue(), bad);
    assert.equal(await page.locator('.student').count(), 0);
  }
  visit.clean();
});

test('the answers stand on the answer sheet and in the file, each with its usual mistakes', async (t) => {
  const visit = await open(t);
  const { page } = visit;
  await fill(page, { students: '40', level: 'hard' });
  await choose(page, 'Answer sheet');
  await eventually(async () => assert.equal(await page.locator('table.answers').count(), 40));
  const rows = page.locator('table.answers').first().locator('tbody tr');
  assert.equal(await rows.count(), 6);
  for (const row of await rows.all()) assert.ok((await row.locator('li').count()) >= 2);
  for (const format of ['Letter', 'A4']) {
    const count = await pages(page, format);
    t.diagnostic(`answers of 40: ${count} pages, ${format}`);
    assert.ok(count <= 20, `${count} pages of ${format}`);
  }
  const [file] = await Promise.all([page.waitForEvent('download'), page.getByRole('button', { name: 'Save the answers as CSV' }).click()]);
  const lines = (await readFile(await file.path(), 'utf8')).trim().split('\r\n');
  assert.equal(lines.length, 1 + 40 * 6);
  assert.match(lines[0], /^word,level,student,problem/);
  visit.clean();
});

/** What the answer sheet says of a student: answers and wrong answers as they are printed. */
async function solutions(page, number) {
  await choose(page, 'Answer sheet');
  await page.locator('table.answers').nth(number - 1).waitFor();
  const rows = await page.locator('table.answers').nth(number - 1).locator('tbody tr').all();
  return Promise.all(
    rows.map(async (row) => ({
      answer: await row.locator('td').nth(1).textContent(),
      wrong: (await row.locator('li').allTextContents()).map((line) => line.split(': ')),
    })),
  );
}

test('a student checks answers and is told the mistake, never the answer', async (t) => {
  const visit = await open(t);
  const { page } = visit;
  const sent = [];
  await fill(page);
  const known = await solutions(page, 2);
  page.on('request', (request) => sent.push(request.url()));
  await page.goto(page.url().split('#')[0] + '#check/blue7/2/easy/us');
  await page.locator('.checked').first().waitFor();
  for (const [index, { answer, wrong }] of known.entries()) {
    const form = page.locator('.checked').nth(index);
    const tell = async (typed) => {
      await form.getByRole('textbox').fill(typed);
      await form.getByRole('button', { name: 'Check' }).click();
      return eventually(async () => {
        const said = await form.locator('.reply').innerText();
        assert.notEqual(said, '');
        return said;
      });
    };
    assert.equal(await tell(answer), 'Right.');
    for (const [typed, why] of wrong) assert.ok((await tell(typed)).includes(why), `${typed}: ${why}`);
    for (const typed of ['0', 'much', '99999999']) {
      const said = await tell(typed);
      assert.match(said, /^Not /);
      assert.ok(!said.includes(answer), said);
      assert.equal(await form.getByRole('textbox').inputValue(), typed);
    }
  }
  // What was typed is there again.
  await page.reload();
  await page.locator('.checked').first().waitFor();
  assert.equal(await page.locator('.checked').first().getByRole('textbox').inputValue(), '99999999');
  assert.deepEqual(sent.filter((url) => !url.includes('127.0.0.1')), []);
  visit.clean();
});

test('the quiz asks nine questions, counts the first try, and starts over', async (t) => {
  const visit = await open(t, { address: '#quiz/blue7/4/middle/metric' });
  const { page } = visit;
  const questions = page.locator('.question');
  await questions.first().waitFor();
  assert.equal(await questions.count(), 9);
  assert.equal(await page.locator('.question svg').count(), 9);
  let [first, done] = [0, 0];
  for (const question of await questions.all()) {
    const options = await question.getByRole('radio').all();
    assert.ok(options.length >= 3);
    for (const [at, option] of options.entries()) {
      await option.check({ force: true });
      const said = await eventually(async () => {
        const said = await question.locator('.reply').innerText();
        assert.notEqual(said, '');
        return said;
      });
      if (said === 'Right.') {
        first += Number(at === 0);
        break;
      }
      assert.match(said, /^Not that one\. That is what you get if you /);
    }
    done += 1;
    await page.locator('.score').getByText(done < 9 ? `${first} of ${done} right` : `Done: ${first} of 9`).waitFor();
  }
  await page.reload();
  await page.locator('.score').getByText(`Done: ${first} of 9`).waitFor();
  await page.getByRole('button', { name: 'Start over' }).click();
  await page.locator('.score').getByText('0 of 0 right').waitFor();
  assert.equal(await page.locator('.question :checked').count(), 0);
  visit.clean();
});

for (const colorScheme of ['light', 'dark']) {
  test(`nothing of it breaks an accessibility rule or is wider than a phone, ${colorScheme}`, async (t) => {
    const visit = await open(t, { context: { viewport: { width: 360, height: 740 }, colorScheme } });
    const { page } = visit;
    for (const level of ['easy', 'hard']) {
      await fill(page, { students: '2', level });
      for (const name of ['Sheets to print', 'Answer sheet', 'Check an answer', 'Quiz']) {
        await choose(page, name);
        await eventually(async () => assert.ok((await page.locator('.handed > *').count()) > 0));
        await visit.axe();
        const wide = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
        assert.ok(wide <= 0, `${name}: ${wide} px too wide`);
        await choose(page, 'Sheets to print');
      }
    }
    visit.clean();
  });
}
