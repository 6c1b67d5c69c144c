// The calculation for other pages: what it answers is what its declarations promise, to the last key; what it cannot
// answer it refuses by name; and the examples of its page run as they stand there.

import assert from 'node:assert/strict';
import { copyFile, mkdtemp, readFile, readdir, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { test } from 'node:test';
import { pathToFileURL } from 'node:url';
import ts from 'typescript';

import { DIST, open } from '../harness.mjs';

/** Where the examples of the page have the site. */
const SITE = 'https://example.org/clampwright/';
const MODULE = `${SITE}api/clampwright.js`;
/** The page of somebody else. */
const OTHER = 'https://workshop.example/page.html';

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
  { tube_material: 'unknown-steel', wall_basis: 'unknown', bolt_grade: 'unknown' },
];

/**
 * Opens a page of another host, from which this site is to be had under the address of the examples. What the page
 * writes to the console comes out as `lines`.
 */
async function elsewhere(t, html = '') {
  const lines = [];
  const visit = await open(t, {
    page: 'care.html',
    before: async (page) => {
      await page.route(`${SITE}**`, async (route) => {
        const to = route.request().url().slice(SITE.length);
        const response = await route.fetch({ url: address() + to });
        await route.fulfill({ response });
      });
      await page.route(OTHER, (route) =>
        route.fulfill({ contentType: 'text/html', body: `<!DOCTYPE html><title>Another page</title>${html}` }),
      );
      page.on('console', (message) => message.type() === 'log' && lines.push(message.text()));
    },
  });
  function address() {
    return visit.server.address;
  }
  await visit.page.goto(OTHER);
  return { ...visit, lines };
}

/** What the compiler has to say about a text that calls the declared module, set up as the page says. */
async function complaints(t, text) {
  const folder = await mkdtemp(join(tmpdir(), 'clampwright-types-'));
  t.after(() => rm(folder, { recursive: true, force: true }));
  const file = join(folder, 'caller.ts');
  await writeFile(file, text);
  await copyFile(join(DIST, 'api/clampwright.d.ts'), join(folder, 'clampwright.d.ts'));
  const page = await readFile(join(DIST, 'api.html'), 'utf8');
  const [, config] = page.match(/<code class="language-json">(.*?)<\/code>/s);
  const { compilerOptions } = JSON.parse(config.replaceAll('&quot;', '"'));
  const { options, errors } = ts.parseJsonConfigFileContent(
    {
      compilerOptions: {
        ...compilerOptions,
        strict: true,
        noEmit: true,
        skipLibCheck: false,
        target: 'es2022',
        lib: ['es2022', 'dom'],
        module: 'esnext',
        moduleResolution: 'bundler',
        types: [],
      },
      files: ['caller.ts'],
    },
    ts.sys,
    folder,
  );
  return [...errors, ...ts.getPreEmitDiagnostics(ts.createProgram([file], options))].map((found) =>
    ts.flattenDiagnosticMessageText(found.messageText, '\n'),
  );
}

const declared = (names) => `import type { ${names} } from '${MODULE}';\n`;

test('what it answers has the declared keys and names, and no other', async (t) => {
  const visit = await elsewhere(t);
  const { answers, refused } = await visit.page.evaluate(
    async ([module, joints]) => {
      const calc = await import(module);
      await calc.init();
      const answers = { reports: [], outlooks: [], curves: [], samples: [], repairs: [], sheets: [], links: [] };
      answers.joints = [calc.defaults()];
      const refused = [];
      for (const joint of joints) {
        try {
          answers.reports.push(calc.evaluate(joint));
          answers.outlooks.push(calc.outlook(joint));
          answers.curves.push(calc.torqueTurn(joint));
          answers.samples.push(calc.sample(joint, { joints: 500 }));
          answers.links.push(calc.decodeLink(calc.encodeLink(joint)));
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
      for (const link of ['', 'v2/boat/k-b4ye', '#v1/coupler/u-us/b-3lb/zz-1/k-zzzz', 'x'.repeat(5000)]) {
        answers.links.push(calc.decodeLink(link));
      }
      answers.typed = [calc.readQuantity('2 1/2 in', 'tube_width_mm'), calc.readQuantity('900 lb', 'free_up_n')];
      return { answers, refused };
    },
    [MODULE, JOINTS],
  );
  assert.deepEqual(refused, [], 'every joint is taken');
  assert.deepEqual(answers.links.slice(-4).map(({ kind }) => kind), ['not-a-link', 'foreign', 'damaged', 'too-long']);
  assert.deepEqual(answers.links.at(-2).notices.map(({ code }) => code).sort(), ['unknown-key', 'wrong-unit']);
  const types = {
    reports: 'Report', outlooks: 'Outlook', curves: 'TorqueTurn', samples: 'Sample', repairs: 'Repairs',
    sheets: 'WorkSheet', links: 'DecodedLink', joints: 'JointInput', typed: 'Typed',
  };
  // Literals: the compiler refuses keys and names that are not declared as well as those that are missing.
  const text = Object.entries(types).map(
    ([name, type]) => `export const ${name}: ${type}[] = ${JSON.stringify(answers[name])};\n`,
  );
  assert.deepEqual(await complaints(t, declared(Object.values(types).join(', ')) + text.join('')), []);
  visit.clean();
});

test('the declarations are exact, and hold nothing of the loader', async (t) => {
  const declarations = await readFile(join(DIST, 'api/clampwright.d.ts'), 'utf8');
  for (const word of [/\bobject\b(?=\s*[;,)\]|&])/, /\bany\b(?=\s*[;,)\]|&])/, /Readable|Underlying/, /stopForCheck/, /wbg|wbindgen/]) {
    assert.doesNotMatch(declarations, word);
  }
  const ok = declared('JointInput') + 'export const joint: JointInput = { tube_width_mm: 60, joint: "free" };\n';
  assert.deepEqual(await complaints(t, ok), []);
  for (const [right, wrong] of [['tube_width_mm', 'tube_widht_mm'], ['"free"', '"boat"'], ['60', '"60"']]) {
    assert.notDeepEqual(await complaints(t, ok.replace(right, wrong)), [], wrong);
  }
  // What is exported is what is declared.
  const visit = await elsewhere(t);
  const exported = await visit.page.evaluate(async (module) => Object.keys(await import(module)).sort(), MODULE);
  const named = [...declarations.matchAll(/^export (?:function|class) (\w+)/gm)].map(([, name]) => name).sort();
  assert.deepEqual(exported, named);
  visit.clean();
});

test('whatever cannot be answered is refused, by name and as a typed error', async (t) => {
  const visit = await elsewhere(t);
  const found = await visit.page.evaluate(async (module) => {
    const calc = await import(module);
    const said = (call) => {
      try {
        return { answered: JSON.stringify(call()) };
      } catch (error) {
        const typed = error instanceof calc.CalculationError && error.name === 'CalculationError' && error.message !== '';
        return { typed, errors: error.errors?.map(({ code, field }) => `${code} ${field}`) ?? String(error) };
      }
    };
    const early = said(() => calc.evaluate({}));
    await calc.init();
    await calc.init();
    class Joint {
      get tube_width_mm() {
        return 60;
      }
    }
    const cases = [
      ['misspelled', () => calc.evaluate({ tube_widht_mm: 60 }), ['not-a-scenario tube_widht_mm']],
      ['two misspelled', () => calc.evaluate({ a: 1, tube_width_mm: 60, b: 2 }), ['not-a-scenario a', 'not-a-scenario b']],
      ['array', () => calc.evaluate([]), ['not-a-scenario null']],
      ['nothing', () => calc.evaluate(), ['not-a-scenario null']],
      ['null', () => calc.evaluate(null), ['not-a-scenario null']],
      ['text', () => calc.evaluate('{}'), ['not-a-scenario null']],
      ['promise', () => calc.evaluate(Promise.resolve({})), ['not-a-scenario null']],
      ['map', () => calc.evaluate(new Map([['tube_width_mm', 60]])), ['not-a-scenario null']],
      ['class', () => calc.evaluate(new Joint()), ['not-a-scenario null']],
      ['inherited', () => calc.evaluate(Object.create({ tube_width_mm: 60 })), ['not-a-scenario null']],
      ['number as text', () => calc.evaluate({ tube_width_mm: '60' }), ['not-a-scenario tube_width_mm']],
      ['undefined', () => calc.evaluate({ tube_width_mm: undefined }), ['not-a-scenario tube_width_mm']],
      ['undefined, derived', () => calc.evaluate({ torque_nm: undefined }), ['not-a-scenario torque_nm']],
      ['choice as number', () => calc.evaluate({ support: 3 }), ['not-a-scenario support']],
      ['not finite', () => calc.evaluate({ tube_width_mm: NaN }), ['not-finite tube_width_mm']],
      ['outside', () => calc.evaluate({ tube_wall_mm: 900 }), ['out-of-range tube_wall_mm']],
      ['unknown choice', () => calc.evaluate({ support: 'hope' }), ['unknown-choice support']],
      ['version', () => calc.evaluate({ version: 1.5 }), ['not-a-scenario version']],
      ['other version', () => calc.evaluate({ version: 99 }), ['version null']],
      ['unknown rate', () => calc.repairs({}, { our: 90 }), ['not-rates our']],
      ['negative rate', () => calc.repairs({}, { hour: -1 }), ['not-rates hour']],
      ['endless rate', () => calc.repairs({}, { hour: Infinity }), ['not-rates hour']],
      ['rate as text', () => calc.workSheet({}, {}, { hour: '90' }), ['not-rates hour']],
      ['money without a name', () => calc.repairs({}, { currency: 'dollars', prices_of: 'now' }), ['not-rates currency', 'not-rates prices_of']],
      ['rates as array', () => calc.repairs({}, []), ['not-rates null']],
      ['no text', () => calc.readQuantity(5), ['unknown-field null']],
      ['a number', () => calc.readQuantity(5, 'tube_width_mm'), ['not-a-text tube_width_mm']],
      ['no field', () => calc.readQuantity('5', 'tube_widht_mm'), ['unknown-field tube_widht_mm']],
      ['a choice', () => calc.readQuantity('5', 'support'), ['unknown-field support']],
      ['unit', () => calc.readQuantity('75 lb', 'torque_nm'), ['wrong-dimension torque_nm']],
      ['too many', () => calc.sample({}, { joints: 1e9 }), ['not-settings joints']],
      ['none', () => calc.sample({}, { joints: 0 }), ['not-settings joints']],
      ['half a seed', () => calc.sample({}, { seed: 0.5 }), ['not-settings seed']],
      ['setting', () => calc.sample({}, { count: 5 }), ['not-settings count']],
      ['curve', () => calc.torqueTurn({ x: 1 }), ['not-a-scenario x']],
      ['outlook', () => calc.outlook([]), ['not-a-scenario null']],
      ['link of what', () => calc.encodeLink({ tube_widht_mm: 1 }), ['not-a-scenario tube_widht_mm']],
      ['link of no number', () => calc.encodeLink({ tube_width_mm: NaN }), ['not-a-number tube_width_mm']],
      ['units', () => calc.encodeLink({}, 'imperial'), ['unknown-units null']],
      ['no link', () => calc.decodeLink(5), ['not-a-text null']],
    ];
    const results = cases.map(([name, call, wanted]) => ({ name, wanted, ...said(call) }));
    // And after all that it still answers.
    return { early, results, after: calc.evaluate({}).verdict };
  }, MODULE);
  assert.deepEqual(found.early, { typed: true, errors: ['not-ready null'] });
  for (const { name, wanted, typed, errors, answered } of found.results) {
    assert.equal(answered, undefined, name);
    assert.deepEqual([typed, errors], [true, wanted], name);
  }
  assert.equal(found.after, 'does-not-hold');
  visit.clean();
});

test('a link gives the same answer as the joint that it was made of', async (t) => {
  const visit = await elsewhere(t);
  const answers = await visit.page.evaluate(async (module) => {
    const calc = await import(module);
    await calc.init();
    const joint = { tube_width_mm: 63.5, tube_material: 'a500-b', torque_nm: 90 };
    const text = calc.encodeLink(joint, 'metric');
    const back = calc.decodeLink(`https://workshop.example/joint.html#${text}`);
    return { same: JSON.stringify(calc.evaluate(back.input)) === JSON.stringify(calc.evaluate(joint)), units: back.units, text,
      seeds: [1, 1, 2].map((seed) => calc.sample(joint, { joints: 300, seed }).reaches + JSON.stringify(calc.sample(joint, { joints: 300, seed }).clamp)) };
  }, MODULE);
  assert.ok(answers.same && answers.units === 'metric');
  assert.equal(answers.seeds[0], answers.seeds[1]);
  assert.notEqual(answers.seeds[0], answers.seeds[2]);
  await visit.go(`joint.html#${answers.text}`);
  await visit.page.locator('[data-link=whole]').waitFor();
  visit.clean();
});

test('runs in Node with the bytes of the program', async () => {
  const calc = await import(pathToFileURL(join(DIST, 'api/clampwright.js')).href);
  const wasm = (await readdir(join(DIST, 'api'))).find((name) => name.endsWith('.wasm'));
  await calc.init(await readFile(join(DIST, 'api', wasm)));
  assert.equal(calc.evaluate({}).verdict, 'does-not-hold');
});

/** The examples of the page, as they stand there. */
async function examples(t) {
  const visit = await open(t, { page: 'api.html' });
  const found = await visit.page.locator('pre code').evaluateAll((all) =>
    all.map((code) => ({ language: code.className.replace('language-', ''), text: code.textContent })),
  );
  visit.clean();
  return found;
}

test('the examples of the page run as they stand, on the page of another host, and compile', async (t) => {
  const scripts = (await examples(t)).filter(({ language }) => language === 'js');
  assert.ok(scripts.length >= 6);
  for (const { text } of scripts) {
    const visit = await elsewhere(t, `<script type="module">${text}</script>`);
    const wanted = [...text.matchAll(/^\/\/ → (.*)$/gm)].map(([, line]) => line);
    assert.ok(wanted.length > 0, text);
    await visit.page.waitForLoadState('networkidle');
    assert.deepEqual(visit.lines, wanted, text);
    assert.deepEqual(await complaints(t, text), [], text);
    visit.clean();
  }
});
