// `reelward changeover FILE`: from what is loaded to what is wanted, in steps that can be carried out.

import { z } from 'zod';
import { diffSetups, type PlacedFeeder, type SetupFault } from '../../../shared/changeover/diff.ts';
import { orderSteps } from '../../../shared/changeover/steps.ts';
import { type Command, NotUnderstood, parseCall, printJson, readJson } from '../command.ts';

const feeder = z.strictObject({
  slot: z.string().min(1),
  part: z.string().min(1),
  width: z.int().min(1).max(1000).default(1),
});
const input = z.strictObject({ loaded: z.array(feeder), wanted: z.array(feeder) });

const help = `reelward changeover FILE

Reads {"loaded": [{"slot","part","width"}], "wanted": [{"slot","part","width"}]} from FILE, or from standard input for "-".
A slot is machine-bank-number (M1-F-014) in 8 mm positions; width (default 1) is the positions taken from that number
upward on the same bank. A slot of any other form is a place of its own without neighbours. A letter or second number
behind it (M1-F-014A, M1-F-014-2) is a lane of one feeder: its reels come out, move and go in together.

Prints {"keep","move","takeOut","putIn","stay","steps","parked","proven"}. stay: not wanted, in nobody's way.
steps: one feeder at a time, in walks along the line: {"act","slot","part","to"}.
  takeOut  the feeder leaves the machine from slot       park    it leaves slot for a while
  move     it goes from slot to "to"                     unpark  a parked feeder goes on slot (= "to")
  putIn    a new feeder goes on slot
A step of a feeder with several lanes has "lanes": the others, as {"slot","part"}. With "laneOnly" the feeder stays and
the reel on that lane alone comes off (takeOut) or goes on (putIn).
parked: feeders parked off the machine on the way; proven: no order with fewer exists.

Exit 0 done, 2 the input is not understood (a slot twice, feeders that overlap).
`;

function faultLine(fault: SetupFault): string {
  const where = `${fault.side}[${fault.at}]`;
  const other = fault.with === undefined ? '' : `${fault.with.part} on ${fault.with.slot}`;
  switch (fault.code) {
    case 'width':
      return `${where}.width: expected a whole number of positions, 1 or more`;
    case 'slot-twice':
      return `${where}.slot: ${fault.slot} is given twice (${other}, ${fault.part}); expected one feeder a slot`;
    case 'overlap':
      return `${where}.slot: ${fault.part} on ${fault.slot} takes positions of ${other}; expected feeders side by side`;
    case 'slot-unknown':
      return `${where}.slot: ${fault.slot} does not exist`;
  }
}

function plain(feeders: readonly PlacedFeeder[]): { slot: string; part: string; width: number }[] {
  return feeders.flatMap(({ slot, part, width, lanes = [] }) =>
    [{ slot, part }, ...lanes].map((lane) => ({ ...lane, width })),
  );
}

async function run(args: readonly string[], io: Parameters<Command['run']>[1]): Promise<number> {
  const { positionals } = parseCall(args, {}, { min: 1, max: 1, names: 'one FILE' });
  const file = positionals[0] ?? '-';
  const { loaded, wanted } = await readJson(file, input, io);
  const diff = diffSetups(loaded, wanted);
  if (!diff.ok) {
    const fault = diff.error[0];
    const source = file === '-' ? 'standard input' : file;
    throw new NotUnderstood(`${source}: ${fault === undefined ? 'not as expected' : faultLine(fault)}`);
  }
  const plan = orderSteps(diff.value);
  printJson(
    {
      keep: plain(plan.diff.keep),
      move: plan.diff.move.flatMap(({ part, from, to, lanes = [] }) => [{ part, from, to }, ...lanes]),
      takeOut: plain(plan.diff.takeOut),
      putIn: plain(plan.diff.putIn),
      stay: plain(plan.diff.stay),
      steps: plan.steps,
      parked: plan.parked,
      proven: plan.isProven,
    },
    io,
  );
  return 0;
}

/** The command `changeover`. */
export const command: Command = {
  name: 'changeover',
  summary: 'loaded against wanted: keep, move, take out, put in, in steps',
  help,
  run,
};
