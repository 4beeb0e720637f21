// `reelward rounds`: the fewest walks along the line that do every splice inside its window.
// The planning is in shared/forecast/walk-schedule.ts.

import { z } from 'zod';
import { scheduleWalks, usualEffort } from '../../../shared/forecast/walk-schedule.ts';
import { type Command, type CommandIo, parseCall, printJson, readJson } from '../command.ts';
import { formatMoment, momentSchema, offsetOf } from '../moment.ts';

const help = `reelward rounds FILE · reelward walks FILE

Reads one JSON document (FILE, or - for standard input):
{"now": "2026-03-02T06:00:00+01:00", "walk": 60, "each": 45,
 "splices": [{"slot": "M1-F-014", "opens": "2026-03-02T08:10:00+01:00", "closes": "2026-03-02T08:25:00+01:00"}]}
walk: seconds from the start of a round to its first splice; each: seconds for one splice.

Prints {"rounds": [{"start", "end", "slots"}], "missed": [{"slot", "by", "reason"}], "proven"}: fewest missed, then fewest rounds, then
latest starts. by: when that splice would have had to be done; reason: windowTooShort, closesTooSoon or crowdedOut; proven: no better
plan exists. Exit 0 answered, 2 not understood.
`;

const spliceSchema = z
  .strictObject({ slot: z.string().min(1), opens: momentSchema, closes: momentSchema })
  .refine((splice) => Date.parse(splice.opens) <= Date.parse(splice.closes), {
    path: ['closes'],
    error: 'expected a moment not before "opens"',
  });

const inputSchema = z.strictObject({
  now: momentSchema,
  walk: z.number().min(0),
  each: z.number().min(0),
  splices: z.array(spliceSchema),
});

/** A batch may take its time: a tenth of a second more proves most plans. */
const BATCH_EFFORT = 100_000;

async function run(args: readonly string[], io: CommandIo): Promise<number> {
  const { positionals } = parseCall(args, {}, { min: 1, max: 1, names: 'one FILE, or -' });
  const input = await readJson(positionals[0] ?? '-', inputSchema, io);
  const plan = scheduleWalks({
    nowMs: Date.parse(input.now),
    walkSeconds: input.walk,
    eachSeconds: input.each,
    effort: Math.max(BATCH_EFFORT, usualEffort(input.splices.length)),
    splices: input.splices.map((splice) => ({
      slot: splice.slot,
      opensMs: Date.parse(splice.opens),
      closesMs: Date.parse(splice.closes),
    })),
  });
  const offset = offsetOf(input.now);
  printJson(
    {
      rounds: plan.walks.map((walk) => ({
        start: formatMoment(walk.startMs, offset),
        end: formatMoment(walk.endMs, offset),
        slots: walk.splices.map((splice) => splice.slot),
      })),
      missed: plan.missed.map((missed) => ({
        slot: missed.slot,
        by: formatMoment(missed.byMs, offset),
        reason: missed.reason,
      })),
      proven: plan.proven,
    },
    io,
  );
  return 0;
}

export const command: Command = {
  name: 'rounds',
  summary: 'the fewest walks that do every splice in its window',
  help,
  run,
};
