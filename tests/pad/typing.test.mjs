// What people ran into while they typed a house on a phone and on a laptop.
import assert from 'node:assert/strict';
import fs from 'node:fs';
import { after, before, test } from 'node:test';
import { LAPTOP, PHONE, accessible, browser, opened, settled, shot, walk } from './browser.mjs';

const TOUCH = { viewport: PHONE, hasTouch: true, isMobile: true, deviceScaleFactor: 2 };
const BOX = [['back', '28'], ['right', '42'], ['front', '28'], ['left', '42']];
/// Twelve walls, some of them short.
const JOGS = [['back', '30', '6'], ['right', '12'], ['back', '8', '3'], ['right', '20', '4', '1/2'], ['front', '6', '9'], ['right', '16', '2', '1/4'], ['front', '26'], ['left', '10', '6'], ['back', '4'], ['left', '14'], ['front', '10'], ['left', '24', '0', '3/4']];
const GARAGE = [['left', '20'], ['back', '20'], ['right', '20'], ['front', '20']];

let chrome;
before(async () => (chrome = await browser()));
after(() => chrome.close());

const button = (tab, name) => tab.getByRole('button', { name, exact: true });

async function begun(options, sides, record = '1,100') {
  const page = await opened(chrome, options);
  await page.tab.getByRole('button', { name: /Measure a house/ }).click();
  if (record) await page.tab.getByLabel('The record says').fill(record);
  await walk(page.tab, sides);
  return page;
}

/// A house with a garage inside its walk, added after the question what lies inside.
async function withGarage(record) {
  const page = await begun({ viewport: LAPTOP }, BOX, record);
  await button(page.tab, 'Yes, add it').click();
  await page.tab.locator('.drawing .corner').nth(3).dispatchEvent('click');
  await button(page.tab, 'Add').click();
  await settled(page.tab);
  await walk(page.tab, GARAGE);
  return page;
}

/// The sides inside a PDF that was saved.
async function sidesOf(tab, work) {
  const [file] = await Promise.all([tab.waitForEvent('download'), work()]);
  const bytes = [...fs.readFileSync(await file.path())];
  return tab.evaluate(async (bytes) => (await window.fairfoot.open('a.pdf', Uint8Array.from(bytes))).text, bytes);
}

/// Presses a button the way a phone does that leaves the focus where it is.
const pressed = (tab, name) => tab.getByRole('button', { name, exact: true }).evaluate((one) => one.click());

/// Touches a field and types over what stands in it.
async function typedOver(tab, field, keys) {
  await field.tap();
  await field.selectText();
  await tab.keyboard.type(keys);
}

test('the PDF has the record that is still being typed', async () => {
  const { tab, troubles, context } = await begun(TOUCH, BOX);
  const record = tab.getByLabel('The record says');
  await typedOver(tab, record, '1,050');
  assert.match(await sidesOf(tab, () => button(tab, 'Make the PDF').tap()), /record 1,050 sq ft/);
  await typedOver(tab, record, '1,060');
  assert.match(await sidesOf(tab, () => pressed(tab, 'Make the PDF')), /record 1,060 sq ft/);
  await typedOver(tab, tab.getByLabel('Address'), '4 Larch Lane');
  assert.match(await sidesOf(tab, () => pressed(tab, 'Make the PDF')), /property "4 Larch Lane"/);
  await typedOver(tab, tab.getByLabel('Called').first(), 'Main');
  assert.match(await sidesOf(tab, () => pressed(tab, 'Make the PDF')), /living "Main"/);
  assert.deepEqual(troubles, []);
  await context.close();
});

test('the PDF has the wall that is still being typed', async () => {
  const { tab, context } = await begun(TOUCH, BOX);
  const feet = (n) => tab.locator('input.feet').nth(n);
  await typedOver(tab, feet(1), '44');
  await typedOver(tab, feet(3), '44');
  assert.match(await sidesOf(tab, () => pressed(tab, 'Make the PDF')), /east 44'\n[^]*west 44'/);
  await typedOver(tab, feet(3), '45');
  const [saved] = await Promise.all([tab.waitForEvent('download'), pressed(tab, 'Save the sides file')]);
  assert.match(fs.readFileSync(await saved.path(), 'utf8'), /west 45'/);
  await context.close();
});

test('the pages on the screen, and those ready to print, are never of an older text', async () => {
  const { tab, context } = await begun(TOUCH, BOX);
  await tab.evaluate(() => (window.print = () => undefined));
  await typedOver(tab, tab.getByLabel('Address'), '4 Larch Lane');
  const drawn = tab.evaluate(() => {
    // The text of every page that is made an image.
    const all = [];
    const make = URL.createObjectURL.bind(URL);
    URL.createObjectURL = (blob) => {
      if (blob.type === 'image/svg+xml') all.push(blob.text());
      return make(blob);
    };
    window.pagesMade = () => Promise.all(all.splice(0));
  });
  await drawn;
  await pressed(tab, 'Look at the pages');
  await tab.getByText(/Page 1 of/).waitFor();
  assert.match((await tab.evaluate(() => window.pagesMade())).join(), /4 Larch Lane/);
  await typedOver(tab, tab.getByLabel('Address'), '5 Larch Lane');
  await pressed(tab, 'Print');
  await tab.locator('#paper img').first().waitFor({ state: 'attached' });
  assert.match((await tab.evaluate(() => window.pagesMade())).join(), /5 Larch Lane/);
  await tab.keyboard.type('x');
  await settled(tab);
  assert.equal(await tab.locator('#paper').count(), 0);
  await context.close();
});

test('a house typed here is not replaced, nor forgotten, without a question', async () => {
  const { tab, troubles, context } = await begun({ viewport: LAPTOP }, BOX.slice(0, 2));
  const rows = () => tab.locator('ol.sides > li').count();
  for (const other of [/Measure a house/, /See an example/]) {
    await tab.locator('.home').click();
    await tab.getByRole('button', { name: other }).click();
    await tab.getByText('would replace it').waitFor();
    const [saved] = await Promise.all([tab.waitForEvent('download'), tab.locator('dialog[open]').getByRole('button', { name: 'Save the sides file' }).click()]);
    assert.match(fs.readFileSync(await saved.path(), 'utf8'), /north 28'/);
    await tab.locator('dialog[open]').getByRole('button', { name: 'Go on with the house kept here' }).click();
    await settled(tab);
    assert.equal(await rows(), 2);
  }
  await button(tab, 'Forget it').click();
  await tab.getByText('would be gone').waitFor();
  await tab.keyboard.press('Escape');
  await tab.reload();
  await tab.getByRole('button', { name: 'Go on with' }).click();
  await settled(tab);
  assert.equal(await rows(), 2);
  await tab.locator('.home').click();
  await tab.getByRole('button', { name: /Measure a house/ }).click();
  await button(tab, 'Replace it').click();
  await settled(tab);
  assert.equal(await rows(), 0);
  // Nothing was typed into this one, so nothing is asked.
  await tab.locator('.home').click();
  await tab.getByRole('button', { name: /See an example/ }).click();
  await settled(tab);
  assert.match(await tab.locator('.opening').textContent(), /Measured 1,757 sq ft/);
  assert.deepEqual(troubles, []);
  await context.close();
});

test('a walk that just closed is asked what lies inside, before the caution', async () => {
  const { tab, context } = await begun({ viewport: LAPTOP }, BOX.slice(0, 3));
  const question = tab.getByText('Is a garage or a porch inside this walk?');
  assert.equal(await question.count(), 0);
  await walk(tab, BOX.slice(3));
  await question.waitFor();
  const isFirst = () => tab.evaluate(() => {
    const [question, caution] = ['.question', '.caution'].map((one) => document.querySelector(one));
    return (question.compareDocumentPosition(caution) & Node.DOCUMENT_POSITION_FOLLOWING) > 0;
  });
  assert.ok(await isFirst());
  await shot(tab, 'question');
  await button(tab, 'Yes, add it').click();
  assert.ok(await tab.getByText('Inside the walk of House').isVisible());
  assert.ok(await tab.locator('.further input[type=checkbox]').isChecked());
  await tab.locator('.drawing .corner').nth(3).dispatchEvent('click');
  await button(tab, 'Add').click();
  await settled(tab);
  await walk(tab, GARAGE);
  // 28 × 42 less 20 × 20
  assert.match(await tab.locator('.opening').textContent(), /Measured 776 sq ft/);
  assert.equal(await question.count(), 0);
  await context.close();
});

test('the questions about the inside and an upper floor are answered once', async () => {
  const { tab, context } = await begun({ viewport: LAPTOP }, BOX);
  await button(tab, 'No').click();
  await settled(tab);
  assert.match(await tab.locator('.question').textContent(), /^Is there an upper floor\?/);
  await button(tab, 'No').click();
  await settled(tab);
  assert.equal(await tab.locator('.question').textContent(), '');
  await tab.reload();
  await tab.getByRole('button', { name: 'Go on with' }).click();
  await settled(tab);
  assert.match(await tab.locator('.opening').textContent(), /Measured 1,176 sq ft/);
  assert.equal(await tab.locator('.question').textContent(), '');
  await context.close();
});

test('a garage inside the walk that was not said to be inside is mended by a button', async () => {
  const { tab, context } = await begun({ viewport: LAPTOP }, BOX);
  await tab.getByRole('button', { name: 'Add a space' }).click();
  await tab.locator('.drawing .corner').nth(3).dispatchEvent('click');
  await button(tab, 'Add').click();
  await settled(tab);
  await walk(tab, GARAGE);
  await tab.getByText('cover the same ground').waitFor();
  assert.doesNotMatch(await tab.locator('.notices').innerText(), /\b(north|east|south|west|within)\b/);
  await shot(tab, 'inside');
  await button(tab, 'garage is inside the walk of House').click();
  await settled(tab);
  assert.match(await tab.locator('.opening').textContent(), /Measured 776 sq ft/);
  await context.close();
});

test('a help in a row keeps the inches', async () => {
  const { tab, context } = await begun({ viewport: LAPTOP }, [['back', '28'], ['right', '42', '10'], ['front', '28'], ['left', '42', '10']]);
  await tab.locator('input.feet').nth(3).fill('42x');
  await settled(tab);
  // They stand in their own field, even while the walk is drawn anew.
  assert.equal(await tab.locator('input.inches').nth(3).inputValue(), '10');
  await shot(tab, 'misread');
  await tab.locator('.notices').getByRole('button', { name: 'Use left 42\' 10"' }).click();
  await settled(tab);
  assert.equal(await tab.locator('input.feet').nth(3).inputValue(), '42');
  assert.equal(await tab.locator('input.inches').nth(3).inputValue(), '10');
  await tab.getByText('Back at the start.').waitFor();
  await context.close();
});

test('a foot mark that has no key of its own moves on to the inches', async () => {
  const { tab, context } = await begun(TOUCH, [['back', '28'], ['right', '42', '10']]);
  await tab.locator('input.feet').nth(1).fill("43'");
  assert.equal(await tab.evaluate(() => document.activeElement.className), 'inches');
  await tab.keyboard.type('6');
  await settled(tab);
  assert.deepEqual(await tab.locator('li').nth(1).locator('input').evaluateAll((all) => all.map((one) => one.value)), ['43', '6']);
  await context.close();
});

test('no wall is suspected while the walk is being typed', async () => {
  const jogs = [['right', '24', '6'], ['back', '4'], ['right', '10'], ['front', '10'], ['right', '20', '4'], ['back', '34', '2']];
  const { tab, context } = await begun({ viewport: LAPTOP }, jogs);
  const told = () => tab.locator('.notices').innerText();
  assert.equal(await told(), '');
  assert.equal(await tab.locator('.drawing .again').count(), 0);
  assert.match(await tab.locator('.still').textContent(), /54' 10" to the left and 28' 2" toward the street/);
  await button(tab, 'That was the last wall: what is wrong?').first().click();
  assert.match(await told(), /measure again/);
  assert.equal(await button(tab, 'That was the last wall: what is wrong?').count(), 0);
  // Another wall, and it is being typed again.
  await walk(tab, [['left', '20']]);
  assert.equal(await told(), '');
  await context.close();
});

test('a walk that nearly closes says which wall to measure again, in the words of the rows', async () => {
  const { tab, context } = await begun({ viewport: LAPTOP }, [['back', '28'], ['right', '42'], ['front', '27'], ['left', '42']]);
  const told = await tab.locator('.notices').innerText();
  assert.match(told, /still 1' toward the street/);
  assert.match(told, /measure again: wall 1 \(back 28'\) or wall 3 \(front 27'\)/);
  assert.doesNotMatch(told, /\b(Line|north|east|south|west)\b/);
  await tab.locator('input.feet').nth(1).focus();
  await tab.locator('.notices').getByRole('button', { name: 'House' }).click();
  assert.equal(await tab.evaluate(() => document.activeElement.getAttribute('aria-label')), 'Wall 1: feet, or a whole length');
  // In the sides file it speaks of lines and of the compass.
  await button(tab, 'Sides file').click();
  assert.match(await tab.locator('.notices').innerText(), /Line \d+ [^]*north 28'/);
  await button(tab, 'Rows').click();
  await tab.locator('input.feet').nth(2).fill('28x');
  await settled(tab);
  await tab.locator('input.feet').nth(0).focus();
  await tab.locator('.notices').getByRole('button', { name: 'Wall 3' }).click();
  assert.equal(await tab.evaluate(() => document.activeElement.getAttribute('aria-label')), 'Wall 3: feet, or a whole length');
  await context.close();
});

test('half a figure makes no answer', async () => {
  const { tab, context } = await begun({ viewport: LAPTOP }, BOX, '1,176');
  await tab.evaluate(() => {
    window.cautions = 0;
    new MutationObserver(() => (window.cautions += document.querySelector('.caution').textContent ? 1 : 0)).observe(document.querySelector('.caution'), { childList: true, characterData: true, subtree: true });
  });
  await tab.getByLabel('The record says').click();
  await tab.getByLabel('The record says').selectText();
  // 1 and 12 and 120 are smaller than 1,176.
  await tab.keyboard.type('1200', { delay: 60 });
  await settled(tab);
  assert.match(await tab.locator('.opening').textContent(), /Record 1,200 sq ft/);
  assert.equal(await tab.evaluate(() => window.cautions), 0);
  await context.close();
});

test('a record that cannot be read is marked at its field', async () => {
  const { tab, context } = await begun({ viewport: LAPTOP }, BOX);
  const record = tab.getByLabel('The record says');
  await record.fill('12o0');
  assert.equal(await tab.locator('.notices').innerText(), '');
  await tab.keyboard.press('Tab');
  await settled(tab);
  assert.equal(await record.getAttribute('aria-invalid'), 'true');
  assert.notEqual(await tab.locator('#wrong-record').innerText(), '');
  await shot(tab, 'record-misread');
  await tab.locator('.notices').getByRole('button', { name: 'The record says' }).click();
  assert.equal(await tab.evaluate(() => document.activeElement.name), 'record');
  await record.fill('1,200');
  await tab.keyboard.press('Tab');
  await settled(tab);
  assert.equal(await record.getAttribute('aria-invalid'), 'false');
  assert.equal(await tab.locator('#wrong-record').innerText(), '');
  await context.close();
});

test('the focus stays where somebody works', async () => {
  const { tab, context } = await begun({ viewport: LAPTOP }, [['back', '28'], ['right', '42'], ['front', '28']]);
  const at = () => tab.evaluate(() => document.activeElement.getAttribute('aria-label') ?? document.activeElement.textContent);
  await button(tab, 'Earlier').click();
  await settled(tab);
  assert.equal(await at(), 'Earlier');
  await button(tab, 'Earlier').click();
  await settled(tab);
  assert.deepEqual(await tab.locator('input.feet').evaluateAll((all) => all.map((one) => one.value)), ['28', '28', '42']);
  await button(tab, 'Remove').click();
  await settled(tab);
  assert.equal(await at(), 'Wall 1: way');
  await button(tab, 'Insert below').click();
  await settled(tab);
  assert.equal(await at(), 'Wall 2: feet, or a whole length');
  // Across the wall above it, toward the start, which is 42' to the left.
  assert.equal(await tab.getByLabel('Wall 2: way').inputValue(), 'left');
  await button(tab, 'Undo').click();
  await settled(tab);
  assert.equal(await at(), 'Undo');
  // A field that still holds the focus, and the first wall right after it.
  await tab.locator('.home').click();
  await tab.getByRole('button', { name: /Measure a house/ }).click();
  await button(tab, 'Replace it').click();
  await settled(tab);
  await tab.getByLabel('Address').click();
  await tab.keyboard.type('4 Larch Lane');
  await tab.locator('.next').getByRole('button', { name: 'right' }).click();
  await settled(tab);
  assert.equal(await at(), 'Wall 1: feet, or a whole length');
  await context.close();
});

test('a figure that is being typed is there after the page was closed, and the house that is kept is named', async () => {
  const { tab, context } = await begun({ viewport: LAPTOP }, BOX);
  await tab.getByLabel('Address').fill('4 Larch Lane');
  await settled(tab);
  await tab.getByLabel('The listing says').click();
  await tab.keyboard.type('1,234');
  await tab.reload();
  const goOn = tab.getByRole('button', { name: 'Go on with' });
  assert.match(await goOn.innerText(), /4 Larch Lane/);
  await tab.getByRole('button', { name: /Measure a house/ }).click();
  assert.match(await tab.locator('dialog[open]').innerText(), /4 Larch Lane/);
  await tab.locator('dialog[open]').getByRole('button', { name: 'Go on with' }).click();
  await settled(tab);
  assert.equal(await tab.getByLabel('The listing says').inputValue(), '1,234');
  assert.match((await fileOf(tab, 'Save the sides file')).text, /listing 1,234 sq ft/);
  await context.close();
});

test('a list of walls from a notebook is pasted as a house', async () => {
  const { tab, troubles, context } = await opened(chrome);
  await tab.evaluate(() => {
    const clipboardData = new DataTransfer();
    clipboardData.setData('text/plain', `back 28'\nright 42'\nfront 28'\nleft 42 0\n`);
    document.body.dispatchEvent(new ClipboardEvent('paste', { clipboardData, bubbles: true }));
  });
  await tab.locator('ol.sides > li').nth(3).waitFor();
  await settled(tab);
  await tab.locator('.notices').getByRole('button', { name: "Use left 42'" }).click();
  await settled(tab);
  // 28 × 42
  assert.match(await tab.locator('.report').textContent(), /1,176/);
  assert.deepEqual(troubles, []);
  await context.close();
});

test('a comma on the keypad is a decimal point in meters', async () => {
  const { tab, context } = await begun({ viewport: LAPTOP }, []);
  await tab.getByLabel('Tape in').selectOption('meters');
  await settled(tab);
  await taped(tab, 'back', '10,25');
  assert.equal(await tab.locator('input.feet').inputValue(), '10.25');
  assert.match((await fileOf(tab, 'Save the sides file')).text, /north 10\.25 m/);
  await context.close();
});

test('a space stays at its corner when a wall comes before it', async () => {
  const { tab, context } = await withGarage();
  const start = () => tab.locator('.drawing .begin').nth(1).evaluate((one) => [one.getAttribute('cx'), one.getAttribute('cy')].map(Number));
  // Corner 4 of a house that goes 28 back, 42 right, 28 front.
  assert.deepEqual(await start(), [42, 0]);
  await tab.locator('input.feet').nth(1).click();
  await settled(tab);
  await button(tab, 'Insert below').click();
  await settled(tab);
  assert.match((await fileOf(tab, 'Save the sides file')).text, /from "House" corner 5/);
  await tab.getByLabel('Address').click();
  await settled(tab);
  assert.equal(await tab.locator('.still').textContent(), 'Back at the start, but without wall 3 of House.');
  await button(tab, 'Undo').click();
  await settled(tab);
  assert.match((await fileOf(tab, 'Save the sides file')).text, /from "House" corner 4/);
  assert.match(await tab.locator('.opening').textContent(), /Measured 776 sq ft/);
  await context.close();
});

test('lengths in the drawing do not lie over each other', async () => {
  const { tab, context } = await begun(TOUCH, JOGS);
  await tab.getByText('Back at the start.').waitFor();
  const over = await tab.locator('.drawing .length').evaluateAll((all) => {
    const boxes = all.map((one) => one.getBoundingClientRect());
    return boxes.flatMap((a, i) => boxes.slice(i + 1).filter((b) => a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom)).length;
  });
  assert.equal(over, 0);
  await shot(tab, 'jogs');
  await button(tab, 'Yes, add it').click();
  const corners = await tab.locator('.drawing .corner').evaluateAll((all) => all.map((one) => one.getBoundingClientRect()).map(({ x, y, width }) => [x + width / 2, y + width / 2, width]));
  for (const [i, [x, y, width]] of corners.entries()) {
    for (const [otherX, otherY] of corners.slice(i + 1)) assert.ok(Math.hypot(x - otherX, y - otherY) > width * 0.9, `corner ${i + 1}`);
  }
  await shot(tab, 'jogs-corners');
  await context.close();
});

test('what was saved is said for a while, not for ever', async () => {
  const { tab, context } = await begun({ viewport: LAPTOP }, BOX);
  await Promise.all([tab.waitForEvent('download'), button(tab, 'Save the sides file').click()]);
  await tab.getByText('Saved: house.sides').waitFor();
  await tab.getByText('Saved: house.sides').waitFor({ state: 'hidden', timeout: 20_000 });
  await context.close();
});

test('no two corners on the drawing have one number', async () => {
  const { tab, context } = await withGarage();
  await tab.getByRole('button', { name: 'Add a space' }).click();
  const shown = await tab.locator('.drawing .at').allTextContents();
  assert.deepEqual(shown, ['1', '2', '3', '4', '5', '6', '7', '8']);
  const listed = await tab.locator('#corner option').allTextContents();
  assert.equal(listed[5], '6: corner 2 of garage');
  await shot(tab, 'corners');
  await context.close();
});

test('a house is renamed with what begins at it', async () => {
  const { tab, context } = await withGarage();
  await tab.getByLabel('Called').first().fill('Main');
  await tab.keyboard.press('Tab');
  await settled(tab);
  assert.match(await tab.locator('.opening').textContent(), /Measured 776 sq ft/);
  await context.close();
});

test('typing a figure is one step of undo', async () => {
  const { tab, context } = await begun({ viewport: LAPTOP }, BOX);
  await tab.getByLabel('Address').click();
  await tab.keyboard.type('4 Larch Lane');
  await settled(tab);
  await button(tab, 'Undo').click();
  await settled(tab);
  assert.equal(await tab.getByLabel('Address').inputValue(), '');
  assert.equal(await tab.locator('ol.sides > li').count(), 4);
  await context.close();
});

test('an open row takes three lines on a phone, and nothing is cut beside the rows', async () => {
  const phone = await begun(TOUCH, BOX);
  const row = await phone.tab.locator('li.side.focus').boundingBox();
  assert.ok(row.height < 160, String(row.height));
  await phone.context.close();
  const laptop = await begun({ viewport: LAPTOP }, BOX);
  for (const _ of ['inside', 'upper floor']) {
    await button(laptop.tab, 'No').click();
    await settled(laptop.tab);
  }
  const cut = await laptop.tab.locator('.beside-rows').evaluate((one) => one.scrollHeight - one.clientHeight);
  assert.ok(cut <= 1, String(cut));
  // Wherever the page is scrolled to, nothing lies over the report.
  const lies = await laptop.tab.evaluate(() => {
    const [beside, report] = ['.beside-rows', '.report'].map((one) => document.querySelector(one));
    const over = [];
    for (let y = 0; y < document.documentElement.scrollHeight; y += 50) {
      scrollTo(0, y);
      over.push(beside.getBoundingClientRect().bottom - report.getBoundingClientRect().top);
    }
    return Math.max(...over);
  });
  assert.ok(lies <= 0, String(lies));
  // The lower end of a page that is open is reached by its own height, not at the end of the rows.
  await button(laptop.tab, 'Look at the pages').click();
  await laptop.tab.getByText(/Page 1 of/).waitFor();
  const below = await laptop.tab.evaluate(() => {
    const beside = document.querySelector('.beside-rows');
    document.querySelector('.typing').style.minHeight = '4000px';
    scrollTo(0, 0);
    scrollTo(0, beside.getBoundingClientRect().bottom - innerHeight + 20);
    return beside.getBoundingClientRect().bottom - innerHeight;
  });
  assert.ok(below <= 1, String(below));
  await laptop.context.close();
});

/// The lengths of a row as its fields show them.
const lengthOf = (tab, n) => tab.locator('ol.sides > li').nth(n).locator('.length input, .length select').evaluateAll((all) => all.map((one) => one.value));

/// Types into the first field of a new wall, key by key.
async function taped(tab, way, keys) {
  await tab.locator('.next').last().getByRole('button', { name: way, exact: true }).click();
  await tab.waitForFunction(() => document.activeElement.className === 'feet');
  await tab.keyboard.type(keys, { delay: 60 });
  await settled(tab);
}

/// A file saved by a button.
async function fileOf(tab, name) {
  const [file] = await Promise.all([tab.waitForEvent('download'), pressed(tab, name)]);
  return { name: file.suggestedFilename(), text: fs.readFileSync(await file.path(), 'utf8') };
}

test('every fraction of an inch is kept as it is typed', async () => {
  const { tab, troubles, context } = await begun({ viewport: LAPTOP }, []);
  const typed = [`28' 4 3/16"`, `9' 4 1/16`, `9' 0 11/16`, `9' 4 5/32"`, `9' 4 1/2`, `9' 63/64`, `9' 4 5/16`];
  const shown = [['28', '4', '3/16'], ['9', '4', '1/16'], ['9', '0', '11/16'], ['9', '4', '5/32'], ['9', '4', '1/2'], ['9', '63/64', ''], ['9', '4', '5/16']];
  for (const [i, keys] of typed.entries()) {
    await taped(tab, i % 2 ? 'right' : 'back', keys);
    assert.deepEqual(await lengthOf(tab, i), shown[i]);
  }
  const { text } = await fileOf(tab, 'Save the sides file');
  for (const length of [`north 28' 4 3/16"`, `east 9' 4 1/16"`, `east 9' 4 5/32"`, `north 9' 4 5/16"`]) assert.ok(text.includes(length), text);
  assert.deepEqual(troubles, []);
  await context.close();
});

test('what is no fraction is not replaced by one that begins like it', async () => {
  const { tab, context } = await begun({ viewport: LAPTOP }, []);
  await taped(tab, 'back', `9' 4 1/`);
  assert.deepEqual(await lengthOf(tab, 0), ['9', '4', '']);
  await tab.keyboard.type('3');
  await tab.keyboard.press('Tab');
  await settled(tab);
  assert.match((await fileOf(tab, 'Save the sides file')).text, /north 9' 4 1\/3"/);
  // Backspace takes the fraction away; Enter after one goes on to the next wall.
  await taped(tab, 'right', `9' 4 7/8`);
  await tab.keyboard.press('Backspace');
  await settled(tab);
  assert.match((await fileOf(tab, 'Save the sides file')).text, /east 9' 4"/);
  await tab.keyboard.type('3/4');
  await tab.keyboard.press('Enter');
  await settled(tab);
  assert.equal(await tab.evaluate(() => document.activeElement.dataset.way), 'back');
  assert.deepEqual(await lengthOf(tab, 1), ['9', '4', '3/4']);
  await context.close();
});

test('a fraction stands in its list while the rows are drawn anew', async () => {
  // The last wall is near its end once its feet are there, and the rows change at that key.
  const { tab, context } = await begun({ viewport: LAPTOP }, [['back', '28'], ['right', '42'], ['front', '28']]);
  for (const delay of [0, 5, 15, 40]) {
    await tab.locator('.next').last().getByRole('button', { name: 'left', exact: true }).click();
    await tab.waitForFunction(() => document.activeElement.className === 'feet');
    await tab.keyboard.type(`41' 8 1/4`, { delay });
    await tab.keyboard.press('Enter');
    await settled(tab);
    assert.deepEqual(await lengthOf(tab, 3), ['41', '8', '1/4'], String(delay));
    assert.match((await fileOf(tab, 'Save the sides file')).text, /west 41' 8 1\/4"/);
    await tab.locator('input.feet').nth(3).focus();
    await button(tab, 'Remove').click();
    await settled(tab);
  }
  await context.close();
});

/// A house with a corner cut out at the back right; what is left for the wall to the right is 11' 8".
const REACHED = [['back', '30'], ['right', '28', '4'], ['front', '10'], ['right', 'closing'], ['front', '20']];

test('a wall that was not reached is no alarm while the walk is being typed', async () => {
  const { tab, context } = await begun({ viewport: LAPTOP }, REACHED);
  assert.equal(await tab.locator('.notices').innerText(), '');
  assert.equal(await tab.locator('ol.sides .notice').count(), 0);
  assert.equal(await tab.locator('.drawing .again').count(), 0);
  await button(tab, 'That was the last wall: what is wrong?').first().click();
  assert.match(await tab.locator('.notices').innerText(), /Wall 4 [^]*would have to run/);
  await walk(tab, [['left', '40']]);
  assert.equal(await tab.locator('.notices').innerText(), '');
  // 30 × 40 less 10 × 11 2/3; every wall to the tenth: 11.7.
  assert.match(await tab.locator('.opening').textContent(), /Measured 1,083 sq ft/);
  await context.close();
});

test('a wall that was not reached says that it hides a mistyped one', async () => {
  const { tab, context } = await begun({ viewport: LAPTOP }, [...REACHED, ['left', '40']]);
  const told = tab.locator('.unchecked');
  assert.match(await told.innerText(), /Wall 4 takes up whatever is missing, so a mistyped wall that goes right or left would not be seen\. Could it be about 11' 8" long\?/);
  assert.equal(await tab.locator('.still').textContent(), 'Back at the start.');
  await shot(tab, 'unchecked');
  await tab.locator('ol.sides > li').nth(3).locator('select[data-part=way]').focus();
  await tab.getByLabel('Wall 4: how').selectOption('measured');
  await tab.locator('input.feet').nth(3).fill('11');
  await tab.locator('input.inches').nth(3).fill('8');
  await settled(tab);
  assert.equal(await told.innerText(), '');
  await context.close();
});

test('a wall without a length says so at its row once it is left', async () => {
  const { tab, context } = await begun({ viewport: LAPTOP }, BOX);
  const row = tab.locator('ol.sides > li').nth(1);
  await tab.locator('input.feet').nth(1).fill('');
  await settled(tab);
  assert.equal(await row.locator('.notice').count(), 0);
  await tab.locator('input.feet').nth(2).click();
  await settled(tab);
  assert.match(await row.innerText(), /this wall has no length yet/);
  assert.match(await tab.locator('.notices').innerText(), /Wall 2 this wall has no length yet/);
  await shot(tab, 'blank');
  await tab.locator('input.feet').nth(1).fill('42');
  await tab.locator('input.feet').nth(2).click();
  await settled(tab);
  assert.equal(await row.locator('.notice').count(), 0);
  // One wall more than there is, after a walk that is back at its start.
  await tab.locator('.next').getByRole('button', { name: 'back' }).click();
  await settled(tab);
  assert.equal(await tab.locator('ol.sides .notice').count(), 0);
  await tab.getByLabel('Address').click();
  await settled(tab);
  assert.match(await tab.locator('ol.sides > li').nth(4).innerText(), /this wall has no length yet/);
  await context.close();
});

test('the first press on a help under a row applies it, by mouse and by touch', async () => {
  for (const options of [{ viewport: LAPTOP }, TOUCH]) {
    const { tab, troubles, context } = await begun(options, [['back', '28'], ['right', '42,5'], ['front', '28'], ['left', '42', '6']]);
    const help = tab.locator('ol.sides > li').nth(1).getByRole('button', { name: /^Use / }).first();
    for (const from of [0, 3]) {
      await tab.locator('input.inches').nth(1).fill('');
      await tab.locator('input.feet').nth(1).fill('42,5');
      await settled(tab);
      await tab.locator('input.feet').nth(from).focus();
      await settled(tab);
      await help.scrollIntoViewIfNeeded();
      const { x, y, width, height } = await help.boundingBox();
      const [at, down] = [x + width / 2, y + height / 2];
      if (options.hasTouch) await tab.touchscreen.tap(at, down);
      else await tab.mouse.click(at, down, { delay: 90 });
      await settled(tab);
      assert.equal(await help.count(), 0, `from row ${from + 1}`);
      await tab.getByText('Back at the start').waitFor();
    }
    assert.deepEqual(troubles, []);
    await context.close();
  }
});

test('the first press on a help applies it while the cursor is in a figure', async () => {
  const { tab, context } = await begun({ viewport: LAPTOP }, [['back', '28'], ['right', '42x'], ['front', '28'], ['left', '42']]);
  await tab.getByLabel('Address').click();
  await tab.keyboard.type('4 Larch Lane');
  await tab.locator('.notices').getByRole('button', { name: /^Use / }).first().click({ delay: 90 });
  await settled(tab);
  await tab.getByText('Back at the start').waitFor();
  assert.equal(await tab.getByLabel('Address').inputValue(), '4 Larch Lane');
  await context.close();
});

test('what most likely explains the difference is said with the answer', async () => {
  const { tab, context } = await withGarage('1,176');
  const said = await tab.locator('.opening p').allInnerTexts();
  assert.match(said[0], /Measured 776 sq ft/);
  // 20 × 20 = 400
  assert.match(said[1], /^Possible: .*garage/i);
  assert.match(said[1], /400|1,176/);
  await shot(tab, 'likely');
  await context.close();
});

test('the caution waits for what lies inside, but not for pages', async () => {
  const { tab, context } = await begun({ viewport: LAPTOP }, BOX, '1,000');
  const caution = tab.locator('.caution');
  await tab.getByText('Is a garage or a porch inside this walk?').waitFor();
  assert.equal(await caution.textContent(), '');
  await button(tab, 'Look at the pages').click();
  await tab.getByText(/Page 1 of/).waitFor();
  assert.match(await caution.textContent(), /smaller/);
  await tab.reload();
  await tab.getByRole('button', { name: 'Go on with' }).click();
  await settled(tab);
  assert.equal(await caution.textContent(), '');
  await button(tab, 'No').click();
  assert.match(await caution.textContent(), /smaller/);
  await context.close();
});

test('the form of a further space speaks of no other kind, and says why it is ticked', async () => {
  const { tab, context } = await begun({ viewport: LAPTOP }, BOX);
  const form = tab.locator('.further');
  await button(tab, 'Yes, add it').click();
  await form.locator('select').first().selectOption('porch');
  assert.match(await form.innerText(), /Inside the walk of House, under the same roof/);
  assert.ok(await form.locator('input[type=checkbox]').isChecked());
  assert.match(await form.innerText(), /After the question what lies inside, it is ticked already/);
  assert.doesNotMatch(await form.locator('.tick, p').allInnerTexts().then((all) => all.join(' ')), /garage/);
  await button(tab, 'Close').click();
  await tab.getByRole('button', { name: 'Add a space' }).click();
  assert.ok(!(await form.locator('input[type=checkbox]').isChecked()));
  assert.match(await form.innerText(), /Tick it if the walk of House goes around this too/);
  await context.close();
});

test('files are named after the address, and a long address is seen whole', async () => {
  const { tab, context } = await begun(TOUCH, BOX);
  const address = tab.getByLabel('Address');
  await address.fill('418 Quillback Lane, Tern County');
  await settled(tab);
  assert.equal((await fileOf(tab, 'Make the PDF')).name, '418-quillback-lane-tern-county-record-1100.pdf');
  const isCut = () => address.evaluate((one) => one.scrollWidth > one.clientWidth);
  assert.ok(!(await isCut()));
  await tab.setViewportSize(LAPTOP);
  assert.ok(!(await isCut()));
  await address.fill('  ../Zürich/№ 4: "a" ');
  await settled(tab);
  assert.match((await fileOf(tab, 'Save the sides file')).name, /^zurich-(no-)?4-a\.sides$/);
  await address.fill('丁目');
  await settled(tab);
  assert.equal((await fileOf(tab, 'Save the sides file')).name, 'house.sides');
  await context.close();
});

test('nothing is said to be under work behind a question', async () => {
  const { tab, context } = await begun({ viewport: LAPTOP }, BOX);
  const [chooser] = await Promise.all([
    tab.waitForEvent('filechooser'),
    (async () => {
      await tab.locator('.home').click();
      await tab.getByRole('button', { name: /Open a file/ }).click();
    })(),
  ]);
  await chooser.setFiles({ name: 'other.sides', mimeType: 'text/plain', buffer: Buffer.from('level "G"\nliving "H"\nnorth 8\'\neast 8\'\nsouth 8\'\nwest 8\'\n') });
  await tab.getByText('would replace it').waitFor();
  assert.equal(await tab.locator('body > [role=status]').textContent(), '');
  await context.close();
});

test('questions, marks and rows under work have nothing against a screen reader, in light and dark', async () => {
  for (const colorScheme of ['light', 'dark']) {
    const { tab, context } = await begun({ ...TOUCH, colorScheme, bypassCSP: true }, BOX);
    const clean = (where) => accessible(tab, `${where}, ${colorScheme}`);
    await clean('the question, and an open row');
    await button(tab, 'Yes, add it').click();
    await clean('a space inside');
    await button(tab, 'Close').click();
    await tab.getByLabel('The record says').fill('12o0');
    await tab.keyboard.press('Tab');
    await settled(tab);
    await clean('a record that cannot be read');
    await shot(tab, `marked-${colorScheme}`);
    await button(tab, 'Forget it').click();
    await clean('the question before forgetting');
    await context.close();
  }
});

test('the report waits until the house is said to be whole', async () => {
  const { tab, context } = await begun({ viewport: LAPTOP }, BOX, '1,250');
  const isShown = () => tab.locator('.report').first().isVisible();
  assert.equal(await isShown(), false);
  assert.match(await tab.locator('.opening').textContent(), /1,176/);
  await button(tab, 'No').click();
  await settled(tab);
  assert.equal(await isShown(), false);
  await button(tab, 'No').click();
  await settled(tab);
  assert.equal(await isShown(), true);
  await context.close();
});

test('a length that goes on in words stays in one box', async () => {
  const { tab, troubles, context } = await begun({ viewport: LAPTOP }, BOX.slice(0, 1));
  const feet = tab.locator('input.feet').first();
  await feet.click();
  await tab.keyboard.press('Control+a');
  await tab.keyboard.type('24 and a half', { delay: 30 });
  assert.equal(await feet.inputValue(), '24 and a half');
  await tab.getByLabel('Address').focus();
  await settled(tab);
  const offered = await tab.locator('li.side .wrong button').allTextContents();
  assert.deepEqual(offered.map((one) => one.trim()), [`Use back 24' 6"`]);
  await tab.locator('li.side .wrong button').first().click();
  await settled(tab);
  assert.deepEqual([await feet.inputValue(), await tab.locator('input.inches').first().inputValue()], ['24', '6']);
  assert.deepEqual(troubles, []);
  await context.close();
});
