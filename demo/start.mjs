// `npm start`: from a fresh clone to the demo in one command. Installs where packages are missing or out of date, builds where
// the build is, then runs the demo with the arguments given. Plain Node without packages: it runs before any is there.

import { spawn, spawnSync } from 'node:child_process';
import { existsSync, readdirSync, readFileSync, statSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = join(dirname(fileURLToPath(import.meta.url)), '..');
const built = [join(root, 'dist/cli/reelward.js'), join(root, 'dist/app/index.html')];
const sources = ['shared', 'src', 'demo', 'public', 'vite.config.ts', 'vite.node.config.ts', 'package.json'];
/** Lines of a failed step that are shown. */
const SHOWN_LINES = 40;

/** Ends with one line and an exit code. */
function stop(line, code) {
  process.stderr.write(`${line}\n`);
  process.exit(code);
}

function say(line) {
  process.stderr.write(`${line}\n`);
}

/** Refuses a Node that is too old, by the figure in package.json. */
function checkNode() {
  const { engines } = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8'));
  const wanted = engines.node.replace(/^>=\s*/, '');
  const numbers = (version) => version.split('.').map(Number);
  const [is, least] = [numbers(process.versions.node), numbers(wanted)];
  const at = is.findIndex((value, index) => value !== least[index]);
  if (at >= 0 && is[at] < least[at]) {
    stop(
      `Reelward needs Node ${wanted} or later, this is ${process.versions.node}: see https://nodejs.org`,
      1,
    );
  }
}

/** Moment of the newest file in a folder or of a file, ms; 0 where there is none. */
function newestMs(path) {
  if (!existsSync(path)) return 0;
  const found = statSync(path);
  if (!found.isDirectory()) return found.mtimeMs;
  // A file taken out changes its folder's moment only.
  return readdirSync(path).reduce(
    (newest, name) => Math.max(newest, newestMs(join(path, name))),
    found.mtimeMs,
  );
}

function isInstalled() {
  // Written by npm at the end of an install.
  const mark = newestMs(join(root, 'node_modules/.package-lock.json'));
  return mark > 0 && mark >= newestMs(join(root, 'package-lock.json'));
}

function isBuilt() {
  const oldest = Math.min(...built.map(newestMs));
  return oldest > 0 && oldest >= Math.max(...sources.map((source) => newestMs(join(root, source))));
}

/** Runs npm to its end; on failure shows the end of what it said and stops with its code. */
function runNpm(args, failure) {
  const own = process.env.npm_execpath;
  const [program, before, shell] = own?.endsWith('.js')
    ? [process.execPath, [own], false]
    : ['npm', [], process.platform === 'win32'];
  const { status, signal, stdout, stderr, error } = spawnSync(program, [...before, ...args], {
    cwd: root,
    encoding: 'utf8',
    shell,
    maxBuffer: 64 * 1024 * 1024,
  });
  if (signal === 'SIGINT' || signal === 'SIGTERM') process.exit(130);
  if (error) stop(`${failure}: npm cannot be run (${error.code ?? error.message})`, 1);
  if (status === 0) return;
  say(`${stdout}\n${stderr}`.trimEnd().split('\n').slice(-SHOWN_LINES).join('\n'));
  stop(`${failure}: see the lines above`, status ?? 1);
}

/** Runs the demo until it ends, and ends with its code. */
function runDemo(args) {
  const demo = spawn(process.execPath, [built[0], 'demo', ...args], { cwd: root, stdio: 'inherit' });
  // Ctrl-C reaches the demo from the terminal itself; this process waits until it has closed its doors.
  process.on('SIGINT', () => undefined);
  process.on('SIGTERM', () => demo.kill('SIGTERM'));
  demo.on('error', (error) => stop(`The demo cannot be run: ${error.message}`, 1));
  demo.on('exit', (code, signal) => process.exit(code ?? (signal === 'SIGINT' ? 130 : 143)));
}

checkNode();
if (!isInstalled()) {
  say('Installing packages (npm ci), which takes a minute or two the first time ...');
  runNpm(['ci', '--no-audit', '--no-fund'], 'The packages could not be installed');
}
if (!isBuilt()) {
  say('Building ...');
  runNpm(['run', 'build'], 'The build failed');
}
const args = process.argv.slice(2);
// Whoever tries it finds both kinds of line; a shift that is written to a file is one line's, and who says how many lines gets these.
const isTold = args.some((each) => each.startsWith('--export') || each.startsWith('--lines'));
runDemo(isTold ? args : ['--lanes', ...args]);
