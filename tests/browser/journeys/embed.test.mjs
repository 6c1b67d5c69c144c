// One figure alone on the page of another host: by a frame, by an element, sized by its frame.

import assert from 'node:assert/strict';
import { join } from 'node:path';
import { test } from 'node:test';

import { eventually, LESSONS, open, SHOTS, SIZES } from '../harness.mjs';

const plain = async (locator) => (await locator.innerText()).replace(/[\u00a0\u202f]/g, ' ');

test('every figure stands alone, still without a script, and moves with one', async (t) => {
  const still = await open(t, { page: 'care.html', context: { javaScriptEnabled: false, viewport: SIZES.phone } });
  const visit = await open(t, { page: 'care.html', context: { viewport: SIZES.phone } });
  for (const id of LESSONS) {
    await still.page.goto(`${still.server.address}embed/${id}.html`);
    assert.ok(await still.page.locator('figure .drawing').first().isVisible(), id);
    await visit.page.goto(`${visit.server.address}embed.html?figure=${id}`);
    await visit.page.waitForURL(`**/embed/${id}.html?figure=${id}`);
    await visit.page.locator('html[data-ready]').waitFor({ state: 'attached' });
    const before = await visit.page.locator('figure').innerHTML();
    const control = visit.page.locator('[data-control]').first();
    if ((await control.getAttribute('type')) === 'range') await control.press('End');
    else await visit.page.locator('[data-control]').nth(1).check();
    await eventually(async () => assert.notEqual(await visit.page.locator('figure').innerHTML(), before, id));
    const wide = await visit.page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
    assert.ok(wide <= 0, `${id} is ${wide} px too wide`);
    await visit.axe();
  }
  still.clean();
  visit.clean();
});

test('settings of the address are those of the figure', async (t) => {
  const visit = await open(t, { page: 'care.html' });
  const { page, server } = visit;
  await page.goto(`${server.address}embed.html?figure=hollow&turn=180&wall=5&washer=2&units=metric&look=dark`);
  await page.locator('html[data-ready]').waitFor({ state: 'attached' });
  await eventually(async () => {
    assert.equal(await page.locator('#hollow-turn').inputValue(), '180');
    assert.match(await page.locator('#hollow-wall-exact').inputValue(), /^5\s?mm$/);
    assert.ok(await page.locator('[name=hollow-washer][value="2"]').isChecked());
    assert.match(await plain(page.locator('[data-at=said]')), /kN/);
  });
  assert.equal(await page.evaluate(() => document.documentElement.dataset.theme), 'dark');
  // A number alone is metric, whatever the units: so it was from the beginning. With its unit it is what it says.
  for (const [setting, shown] of [['wall=3', /^0\.118\s?in$/], ['wall=1/4 in', /^1\/4\s?in$/], ['wall=100', /^1\/4\s?in$/]]) {
    await page.goto(`${server.address}embed.html?figure=hollow&${setting}&units=us`);
    await page.locator('html[data-ready]').waitFor({ state: 'attached' });
    await eventually(async () => assert.match(await page.locator('#hollow-wall-exact').inputValue(), shown));
  }
  // What is no setting of the figure leaves it as it is.
  await page.goto(`${server.address}embed.html?figure=hollow&turn=much&wall=&washer=9&x=1`);
  await page.locator('html[data-ready]').waitFor({ state: 'attached' });
  assert.equal(await page.locator('#hollow-turn').inputValue(), '0');
  assert.ok(await page.locator('[name=hollow-washer][value="0"]').isChecked());
  // And no figure of that name: the list of those that there are.
  await page.goto(`${server.address}embed.html?figure=boat`);
  assert.ok(await page.locator('#no-figure').isVisible());
  assert.equal(await page.locator('a[data-figure]').count(), LESSONS.length);
  visit.clean();
});

/** The examples of the page on a page of another host that allows them nothing more. */
async function elsewhere(t, viewport) {
  const SITE = 'https://example.org/clampwright/';
  const visit = await open(t, {
    page: 'api.html',
    context: { viewport },
    before: async (page) => {
      await page.route(`${SITE}**`, async (route) => {
        const url = visit_address() + route.request().url().slice(SITE.length);
        await route.fulfill({ response: await route.fetch({ url }) });
      });
    },
  });
  function visit_address() {
    return visit.server.address;
  }
  const examples = await visit.page.locator('code.language-html').allTextContents();
  assert.equal(examples.length, 2);
  await visit.page.route('https://workshop.example/**', (route) =>
    route.fulfill({
      contentType: 'text/html',
      body: `<!DOCTYPE html><html lang="en"><title>Another page</title><body style="margin: 0">${examples.join('<hr>')}</body></html>`,
    }),
  );
  await visit.page.goto('https://workshop.example/');
  return visit;
}

for (const viewport of [SIZES.small, SIZES.desk]) {
  test(`the examples of the page show it on another host, ${viewport.width} px wide`, async (t) => {
    const visit = await elsewhere(t, viewport);
    const { page } = visit;
    for (const outer of [page.locator('clampwright-figure iframe'), page.locator('body > iframe')]) {
      const frame = outer.contentFrame();
      await outer.scrollIntoViewIfNeeded();
      await frame.locator('html[data-ready]').waitFor({ state: 'attached' });
      await eventually(async () => assert.equal(await frame.locator('#hollow-turn').inputValue(), '180'));
      assert.match(await plain(frame.locator('[data-at=said]')), /kN/);
    }
    // The element is as high as its figure: nothing cut off, nothing empty.
    const element = page.locator('clampwright-figure iframe');
    const inside = element.contentFrame().locator('body');
    await eventually(async () => {
      const [frame, body] = [await element.evaluate((e) => e.clientHeight), await inside.evaluate((b) => b.scrollHeight)];
      assert.ok(Math.abs(frame - body) <= 2 && frame > 300, `${frame} for ${body}`);
    });
    await element.scrollIntoViewIfNeeded();
    await page.screenshot({ path: join(SHOTS, `embed-${viewport.width}.png`) });
    // It follows its attributes.
    await page.locator('clampwright-figure').evaluate((e) => e.setAttribute('figure', 'spring'));
    await element.contentFrame().locator('section#spring').waitFor();
    await element.contentFrame().locator('html[data-ready]').waitFor({ state: 'attached' });
    await page.waitForLoadState('networkidle');
    visit.clean();
  });
}
