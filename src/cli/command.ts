// What every command shares: where input comes from, how an answer leaves, how a refusal is worded, exit codes.
// A command is thin: parse, call shared/, print. Exit 0 done, 1 the answer is no, 2 the input or call is not understood.

import { readFile } from 'node:fs/promises';
import { type ParseArgsConfig, parseArgs } from 'node:util';
import { safeParse, type z } from 'zod';

/** Where a command reads and writes; tests hand in their own. */
export interface CommandIo {
  readonly stdin: () => Promise<Uint8Array>;
  readonly stdout: (text: string) => void;
  readonly stderr: (text: string) => void;
  /** Where bytes that are no text go; absent where the caller takes text only. */
  readonly stdoutBytes?: (bytes: Uint8Array) => void;
  /** The file of this program, where it may be started again in another role; absent where a test calls. */
  readonly program?: string;
}

/** One command of the command line. `run` returns the exit code. */
export interface Command {
  readonly name: string;
  /** One line for the list of commands. */
  readonly summary: string;
  /** The whole `--help` text. */
  readonly help: string;
  readonly run: (args: readonly string[], io: CommandIo) => Promise<number>;
}

/** Input or call not understood: one line for standard error, exit 2. */
export class NotUnderstood extends Error {}

/** Parses options and positionals; an unknown option is refused by name. */
export function parseCall<T extends NonNullable<ParseArgsConfig['options']>>(
  args: readonly string[],
  options: T,
  positionals: { readonly min: number; readonly max: number; readonly names: string },
) {
  let parsed: ReturnType<
    typeof parseArgs<{ args: string[]; options: T; allowPositionals: true; strict: true }>
  >;
  try {
    parsed = parseArgs({ args: [...args], options, allowPositionals: true, strict: true });
  } catch (error) {
    throw new NotUnderstood((error as Error).message.split('\n')[0] ?? 'the call is not understood');
  }
  const found = parsed.positionals.length;
  if (found < positionals.min || found > positionals.max) {
    throw new NotUnderstood(
      `expected ${positionals.names}, found ${found === 0 ? 'nothing' : parsed.positionals.join(' ')}`,
    );
  }
  return parsed;
}

/** Reads a file argument, or standard input for `-`, as bytes. */
export async function readBytes(file: string, io: CommandIo): Promise<Uint8Array> {
  if (file === '-') return io.stdin();
  try {
    return await readFile(file);
  } catch (error) {
    const code = (error as NodeJS.ErrnoException).code;
    throw new NotUnderstood(`${file}: ${code === 'ENOENT' ? 'no such file' : `cannot be read (${code})`}`);
  }
}

/** Reads a file argument, or standard input for `-`, as UTF-8 text without a byte order mark. */
export async function readText(file: string, io: CommandIo): Promise<string> {
  const bytes = await readBytes(file, io);
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    throw new NotUnderstood(`${file}: expected UTF-8 text, found bytes that are not UTF-8`);
  }
}

/** Writes a JSON path as people write it: `slots[3].perPanel`; the whole document is `(document)`. */
export function formatPath(path: readonly PropertyKey[]): string {
  let text = '';
  for (const step of path) {
    if (typeof step === 'number') text += `[${step}]`;
    else text += text === '' ? String(step) : `.${String(step)}`;
  }
  return text === '' ? '(document)' : text;
}

/** One line for the first thing that a schema refused: path and what was expected. */
export function formatIssue(error: z.core.$ZodError): string {
  // A misspelt key also leaves the right key missing: the misspelt one is the cause.
  const issue = error.issues.find((found) => found.code === 'unrecognized_keys') ?? error.issues[0];
  if (!issue) return '(document): not as expected';
  if (issue.code === 'unrecognized_keys') {
    return `${formatPath([...issue.path, issue.keys[0] ?? ''])}: key not known here`;
  }
  return `${formatPath(issue.path)}: ${issue.message}`;
}

/** Parses JSON text and checks it; throws `NotUnderstood` with line or JSON path. `source` names the input. */
export function parseJson<T>(text: string, schema: z.core.$ZodType<T>, source: string): T {
  let value: unknown;
  try {
    value = JSON.parse(text.charCodeAt(0) === 0xfeff ? text.slice(1) : text);
  } catch (error) {
    throw new NotUnderstood(
      `${source}: line ${jsonErrorLine(text, error as Error)}: not JSON: ${(error as Error).message}`,
    );
  }
  const checked = safeParse(schema, value);
  if (!checked.success) throw new NotUnderstood(`${source}: ${formatIssue(checked.error)}`);
  return checked.data;
}

/** Reads, parses and checks one JSON document from a file or standard input. */
export async function readJson<T>(file: string, schema: z.core.$ZodType<T>, io: CommandIo): Promise<T> {
  return parseJson(await readText(file, io), schema, file === '-' ? 'standard input' : file);
}

/** Prints one JSON document. */
export function printJson(value: unknown, io: CommandIo): void {
  io.stdout(`${JSON.stringify(value)}\n`);
}

function jsonErrorLine(text: string, error: Error): number {
  const at = /position (\d+)/.exec(error.message)?.[1];
  const end = at === undefined ? text.length : Number(at);
  return text.slice(0, end).split('\n').length;
}
