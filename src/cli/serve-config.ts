// Where the server's options come from: the command line, else the environment, else a file. A secret belongs in the last two: whatever
// stands on a command line is read by every user of the computer.

import { readFileSync, statSync } from 'node:fs';
import { NotUnderstood } from './command.ts';
import { hasPassword } from './serve-faults.ts';
import { type ServeValues, serveOptions } from './serve-settings.ts';

type Option = keyof typeof serveOptions;

/** Options of one act at a time: they stand on the command line alone. */
const actOnly: ReadonlySet<Option> = new Set([
  'config',
  'keep',
  'month',
  'replace',
  'replaces',
  'screen',
  'url',
]);
const kept = (Object.keys(serveOptions) as Option[]).filter((name) => !actOnly.has(name));

/** The environment's name of an option: `REELWARD_TRUST_PORT` for `--trust-port`. */
export function variableOf(name: string): string {
  return `REELWARD_${name.toUpperCase().replaceAll('-', '_')}`;
}

/** All options: what the command line says, and where it is silent the environment, and then the file that `--config` names. */
export function gatherValues(called: ServeValues, env: NodeJS.ProcessEnv): ServeValues {
  const file = called.config ?? env[variableOf('config')];
  const values: Partial<Record<Option, string | boolean>> = file === undefined ? {} : readConfig(file);
  for (const name of kept) {
    const text = env[variableOf(name)];
    if (text !== undefined) values[name] = fromVariable(name, text);
  }
  for (const [name, value] of Object.entries(called)) if (value !== undefined) values[name as Option] = value;
  // Each was read as the kind of its option.
  return values as ServeValues;
}

function fromVariable(name: Option, text: string): string | boolean {
  if (serveOptions[name].type === 'string') return text;
  if (text === 'true' || text === 'false') return text === 'true';
  throw new NotUnderstood(`${variableOf(name)}: expected true or false, found ${text}`);
}

function readConfig(file: string): Partial<Record<Option, string | boolean>> {
  const parsed = parseConfig(file);
  const values: Partial<Record<Option, string | boolean>> = {};
  for (const [name, value] of Object.entries(parsed)) {
    const option = kept.find((each) => each === name);
    if (option === undefined)
      throw new NotUnderstood(`${file}: ${name}: key not known here; expected one of ${kept.join(', ')}`);
    values[option] = fromFile(file, option, value);
  }
  if (hasPassword(values.database?.toString()) && (statSync(file).mode & 0o077) !== 0)
    throw new NotUnderstood(`${file}: holds a password and others may read it; chmod 600 it first`);
  return values;
}

function fromFile(file: string, name: Option, value: unknown): string | boolean {
  if (serveOptions[name].type === 'boolean') {
    if (typeof value === 'boolean') return value;
    throw new NotUnderstood(`${file}: ${name}: expected true or false, found ${JSON.stringify(value)}`);
  }
  if (typeof value === 'string') return value;
  if (typeof value === 'number') return String(value);
  throw new NotUnderstood(`${file}: ${name}: expected a text, found ${JSON.stringify(value)}`);
}

function parseConfig(file: string): Readonly<Record<string, unknown>> {
  let text: string;
  try {
    text = readFileSync(file, 'utf8');
  } catch (error) {
    const { code } = error as NodeJS.ErrnoException;
    throw new NotUnderstood(
      `--config ${file}: ${code === 'ENOENT' ? 'no such file' : `cannot be read (${code})`}`,
    );
  }
  try {
    const value: unknown = JSON.parse(text);
    if (typeof value === 'object' && value !== null && !Array.isArray(value))
      return value as Readonly<Record<string, unknown>>; // an object, as was just asked
  } catch (error) {
    throw new NotUnderstood(`--config ${file}: not JSON: ${(error as Error).message}`);
  }
  throw new NotUnderstood(`--config ${file}: expected one JSON object, e.g. {"https": true, "port": 8443}`);
}
