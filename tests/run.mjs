// Runs every check of the project from a fresh clone: `npm test`. Needs Node and npm; fetches the rest where it is missing.
// Stops at the first check that fails and always ends with one plain line: `N passed, N failed`.

import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';

const root = path.resolve(path.dirname(fileURLToPath(import.meta.url)), '..');
const OLDEST_NODE = [20, 19];
/** So many slow files are told at the end. */
const SLOWEST = 10;
const BROWSERS = ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable'];
const reports = mkdtempSync(path.join(os.tmpdir(), 'reelward-checks-'));
// Colours are for people at a screen; a log keeps the plain text.
const isScreen = process.stdout.isTTY === true;
const bin = (name) => path.join(root, 'node_modules', '.bin', name);

let passed = 0;
let failed = 0;
let skipped = 0;
/** Test files with the time they took, of all projects. */
const took = [];

/** Runs a program with its output passed on; true where it ended well. */
function run(program, args, env = {}) {
  const { status, error } = spawnSync(program, args, {
    cwd: root,
    stdio: ['ignore', 'inherit', 'inherit'],
    env: { ...process.env, ...(isScreen ? {} : { NO_COLOR: '1' }), ...env },
  });
  if (error) console.error(`${program}: ${error.message}`);
  return status === 0;
}

function isNodeNewEnough() {
  const [major = 0, minor = 0] = process.versions.node.split('.').map(Number);
  return major > OLDEST_NODE[0] || (major === OLDEST_NODE[0] && minor >= OLDEST_NODE[1]);
}

function readLock(file) {
  try {
    return JSON.parse(readFileSync(path.join(root, file), 'utf8')).packages;
  } catch {
    return null; // not there or cut short: install anew
  }
}

/** True where what is installed is what the lock asks for, whatever the files' dates say. */
function isInstalled() {
  const wanted = readLock('package-lock.json');
  const there = readLock('node_modules/.package-lock.json');
  if (!wanted || !there) return false;
  return Object.entries(wanted).every(
    ([name, { version, optional, link }]) =>
      name === '' || link || optional || there[name]?.version === version,
  );
}

function findBrowser() {
  const named = process.env.REELWARD_CHROMIUM;
  if (named) return existsSync(named) ? named : null;
  for (const folder of (process.env.PATH ?? '').split(path.delimiter)) {
    for (const name of BROWSERS) {
      if (folder !== '' && existsSync(path.join(folder, name))) return path.join(folder, name);
    }
  }
  return null;
}

function isDebian() {
  return existsSync('/etc/os-release') && /^ID=debian$/m.test(readFileSync('/etc/os-release', 'utf8'));
}

/** Finds a browser, installs one where that is possible, or says what to do. */
function provideBrowser() {
  const found = findBrowser();
  if (found) return found;
  if (isDebian() && process.getuid?.() === 0) {
    const quiet = { DEBIAN_FRONTEND: 'noninteractive' };
    run('apt-get', ['update', '-qq'], quiet);
    run('apt-get', ['install', '-y', '-qq', '--no-install-recommends', 'chromium'], quiet);
    const installed = findBrowser();
    if (installed) return installed;
  }
  console.error(
    'The browser tests need Chromium: install it (on Debian as root: apt-get install chromium), ' +
      'or set REELWARD_CHROMIUM to the path of its program.',
  );
  return null;
}

/** One program whose end says all. */
function program(command, args) {
  return () => {
    const ok = run(command, args);
    if (ok) passed += 1;
    else failed += 1;
    return ok;
  };
}

/** Adds what the report of projects counts; a file that could not even be loaded counts as one failure. */
function vitest(project, ...others) {
  return () => {
    const file = path.join(reports, `${project}.json`);
    const browser = project === 'e2e' ? provideBrowser() : undefined;
    if (browser === null) {
      failed += 1;
      return false;
    }
    const ok = run(
      bin('vitest'),
      [
        'run',
        ...[project, ...others].flatMap((each) => ['--project', each]),
        '--reporter=default',
        '--reporter=json',
        `--outputFile.json=${file}`,
      ],
      browser ? { REELWARD_CHROMIUM: browser } : {},
    );
    const report = existsSync(file) ? JSON.parse(readFileSync(file, 'utf8')) : null;
    const failures = report?.numFailedTests ?? 0;
    passed += report?.numPassedTests ?? 0;
    skipped += (report?.numPendingTests ?? 0) + (report?.numTodoTests ?? 0);
    for (const { name, startTime, endTime } of report?.testResults ?? [])
      took.push({ file: path.relative(root, name), seconds: (endTime - startTime) / 1000 });
    const isGood = ok && report?.success === true;
    failed += isGood ? 0 : Math.max(1, failures);
    return isGood;
  };
}

const checks = [
  ['format and lint', program(bin('biome'), ['ci', '.', ...(isScreen ? [] : ['--colors=off'])])],
  ['types', program(process.execPath, ['tests/types.mjs'])],
  ['unit, property and server tests', vitest('unit', 'core')],
  ['build', program('npm', ['run', '--silent', 'build'])],
  ['browser tests', vitest('e2e', 'after')],
];

function main() {
  if (!isNodeNewEnough()) {
    console.error(`Node ${OLDEST_NODE.join('.')} or newer is needed: this is ${process.versions.node}.`);
    return false;
  }
  if (!isInstalled()) {
    console.log('--- npm ci');
    if (!run('npm', ['ci'])) return false;
  }
  for (const [index, [name, check]] of checks.entries()) {
    console.log(`--- ${name}`);
    const startMs = Date.now();
    const ok = check();
    console.log(`--- ${name}: ${ok ? 'ok' : 'FAILED'} in ${((Date.now() - startMs) / 1000).toFixed(1)} s`);
    if (ok) continue;
    const notRun = checks.slice(index + 1).map(([later]) => later);
    if (notRun.length > 0) console.log(`--- not run: ${notRun.join(', ')}`);
    return false;
  }
  return true;
}

/** The files to look at where the checks take too long. */
function tellSlowest() {
  if (took.length === 0) return;
  took.sort((a, b) => b.seconds - a.seconds);
  console.log('--- slowest files');
  for (const { file, seconds } of took.slice(0, SLOWEST))
    console.log(`${seconds.toFixed(1).padStart(7)} s  ${file}`);
}

const good = main();
tellSlowest();
rmSync(reports, { recursive: true, force: true });
if (!good && failed === 0) failed = 1;
if (skipped > 0) console.log(`--- skipped: ${skipped}`);
console.log(`${passed} passed, ${failed} failed`);
process.exitCode = good && failed === 0 ? 0 : 1;
