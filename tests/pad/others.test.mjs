// The main run in Firefox and in WebKit: a house typed from nothing, its answer, the bytes of its PDF.
import assert from 'node:assert/strict';
import { spawn, spawnSync } from 'node:child_process';
import fs from 'node:fs';
import { createRequire } from 'node:module';
import os from 'node:os';
import path from 'node:path';
import { test } from 'node:test';
import { pathToFileURL } from 'node:url';
import { page, root, target } from './browser.mjs';

const require = createRequire(path.join(root, 'src/pad/package.json'));
const program = process.env.FAIRFOOT ?? path.join(target, 'debug/fairfoot');
const found = (...places) => places.find(fs.existsSync);

/// Runs in the page: types a house, gives the answer, and the PDF of the example as hexadecimal.
async function mainRun(sides) {
  const until = async (what) => {
    for (let i = 0; i < 1000; i++) {
      const value = what();
      if (value) return value;
      await new Promise((done) => setTimeout(done, 50));
    }
    throw new Error(`waited in vain: ${what}`);
  };
  const button = (text) => [...document.querySelectorAll('button')].find((one) => one.textContent.startsWith(text));
  (await until(() => button('Measure a house'))).click();
  for (const [i, [way, feet]] of [['back', '28'], ['right', '42'], ['front', '28'], ['left', '42']].entries()) {
    (await until(() => document.querySelector(`.next [data-way=${way}]`))).click();
    const input = await until(() => document.querySelectorAll('input.feet')[i]);
    input.value = feet;
    input.dispatchEvent(new Event('input', { bubbles: true }));
    await until(() => document.querySelectorAll('.drawing .wall').length > i && document.documentElement.dataset.state === 'ready');
  }
  const still = await until(() => document.querySelector('.still').textContent);
  const { pdf } = await window.fairfoot.pdf('a.sides', sides, false);
  return JSON.stringify({ still, report: document.querySelector('.report').textContent, pdf: [...pdf].map((one) => one.toString(16).padStart(2, '0')).join('') });
}

function holds(text) {
  assert.ok(text.startsWith('{'), text);
  const { still, report, pdf } = JSON.parse(text);
  assert.equal(still, 'Back at the start.');
  // 28 × 42
  assert.match(report, /1,176/);
  const folder = fs.mkdtempSync(path.join(os.tmpdir(), 'pad-'));
  const out = path.join(folder, 'a.pdf');
  spawnSync(program, ['pages', path.join(root, 'sketches/cottage.sides'), '-o', out]);
  assert.ok(Buffer.from(pdf, 'hex').equals(fs.readFileSync(out)));
  fs.rmSync(folder, { recursive: true });
}

const sides = fs.readFileSync(path.join(root, 'sketches/cottage.sides'), 'utf8');

const firefox = found('/usr/bin/firefox-esr', '/usr/bin/firefox');
test('the main run in Firefox', { skip: !firefox && 'SKIPPED: no firefox-esr here' }, async () => {
  const { default: puppeteer } = await import(pathToFileURL(require.resolve('puppeteer-core')).href);
  const browser = await puppeteer.launch({ browser: 'firefox', executablePath: firefox, headless: true });
  try {
    const tab = await browser.newPage();
    await tab.goto(pathToFileURL(page).href);
    holds(await tab.evaluate(mainRun, sides));
  } finally {
    await browser.close();
  }
});

const driver = found('/usr/bin/WebKitWebDriver');
const screen = found('/usr/bin/Xvfb');
const webkit = found('/usr/lib/x86_64-linux-gnu/webkit2gtk-4.1/MiniBrowser', '/usr/lib/x86_64-linux-gnu/webkit2gtk-4.0/MiniBrowser');
const noWebkit = !(driver && screen && webkit) && 'SKIPPED: no WebKitWebDriver, Xvfb and MiniBrowser here';
test('the main run in WebKit', { skip: noWebkit }, async () => {
  const [display, port] = [`:${90 + (process.pid % 9)}`, 20_000 + (process.pid % 9_000)];
  const xvfb = spawn(screen, [display, '-screen', '0', '1280x800x24', '-nolisten', 'tcp'], { stdio: 'ignore' });
  const env = { ...process.env, DISPLAY: display, WEBKIT_DISABLE_COMPOSITING_MODE: '1', LIBGL_ALWAYS_SOFTWARE: '1' };
  const server = spawn(driver, ['--host=127.0.0.1', `--port=${port}`], { env, stdio: 'ignore' });
  const call = async (method, place, body) => {
    const response = await fetch(`http://127.0.0.1:${port}${place}`, { method, body: body && JSON.stringify(body) });
    const { value } = await response.json();
    if (!response.ok) throw new Error(JSON.stringify(value));
    return value;
  };
  try {
    await new Promise((done) => setTimeout(done, 1500));
    const options = { binary: webkit, args: ['--automation'] };
    const { sessionId } = await call('POST', '/session', { capabilities: { alwaysMatch: { 'webkitgtk:browserOptions': options } } });
    const at = `/session/${sessionId}`;
    await call('POST', `${at}/timeouts`, { script: 60_000 });
    await call('POST', `${at}/url`, { url: pathToFileURL(page).href });
    const script = `const done = arguments[1]; (${mainRun})(arguments[0]).then(done, (error) => done(String(error)));`;
    holds(await call('POST', `${at}/execute/async`, { script, args: [sides] }));
    await call('DELETE', at);
  } finally {
    server.kill();
    xvfb.kill();
  }
});
