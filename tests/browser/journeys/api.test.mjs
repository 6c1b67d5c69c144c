// The calculation for other pages: what it answers is what its declarations promise, to the last key.

import assert from 'node:assert/strict';
import { mkdtemp, readdir, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { test } from 'node:test';
import ts from 'typescript';

import { DIST, JOINT, open as openPage } from '../harness.mjs';

const open = (t) => openPage(t, { page: JOINT });

/** Joints that bring out what an answer may hold: members, supports, joints, rules, no answer at all. */
const JOINTS = [
  {},
  { member: 'channel', mount: 'from-top', joint: 'chain-bracket' },
  { member: 'angle', joint: 'spring-hanger', support: 'spreader' },
  { member: 'round-tube', support: 'bare' },
  { member: 'solid-bar', joint: 'free', free_kind: 'ultimate', free_up_n: 900 },
  { support: 'through-sleeve', sleeve: 'rt-0.750x0.120', sleeve_welded: 'yes', sleeve_material: '6061-t6' },
  { support: 'loose-sleeve', tube_material: 'a500-b', load_rule: 'coupler-classes', flange_arm_mm: 30 },
  { support: 'solid-insert', bolt_grade: 'a307', load_rule: 'un-r55', trailer_mass_kg: 3600 },
  { fitting_spreads: 'yes', mount: 'from-top', tube_wall_mm: 9, load_rule: 'adr-62' },
];

/** What the compiler has to say about a text that stands beside the page's declarations. */
async function complaints(t, text) {
  const folder = await mkdtemp(join(tmpdir(), 'clampwright-types-'));
  t.after(() => rm(folder, { recursive: true, force: true }));
  const file = join(folder, 'caller.ts');
  await writeFile(file, text);
  const program = ts.createProgram([file], {
    strict: true,
    noEmit: true,
    target: ts.ScriptTarget.ES2022,
    // The loader's own declarations use Symbol.dispose.
    lib: ['lib.esnext.d.ts', 'lib.dom.d.ts'],
    module: ts.ModuleKind.ESNext,
    moduleResolution: ts.ModuleResolutionKind.Bundler,
    types: [],
  });
  return ts
    .getPreEmitDiagnostics(program)
    .map((found) => ts.flattenDiagnosticMessageText(found.messageText, '\n'));
}

/** The import of the page's declarations. */
async function declared(names) {
  const file = (await readdir(DIST)).find((name) => /^joint-[0-9a-f]+\.d\.ts$/.test(name));
  assert.ok(file, 'the page is built with its declarations');
  return `import type { ${names} } from ${JSON.stringify(join(DIST, file.replace(/\.d\.ts$/, '.js')))};\n`;
}

test('what it answers has the declared keys and no other', async (t) => {
  const visit = await open(t);
  const { answers, refused } = await visit.page.evaluate(async (joints) => {
    const calc = await import(document.querySelector('script[data-js]').dataset.js);
    const answers = { reports: [], repairs: [], sheets: [], joints: [calc.defaults()], typed: [] };
    const refused = [];
    for (const joint of joints) {
      try {
        answers.reports.push(calc.evaluate(joint));
      } catch (error) {
        refused.push([joint, error.message]);
      }
    }
    for (const joint of [joints[0], joints[5]]) {
      const found = calc.repairs(joint);
      answers.repairs.push(found);
      const best = found.list.slice(0, 3).concat(found.list.filter((repair) => repair.work.welds > 0).slice(0, 1));
      answers.sheets.push(...best.map((repair) => calc.workSheet(joint, repair.input)));
    }
    answers.typed.push(calc.readQuantity('2 1/2 in', 'tube_width_mm'));
    return { answers, refused };
  }, JOINTS);
  assert.deepEqual(refused, [], 'every joint is taken');
  // Literals: the compiler refuses keys that are not declared as well as those that are missing.
  const found = await complaints(
    t,
    (await declared('JointInput, Repairs, Report, Typed, WorkSheet')) +
      `export const reports: Report[] = ${JSON.stringify(answers.reports)};\n` +
      `export const repairs: Repairs[] = ${JSON.stringify(answers.repairs)};\n` +
      `export const sheets: WorkSheet[] = ${JSON.stringify(answers.sheets)};\n` +
      `export const joints: JointInput[] = ${JSON.stringify(answers.joints)};\n` +
      `export const typed: Typed[] = ${JSON.stringify(answers.typed)};\n`,
  );
  assert.deepEqual(found, []);
});

test('a caller who misspells a field or a choice is told by the compiler', async (t) => {
  const ok = (await declared('JointInput')) + 'export const joint: JointInput = { tube_width_mm: 60, joint: "free" };\n';
  assert.deepEqual(await complaints(t, ok), []);
  const wrong = ok.replace('tube_width_mm', 'tube_widht_mm');
  assert.match((await complaints(t, wrong)).join('\n'), /tube_widht_mm/);
  const unknown = ok.replace('"free"', '"boat"');
  assert.match((await complaints(t, unknown)).join('\n'), /boat/);
});
