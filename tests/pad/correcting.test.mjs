// What people ran into while they corrected what they had typed, began again, and checked files.
import assert from 'node:assert/strict';
import fs from 'node:fs';
import { after, before, test } from 'node:test';
import { LAPTOP, PHONE, accessible, browser, opened, settled, shot, walk } from './browser.mjs';

const BOX = [['back', '28'], ['right', '42'], ['front', '28'], ['left', '42']];

let chrome;
before(async () => (chrome = await browser()));
after(() => chrome.close());

const button = (tab, name) => tab.getByRole('button', { name, exact: true });
const row = (tab, n) => tab.locator('ol.sides > li').nth(n - 1);
const feet = (tab, n) => row(tab, n).locator('.feet');
const lengthOf = (tab, n) => row(tab, n).locator('.length input, .length select').evaluateAll((all) => all.map((one) => one.value));
const active = (tab) => tab.evaluate(() => document.activeElement.getAttribute('aria-label') ?? document.activeElement.textContent);

async function begun(sides, options = { viewport: LAPTOP }) {
  const page = await opened(chrome, options);
  await page.tab.getByRole('button', { name: /Measure a house/ }).click();
  await walk(page.tab, sides);
  return page;
}

async function chosen(tab, name, file, text) {
  const [chooser] = await Promise.all([tab.waitForEvent('filechooser'), tab.getByRole('button', { name }).click()]);
  await chooser.setFiles({ name: file, mimeType: 'application/octet-stream', buffer: Buffer.from(text) });
}

async function fileOf(tab, name) {
  const [file] = await Promise.all([tab.waitForEvent('download'), button(tab, name).click()]);
  return { name: file.suggestedFilename(), bytes: fs.readFileSync(await file.path()) };
}

test('units in words, with blanks between, go into the boxes they name', async () => {
  const { tab, troubles, context } = await begun(BOX.slice(0, 1));
  for (const [typed, expected] of [
    ['12 ft 6 in', ['12', '6', '']],
    ['24 ft', ['24', '', '']],
    ['12 feet 6 1/2 inches', ['12', '6', '1/2']],
    ['12ft6in', ['12', '6', '']],
    ['150 in', ['12', '6', '']],
  ]) {
    await feet(tab, 1).click();
    await feet(tab, 1).press('Control+a');
    await tab.keyboard.type(typed, { delay: 30 });
    await tab.getByLabel('Address').focus();
    await settled(tab);
    const got = await lengthOf(tab, 1);
    assert.deepEqual(got.map((part) => (part === '0' ? '' : part)), expected, typed);
  }
  assert.deepEqual(troubles, []);
  await context.close();
});

test('forgetting a house empties the page, and what is typed after that is kept again', async () => {
  const { tab, troubles, context } = await begun(BOX.slice(0, 2));
  // A figure that is still being typed when it is forgotten does not come back.
  await tab.getByLabel('The record says').pressSequentially('1,100');
  await button(tab, 'Forget it').click();
  await tab.locator('dialog[open]').getByRole('button', { name: 'Forget it' }).click();
  await tab.getByText('Nothing is kept here now.').waitFor();
  assert.equal(await tab.locator('ol.sides').count(), 0);
  assert.equal(await tab.getByRole('button', { name: 'Go on with' }).count(), 0);
  await tab.waitForTimeout(700);
  assert.equal(await tab.evaluate(() => localStorage.length), 0);
  await shot(tab, 'forgotten');
  await tab.getByRole('button', { name: /Measure a house/ }).click();
  await walk(tab, BOX.slice(0, 1));
  await tab.getByLabel('Address').fill('9 Alder Bend');
  await settled(tab);
  await tab.getByText('Kept on this device only.').waitFor();
  await tab.locator('.home').click();
  assert.match(await tab.getByRole('button', { name: 'Go on with' }).innerText(), /9 Alder Bend/);
  await tab.reload();
  await tab.getByRole('button', { name: 'Go on with' }).click();
  await settled(tab);
  assert.deepEqual(await lengthOf(tab, 1), ['28', '0', '']);
  assert.deepEqual(troubles, []);
  await context.close();
});

test('a new house is begun from the page itself, after a question', async () => {
  for (const viewport of [LAPTOP, PHONE]) {
    const { tab, context } = await begun(BOX, { viewport });
    await button(tab, 'Begin a new house').click();
    await tab.getByText('would replace it').waitFor();
    await tab.keyboard.press('Escape');
    assert.equal(await tab.locator('ol.sides > li').count(), 4);
    await button(tab, 'Begin a new house').click();
    await button(tab, 'Replace it').click();
    await settled(tab);
    assert.equal(await tab.locator('ol.sides > li').count(), 0);
    await tab.locator('.home').click();
    assert.ok(await button(tab, 'Begin a new house').isHidden());
    await context.close();
  }
});

test('a whole length typed over a wall replaces all of it', async () => {
  const filled = [['back', '5', '10', '1/4'], ['right', '9', '4', '1/2']];
  const cases = [
    [`10' 5 1/4"`, ['10', '5', '1/4']],
    [`10' 5"`, ['10', '5', '']],
    [`10'5`, ['10', '5', '']],
    [`10 5 3/8`, ['10', '5', '3/8']],
    [`29'`, ['29', '0', '']],
  ];
  for (const isEmptied of [false, true]) {
    for (const [keys, shown] of cases) {
      const { tab, context } = await begun(filled);
      await feet(tab, 1).click();
      await tab.keyboard.press('Control+A');
      if (isEmptied) await tab.keyboard.press('Backspace');
      await tab.keyboard.type(keys, { delay: 30 });
      await feet(tab, 2).focus();
      await settled(tab);
      assert.deepEqual(await lengthOf(tab, 1), shown, `${keys}, ${isEmptied}`);
      assert.equal(await row(tab, 1).locator('.notice').count(), 0);
      await context.close();
    }
  }
  // Pasted, too; and feet alone leave the inches.
  const { tab, context } = await begun(filled);
  await feet(tab, 1).fill(`10' 5 1/4"`);
  await feet(tab, 2).fill('8');
  await settled(tab);
  await tab.getByLabel('Address').focus();
  await settled(tab);
  assert.deepEqual(await lengthOf(tab, 1), ['10', '5', '1/4']);
  assert.deepEqual(await lengthOf(tab, 2), ['8', '4', '1/2']);
  await context.close();
});

test('a foot mark after a digit that was added keeps the inches until others are typed', async () => {
  const { tab, context } = await begun([['back', '5', '10', '1/4'], ['right', '9']]);
  await feet(tab, 1).focus();
  await tab.keyboard.press('End');
  await tab.keyboard.type(`0' `);
  await settled(tab);
  assert.deepEqual(await lengthOf(tab, 1), ['50', '10', '1/4']);
  await tab.keyboard.type('6');
  await feet(tab, 2).focus();
  await settled(tab);
  assert.deepEqual(await lengthOf(tab, 1), ['50', '6', '1/4']);
  await context.close();
});

test('Enter goes through the boxes of a wall before it goes to the next', async () => {
  const { tab, context } = await begun([['back', '5', '10', '1/4'], ['right', '9', '4']]);
  await feet(tab, 1).focus();
  const seen = [];
  for (let i = 0; i < 6; i++) {
    seen.push(await active(tab));
    await tab.keyboard.press('Enter');
  }
  seen.push(await active(tab));
  assert.deepEqual(seen, ['Wall 1: feet, or a whole length', 'Wall 1: inches', 'Wall 1: fraction of an inch', 'Wall 2: feet, or a whole length', 'Wall 2: inches', 'Wall 2: fraction of an inch', 'back']);
  // Feet, then inches, corrected one after the other.
  await feet(tab, 1).focus();
  await tab.keyboard.press('Control+A');
  for (const key of ['6', 'Enter', '7', 'Enter', 'Enter', '8', 'Enter']) await tab.keyboard.press(key);
  await settled(tab);
  assert.deepEqual([await lengthOf(tab, 1), await lengthOf(tab, 2)], [['6', '7', '1/4'], ['8', '4', '']]);
  await context.close();
});

test('a figure that cannot be read is said beside its field while the cursor is in it', async () => {
  const { tab, context } = await begun(BOX);
  const record = tab.getByLabel('The record says');
  await record.click();
  await tab.keyboard.type('12o0', { delay: 20 });
  assert.equal(await record.getAttribute('aria-invalid'), 'false');
  await tab.locator('#wrong-record .notice').waitFor();
  assert.equal(await active(tab), await record.evaluate((one) => one.getAttribute('aria-label') ?? one.textContent));
  assert.equal(await record.getAttribute('aria-invalid'), 'true');
  assert.match(await tab.locator('.notices').innerText(), /To fix/);
  await shot(tab, 'figure-misread');
  await context.close();
});

test('a comma in a metric figure is a decimal point', async () => {
  const { tab, context } = await begun([]);
  await tab.getByLabel('Tape in').selectOption('meters');
  await settled(tab);
  await walk(tab, [['back', '9.35'], ['right', '12.40'], ['front', '9.35'], ['left', '12.40']]);
  await tab.getByLabel('The record says').fill('95,4');
  await settled(tab);
  assert.equal(await tab.getByLabel('The record says').getAttribute('aria-invalid'), 'false');
  // 9.35 × 12.40 = 115.94
  assert.match(await tab.locator('.opening').textContent(), /Record 95\.4 sq m/);
  await tab.setViewportSize({ width: 320, height: 640 });
  const cut = await feet(tab, 2).evaluate((one) => one.scrollWidth - one.clientWidth);
  assert.ok(cut <= 0, String(cut));
  await shot(tab, 'metric-320');
  await context.close();
});

test('feet and inches in exchanged places are offered in both readings, and stand in their boxes', async () => {
  const { tab, context } = await begun([['back', '6', '24', '1/4'], ['right', '42']]);
  await feet(tab, 2).focus();
  await settled(tab);
  assert.deepEqual(await lengthOf(tab, 1), ['6', '24', '1/4']);
  assert.match(await row(tab, 1).innerText(), /feet and inches exchanged/);
  assert.ok(await row(tab, 1).getByRole('button', { name: `Use back 8' 1/4"` }).isVisible());
  await shot(tab, 'exchanged');
  await row(tab, 1).getByRole('button', { name: `Use back 24' 6 1/4"` }).click();
  await settled(tab);
  assert.deepEqual(await lengthOf(tab, 1), ['24', '6', '1/4']);
  // The focus is at what was mended.
  assert.equal(await active(tab), 'Wall 1: feet, or a whole length');
  await context.close();
});

test('the order of the keyboard is that of the screen, and a mended figure has the focus', async () => {
  const { tab, context } = await begun([['back', '28'], ['right', '42x'], ['front', '28'], ['left', '42']]);
  await feet(tab, 2).focus();
  await settled(tab);
  const order = await row(tab, 2).evaluate((one) => [...one.querySelectorAll('button')].map((each) => each.textContent));
  assert.ok(order.indexOf('Photo') < order.findIndex((text) => text.startsWith('Use ')), order.join());
  await row(tab, 2).getByRole('button', { name: /^Use / }).first().focus();
  await tab.keyboard.press('Enter');
  await settled(tab);
  assert.equal(await active(tab), 'Wall 2: feet, or a whole length');
  await tab.getByLabel('The record says').fill('about 1200');
  await settled(tab);
  await tab.locator('#wrong-record').getByRole('button').first().focus();
  await tab.keyboard.press('Enter');
  await settled(tab);
  assert.equal(await tab.evaluate(() => document.activeElement.name), 'record');
  assert.match(await tab.getByLabel('The record says').inputValue(), /1200/);
  // After an answer the next question is at hand.
  await button(tab, 'No').focus();
  await tab.keyboard.press('Enter');
  assert.equal(await active(tab), 'Yes, add it');
  await context.close();
});

test('from the figures it is a few keys to the PDF, past all walls', async () => {
  const { tab, context } = await begun(BOX);
  await tab.getByLabel('The record says').focus();
  let keys = 0;
  while ((await active(tab)) !== 'Pages' && keys < 20) {
    await tab.keyboard.press('Tab');
    keys++;
  }
  assert.ok(keys < 12, String(keys));
  await shot(tab, 'jump-laptop');
  await tab.keyboard.press('Enter');
  assert.equal(await active(tab), 'Make the PDF');
  await context.close();
  const phone = await begun(BOX, { viewport: PHONE, hasTouch: true, isMobile: true });
  await feet(phone.tab, 4).scrollIntoViewIfNeeded();
  await shot(phone.tab, 'jump-phone');
  await phone.tab.getByRole('button', { name: 'The answer', exact: true }).tap();
  assert.ok(await phone.tab.locator('.answer').evaluate((one) => one.getBoundingClientRect().top >= -2 && one.getBoundingClientRect().top < innerHeight / 2));
  await phone.context.close();
});

test('Ctrl+Z brings back a wall that was removed, also after the page was opened anew', async () => {
  const { tab, context } = await begun(BOX);
  for (const key of ['Control+z', 'Control+Z']) {
    await feet(tab, 2).focus();
    await button(tab, 'Remove').click();
    await settled(tab);
    assert.equal(await tab.locator('ol.sides > li').count(), 3);
    await tab.keyboard.press(key);
    await settled(tab);
    assert.equal(await tab.locator('ol.sides > li').count(), 4);
    assert.deepEqual(await lengthOf(tab, 2), ['42', '0', '']);
  }
  await feet(tab, 2).focus();
  await button(tab, 'Remove').click();
  await settled(tab);
  await tab.reload();
  await tab.getByRole('button', { name: 'Go on with' }).click();
  await settled(tab);
  await button(tab, 'Undo').click();
  await settled(tab);
  assert.deepEqual(await lengthOf(tab, 2), ['42', '0', '']);
  await context.close();
});

test('a walk is spoken of in one tongue', async () => {
  const { tab, context } = await begun([['back', '30'], ['right', '20'], ['right', '20'], ['front', 'closing'], ['left', '40']]);
  const said = await tab.locator('.opening').innerText();
  assert.match(said, /between wall 2 \("right 20'"\) and wall 3 \("right 20'"\) the walk does not turn/);
  assert.doesNotMatch(said, /\b(Line|side|north|east|south|west)\b/);
  await shot(tab, 'no-turn');
  await context.close();
  // The last wall runs the wrong way.
  const wrong = await begun([['back', '30'], ['right', '40'], ['front', '30'], ['right', 'closing']]);
  await button(wrong.tab, 'That was the last wall: what is wrong?').first().click().catch(() => undefined);
  await settled(wrong.tab);
  const told = await wrong.tab.locator('.notices').innerText();
  assert.match(told, /40' to the left/);
  assert.doesNotMatch(told, /\b(Line|side|north|east|south|west)\b/);
  await wrong.context.close();
});

test('whatever begins at no corner says which way and how far from the first one', async () => {
  const { tab, context } = await begun(BOX, { viewport: LAPTOP, bypassCSP: true });
  await tab.getByRole('button', { name: 'Add a space' }).click();
  const form = tab.locator('.further');
  await form.locator('label', { hasText: 'Level' }).locator('select').selectOption('');
  for (const name of ['Way 1 from the first corner', 'Length 1, blank if it begins right there', 'Way 2 from the first corner', 'Length 2, blank if it begins right there']) assert.ok(await form.getByText(name, { exact: true }).isVisible());
  await form.getByLabel('Length 1').fill('5');
  await form.getByLabel('Length 2').fill('6 1/2"');
  await accessible(tab, 'a further space');
  await shot(tab, 'first-corner');
  await button(tab, 'Add').click();
  await settled(tab);
  assert.match(String((await fileOf(tab, 'Save the sides file')).bytes), /start east 5' north 6 1\/2"/);
  await context.close();
});

test('an upper floor is asked about as a garage is', async () => {
  const { tab, context } = await begun(BOX);
  await button(tab, 'No').click();
  await tab.getByText('Is there an upper floor?').waitFor();
  await shot(tab, 'upper-floor');
  await button(tab, 'Yes, add it').click();
  const form = tab.locator('.further');
  assert.equal(await form.getByLabel('What it is').inputValue(), 'living');
  await button(tab, 'Add').click();
  await settled(tab);
  assert.equal(await tab.locator('.question').textContent(), '');
  await walk(tab, BOX);
  // Two floors of 28 × 42
  assert.match(await tab.locator('.opening').textContent(), /Measured 2,352 sq ft/);
  assert.equal(await tab.getByText('This walk is back at its start.').count(), 2);
  await context.close();
});

test('a sides file is said to be one, and a forged page what to do first', async () => {
  const { tab, troubles, context } = await begun(BOX, { viewport: PHONE, bypassCSP: true });
  await tab.getByLabel('The record says').fill('1,100');
  await settled(tab);
  const { bytes: sides } = await fileOf(tab, 'Save the sides file');
  const pdf = await fileOf(tab, 'Make the PDF');
  assert.equal(pdf.name, 'house-record-1100.pdf');
  await tab.getByLabel('The record says').fill('1,105');
  await settled(tab);
  assert.equal((await fileOf(tab, 'Make the PDF')).name, 'house-record-1105.pdf');
  await tab.locator('.home').click();
  const verdict = tab.locator('.checked');
  await chosen(tab, 'Check a page', 'house.pdf', pdf.bytes);
  await tab.locator('.checked.genuine').waitFor();
  assert.ok(await tab.locator('.verdict').evaluate((one) => one.getBoundingClientRect().bottom <= innerHeight));
  await chosen(tab, 'Check a page', 'house.sides', sides);
  await tab.getByText('A sides file, not a page').waitFor();
  assert.equal(await tab.locator('.checked').count(), 1);
  await accessible(tab, 'a sides file that was checked');
  await shot(tab, 'checked-sides');
  const forged = Buffer.from(pdf.bytes);
  forged[Math.floor(forged.length / 2)] ^= 1;
  await chosen(tab, 'Check a page', 'forged.pdf', forged);
  await tab.getByText('First ask whoever sent it').waitFor();
  assert.match(await verdict.innerText(), /nothing printed on it can be relied on/);
  await shot(tab, 'checked-forged');
  // Another file: what was said before is gone while it is read.
  await chosen(tab, 'Open a file', 'other.sides', sides);
  await tab.getByText('would replace it').waitFor();
  assert.equal(await verdict.count(), 0);
  await button(tab, 'Replace it').click();
  await settled(tab);
  assert.match(await tab.getByLabel('The record says').inputValue(), /1,100/);
  assert.deepEqual(troubles, []);
  await context.close();
});

test('the sum on a notepad is said beside the measured area', async () => {
  const { tab, context } = await begun([['back', '28', '3', '1/4'], ['right', '42', '7', '3/4'], ['front', '28', '3', '1/4'], ['left', '42', '7', '3/4']]);
  // 28' 3 1/4" × 42' 7 3/4" = 1,205.6; by tenths 28.3 × 42.6 = 1,205.58. Both are 1,206.
  assert.doesNotMatch(await tab.locator('.opening').textContent(), /Before any rounding/);
  await row(tab, 1).locator('.inches').fill('4');
  await row(tab, 3).locator('.inches').fill('4');
  await settled(tab);
  // 28' 4 1/4" × 42' 7 3/4" = 1,209.15; by tenths 28.4 × 42.6 = 1,209.84.
  assert.match(await tab.locator('.opening').textContent(), /Measured area 1,210 sq ft|1,210 sq ft[^]*Before any rounding it is 1,209 sq ft/);
  await context.close();
});

test('corners of spaces at one place do not lie over each other', async () => {
  const { tab, context } = await begun(BOX);
  await button(tab, 'Yes, add it').click();
  await tab.locator('.drawing .corner').nth(3).dispatchEvent('click');
  await button(tab, 'Add').click();
  await settled(tab);
  await walk(tab, [['left', '20'], ['back', '20'], ['right', '20'], ['front', '20']]);
  await tab.getByRole('button', { name: 'Add a space' }).click();
  const circles = await tab.locator('.drawing .corner').evaluateAll((all) => all.map((one) => ['cx', 'cy', 'r'].map((key) => Number(one.getAttribute(key)))));
  assert.equal(circles.length, 8);
  for (const [i, [x, y, r]] of circles.entries()) {
    for (const [otherX, otherY] of circles.slice(i + 1)) assert.ok(Math.hypot(x - otherX, y - otherY) > 1.9 * r, `corner ${i + 1}`);
  }
  await shot(tab, 'corners-apart');
  await context.close();
});

test('a touch enlarges a page on a phone, and nothing else moves sideways', async () => {
  const { tab, context } = await begun(BOX, { viewport: PHONE, hasTouch: true, isMobile: true });
  await button(tab, 'Look at the pages').tap();
  const image = tab.locator('.leaf img');
  await image.waitFor();
  const width = async () => (await image.boundingBox()).width;
  const small = await width();
  await image.tap();
  // 54 rem
  assert.equal(await width(), 864);
  assert.ok(await tab.evaluate(() => document.documentElement.scrollWidth <= innerWidth));
  await shot(tab, 'page-large');
  await image.tap();
  assert.equal(await width(), small);
  await context.close();
});

test('everything new is seen in light and dark, on a phone and a laptop', async () => {
  for (const colorScheme of ['light', 'dark']) {
    for (const [size, viewport] of [['phone', PHONE], ['laptop', LAPTOP]]) {
      const { tab, troubles, context } = await begun([['back', '6', '24', '1/4'], ['right', '42']], { viewport, colorScheme, bypassCSP: true });
      await tab.getByLabel('The record says').fill('12o0');
      await tab.locator('#wrong-record .notice').waitFor();
      await accessible(tab, `mistakes, ${size}, ${colorScheme}`);
      await shot(tab, `new-mistakes-${size}-${colorScheme}`);
      await row(tab, 1).getByRole('button', { name: `Use back 24' 6 1/4"` }).click();
      await tab.getByLabel('The record says').fill('1,500');
      await walk(tab, [['front', '24', '6', '1/4'], ['left', '42']]);
      await button(tab, 'No').click();
      await tab.getByText('Is there an upper floor?').waitFor();
      await accessible(tab, `the second question, ${size}, ${colorScheme}`);
      await shot(tab, `new-answer-${size}-${colorScheme}`);
      assert.deepEqual(troubles, []);
      await context.close();
    }
  }
});

test('a wall that is missing is inserted from the keyboard, and its length is typed next', async () => {
  // 30' back, 24' 6" and 14' 9" right, 22' 9" front: the 7' 3" between them is missing.
  const { tab, troubles, context } = await begun([['back', '30'], ['right', '24', '6'], ['right', '14', '9'], ['front', '22', '9'], ['left', '39', '3']]);
  if (await button(tab, 'That was the last wall: what is wrong?').count()) await button(tab, 'That was the last wall: what is wrong?').first().click();
  await settled(tab);
  const insert = tab.locator('.notices').getByRole('button', { name: 'Insert a wall toward the street after wall 2' });
  await insert.focus();
  await tab.keyboard.press('Enter');
  await settled(tab);
  assert.equal(await active(tab), 'Wall 3: feet, or a whole length');
  assert.equal(await tab.getByLabel('Wall 3: way').inputValue(), 'front');
  await tab.keyboard.type(`7'3`, { delay: 30 });
  await tab.getByLabel('Address').focus();
  await settled(tab);
  assert.equal(await tab.locator('.still').textContent(), 'Back at the start.');
  assert.deepEqual(troubles, []);
  await context.close();
});

test('the focus stays at the walls after one is removed by a repair', async () => {
  const { tab, context } = await begun([['back', '28'], ['right', '42'], ['front', '28'], ['left', '42'], ['left', '42']]);
  if (await button(tab, 'That was the last wall: what is wrong?').count()) await button(tab, 'That was the last wall: what is wrong?').first().click();
  await settled(tab);
  const remove = tab.locator('.notices').getByRole('button', { name: 'Remove wall 5' });
  await remove.focus();
  await tab.keyboard.press('Enter');
  await settled(tab);
  assert.equal(await tab.locator('ol.sides > li').count(), 4);
  assert.equal(await active(tab), 'Wall 4: feet, or a whole length');
  await context.close();
});
