// `reelward plant FILE`: out of an exported log the file from which a second plant begins; or what such a file holds.

import { applyAll } from '../../../shared/floor/fold.ts';
import { countPlantFile, plantFileText } from '../../../shared/floor/plant-file.ts';
import { emptyState } from '../../../shared/floor/state.ts';
import { compareEntries } from '../../../shared/log/order.ts';
import { type Command, NotUnderstood, parseCall, printJson } from '../command.ts';
import { readLogFile } from '../log-file.ts';
import { readOtherPlant } from '../plant-file.ts';

const help = `reelward plant FILE [--check]

Makes a file for a second plant out of FILE, an exported log ("-" for standard input), and prints it: name and zone,
lines with machines, banks and rules, feeder types, approved supplier parts, packages, checklists, label rules and label sizes.
Without people, tablets, feeders, reels, setups, runs and history. In the new plant: "reelward serve begin FILE",
or on a tablet Plant, This plant, Begin from a file.

--check reads FILE as such a file instead and prints what it holds: {"name", "lines", "slots", "parts", "checklists", "labelRules"}.

Exit 0 done, 1 the log tells of no line, 2 the file is not understood.
`;

async function run(args: readonly string[], io: Parameters<Command['run']>[1]): Promise<number> {
  const options = { check: { type: 'boolean' } } as const;
  const { positionals, values } = parseCall(args, options, { min: 1, max: 1, names: 'one FILE' });
  const [file = '-'] = positionals;
  const name = file === '-' ? 'standard input' : file;
  if (values.check === true) {
    const read = await readOtherPlant(file, io);
    printJson({ name: read.name, ...countPlantFile(read) }, io);
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
