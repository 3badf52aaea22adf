// A browser with an empty profile and the page in it; every request and every console error is kept.
import assert from 'node:assert/strict';
import fs from 'node:fs';
import path from 'node:path';
import { createRequire } from 'node:module';
import { fileURLToPath, pathToFileURL } from 'node:url';

export const root = path.join(path.dirname(fileURLToPath(import.meta.url)), '../..');
const require = createRequire(path.join(root, 'src/pad/package.json'));
export const { chromium } = require('playwright-core');
const axe = fs.readFileSync(require.resolve('axe-core/axe.min.js'), 'utf8');
export const target = process.env.CARGO_TARGET_DIR ?? path.join(root, 'target');
/// The page that is tried: the one that was built last, or `FAIRFOOT_PAGE`.
export const page = path.resolve(process.env.FAIRFOOT_PAGE ?? path.join(target, 'pad/fairfoot.html'));
export const shots = path.join(target, 'pad/shots');
export const LAPTOP = { width: 1280, height: 800 };
export const PHONE = { width: 390, height: 844 };
fs.mkdirSync(shots, { recursive: true });

const executablePath = ['/usr/bin/chromium', '/usr/bin/chromium-browser', '/usr/bin/google-chrome'].find(fs.existsSync);

export async function browser() {
  return chromium.launch({
    executablePath,
    args: ['--no-sandbox', '--disable-gpu', '--disable-quic', '--no-first-run', '--disable-background-networking', '--disable-component-update', '--disable-sync'],
  });
}

/// The page opened from the file, offline; `troubles` gathers what must not happen.
export async function opened(browser, options = {}) {
  const context = await browser.newContext({ viewport: LAPTOP, acceptDownloads: true, ...options });
  await context.setOffline(true);
  const tab = await context.newPage();
  const troubles = [];
  tab.on('console', (message) => message.type() === 'error' && troubles.push(message.text()));
  tab.on('pageerror', (error) => troubles.push(String(error)));
  tab.on('request', (request) => {
    const url = request.url();
    if (!/^(data|blob):/.test(url) && url !== pathToFileURL(page).href) troubles.push(`a request: ${url}`);
  });
  await tab.goto(pathToFileURL(page).href);
  return { tab, troubles, context };
}

export const shot = (tab, name) => tab.screenshot({ path: path.join(shots, `${name}.png`), fullPage: true });

/// Waits until nothing is on its way to the screen any more.
export async function settled(tab) {
  // Typing is handed on at the next turn of the page's own clock.
  await tab.waitForTimeout(30);
  await tab.waitForFunction(() => document.documentElement.dataset.state === 'ready');
}

/// Types the walls of a walk as a person does: a way, then the parts of its length.
export async function walk(tab, sides) {
  for (const [way, feet, inches = '', fraction = ''] of sides) {
    const before = await tab.locator('ol.sides > li').count();
    await tab.locator('.next').last().getByRole('button', { name: way, exact: true }).click();
    await tab.locator('ol.sides > li').nth(before).waitFor();
    const row = tab.locator('ol.sides > li').nth(before);
    if (feet === 'closing') {
      await row.locator('select[data-part=how]').selectOption('closing');
      continue;
    }
    await row.locator('.feet').fill(feet);
    if (inches) await row.locator('.inches').fill(inches);
    if (fraction) await row.locator('[data-part=fraction]').selectOption(fraction);
  }
  await settled(tab);
}

/// There is nothing on the page that a screen reader could not make sense of.
export async function accessible(tab, where) {
  await tab.evaluate(axe);
  const { violations } = await tab.evaluate(() => window.axe.run());
  const told = violations.map((one) => `${one.id} (${one.impact}): ${one.nodes.map((node) => node.html.slice(0, 90)).join(' | ')}`);
  assert.deepEqual(told, [], where);
}
