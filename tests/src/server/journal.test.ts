// The command that an administrator is given to keep PostgreSQL's journal, as PostgreSQL runs it: by a shell, `%p` the piece and `%f` its name; and the one that brings a piece back.

import { execFileSync, spawnSync } from 'node:child_process';
import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, it } from 'vitest';
import { newFolder } from '../../contract/databases.ts';

const deploy = 'src/server/deploy/cluster';
const name = '000000010000000000000003';
let folder: ReturnType<typeof newFolder>;
let piece: string;

beforeEach(() => {
  folder = newFolder();
  mkdirSync(join(folder.path, 'wal'));
  piece = join(folder.path, name);
  writeFileSync(piece, 'journal'.repeat(10_000));
});
afterEach(() => folder.remove());

const commandIn = (file: string, pattern: RegExp) =>
  pattern.exec(readFileSync(join(deploy, file), 'utf8'))?.[1] ?? '';
const keep = commandIn('archive.conf', /^archive_command = '(.*)'$/m);
const bring = commandIn('restore-moment', /^restore_command = '(.*)'$/m);
const run = (command: string, file: string) =>
  spawnSync('sh', [
    '-c',
    command
      .replaceAll('/var/backups/postgresql', folder.path)
      .replaceAll('$place', folder.path)
      .replaceAll('%p', file)
      .replaceAll('%f', name),
  ]).status;
const kept = () => readdirSync(join(folder.path, 'wal'));

it('a piece is kept packed, and comes back as it was', () => {
  expect(run(keep, piece)).toBe(0);
  expect(kept()).toEqual([`${name}.gz`]);
  const back = join(folder.path, 'back');
  expect(run(bring, back)).toBe(0);
  expect(readFileSync(back)).toEqual(readFileSync(piece));
});

it('a piece that was kept before PostgreSQL fell over is well, and another of its name is not', () => {
  expect(run(keep, piece)).toBe(0);
  expect(run(keep, piece)).toBe(0);
  writeFileSync(piece, 'another');
  expect(run(keep, piece)).not.toBe(0);
  expect(execFileSync('gunzip', ['-c', join(folder.path, 'wal', `${name}.gz`)]).length).toBe(70_000);
});

it('half a piece of before is written anew', () => {
  writeFileSync(join(folder.path, 'wal', `${name}.part`), 'half');
  expect(run(keep, piece)).toBe(0);
  expect(kept()).toEqual([`${name}.gz`]);
});

it('a piece that is not there is told as that', () => {
  expect(run(bring, join(folder.path, 'back'))).not.toBe(0);
});

it('is the same in containers', () => {
  expect(commandIn('compose.yml', /^ +- archive_command=(.*)$/m)).toBe(keep);
});
