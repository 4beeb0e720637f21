// The command line as it is shipped, in processes of its own: built once for all files of a run, a fresh folder for each test.

import { type ChildProcess, spawn } from 'node:child_process';
import { existsSync, mkdirSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { build } from 'vite';
import { afterEach, beforeAll, beforeEach, inject } from 'vitest';
import { newFolder } from '../contract/databases.ts';
import { until } from '../src/server/tablets.ts';

const root = new URL('../../', import.meta.url).pathname;

/** A command that was started, and what it said so far. */
export interface Running {
  readonly child: ChildProcess;
  readonly out: () => string;
  readonly err: () => string;
  readonly ended: Promise<number | null>;
}

export interface BuiltCli {
  /** The folder of the test under way, in which commands run. */
  readonly folder: string;
  /** Starts `reelward ...args`. */
  readonly run: (...args: string[]) => Running;
  /** Kills what was started; done after each test by itself. */
  readonly killAll: () => void;
}

/** Gives the tests of a file the built command line. */
export function useBuiltCli(): BuiltCli {
  const built = inject('builtCli');
  let folder: ReturnType<typeof newFolder>;
  let children: ChildProcess[] = [];
  const killAll = () => {
    for (const child of children) child.kill('SIGKILL');
  };
  beforeAll(() => buildOnce(built), 120_000);
  beforeEach(() => {
    folder = newFolder();
    children = [];
  });
  afterEach(() => {
    killAll();
    folder.remove();
  });
  return {
    get folder() {
      return folder.path;
    },
    run(...args) {
      const env = { ...process.env };
      delete env['VITEST'];
      const command = join(built, 'dist', 'cli', 'reelward.js');
      const child = spawn(process.execPath, [command, ...args], { cwd: folder.path, env });
      children.push(child);
      return follow(child);
    },
    killAll,
  };
}

function follow(child: ReturnType<typeof spawn>): Running {
  let [out, err] = ['', ''];
  child.stdout?.on('data', (chunk) => {
    out += chunk;
  });
  child.stderr?.on('data', (chunk) => {
    err += chunk;
  });
  const ended = new Promise<number | null>((resolve) => child.on('exit', resolve));
  return { child, out: () => out, err: () => err, ended };
}

/** Whoever makes the lock builds; the others wait. Files run in processes of their own, so that only the disk tells them apart. */
async function buildOnce(built: string): Promise<void> {
  const [done, failed] = [join(built, 'done'), join(built, 'failed')];
  try {
    mkdirSync(join(built, 'lock'));
  } catch {
    await until('the command line that another file builds', () => existsSync(done) || existsSync(failed));
    if (existsSync(failed))
      throw new Error('the command line could not be built: see the file that built it');
    return;
  }
  try {
    await build({
      configFile: join(root, 'vite.node.config.ts'),
      root,
      logLevel: 'silent',
      build: { outDir: join(built, 'dist', 'cli') },
    });
    // Packages are found by a link beside it; not in the project's own dist, which may be in use.
    symlinkSync(join(root, 'node_modules'), join(built, 'node_modules'));
    writeFileSync(join(built, 'package.json'), '{"name":"reelward","version":"0.1.0","type":"module"}');
    writeFileSync(done, '');
  } catch (reason) {
    writeFileSync(failed, '');
    throw reason;
  }
}
