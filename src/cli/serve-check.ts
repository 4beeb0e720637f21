// `reelward serve check`: would the server start with these options, and go on? One line for each thing looked at.

import { checkServer, type Finding } from '../server/checks.ts';
import type { CommandIo } from './command.ts';
import { storeFault } from './serve-faults.ts';
import { readSettings, type ServeValues } from './serve-settings.ts';

/** How each kind of finding is marked. */
export const marks: Readonly<Record<Finding['is'], string>> = {
  good: 'good   ',
  warning: 'WARNING',
  wrong: 'WRONG  ',
};

/** Prints what was found; 0 where the server can start, 1 where something is wrong. */
export async function check(values: ServeValues, io: CommandIo): Promise<number> {
  // Options that are not understood are refused before anything is looked at.
  const settings = readSettings(values);
  const { database } = settings;
  const storeWords = (error: unknown) => storeFault(error, database)?.message ?? null;
  const findings = await checkServer({ settings, storeWords });
  io.stdout(`${marks.good} configuration: understood\n`);
  for (const { what, is, words } of findings) io.stdout(`${marks[is]} ${what}: ${words}\n`);
  return findings.some(({ is }) => is === 'wrong') ? 1 : 0;
}
