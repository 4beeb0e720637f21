// `npm run engines`: one shift in Firefox and in WebKitGTK, as Debian has them: load, refuse, splice, camera, reload without the server,
// export. It installs both by apt where they are missing and it may. Not part of `npm test`; it wants a build (`npm run build`).

import { execFileSync } from 'node:child_process';
import { existsSync, mkdirSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import bwip from 'bwip-js/node';
import { children, start, startFirefox, startWebKit, until } from './webdriver.mjs';

const root = path.resolve(path.dirname(fileURLToPath(import.meta.url)), '..', '..');
const cli = path.join(root, 'dist', 'cli', 'reelward.js');
const pictures = path.join(root, '.tmp', 'engines');
const FIREFOX = '/usr/bin/firefox-esr';
const WEBKIT = {
  driver: '/usr/bin/WebKitWebDriver',
  browser: '/usr/lib/x86_64-linux-gnu/webkit2gtk-4.1/MiniBrowser',
};
const folder = mkdtempSync(path.join(tmpdir(), 'reelward-engines-'));
let wrong = 0;

function check(what, is, wanted) {
  const good = typeof wanted === 'function' ? wanted(is) : JSON.stringify(is) === JSON.stringify(wanted);
  if (!good) wrong += 1;
  console.log(`${good ? 'ok  ' : 'FAIL'} ${what}: ${JSON.stringify(is)}`);
}

function install() {
  const missing = [
    ...(existsSync(FIREFOX) ? [] : ['firefox-esr']),
    ...(existsSync(WEBKIT.driver) && existsSync(WEBKIT.browser) ? [] : ['webkit2gtk-driver']),
    ...(existsSync('/usr/bin/Xvfb') ? [] : ['xvfb']),
  ];
  if (missing.length === 0) return;
  if (process.getuid?.() !== 0 || !existsSync('/usr/bin/apt-get')) {
    console.error(`engines needs ${missing.join(', ')} (Debian: apt-get install ${missing.join(' ')})`);
    process.exit(2);
  }
  const quiet = { stdio: 'inherit', env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' } };
  execFileSync('apt-get', ['update', '-qq'], quiet);
  execFileSync('apt-get', ['install', '-y', '-qq', '--no-install-recommends', ...missing], quiet);
}

/** A display for the browser that wants one: its name, e.g. `:99`. */
async function display() {
  const child = start('Xvfb', ['-displayfd', '3', '-screen', '0', '1280x900x24'], {
    stdio: ['ignore', 'ignore', 'ignore', 'pipe'],
  });
  let told = '';
  child.stdio[3].on('data', (chunk) => {
    told += chunk;
  });
  await until('a display', () => told.includes('\n'));
  return `:${told.trim()}`;
}

async function freePort() {
  const server = createServer();
  await new Promise((resolve) => server.listen(0, '127.0.0.1', resolve));
  const { port } = server.address();
  await new Promise((resolve) => server.close(resolve));
  return port;
}

async function serve(port) {
  const child = start(process.execPath, [cli, 'demo', '--port', String(port)], { cwd: root });
  await until('the demo', () =>
    fetch(`http://127.0.0.1:${port}/`).then(
      ({ ok }) => ok,
      () => false,
    ),
  );
  return child;
}

async function stop(child) {
  const over = new Promise((resolve) => child.once('exit', resolve));
  child.kill('SIGTERM');
  await over;
}

/** A reel's label (ISO/IEC 15434 format 06, ANSI MH10.8.2 identifiers), as a scanner types it. */
const label = (part, reel) => `[)>\x1e06\x1dP${part}\x1dQ4000\x1d1TLT-9700\x1d3S${reel}\x1e\x04\n`;
const place = { slot: 'M2-F-026', feeder: 'F-0113', part: '25-0023-113' };

/** Instead of a lens: a picture of a code in a file, played into the page. */
async function cameraFrom(page, text) {
  const png = await bwip.toBuffer({ bcid: 'datamatrix', text, scale: 8, paddingwidth: 8, paddingheight: 8 });
  await page.run(
    `const bytes = Uint8Array.from(atob(a0), (char) => char.charCodeAt(0));
     const image = await createImageBitmap(new Blob([bytes], { type: 'image/png' }));
     const canvas = document.createElement('canvas');
     [canvas.width, canvas.height] = [1280, 720];
     const pen = canvas.getContext('2d');
     const draw = () => {
       pen.fillStyle = '#fff';
       pen.fillRect(0, 0, 1280, 720);
       pen.drawImage(image, 640 - image.width / 2, 360 - image.height / 2);
     };
     draw();
     setInterval(draw, 100);
     const devices = {
       getUserMedia: async () => canvas.captureStream(10),
       enumerateDevices: async () => [{ kind: 'videoinput', deviceId: 'file', label: 'file', groupId: '' }],
       getSupportedConstraints: () => ({}),
       addEventListener: () => undefined,
       removeEventListener: () => undefined,
     };
     Object.defineProperty(navigator, 'mediaDevices', { configurable: true, value: devices });`,
    png.toString('base64'),
  );
}

const verdictsWritten = (page) =>
  page.run(
    `const db = await new Promise((resolve, reject) => {
       const opening = indexedDB.open('reelward-demo');
       opening.onsuccess = () => resolve(opening.result);
       opening.onerror = () => reject(opening.error);
     });
     const rows = await new Promise((resolve) => {
       const reading = db.transaction('entries').objectStore('entries').getAll();
       reading.onsuccess = () => resolve(reading.result);
     });
     db.close();
     return rows.map((row) => row.entry).filter((entry) => !entry.tablet.startsWith('demo0'))
       .filter((entry) => entry.kind === 'reel.verified')
       .map((entry) => [entry.payload.act, entry.payload.slot, entry.payload.verdict].join(' '));`,
  );

const seen = (page, verdict) => page.see(`[data-testid=verdict][data-verdict=${verdict}]`);

async function goOn(page) {
  await page.tap('[data-testid=verdict-go-on]');
  await page.gone('[data-testid=verdict]');
}

/** The line, the reels, the camera. */
async function work(page) {
  await page.scan('BADGE-2201\n');
  await until('somebody signed in', async () => (await page.text('[data-testid=sign-in]')) === 'Ailsa');
  await page.scan(`${place.slot}\n`);
  await page.see('[data-testid=well-slot]');
  await page.scan(label('25-0023-311', 'R-970001'));
  await seen(page, 'refused');
  await page.picture(path.join(pictures, `${page.name}-refused.png`));
  await goOn(page);
  await page.scan(label(place.part, 'R-970002'));
  await page.scan(`${place.feeder}\n`);
  await seen(page, 'accepted');
  await goOn(page);
  await page.scan(`${place.slot}\n`);
  await page.see('[data-testid=well-slot]');
  await page.scan(label(place.part, 'R-970003'));
  await seen(page, 'accepted');
  await goOn(page);
  check(
    'verdicts in the log',
    await verdictsWritten(page),
    (told) =>
      told.length === 3 &&
      told[0].endsWith('refused') &&
      told[1] === `load ${place.slot} accepted` &&
      told[2] === `splice ${place.slot} accepted`,
  );
  await cameraFrom(page, place.slot);
  await page.tap('[data-testid=dock-camera]');
  await page.see('[data-testid=camera]');
  await page.see('[data-testid=well-slot]');
  check('the camera reads a slot', await page.text('[data-testid=well-slot]'), (text) =>
    text.includes(place.slot),
  );
}

/** The export as a file: the one that the browser saved, or what it was handed. */
async function savedFile(page, own) {
  if (page.saves !== null) {
    const whole = () => readdirSync(page.saves).find((name) => name.endsWith('.ndjson'));
    await until(
      'a saved file',
      () => whole() !== undefined && !readdirSync(page.saves).some((name) => name.endsWith('.part')),
    );
    return path.join(page.saves, whole());
  }
  await until('the export', () => page.run('return globalThis.exported !== undefined;'));
  const file = path.join(own, 'export.ndjson');
  writeFileSync(file, await page.run('return await globalThis.exported;'));
  return file;
}

/** What leaves the log, checked by the command line. */
async function exportLog(page, own) {
  await page.scan('BADGE-4401\n');
  await until('somebody else signed in', async () => (await page.text('[data-testid=sign-in]')) !== 'Ailsa');
  if (page.saves === null)
    await page.run(`const { createObjectURL } = URL;
      URL.createObjectURL = (blob) => {
        globalThis.exported = blob.text();
        return createObjectURL.call(URL, blob);
      };`);
  await page.tap('[data-testid=nav-log]');
  await page.tap('[data-testid=log-export]');
  await page.tap('[data-testid=export-json]');
  const file = await savedFile(page, own);
  const told = execFileSync(process.execPath, [cli, 'log', 'verify', file], { encoding: 'utf8', cwd: root });
  const { entries, ok } = JSON.parse(told);
  check('the export is whole', [entries > 3, ok], [true, true]);
}

/** How the page tells each thing that an engine may lack, in its order, and how the engine itself is asked for it. */
const lacks = [
  ['cannot keep the screen on', 'typeof navigator.wakeLock?.request'],
  ['cannot vibrate', 'typeof navigator.vibrate'],
  ['cannot promise to keep the log', 'typeof navigator.storage?.persist'],
  ['opens no serial port', 'typeof navigator.serial?.requestPort'],
];

/** What this engine lacks: the page tells that and nothing else. */
async function checkLacks(page) {
  await page.tap('[data-testid=nav-plant]');
  await page.tap('[data-testid=tile-tablet]');
  await page.see('[data-testid=lacks]');
  const told = await page.run(
    "return [...document.querySelectorAll('[data-testid=lacks] li')].map((each) => each.textContent);",
  );
  const found = await page.run(`return [${lacks.map(([, asked]) => asked).join(', ')}];`);
  const wanted = lacks.flatMap(([words], at) => (found[at] === 'function' ? [] : [words]));
  check(
    'what it lacks is told',
    told,
    (lines) => lines.length === wanted.length && lines.every((line, at) => line.includes(wanted[at])),
  );
}

async function playShift(page, own) {
  const port = await freePort();
  const url = `http://127.0.0.1:${port}/`;
  let server = await serve(port);
  const mark = Date.now();
  await page.go(url);
  await page.see('html[data-ready]');
  console.log(`     ${page.name}: first visit stands after ${((Date.now() - mark) / 1000).toFixed(1)} s`);
  await page.see('[data-testid=offline][data-state=ready]');
  // A busy machine presses keys with pauses between: the scanner counts as a slow one, as its own test would have found.
  const scanner = { gapMs: 5000, stallMs: 8000 };
  await page.run("dispatchEvent(new CustomEvent('reelward-speak', { detail: { scanner: a0 } }));", scanner);
  await work(page);
  await stop(server);
  await page.reload();
  await page.see('html[data-ready]');
  check('after a reload without the server', (await verdictsWritten(page)).length, 3);
  server = await serve(port);
  await exportLog(page, own);
  await checkLacks(page);
  await stop(server);
}

async function engine(name, begin) {
  console.log(`--- ${name}`);
  let page = null;
  try {
    const own = path.join(folder, name);
    mkdirSync(own);
    page = await begin(own);
    console.log(`     ${page.name}`);
    await playShift(page, own);
  } catch (error) {
    wrong += 1;
    console.error(`FAIL ${name}: ${error.stack}`);
    await page?.picture(path.join(pictures, `${name}-failed.png`)).catch(() => undefined);
  } finally {
    await page?.end();
  }
}

/** One engine alone, where one is asked for. */
const only = process.env.REELWARD_ENGINE;

try {
  install();
  mkdirSync(pictures, { recursive: true });
  if (only !== 'webkit') await engine('firefox', (own) => startFirefox(FIREFOX, own));
  if (only !== 'firefox') {
    const screen = await display();
    await engine('webkit', (own) => startWebKit(WEBKIT, own, screen));
  }
} finally {
  for (const child of children) child.kill('SIGTERM');
  rmSync(folder, { recursive: true, force: true, maxRetries: 5 });
}
console.log(wrong === 0 ? 'engines: all as it should be' : `engines: ${wrong} wrong`);
process.exit(wrong === 0 ? 0 : 1);
