// `reelward assign FILE`: a place for each part of each job, with the fewest feeders put in over all jobs.

import { z } from 'zod';
import { type AssignFailure, assignSlots } from '../../../shared/assign/assign.ts';
import type { AssignFault } from '../../../shared/assign/problem.ts';
import { type Command, NotUnderstood, parseCall, printJson, readJson } from '../command.ts';

const text = z.string().min(1);
const width = z.int().min(1).max(1000).default(1);
const input = z.strictObject({
  line: z.strictObject({
    machines: z
      .array(
        z.strictObject({
          machine: text,
          banks: z.array(z.strictObject({ bank: text, positions: z.int().min(1).max(1000) })).max(100),
        }),
      )
      .max(100),
  }),
  loaded: z
    .array(z.strictObject({ slot: text, part: text, width }))
    .max(20_000)
    .default([]),
  jobs: z
    .array(
      z.strictObject({
        id: text,
        parts: z
          .array(z.strictObject({ part: text, width, perPanel: z.number().min(0).default(0) }))
          .max(5000),
      }),
    )
    .max(500),
});

const help = `reelward assign FILE

Reads {"line": {"machines": [{"machine","banks":[{"bank","positions"}]}]}, "loaded": [{"slot","part","width"}],
"jobs": [{"id","parts":[{"part","width","perPanel"}]}]} from FILE, or from standard input for "-". A slot is
machine-bank-number (M1-F-014); width (default 1) is the positions taken from that number upward on the same bank.

Prints {"jobs": [{"id","slots":[{"slot","part"}],"changes"}], "changes", "lowest", "proven"}: a place for each part of each
job, in the order of the jobs. changes: feeders put in, moved ones too; fewest over all jobs. A feeder that a job does
not need stays where it is until something else wants its place. lowest: no assignment needs fewer; proven: changes is
the fewest. It is a proposal for feeders, not a placement program.

Exit 0 done, 1 a job does not fit the line, 2 the input is not understood.
`;

function faultLine(fault: AssignFault): string {
  switch (fault.code) {
    case 'twice':
      return `${fault.path}: ${fault.found} is given twice; expected each once`;
    case 'slot-unknown':
      return `${fault.path}: ${fault.found} is no slot of the line`;
    case 'over-end':
      return `${fault.path}: the feeder on ${fault.found} reaches over the end of its bank`;
    case 'overlap':
      return `${fault.path}: ${fault.found} take the same positions; expected feeders side by side`;
  }
}

function roomLine(failure: Extract<AssignFailure, { code: 'no-room' }>): string {
  const shown = failure.parts.slice(0, 8).map((part) => `${part.part} (${part.width})`);
  const more = failure.parts.length > 8 ? ` and ${failure.parts.length - 8} more` : '';
  return (
    `job ${failure.job} does not fit the line: its feeders need ${failure.needed} positions, the line has ${failure.capacity}` +
    `${failure.needed <= failure.capacity ? ', not side by side on its banks' : ''}; widest first: ${shown.join(', ')}${more}`
  );
}

async function run(args: readonly string[], io: Parameters<Command['run']>[1]): Promise<number> {
  const { positionals } = parseCall(args, {}, { min: 1, max: 1, names: 'one FILE' });
  const file = positionals[0] ?? '-';
  const answer = assignSlots(await readJson(file, input, io));
  if (!answer.ok) {
    if (answer.error.code === 'fault')
      throw new NotUnderstood(`${file === '-' ? 'standard input' : file}: ${faultLine(answer.error.fault)}`);
    io.stderr(`reelward assign: ${roomLine(answer.error)}\n`);
    const { job, parts } = answer.error;
    printJson({ jobs: [], changes: 0, proven: false, problems: [{ code: 'no-room', job, parts }] }, io);
    return 1;
  }
  const { jobs, changes, lowest, isProven } = answer.value;
  printJson({ jobs, changes, lowest, proven: isProven }, io);
  return 0;
}

/** The command `assign`. */
export const command: Command = {
  name: 'assign',
  summary: 'a place for each part of each job, with the fewest feeders put in',
  help,
  run,
};
