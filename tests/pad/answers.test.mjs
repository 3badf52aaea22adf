// What people looked for and did not find: an answer, a button, the wall that a message names.
import assert from 'node:assert/strict';
import fs from 'node:fs';
import { after, before, test } from 'node:test';
import { LAPTOP, PHONE, accessible, browser, opened, settled, shot, walk } from './browser.mjs';

const BOX = [['back', '28'], ['right', '42'], ['front', '28'], ['left', '42']];
/// Twelve walls. Wall 9 is 9' 1 1/2".
const TWELVE = [
  ['back', '20'], ['right', '12'], ['back', '10'], ['right', '10'], ['back', '3', '7', '1/8'], ['right', '18'],
  ['front', '12'], ['left', '8'], ['front', '9', '1', '1/2'], ['left', '16'], ['front', '12', '5', '5/8'], ['left', '16'],
];
/// The same with the feet and the inches of wall 9 exchanged.
const EXCHANGED = TWELVE.map((side, i) => (i === 8 ? ['front', '1', '9', '1/2'] : side));

let chrome;
before(async () => (chrome = await browser()));
after(() => chrome.close());

const button = (tab, name) => tab.getByRole('button', { name, exact: true });
const row = (tab, n) => tab.locator('ol.sides > li').nth(n - 1);
const lengthOf = (tab, n) => row(tab, n).locator('.length input, .length select').evaluateAll((all) => all.map((one) => one.value));
const active = (tab) => tab.evaluate(() => document.activeElement.getAttribute('aria-label') ?? document.activeElement.textContent);

async function begun(sides, options = { viewport: LAPTOP }) {
  const page = await opened(chrome, options);
  await page.tab.getByRole('button', { name: /Measure a house/ }).click();
  await walk(page.tab, sides);
  return page;
}

async function recorded(tab, figure) {
  await tab.getByLabel('The record says').fill(figure);
  await tab.getByLabel('The record says').blur();
  await settled(tab);
}

async function chosen(tab, name, file, bytes) {
  const [chooser] = await Promise.all([tab.waitForEvent('filechooser'), tab.getByRole('button', { name }).click()]);
  await chooser.setFiles({ name: file, mimeType: 'application/octet-stream', buffer: Buffer.from(bytes) });
}

async function fileOf(tab, name) {
  const [file] = await Promise.all([tab.waitForEvent('download'), button(tab, name).click()]);
  return { name: file.suggestedFilename(), bytes: fs.readFileSync(await file.path()) };
}

test('whatever the record says, the answer says what follows', async () => {
  const { tab, troubles, context } = await begun([['back', '30', '5'], ['right', '40', '3'], ['front', '30', '5'], ['left', '40', '3']]);
  // 1,200: rounding alone; 1,255: nothing common; 1,000: smaller; 1,240: near the half foot.
  for (const [figure, said] of [
    ['1,200', /rounding alone could explain it/i],
    ['1,240', /rounding alone could explain it/i],
    ['1,255', /./],
    ['1,000', /Possible/],
    ['900', /./],
    ['700', /./],
    ['1,700', /./],
  ]) {
    await recorded(tab, figure);
    const answer = await tab.locator('.opening .likely').allInnerTexts();
    assert.ok(answer.some((one) => !/Before any rounding/.test(one) && said.test(one)), `${figure}: ${answer}`);
  }
  await recorded(tab, '1,224');
  assert.match(await tab.locator('.opening').innerText(), /agree within 1 sq ft/);
  assert.doesNotMatch(await tab.locator('.opening').innerText(), /not explained/);
  await recorded(tab, '1,225');
  assert.match(await tab.locator('.opening').innerText(), /No difference\./);
  assert.deepEqual(troubles, []);
  await context.close();
});

for (const [size, viewport] of [['laptop', LAPTOP], ['phone', PHONE]]) {
  test(`the error that fits exactly is undone by a button, on a ${size}`, async () => {
    const { tab, troubles, context } = await begun(EXCHANGED, { viewport, bypassCSP: true });
    await button(tab, 'That was the last wall: what is wrong?').first().click().catch(() => undefined);
    await settled(tab);
    const notices = tab.locator('.answer .notices');
    assert.match(await notices.innerText(), /still 7' 4" toward the street/);
    assert.equal(await tab.locator('ol.sides .notice').count(), 1);
    assert.match(await row(tab, 9).innerText(), /feet and inches exchanged\?/);
    await accessible(tab, 'a wall to measure again');
    await shot(tab, `exchanged-${size}`);
    // The wall that is named first is a link to its row.
    await notices.getByRole('button', { name: 'wall 9', exact: true }).first().click();
    assert.equal(await active(tab), 'Wall 9: feet, or a whole length');
    assert.ok(await row(tab, 9).evaluate((li) => li.getBoundingClientRect().top >= 0 && li.getBoundingClientRect().bottom <= innerHeight));
    await row(tab, 9).getByRole('button', { name: `Use front 9' 1 1/2"` }).click();
    await tab.getByText('Back at the start.').waitFor();
    assert.deepEqual(await lengthOf(tab, 9), ['9', '1', '1/2']);
    assert.deepEqual(troubles, []);
    await context.close();
  });
}

test('a wall that goes the other way, or is there twice, has its button too', async () => {
  const turned = await begun(TWELVE.map(([way, ...length], i) => (i === 3 ? ['left', ...length] : [way, ...length])));
  await button(turned.tab, 'That was the last wall: what is wrong?').first().click().catch(() => undefined);
  await settled(turned.tab);
  await turned.tab.locator('.answer .notices').getByRole('button', { name: "Use right 10'", exact: true }).click();
  await turned.tab.getByText('Back at the start.').waitFor();
  await turned.context.close();
  const twice = await begun([...TWELVE.slice(0, 4), ...TWELVE.slice(3)]);
  await button(twice.tab, 'That was the last wall: what is wrong?').first().click().catch(() => undefined);
  await settled(twice.tab);
  await twice.tab.locator('.answer .notices').getByRole('button', { name: 'Remove wall 5', exact: true }).click();
  await twice.tab.getByText('Back at the start.').waitFor();
  assert.equal(await twice.tab.locator('ol.sides > li').count(), 12);
  await twice.context.close();
});

test('a wall that is named below the drawing is a link to its row', async () => {
  const { tab, context } = await begun([['back', '28'], ['right', '42'], ['front', 'closing'], ['left', '42']]);
  await tab.locator('.unchecked').getByRole('button', { name: 'Wall 3', exact: true }).click();
  assert.ok(await row(tab, 3).evaluate((li) => li.contains(document.activeElement)));
  await context.close();
});

test('feet and a fraction after a blank are asked about, and never taken for inches', async () => {
  const { tab, troubles, context } = await begun(BOX.slice(0, 2));
  const typed = async (keys) => {
    await row(tab, 1).locator('.feet').click();
    await tab.keyboard.press('Control+A');
    await tab.keyboard.type(keys, { delay: 30 });
    await row(tab, 2).locator('.feet').focus();
    await settled(tab);
  };
  await typed('22 1/2');
  assert.match(await row(tab, 1).innerText(), /is that part of a foot, or of an inch\?/);
  await shot(tab, 'half-a-foot');
  await row(tab, 1).getByRole('button', { name: `Use back 22' 6"` }).click();
  await settled(tab);
  assert.deepEqual(await lengthOf(tab, 1), ['22', '6', '']);
  // With a mark there is nothing to ask; and nobody says a sixteenth of feet.
  for (const [keys, shown] of [[`22' 1/2"`, ['22', '', '1/2']], ['22 1/2"', ['22', '', '1/2']], ['22 3/16', ['22', '', '3/16']], ['22 6 1/2', ['22', '6', '1/2']]]) {
    await typed(keys);
    assert.deepEqual(await lengthOf(tab, 1), shown, keys);
    assert.equal(await row(tab, 1).locator('.notice').count(), 0, keys);
  }
  assert.deepEqual(troubles, []);
  await context.close();
});

/// 28.10 on both walls closes, so that nothing but the question tells that 28' 10" was meant.
test('a point between feet and inches is asked about above the answer', async () => {
  const { tab, context } = await begun([['back', '28.10'], ['right', '34', '6'], ['front', '28.10'], ['left', '34', '6']]);
  const asked = tab.locator('.notices');
  assert.match(await asked.innerText(), /28\.10/);
  assert.match(await tab.locator('.opening').innerText(), /Measured 969 sq ft/);
  for (const way of ['back', 'front']) {
    await asked.getByRole('button', { name: `Use ${way} 28' 10"` }).first().click();
    await settled(tab);
  }
  assert.equal(await asked.innerText(), '');
  // 28' 10" by 34' 6" are 994.75; to the tenth, 28.8 by 34.5 are 993.6.
  assert.match(await tab.locator('.opening').innerText(), /Measured 994 sq ft/);
  await context.close();
});

test('an upper floor may be begun without a place, and is told in the words of the rows', async () => {
  const { tab, context } = await begun(BOX);
  await button(tab, 'No').click();
  await button(tab, 'Yes, add it').click();
  await shot(tab, 'upper-floor-form');
  await button(tab, 'Add').click();
  await settled(tab);
  await walk(tab, [['right', '22'], ['front', '20'], ['left', '22'], ['back', '20']]);
  assert.match(await tab.locator('.opening').innerText(), /Measured 1,616 sq ft/);
  const below = tab.locator('.report .worth');
  const said = await below.innerText();
  assert.match(said, /nothing says where Upper floor stands: it fits over Ground floor 20' toward the back/);
  assert.doesNotMatch(await tab.locator('.report').innerText(), /\b[Ll]ine \d|\b(north|east|south|west)\b/);
  await shot(tab, 'upper-floor-placed');
  await below.getByRole('button', { name: 'Put it there' }).click();
  await settled(tab);
  assert.equal(await below.innerText(), '');
  assert.match(String((await fileOf(tab, 'Save the sides file')).bytes), /living "Upper floor" start north 20'/);
  await context.close();
});

test('pages that are made again have the name of the house and of the new record', async () => {
  for (const [address, name] of [['', 'house'], ['7 Oak Lane', '7-oak-lane']]) {
    const { tab, context } = await begun(BOX);
    if (address) await tab.getByLabel('Address').fill(address);
    await recorded(tab, '1,200');
    const pdf = await fileOf(tab, 'Make the PDF');
    assert.equal(pdf.name, `${name}-record-1200.pdf`);
    await tab.locator('.home').click();
    await chosen(tab, /Open a file/, pdf.name.replace('.pdf', ' (1).pdf'), pdf.bytes);
    await settled(tab);
    await recorded(tab, '1,210.5');
    assert.equal((await fileOf(tab, 'Make the PDF')).name, `${name}-record-1210.5.pdf`);
    await context.close();
  }
});

test('Enter pressed twice forgets nothing', async () => {
  const { tab, context } = await begun(BOX);
  await button(tab, 'Forget it').focus();
  await tab.keyboard.press('Enter');
  await tab.locator('dialog[open]').waitFor();
  assert.equal(await active(tab), 'Close');
  await tab.keyboard.press('Enter');
  assert.equal(await tab.locator('dialog[open]').count(), 0);
  assert.equal(await tab.locator('ol.sides > li').count(), 4);
  await button(tab, 'Begin a new house').click();
  assert.match(await active(tab), /Go on/);
  await context.close();
});

test('a page whose sides were changed inside is said to be changed', async () => {
  const { tab, context } = await begun(BOX, { viewport: PHONE });
  await recorded(tab, '1,200');
  const sides = String((await fileOf(tab, 'Save the sides file')).bytes);
  assert.ok(sides.includes("east 42'"));
  await button(tab, 'Look at the pages').click();
  const page = await tab.evaluate(async (text) => (await window.fairfoot.svg('house.sides', text, false, new Map())).svg[0], sides);
  const changed = page.replace('    east 42&apos;', '    east 43&apos;');
  assert.notEqual(changed, page);
  await tab.locator('.home').click();
  await chosen(tab, 'Check a page', 'changed.svg', changed);
  const checked = tab.locator('.checked');
  await checked.waitFor();
  const said = await checked.innerText();
  assert.match(said, /Not as made: nothing printed on it can be relied on\./);
  assert.match(said, /The sides inside were changed too and make no page: "House"/);
  assert.doesNotMatch(said, /`|No sides inside/);
  await shot(tab, 'changed-inside');
  await button(tab, 'Open these sides').click();
  await button(tab, 'Replace it').click();
  await settled(tab);
  assert.equal(await tab.locator('ol.sides > li').count(), 4);
  await context.close();
});

test('numbers of corners that lie close together stand apart', async () => {
  for (const viewport of [PHONE, LAPTOP]) {
    const { tab, context } = await begun([['back', '30'], ['right', '40'], ['front', '30'], ['left', '40']], { viewport });
    for (const [kind, sides] of [['garage', [['back', '20'], ['right', '1'], ['front', '20'], ['left', '1']]], ['porch', [['front', '2'], ['right', '3'], ['back', '2'], ['left', '3']]]]) {
      await tab.getByRole('button', { name: 'Add a space' }).click();
      await tab.locator('.further').getByLabel('What it is').selectOption(kind);
      await button(tab, 'Add').click();
      await settled(tab);
      await walk(tab, sides);
    }
    await tab.getByRole('button', { name: 'Add a space' }).click();
    const circles = await tab.locator('.drawing .corner').evaluateAll((all) => all.map((one) => ['cx', 'cy', 'r'].map((name) => Number(one.getAttribute(name)))));
    assert.equal(circles.length, 12);
    circles.forEach(([x, y, r], i) =>
      circles.slice(i + 1).forEach(([otherX, otherY], j) => assert.ok(Math.hypot(x - otherX, y - otherY) >= 2 * r, `${i + 1} and ${i + 2 + j}`)));
    await shot(tab, `corners-${viewport.width}`);
    await context.close();
  }
});

test('the up and down keys go from wall to wall', async () => {
  const { tab, context } = await begun(BOX);
  await row(tab, 2).locator('.inches').focus();
  await tab.keyboard.press('ArrowDown');
  assert.equal(await active(tab), 'Wall 3: inches');
  await tab.keyboard.press('ArrowUp');
  await tab.keyboard.press('ArrowUp');
  assert.equal(await active(tab), 'Wall 1: inches');
  for (let i = 0; i < 4; i++) await tab.keyboard.press('ArrowDown');
  assert.equal(await active(tab), 'back');
  assert.deepEqual(await lengthOf(tab, 1), ['28', '0', '']);
  await context.close();
});

test('an answer that is being changed says at once that it is old', async () => {
  const { tab, context } = await begun(BOX);
  await recorded(tab, '1,200');
  assert.equal(await tab.locator('.answer .older').count(), 0);
  await tab.getByLabel('The record says').press('Control+a');
  await tab.keyboard.type('1,300');
  assert.match(await tab.locator('.answer .older').innerText(), /before the last change/);
  await settled(tab);
  assert.equal(await tab.locator('.answer .older').count(), 0);
  assert.match(await tab.locator('.opening').innerText(), /Record 1,300/);
  await context.close();
});

test('the focus covers no mark of feet or inches', async () => {
  const { tab, context } = await begun(BOX, { viewport: PHONE });
  await row(tab, 2).locator('.feet').focus();
  await tab.keyboard.press('Tab');
  const clear = await row(tab, 2).locator('.inches').evaluate((input) => {
    const { outlineOffset, outlineWidth } = getComputedStyle(input);
    return Number.parseFloat(outlineOffset) + Number.parseFloat(outlineWidth);
  });
  assert.ok(clear <= 0, String(clear));
  await context.close();
});
