#!/usr/bin/env node
// Entry point of the command line: finds the command, turns what it throws into one line and an exit code.

import { traceRole } from '../server/trace/protocol.ts';
import { type CommandIo, NotUnderstood } from './command.ts';
import { commandLoaders } from './commands.ts';
import { ownVersion } from './version.ts';

async function readStdin(): Promise<Uint8Array> {
  const chunks: Uint8Array[] = [];
  for await (const chunk of process.stdin) chunks.push(chunk as Uint8Array);
  return Buffer.concat(chunks);
}

const processIo: CommandIo = {
  stdin: readStdin,
  stdout: (text) => void process.stdout.write(text),
  stderr: (text) => void process.stderr.write(text),
  stdoutBytes: (bytes) => void process.stdout.write(bytes),
  ...(process.argv[1] === undefined ? {} : { program: process.argv[1] }),
};

/** Runs one call of the command line and returns its exit code; never throws. */
export async function runReelward(args: readonly string[], io: CommandIo): Promise<number> {
  const [name, ...rest] = args;
  const loader =
    name === undefined ? undefined : Object.hasOwn(commandLoaders, name) ? commandLoaders[name] : undefined;
  if (loader === undefined) {
    if (name === '--version') {
      io.stdout(`${ownVersion()}\n`);
      return 0;
    }
    const asked = name === '--help' || name === '-h' || name === 'help';
    const names = Object.keys(commandLoaders).join(', ');
    if (asked) {
      io.stdout(
        `reelward COMMAND ...\n\nCommands: ${names}\nEach takes --help; reelward --version says which version this is.\n`,
      );
      return 0;
    }
    io.stderr(`reelward: expected a command (${names}), found ${name ?? 'nothing'}\n`);
    return 2;
  }
  const command = await loader();
  if (rest.includes('--help') || rest.includes('-h')) {
    io.stdout(command.help.endsWith('\n') ? command.help : `${command.help}\n`);
    return 0;
  }
  try {
    return await command.run(rest, io);
  } catch (error) {
    if (error instanceof NotUnderstood) {
      io.stderr(`reelward ${command.name}: ${error.message.replace(/\s*\n\s*/g, ' ')}\n`);
      return 2;
    }
    io.stderr(`reelward ${command.name}: stopped by a fault of its own: ${(error as Error).message}\n`);
    return 2;
  }
}

if (process.env['VITEST'] === undefined) {
  const args = process.argv.slice(2);
  // No command of its own: the server starts this file again in that role.
  if (args[0] === traceRole) await (await import('../server/trace/child.ts')).keepTraceAsChild();
  process.exitCode = await runReelward(args, processIo);
}
