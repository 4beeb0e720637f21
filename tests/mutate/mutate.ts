// Plants a sample of faults in each room and tells which ones its own tests let live.

import { readFileSync } from 'node:fs';
import path from 'node:path';
import { parseArgs } from 'node:util';
import { chanceBelow, seededChance } from '../../shared/kit/chance.ts';
import { projectRoot, type SourceFile } from '../source-scan.ts';
import { listedAmong, readEqual, staleAmong } from './equal.ts';
import { type Mutant, mutantsOf } from './mutants.ts';
import { everyRoom, type Room } from './rooms.ts';
import { startRunner } from './runner.ts';
import { refusedAmong } from './types.ts';

const USAGE = `npm run mutate -- [ROOM or FILE...] [--sample=N] [--seed=N] [--longest=N] [--files]
  ROOM      as listed without a name; FILE a path of one of its files
  --sample  faults tried in each file; 0 tries all
  --seed    another number tries others
  --longest seconds: tests that take longer unharmed are not asked, so that some faults live that they would see
  --files   a line for each file`;

/** What became of the faults of one file or room. */
interface Tally {
  killed: number;
  /** The compiler refuses them: nobody can write them. */
  refused: number;
  equal: number;
  lived: Mutant[];
  /** Listed as equal, though a test sees them. */
  wrong: Mutant[];
}

const isEqual = listedAmong(readEqual());

const nothing = (): Tally => ({ killed: 0, refused: 0, equal: 0, lived: [], wrong: [] });

/** So many of the faults, chosen by the seed and the file's path: adding a file changes no other's sample. All for 0. */
export function sampleOf(
  mutants: readonly Mutant[],
  file: string,
  size: number,
  seed: number,
): readonly Mutant[] {
  if (size === 0 || mutants.length <= size) return mutants;
  let mixed = seed;
  for (const letter of file) mixed = (Math.imul(mixed, 31) + letter.charCodeAt(0)) | 0;
  const chance = seededChance(mixed);
  const left = [...mutants];
  const taken = Array.from({ length: size }, () => left.splice(chanceBelow(chance, left.length), 1)[0]!);
  return taken.sort((a, b) => a.at - b.at);
}

/** The share of faults that were seen, 0 to 1; 1 where none counts. */
function shareOf({ killed, lived }: Tally): number {
  const all = killed + lived.length;
  return all === 0 ? 1 : killed / all;
}

const percent = (share: number) => `${Math.floor(share * 1000) / 10} %`;

function told({ path: file, line, code, was, becomes, nth }: Mutant): string {
  return `  ${file}:${line}  ${code}
      ${was}  →  ${becomes}${nth > 1 ? `  (${nth}.)` : ''}`;
}

function lineOf(name: string, tally: Tally, wanted: number | null): string {
  const { killed, refused, equal, lived } = tally;
  const share = shareOf(tally);
  const verdict =
    wanted === null ? '' : share >= wanted ? `(${percent(wanted)} wanted)` : `UNDER ${percent(wanted)}`;
  return `${name.padEnd(wanted === null ? 40 : 12)} ${percent(share).padStart(7)} ${verdict}  killed ${killed}, lived ${lived.length}, equal ${equal}, refused by the compiler ${refused}`;
}

/** Tallies one file's faults, once it is known which ones tests see and which ones the compiler refuses. */
function tallyOf(faults: readonly Mutant[], seen: ReadonlySet<Mutant>, refused: ReadonlySet<Mutant>): Tally {
  const tally = nothing();
  for (const mutant of faults) {
    const isListed = isEqual(mutant);
    if (seen.has(mutant)) {
      tally.killed += 1;
      if (isListed) tally.wrong.push(mutant);
    } else if (isListed) tally.equal += 1;
    else if (refused.has(mutant)) tally.refused += 1;
    else tally.lived.push(mutant);
  }
  return tally;
}

function addTo(sum: Tally, part: Tally) {
  sum.killed += part.killed;
  sum.refused += part.refused;
  sum.equal += part.equal;
  sum.lived.push(...part.lived);
  sum.wrong.push(...part.wrong);
}

interface Asked {
  readonly sample: number | null;
  readonly seed: number;
  readonly longestMs: number;
  readonly areFilesTold: boolean;
}

const readFile = (file: string): SourceFile => ({
  path: file,
  source: readFileSync(path.join(projectRoot, file), 'utf8'),
});

/** Tries rooms that have the same tests; true where those see as much as is wanted in each. */
async function tryRooms(
  rooms: readonly Room[],
  { sample, seed, longestMs, areFilesTold }: Asked,
): Promise<boolean> {
  const files = new Map(rooms.flatMap((room) => room.files).map((file) => [file, readFile(file)]));
  const samples = new Map<string, readonly Mutant[]>();
  for (const room of rooms)
    for (const file of room.files) {
      const size = sample ?? room.sample;
      samples.set(file, sampleOf(mutantsOf(files.get(file)!), file, size, seed));
    }
  const runner = await startRunner([...files.values()], rooms[0]!.tests, longestMs);
  const faults = [...samples.values()].flat();
  const seen = await runner.tryAll(faults).finally(() => runner.close());
  const refused = refusedAmong(faults.filter((mutant) => !seen.has(mutant) && !isEqual(mutant)));
  let isGood = true;
  for (const room of rooms) {
    const sum = nothing();
    for (const file of room.files) {
      const tally = tallyOf(samples.get(file)!, seen, refused);
      if (areFilesTold) console.log(lineOf(file, tally, null));
      for (const mutant of tally.lived) console.log(told(mutant));
      for (const mutant of tally.wrong) console.log(`listed as equal, but a test sees it:\n${told(mutant)}`);
      addTo(sum, tally);
    }
    console.log(lineOf(room.name, sum, room.wanted));
    if (shareOf(sum) < room.wanted || sum.wrong.length > 0) isGood = false;
  }
  return isGood;
}

/** Rooms with the same tests together, in their order. */
function byTests(rooms: readonly Room[]): readonly (readonly Room[])[] {
  const groups = new Map<string, Room[]>();
  for (const room of rooms) {
    const key = room.tests.join();
    groups.set(key, [...(groups.get(key) ?? []), room]);
  }
  return [...groups.values()];
}

/** The rooms asked for, narrowed to the files asked for; null where a name is none. */
function chosen(names: readonly string[]): readonly Room[] | null {
  const rooms = everyRoom();
  if (names.length === 0) return rooms;
  const isKnown = (name: string) => rooms.some((room) => room.name === name || room.files.includes(name));
  if (!names.every(isKnown)) return null;
  return rooms
    .map((room) =>
      names.includes(room.name)
        ? room
        : { ...room, files: room.files.filter((file) => names.includes(file)) },
    )
    .filter(({ files }) => files.length > 0);
}

function tellStale(rooms: readonly Room[]): boolean {
  const paths = rooms.flatMap(({ files }) => files);
  const files = paths.map(readFile);
  const stale = staleAmong(readEqual(), files);
  for (const { path: file, code, was, becomes } of stale)
    console.log(
      `tests/mutate/equal.json: no such fault any more, or no reason: ${file}  ${code}  ${was} → ${becomes}`,
    );
  return stale.length > 0;
}

/** Runs the command; its exit code: 0 all rooms reach what is wanted, 1 one does not, 2 not understood. */
export async function mutate(args: readonly string[]): Promise<number> {
  const { values, positionals } = parseArgs({
    args: [...args],
    allowPositionals: true,
    options: {
      sample: { type: 'string' },
      seed: { type: 'string', default: '1' },
      longest: { type: 'string', default: 'Infinity' },
      files: { type: 'boolean', default: false },
    },
  });
  const rooms = chosen(positionals);
  const numbers = [values.sample ?? '0', values.seed].map(Number);
  const longestMs = Number(values.longest) * 1000;
  if (rooms === null || !numbers.every(Number.isInteger) || !(longestMs > 0)) {
    console.error(
      `${USAGE}\nRooms: ${everyRoom()
        .map(({ name }) => name)
        .join(', ')}`,
    );
    return 2;
  }
  const sample = values.sample === undefined ? null : Number(values.sample);
  const asked = { sample, seed: Number(values.seed), longestMs, areFilesTold: values.files };
  let isGood = !tellStale(everyRoom());
  for (const group of byTests(rooms)) if (!(await tryRooms(group, asked))) isGood = false;
  return isGood ? 0 : 1;
}
