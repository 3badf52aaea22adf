// Bundles the page into one self-contained file: node bundle.mjs MODULE.wasm OUT.html
import { execFileSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import fs from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import zlib from 'node:zlib';
import { build } from 'esbuild';

const [, , module, out] = process.argv;
const here = path.dirname(fileURLToPath(import.meta.url));
const root = path.join(here, '../..');

async function bundled(entry, define = {}) {
  const result = await build({
    entryPoints: [path.join(here, 'src', entry)],
    absWorkingDir: here,
    bundle: true,
    minify: true,
    write: false,
    format: 'iife',
    target: 'es2022',
    legalComments: 'none',
    charset: 'utf8',
    define,
  });
  return result.outputFiles[0].text.replaceAll('</script', '<\\/script');
}

/// Every library inside with its version and license, then the notices that must accompany them.
function licenses() {
  const cargo = ['metadata', '--format-version', '1', '--manifest-path', path.join(here, 'door/Cargo.toml')];
  const tree = ['tree', '--manifest-path', path.join(here, 'door/Cargo.toml'), '-e', 'normal', '--prefix', 'none', '--target', 'wasm32-unknown-unknown', '--format', '{p}'];
  const run = (words) => execFileSync('cargo', words, { maxBuffer: 1 << 28, encoding: 'utf8', env: { ...process.env, RUSTC: 'rustc' } });
  const inside = new Set(run(tree).split('\n').map((line) => line.split(' ').slice(0, 2).join(' ')));
  const crates = JSON.parse(run(cargo)).packages
    .filter((one) => inside.has(`${one.name} v${one.version}`))
    .map((one) => `${one.name} ${one.version}: ${one.license}`);
  const lock = JSON.parse(fs.readFileSync(path.join(here, 'package-lock.json'), 'utf8')).packages;
  const packages = Object.entries(lock)
    .filter(([name, one]) => name && !one.dev && !one.optional)
    .map(([name, one]) => `${name.replace(/^.*node_modules\//, '')} ${one.version}: ${one.license}`);
  const list = [...new Set([...crates, ...packages, 'Rust standard library: MIT OR Apache-2.0', 'DejaVu fonts: Bitstream-Vera', 'Google brotli decoder (Copyright 2013 Google Inc.), ported by brotli: Apache-2.0'])].sort();
  const text = (...parts) => fs.readFileSync(path.join(...parts), 'utf8').trim();
  // One without a file of its own names its author in its package.
  const notice = (name) => {
    const file = fs.readdirSync(path.join(here, name)).find((file) => /^licen[sc]e/i.test(file));
    if (file) return text(here, name, file);
    const { license, author } = JSON.parse(text(here, name, 'package.json'));
    return `${license}, Copyright ${author?.name ?? author}`;
  };
  const notices = Object.entries(lock)
    .filter(([name, one]) => name && !one.dev && !one.optional)
    .map(([name]) => `${name.replace(/^.*node_modules\//, '')}:\n\n${notice(name)}`);
  return [
    list.join('\n'),
    text(root, 'LICENSE'),
    text(root, 'src/pages/fonts/LICENSE'),
    text(root, 'src/cli/notices.txt'),
    ...notices,
  ].join('\n\n' + '-'.repeat(78) + '\n\n');
}

/// Bytes as text that HTML leaves alone: five letters for four bytes, without < and \\. `unpack.ts` reads it. The first
/// letter says how many bytes the last group has too many.
function asText(bytes) {
  const letters = [];
  for (let code = 35; letters.length < 85; code++) if (code !== 60 && code !== 92) letters.push(String.fromCharCode(code));
  const more = (4 - (bytes.length % 4)) % 4;
  const filled = Buffer.concat([bytes, Buffer.alloc(more)]);
  const groups = [String(more)];
  for (let i = 0; i < filled.length; i += 4) {
    let word = filled.readUInt32BE(i);
    let group = '';
    for (let k = 0; k < 5; k++) {
      group = letters[word % 85] + group;
      word = Math.floor(word / 85);
    }
    groups.push(group);
  }
  return groups.join('');
}

const worker = await bundled('worker.ts');
const script = await bundled('main.ts', {
  WORKER: JSON.stringify(worker),
  EXAMPLE: JSON.stringify(fs.readFileSync(path.join(root, 'sketches/brick-garage.sides'), 'utf8')),
  LICENSES: JSON.stringify(asText(zlib.gzipSync(licenses(), { level: 9 }))),
});
const style = fs.readFileSync(path.join(here, 'src/style.css'), 'utf8');
const words = fs.readFileSync(path.join(here, 'src/words.ts'), 'utf8');
const word = (key) => words.match(new RegExp(`\\b${key}: '([^']*)'`))[1];
const hash = createHash('sha256').update(script).digest('base64');
// Only this script runs, and nothing is ever fetched or sent.
const policy = [
  "default-src 'none'",
  `script-src 'sha256-${hash}' 'wasm-unsafe-eval'`,
  "worker-src blob: 'self'",
  "style-src 'unsafe-inline'",
  'font-src data:',
  'img-src data: blob:',
  "connect-src 'none'",
  "form-action 'none'",
  "base-uri 'none'",
].join('; ');
// A quarter smaller than gzip, for a decoder of 90 kB.
const bytes = fs.readFileSync(module);
const packed = asText(zlib.brotliCompressSync(bytes, {
  params: {
    [zlib.constants.BROTLI_PARAM_QUALITY]: zlib.constants.BROTLI_MAX_QUALITY,
    [zlib.constants.BROTLI_PARAM_LGWIN]: zlib.constants.BROTLI_MAX_WINDOW_BITS,
    [zlib.constants.BROTLI_PARAM_SIZE_HINT]: bytes.length,
  },
}));
const html = `<!doctype html>
<html lang="en" dir="ltr">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${policy}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="color-scheme" content="light dark">
<title>${word('title')}</title>
<link rel="icon" href="data:,">
<style>
${style}</style>
</head>
<body>
<noscript><p>${word('noScript')}</p></noscript>
<script type="text/plain" id="module">${packed}</script>
<script>${script}</script>
</body>
</html>
`;
fs.writeFileSync(out, html);
fs.copyFileSync(path.join(here, 'src/offline.js'), path.join(path.dirname(out), 'fairfoot-offline.js'));
console.log(`${path.relative(process.cwd(), out)}: ${(html.length / 1e6).toFixed(2)} MB`);
if (html.length > 4e6) throw new Error('the page has more than 4 MB');
