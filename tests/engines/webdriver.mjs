// A browser by the commands of W3C WebDriver, as few as a shift needs. WebKitGTK takes them by its own driver over HTTP; Firefox takes the
// same ones over Marionette, the socket that a driver in between would speak to: Debian ships none. A library was refused: each has one of
// the two ways only.

import { spawn } from 'node:child_process';
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import net from 'node:net';
import path from 'node:path';

const ELEMENT = 'element-6066-11e4-a52e-4f735466cecf'; // W3C WebDriver, 12.2

const pause = (ms) => new Promise((resolve) => setTimeout(resolve, ms));

/** Waits until something is so; fails with what it waited for. */
export async function until(what, isSo, seconds = 60) {
  const endMs = Date.now() + seconds * 1000;
  for (;;) {
    const found = await isSo();
    if (found) return found;
    if (Date.now() > endMs) throw new Error(`waited ${seconds} s for ${what}`);
    await pause(100);
  }
}

/** Sends commands by HTTP: `POST /session/ID/COMMAND`. */
async function overHttp(port, capabilities) {
  const ask = async (method, route, body) => {
    const answer = await fetch(`http://127.0.0.1:${port}${route}`, {
      method,
      ...(body === undefined ? {} : { body: JSON.stringify(body) }),
    });
    const { value } = await answer.json();
    if (!answer.ok) throw new Error(`${route}: ${value.error} ${value.message}`);
    return value;
  };
  const { sessionId, capabilities: told } = await ask('POST', '/session', {
    capabilities: { alwaysMatch: capabilities },
  });
  const at = `/session/${sessionId}`;
  return {
    told,
    send: {
      go: (url) => ask('POST', `${at}/url`, { url }),
      script: (script, args) => ask('POST', `${at}/execute/async`, { script, args }),
      find: (css) => ask('POST', `${at}/element`, { using: 'css selector', value: css }),
      click: (id) => ask('POST', `${at}/element/${id}/click`, {}),
      keys: (actions) => ask('POST', `${at}/actions`, { actions }),
      timeouts: (limits) => ask('POST', `${at}/timeouts`, limits),
      picture: () => ask('GET', `${at}/screenshot`),
      quit: () => ask('DELETE', at),
    },
  };
}

/** Sends commands by Marionette: `LENGTH:[0, number, command, facts]` and back. */
async function overMarionette(port) {
  const socket = net.connect(port, '127.0.0.1');
  await new Promise((resolve, reject) => socket.once('connect', resolve).once('error', reject));
  const open = new Map();
  let bytes = Buffer.alloc(0);
  socket.on('data', (more) => {
    bytes = Buffer.concat([bytes, more]);
    for (;;) {
      const colon = bytes.indexOf(':');
      const length = Number(bytes.subarray(0, colon));
      if (colon < 0 || bytes.length < colon + 1 + length) return;
      const answer = JSON.parse(bytes.subarray(colon + 1, colon + 1 + length));
      bytes = bytes.subarray(colon + 1 + length);
      if (!Array.isArray(answer)) continue; // it says first what it is
      const [, number, error, value] = answer;
      const waiting = open.get(number);
      open.delete(number);
      if (error) waiting?.reject(new Error(`${error.error} ${error.message}`));
      else waiting?.resolve(value?.value === undefined ? value : value.value);
    }
  });
  let last = 0;
  const ask = (command, facts = {}) =>
    new Promise((resolve, reject) => {
      last += 1;
      open.set(last, { resolve, reject });
      const text = Buffer.from(JSON.stringify([0, last, command, facts]));
      socket.write(`${text.length}:`);
      socket.write(text);
    });
  const { capabilities: told } = await ask('WebDriver:NewSession', { capabilities: { alwaysMatch: {} } });
  return {
    told,
    send: {
      go: (url) => ask('WebDriver:Navigate', { url }),
      script: (script, args) => ask('WebDriver:ExecuteAsyncScript', { script, args, sandbox: null }),
      find: (css) => ask('WebDriver:FindElement', { using: 'css selector', value: css }),
      click: (id) => ask('WebDriver:ElementClick', { id }),
      keys: (actions) => ask('WebDriver:PerformActions', { actions }),
      timeouts: (limits) => ask('WebDriver:SetTimeouts', limits),
      picture: () => ask('WebDriver:TakeScreenshot', { full: false }),
      quit: () => ask('Marionette:Quit', { flags: ['eForceQuit'] }),
    },
  };
}

/** Every process that was started here. */
export const children = new Set();

/** Starts a program that ends with the run. */
export function start(program, args, options = {}) {
  const child = spawn(program, args, { stdio: 'ignore', ...options });
  children.add(child);
  return child;
}

/** Starts Firefox with a profile of its own in a folder. */
export async function startFirefox(program, folder) {
  const profile = path.join(folder, 'firefox');
  mkdirSync(profile);
  // Port 0: it chooses one and writes it down.
  const saves = path.join(folder, 'saved');
  mkdirSync(saves);
  const wishes = { 'marionette.port': 0, 'browser.download.folderList': 2, 'browser.download.dir': saves };
  const lines = Object.entries(wishes).map(
    (wish) => `user_pref(${wish.map((each) => JSON.stringify(each)).join()});\n`,
  );
  writeFileSync(path.join(profile, 'user.js'), lines.join(''));
  const child = start(program, ['--headless', '--marionette', '--no-remote', '--profile', profile], {
    env: { ...process.env, HOME: folder },
  });
  const file = path.join(profile, 'MarionetteActivePort');
  await until('Firefox', () => existsSync(file) && readFileSync(file, 'utf8').trim() !== '');
  return { ...(await aPage(await overMarionette(Number(readFileSync(file, 'utf8'))), child)), saves };
}

/** Starts WebKitGTK's small browser on a display. */
export async function startWebKit({ driver, browser }, folder, display) {
  const port = 20_000 + (process.pid % 20_000);
  const child = start(driver, [`--port=${port}`], {
    env: { ...process.env, HOME: folder, XDG_CACHE_HOME: folder, DISPLAY: display, GDK_BACKEND: 'x11' },
  });
  const isUp = () =>
    fetch(`http://127.0.0.1:${port}/status`).then(
      ({ ok }) => ok,
      () => false,
    );
  await until('WebKitWebDriver', isUp);
  const options = { binary: browser, args: ['--automation'] };
  // It asks nobody where to save, and saves nothing: what is handed to it is looked at.
  return {
    ...(await aPage(await overHttp(port, { 'webkitgtk:browserOptions': options }), child)),
    saves: null,
  };
}

function aPage({ told, send }, child) {
  const run = (script, ...args) =>
    send
      .script(
        `const [${args.map((_, at) => `a${at}`).join()}] = arguments; const done = arguments[arguments.length - 1];
      (async () => { ${script} })().then(done, (error) => done({ thrown: String(error) }));`,
        args,
      )
      .then((value) => {
        if (value?.thrown) throw new Error(value.thrown);
        return value;
      });
  const page = {
    name: `${told.browserName} ${told.browserVersion}`,
    run,
    go: send.go,
    // By the page itself: Firefox's own command goes past the service worker, as a person's reload does not.
    reload: async () => {
      await run('globalThis.isOld = true; setTimeout(() => location.reload(), 0);');
      await until('a page made anew', () => run('return globalThis.isOld === undefined;').catch(() => false));
    },
    picture: async (file) => writeFileSync(file, Buffer.from(await send.picture(), 'base64')),
    see: (css) => until(css, () => run('return document.querySelector(a0) !== null;', css)),
    gone: (css) => until(`no ${css}`, () => run('return document.querySelector(a0) === null;', css)),
    text: (css) => run('return document.querySelector(a0)?.textContent ?? null;', css),
    tap: async (css) => {
      await page.see(css);
      await send.click((await send.find(css))[ELEMENT]);
    },
    /** All keys in one go, as a scanner sends them; a control character by its keys. */
    scan: (text) => send.keys([{ type: 'key', id: 'scanner', actions: [...text].flatMap(strokes) }]),
    end: async () => {
      await send.quit().catch(() => undefined);
      child.kill('SIGTERM');
    },
  };
  return send.timeouts({ script: 120_000, pageLoad: 120_000, implicit: 0 }).then(() => page);
}

const press = (value) => [
  { type: 'keyDown', value },
  { type: 'keyUp', value },
];
const controls = { '\x04': 'd', '\x1d': ']', '\x1e': '^' };

function strokes(char) {
  if (char === '\n') return press('\uE007');
  const key = controls[char];
  if (key === undefined) return press(char);
  return [{ type: 'keyDown', value: '\uE009' }, ...press(key), { type: 'keyUp', value: '\uE009' }];
}
