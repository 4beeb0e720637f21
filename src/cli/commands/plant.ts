// `reelward plant FILE`: out of an exported log the file from which a second plant begins; or what such a file holds.

import { applyAll } from '../../../shared/floor/fold.ts';
import {
  countPlantFile,
  type PlantFileFault,
  plantFileKinds,
  plantFileText,
  readPlantFile,
} from '../../../shared/floor/plant-file.ts';
import { emptyState } from '../../../shared/floor/state.ts';
import { compareEntries } from '../../../shared/log/order.ts';
import { type Command, NotUnderstood, parseCall, printJson, readText } from '../command.ts';
import { readLogFile } from '../log-file.ts';

const help = `reelward plant FILE [--check]

Makes a file for a second plant out of FILE, an exported log ("-" for standard input), and prints it: name and zone,
lines with machines, banks and rules, feeder types, approved supplier parts, packages, checklists, label rules and label sizes.
Without people, tablets, feeders, reels, setups, runs and history. In the new plant: Plant, This plant, Begin from a file.

--check reads FILE as such a file instead and prints what it holds: {"name", "lines", "slots", "parts", "checklists", "labelRules"}.

Exit 0 done, 1 the log tells of no line, 2 the file is not understood.
`;

/** What is wrong with a plant's file, in one line. */
function sayFault(fault: PlantFileFault): string {
  switch (fault.code) {
    case 'not-json':
      return 'expected a file that "reelward plant" or the app wrote, found text that is no JSON';
    case 'not-a-plant':
      return 'expected a file that "reelward plant" or the app wrote, found other JSON';
    case 'newer':
      return 'it was written by a newer version; update this one first';
    case 'no-lines':
      return 'it holds no line';
    case 'kind':
      return `told[${fault.at - 1}].kind: expected one of ${plantFileKinds.join(', ')}, found ${fault.kind}`;
    case 'payload':
      return `told[${fault.at - 1}]${fault.where === '' ? '' : `.payload.${fault.where}`}: not as an entry ${fault.kind} wants it`;
  }
}

async function run(args: readonly string[], io: Parameters<Command['run']>[1]): Promise<number> {
  const options = { check: { type: 'boolean' } } as const;
  const { positionals, values } = parseCall(args, options, { min: 1, max: 1, names: 'one FILE' });
  const [file = '-'] = positionals;
  const name = file === '-' ? 'standard input' : file;
  if (values.check === true) {
    const read = readPlantFile(await readText(file, io));
    if (!read.ok) throw new NotUnderstood(`${name}: ${sayFault(read.error)}`);
    printJson({ name: read.value.name, ...countPlantFile(read.value) }, io);
    return 0;
  }
  const { entries, faults } = await readLogFile(file, io);
  const [fault] = faults;
  if (fault !== undefined || entries.length === 0) {
    const where = fault === undefined ? '' : `line ${fault.row}: `;
    throw new NotUnderstood(`${name}: ${where}expected an exported log, found ${fault?.found || 'nothing'}`);
  }
  const state = applyAll(emptyState(), [...entries].sort(compareEntries));
  if (state.lines.size === 0) {
    io.stderr(`reelward plant: ${name}: the log tells of no line; export it whole, without a filter\n`);
    return 1;
  }
  io.stdout(plantFileText(state));
  return 0;
}

/** The command `plant`. */
export const command: Command = {
  name: 'plant',
  summary: 'a file for a second plant, out of an exported log',
  help,
  run,
};
