// From many mistakes at once to the answer, one thing at a time; and a space that begins in the wrong place.
import assert from 'node:assert/strict';
import fs from 'node:fs';
import { after, before, test } from 'node:test';
import { LAPTOP, PHONE, accessible, browser, opened, settled, shot, walk } from './browser.mjs';

const TOUCH = { viewport: PHONE, hasTouch: true, isMobile: true };
const BOX = [['back', '28'], ['right', '42'], ['front', '28'], ['left', '42']];
/// Walked back and then right, so that from corner 1 of the box it lies on the box.
const GARAGE = [['back', '20'], ['right', '22'], ['front', '20'], ['left', '22']];

let chrome;
before(async () => (chrome = await browser()));
after(() => chrome.close());

const button = (tab, name) => tab.getByRole('button', { name, exact: true });
const told = (tab) => tab.locator('.answer .notices').innerText();
const first = (tab) => tab.locator('.answer .notices button.first');
const begins = (tab) => tab.locator('.begins > label select');

async function begun(sides, options = { viewport: LAPTOP }, record = '') {
  const page = await opened(chrome, options);
  await page.tab.getByRole('button', { name: /Measure a house/ }).click();
  if (record) await page.tab.getByLabel('The record says').fill(record);
  await walk(page.tab, sides);
  return page;
}

async function withGarage(options) {
  const page = await begun(BOX, options, '1,842');
  await button(page.tab, 'No').click();
  await button(page.tab, 'No').click();
  await page.tab.getByRole('button', { name: 'Add a space' }).click();
  await button(page.tab, 'Add').click();
  await settled(page.tab);
  await walk(page.tab, GARAGE);
  return page;
}

async function fileOf(tab) {
  const [file] = await Promise.all([tab.waitForEvent('download'), button(tab, 'Save the sides file').click()]);
  return String(fs.readFileSync(await file.path()));
}

/// The least and the greatest place of the garage on the drawing, in feet: to the right, and toward the street.
const garage = (tab) =>
  tab.locator('.drawing .walk').nth(1).locator('.wall').evaluateAll((walls) => {
    const places = walls.flatMap((wall) => [...wall.getAttribute('d').matchAll(/[ML](-?[\d.]+) (-?[\d.]+)/g)].map((one) => [Number(one[1]), Number(one[2])]));
    return [0, 1].flatMap((axis) => [Math.min(...places.map((one) => one[axis])), Math.max(...places.map((one) => one[axis]))]);
  });

for (const [size, options] of [['laptop', { viewport: LAPTOP, bypassCSP: true }], ['phone', { ...TOUCH, bypassCSP: true }]]) {
  test(`a garage on the house is asked for its side before it is laid there, on a ${size}`, async () => {
    const { tab, troubles, context } = await withGarage(options);
    const shown = () => tab.locator('.answer .notices li button:not(.link):visible').allInnerTexts();
    const sides = ['On the front side', 'On the back side', 'On the left side', 'On the right side'];
    const within = 'garage is inside the walk of House';
    assert.deepEqual(await shown(), [...sides, within]);
    // None is the usual answer.
    assert.equal(await first(tab).count(), 0);
    assert.match(await told(tab), /where does garage stand, seen from House\?/);
    await accessible(tab, 'a garage on the house');
    await shot(tab, `garage-${size}`);
    // Either end of each wall of the 42' by 28' box, seen from the front left corner: to the right, and toward the street.
    const places = [
      ['On the front side', 'Against wall 4, at its left end', [0, 22, 0, 20]],
      ['On the front side', 'Against wall 4, at its right end', [20, 42, 0, 20]],
      ['On the back side', 'Against wall 2, at its left end', [0, 22, -48, -28]],
      ['On the back side', 'Against wall 2, at its right end', [20, 42, -48, -28]],
      ['On the left side', 'Against wall 1, at its front end', [-22, 0, -20, 0]],
      ['On the left side', 'Against wall 1, at its back end', [-22, 0, -28, -8]],
      ['On the right side', 'Against wall 3, at its front end', [42, 64, -20, 0]],
      ['On the right side', 'Against wall 3, at its back end', [42, 64, -28, -8]],
    ];
    for (const [side, where, place] of places) {
      await button(tab, side).click();
      assert.equal(await button(tab, side).getAttribute('aria-expanded'), 'true');
      await button(tab, where).click();
      await settled(tab);
      assert.deepEqual(await garage(tab), place, where);
      // 28 × 42; the garage is not counted.
      assert.match(await tab.locator('.opening').innerText(), /Measured 1,176 sq ft/);
      assert.equal(await told(tab), '');
      await button(tab, 'Undo').click();
      await settled(tab);
    }
    await button(tab, sides[3]).click();
    await accessible(tab, 'a side of the house');
    await shot(tab, `garage-sides-${size}`);
    await button(tab, within).click();
    await settled(tab);
    // Less 20 × 22.
    assert.match(await tab.locator('.opening').innerText(), /Measured 736 sq ft/);
    assert.deepEqual(troubles, []);
    await context.close();
  });
}

test('where a space begins is seen in its row and changed there', async () => {
  const { tab, troubles, context } = await withGarage();
  assert.equal(await begins(tab).locator('option:checked').textContent(), 'corner 1 of House');
  const before = await fileOf(tab);
  await begins(tab).focus();
  await begins(tab).selectOption({ label: 'corner 4 of House' });
  await settled(tab);
  assert.deepEqual(await garage(tab), [42, 64, -20, 0]);
  assert.equal(await tab.evaluate(() => document.activeElement.selectedOptions?.[0].textContent), 'corner 4 of House');
  assert.equal(await fileOf(tab), before.replace('corner 1', 'corner 4'));
  // 43' to the right and 2' 6" back from the first corner, as a person types it.
  await begins(tab).selectOption({ label: 'the first corner, or measured from it' });
  await settled(tab);
  assert.deepEqual(await garage(tab), [0, 22, -20, 0]);
  const [ways, lengths] = [tab.locator('.begins .off select'), tab.locator('.begins .off input')];
  await lengths.nth(0).fill('43');
  await lengths.nth(0).blur();
  await settled(tab);
  await ways.nth(1).selectOption('back');
  await lengths.nth(1).fill(`2' 6"`);
  await lengths.nth(1).blur();
  await settled(tab);
  assert.deepEqual(await garage(tab), [43, 65, -22.5, -2.5]);
  assert.equal(await fileOf(tab), before.replace('from "House" corner 1', `start east 43' north 2' 6"`));
  assert.equal(await lengths.nth(1).inputValue(), `2' 6"`);
  for (let i = 0; i < 4; i++) {
    await button(tab, 'Undo').click();
    await settled(tab);
  }
  assert.equal(await fileOf(tab), before);
  assert.deepEqual(troubles, []);
  await context.close();
});

/// Ten walls: 31' 6" back, 14' 10" right, 6' back, 13' 2" right, 6' front, 28' 10" right, 19' front, 12' 4" left, 12' 6"
/// front, 44' 6" left. Wall 1 has two digits swapped, wall 4 is there twice, wall 5 goes back, wall 6 has a point for its
/// feet, wall 7 an inch mark for its foot mark, and wall 8 is missing.
const MISTAKEN = [['back', '13', '6'], ['right', '14', '10'], ['back', '6'], ['right', '13', '2'], ['right', '13', '2'], ['back', '6'], ['right', '28.10'], ['front', '19"'], ['front', '12', '6'], ['left', '44', '6']];

for (const [size, options] of [['laptop', { viewport: LAPTOP }], ['phone', TOUCH]]) {
  test(`all mistakes at once are led through one by one, on a ${size}`, async () => {
    const { tab, troubles, context } = await begun(MISTAKEN, options, '2,100');
    await tab.getByRole('button', { name: 'That was the last wall: what is wrong?' }).first().click();
    await settled(tab);
    await shot(tab, `mistaken-${size}`);
    // One thing at a time, in whatever order the page thinks surest.
    const taken = [];
    while (taken.length < 6) {
      taken.push(await first(tab).innerText());
      // Either wall of 6' may go the other way, and both are offered: it was the second.
      const turns = tab.locator('.answer .notices').getByRole('button', { name: `Use front 6'`, exact: true });
      await (taken.at(-1) === `Use front 6'` ? turns.nth(1) : first(tab)).click();
      await settled(tab);
      if (!taken.at(-1).startsWith('Insert')) continue;
      assert.equal(await tab.evaluate(() => document.activeElement.getAttribute('aria-label')), 'Wall 8: feet, or a whole length');
      await tab.locator('input.feet').nth(7).fill('12');
      await tab.locator('input.inches').nth(7).fill('4');
      await tab.getByLabel('Address').focus();
      await settled(tab);
    }
    assert.deepEqual(taken.sort(), ['Insert a wall to the left after wall 7', 'Remove wall 5', `Use back 31' 6"`, `Use front 19'`, `Use front 6'`, `Use right 28' 10"`]);
    await tab.getByText('Back at the start.').waitFor();
    assert.equal(await told(tab), '');
    // 44' 6" × 12' 6", 56' 10" × 19', and 13' 2" × 6': 556.25 + 1,079.83 + 79 = 1,715.1.
    assert.match(await tab.locator('.opening').innerText(), /Measured 1,715 sq ft/);
    await shot(tab, `mended-${size}`);
    assert.deepEqual(troubles, []);
    await context.close();
  });
}

test('an answer from before the walk was broken says so', async () => {
  const { tab, context } = await begun(BOX, { viewport: LAPTOP }, '1,200');
  await button(tab, 'No').click();
  await button(tab, 'No').click();
  const large = () => tab.locator('.opening').evaluate((one) => parseFloat(getComputedStyle(one).fontSize));
  const before = await large();
  await tab.locator('input.feet').nth(1).fill('52');
  await tab.getByLabel('Address').focus();
  await settled(tab);
  assert.match(await tab.locator('.answer .older').innerText(), /before the last change/);
  assert.ok((await large()) < before);
  await shot(tab, 'broken');
  await context.close();
});

test('no level is said to be counted twice while one may be missing', async () => {
  // 2 × 1,176
  const { tab, context } = await begun(BOX, { viewport: LAPTOP }, '2,352');
  const likely = () => tab.locator('.opening').innerText();
  assert.doesNotMatch(await likely(), /twice/);
  await button(tab, 'No').click();
  await button(tab, 'No').click();
  await settled(tab);
  assert.match(await likely(), /counted twice/);
  await context.close();
});
