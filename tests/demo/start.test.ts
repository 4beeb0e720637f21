// `npm start` in a small project of its own: what it installs and builds, when, and how it ends.

import { spawn } from 'node:child_process';
import { copyFile, mkdir, mkdtemp, readFile, rm, utimes, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';

let root = '';

const cli = (text: string) =>
  `import { mkdirSync, writeFileSync } from 'node:fs';
for (const dir of ['dist/cli', 'dist/app']) mkdirSync(dir, { recursive: true });
writeFileSync('dist/app/index.html', '');
writeFileSync('dist/cli/reelward.js', ${JSON.stringify(text)});
`;

async function writeProject(engine: string): Promise<void> {
  for (const dir of ['demo', 'shared', 'src', 'public']) await mkdir(join(root, dir), { recursive: true });
  await copyFile('demo/start.mjs', join(root, 'demo/start.mjs'));
  await writeFile(
    join(root, 'build.mjs'),
    cli("console.log('ran ' + process.argv.slice(2).join(' ')); process.exitCode = 3;\n"),
  );
  const manifest = {
    name: 'small',
    version: '1.0.0',
    type: 'module',
    private: true,
    engines: { node: engine },
    scripts: { build: 'node build.mjs' },
  };
  await writeFile(join(root, 'package.json'), JSON.stringify(manifest));
  const { name, version } = manifest;
  const lock = { name, version, lockfileVersion: 3, requires: true, packages: { '': { name, version } } };
  await writeFile(join(root, 'package-lock.json'), JSON.stringify(lock));
  await age('package.json', 60);
  for (const dir of ['demo/start.mjs', 'demo', 'shared', 'src', 'public']) await age(dir, 60);
}

/** Makes a file as old as that many seconds. */
async function age(path: string, seconds: number): Promise<void> {
  const moment = new Date(Date.now() - seconds * 1000);
  await utimes(join(root, path), moment, moment);
}

function start(...args: string[]): {
  done: Promise<{ code: number | null; out: string; err: string }>;
  child: ReturnType<typeof spawn>;
} {
  const child = spawn(process.execPath, [join(root, 'demo/start.mjs'), ...args], { cwd: root });
  let out = '';
  let err = '';
  child.stdout.on('data', (piece) => {
    out += piece;
  });
  child.stderr.on('data', (piece) => {
    err += piece;
  });
  return { child, done: new Promise((resolve) => child.on('close', (code) => resolve({ code, out, err }))) };
}

beforeEach(async () => {
  root = await mkdtemp(join(tmpdir(), 'reelward-start-'));
});

afterEach(async () => {
  await rm(root, { recursive: true, force: true });
});

describe('demo/start.mjs', () => {
  test('installs and builds the first time, neither the second time, and passes arguments and exit code on', async () => {
    await writeProject('>=20.0.0');
    await mkdir(join(root, 'node_modules'));
    await writeFile(join(root, 'node_modules/.package-lock.json'), '{}');
    await age('node_modules/.package-lock.json', 120);
    const first = await start('--port', '9000').done;
    expect(first).toMatchObject({ code: 3, out: 'ran demo --lanes --port 9000\n' });
    expect(first.err).toMatch(/^Installing packages .*\nBuilding \.\.\.\n$/);
    await writeFile(join(root, 'node_modules/.package-lock.json'), '{}');
    const second = await start('--play', '5').done;
    expect(second).toEqual({ code: 3, out: 'ran demo --lanes --play 5\n', err: '' });
  });

  test('builds again when a source is newer than the build', async () => {
    await writeProject('>=20.0.0');
    await mkdir(join(root, 'node_modules'));
    await writeFile(join(root, 'node_modules/.package-lock.json'), '{}');
    expect((await start().done).err).toBe('Building ...\n');
    await mkdir(join(root, 'src/app'));
    await writeFile(join(root, 'src/app/new.ts'), '');
    await age('dist/cli/reelward.js', 5);
    expect((await start().done).err).toBe('Building ...\n');
    expect((await start().done).err).toBe('');
  });

  test('refuses a Node that is too old in one line', async () => {
    await writeProject('>=99.1.0');
    const { code, err } = await start().done;
    expect(code).toBe(1);
    expect(err).toBe(
      `Reelward needs Node 99.1.0 or later, this is ${process.versions.node}: see https://nodejs.org\n`,
    );
  });

  test('shows the end of a failed build and stops with its code', async () => {
    await writeProject('>=20.0.0');
    await mkdir(join(root, 'node_modules'));
    await writeFile(join(root, 'node_modules/.package-lock.json'), '{}');
    await writeFile(join(root, 'build.mjs'), "console.error('no such thing'); process.exit(7);\n");
    const { code, err, out } = await start().done;
    expect(code).toBe(7);
    expect(out).toBe('');
    expect(err).toContain('no such thing');
    expect(err.trimEnd().split('\n').at(-1)).toBe('The build failed: see the lines above');
  });

  test('hands a request to stop on and ends with the demo', async () => {
    await writeProject('>=20.0.0');
    await mkdir(join(root, 'node_modules'));
    await writeFile(join(root, 'node_modules/.package-lock.json'), '{}');
    await writeFile(
      join(root, 'build.mjs'),
      cli(
        "import { writeFileSync } from 'node:fs';\nprocess.once('SIGTERM', () => { writeFileSync('stopped', 'yes'); process.exit(0); });\nsetInterval(() => undefined, 1000);\nconsole.log('up');\n",
      ),
    );
    const { child, done } = start();
    await new Promise<void>((resolve) => child.stdout?.once('data', () => resolve()));
    child.kill('SIGTERM');
    expect((await done).code).toBe(0);
    expect(await readFile(join(root, 'stopped'), 'utf8')).toBe('yes');
  });
});
