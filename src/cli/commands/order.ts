// `reelward order FILE`: the order of jobs that needs the fewest feeders put in, with what goes in and out before each.

import { z } from 'zod';
import { orderJobs, workOfSeconds } from '../../../shared/order/jobs.ts';
import type { OrderProblem, OrderQuestion } from '../../../shared/order/problem.ts';
import { type Command, NotUnderstood, parseCall, printJson, readJson } from '../command.ts';

const positions = z.int().min(1).max(1_000_000);
const input = z.strictObject({
  capacity: positions,
  jobs: z
    .array(z.strictObject({ id: z.string().min(1), parts: z.array(z.string().min(1)).max(20_000) }))
    .max(1000),
  widths: z.record(z.string(), positions).default({}),
  loaded: z.array(z.string().min(1)).max(20_000).default([]),
});

const DEFAULT_SECONDS = 2;
/** On a machine this much slower than expected the search ends early rather than keep somebody waiting. */
const PATIENCE = 4;

const help = `reelward order FILE [--seconds S] [--seed N]

Reads {"capacity", "jobs": [{"id","parts":[...]}], "widths": {"part": positions}, "loaded": [...]} from FILE, or from
standard input for "-". widths default to 1, loaded (on the machine before the first job) to nothing. A part listed twice
in one list counts once.

Prints {"order", "loads": [{"job","in","out"}], "changes", "lowest", "gap", "proven"}. changes: feeders put in over all
jobs, the first included. A feeder comes out only where its room is needed. lowest: no order needs fewer; gap: how far
changes may be above that, as a fraction; proven: changes = lowest.

--seconds S  time to search, 0.01 to 3600 (default ${DEFAULT_SECONDS}); ends sooner once the order is proven best
--seed N     whole number (default 1); the same input, seed and seconds give the same answer

Exit 0 done, 1 a job does not fit the machine, 2 the input is not understood.
`;

function problemLine(problem: OrderProblem): string {
  const parts = (problem.parts ?? []).slice(0, 8).join(', ');
  const more = (problem.parts?.length ?? 0) > 8 ? ` and ${(problem.parts?.length ?? 0) - 8} more` : '';
  switch (problem.code) {
    case 'job-too-wide':
      return `job ${problem.job} does not fit the machine: ${problem.over} positions over; its feeders, widest first: ${parts}${more}`;
    case 'loaded-too-wide':
      return `loaded: ${problem.over} positions over the capacity; expected feeders that fit the machine`;
    case 'job-twice':
      return `jobs: id ${problem.job} is given twice; expected each id once`;
    default:
      return `job ${problem.job}: cannot be locked to place ${problem.place}`;
  }
}

function readNumber(
  text: string | undefined,
  name: string,
  fallback: number,
  range: { min: number; max: number },
): number {
  if (text === undefined) return fallback;
  const value = /^-?\d+(\.\d+)?$/.test(text) ? Number(text) : Number.NaN;
  if (!(value >= range.min && value <= range.max)) {
    throw new NotUnderstood(`--${name}: expected a number from ${range.min} to ${range.max}, found ${text}`);
  }
  return value;
}

async function run(args: readonly string[], io: Parameters<Command['run']>[1]): Promise<number> {
  const { positionals, values } = parseCall(
    args,
    { seconds: { type: 'string' }, seed: { type: 'string' } },
    { min: 1, max: 1, names: 'one FILE' },
  );
  const seconds = readNumber(values['seconds'], 'seconds', DEFAULT_SECONDS, { min: 0.01, max: 3600 });
  const seed = readNumber(values['seed'], 'seed', 1, { min: -(2 ** 31), max: 2 ** 32 - 1 });
  if (!Number.isInteger(seed))
    throw new NotUnderstood(`--seed: expected a whole number, found ${values['seed']}`);
  const file = positionals[0] ?? '-';
  const question: OrderQuestion = await readJson(file, input, io);
  const latest = performance.now() + Math.max(1, seconds) * 1000 * PATIENCE;
  const answer = orderJobs(
    question,
    { seed, budget: workOfSeconds(seconds) },
    () => performance.now() > latest,
  );
  if (!answer.ok) {
    const lines = answer.error.map(problemLine);
    const isContradiction = answer.error.find((one) => one.code !== 'job-too-wide');
    if (isContradiction !== undefined) {
      throw new NotUnderstood(`${file === '-' ? 'standard input' : file}: ${problemLine(isContradiction)}`);
    }
    io.stderr(`reelward order: ${lines.join('; ')}\n`);
    printJson({ order: [], loads: [], changes: 0, problems: answer.error }, io);
    return 1;
  }
  const { plan, changes, lowest, gap, isProven } = answer.value;
  printJson(
    {
      order: plan.loads.map((load) => load.job),
      loads: plan.loads.map((load) => ({ job: load.job, in: load.in, out: load.out })),
      changes,
      lowest,
      gap,
      proven: isProven,
    },
    io,
  );
  return 0;
}

/** The command `order`. */
export const command: Command = {
  name: 'order',
  summary: 'the order of jobs that needs the fewest feeders put in',
  help,
  run,
};
