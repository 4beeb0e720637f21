// How long does a key press in the search take, with 20,000 packages and 20,000 entries? The index against two plain scans in the same run: one that
// folds every text anew, and one over texts folded beforehand, a look at every thing. Each must find as many things as the other.

import { emptyState, type FloorState, type Reel } from '../../shared/floor/state.ts';
import { seededChance } from '../../shared/kit/chance.ts';
import type { Entry } from '../../shared/log/entry.ts';
import { entryThings } from '../../shared/search/entry-things.ts';
import { type FindableThing, floorThings, thingKinds } from '../../shared/search/floor-things.ts';
import { findTexts, indexTexts } from '../../shared/search/index-of-texts.ts';
import { type Folded, foldText } from '../../shared/search/text.ts';

const PACKAGES = Number(process.env['REELWARD_PACKAGES'] ?? 20_000);
const ENTRIES = Number(process.env['REELWARD_ENTRIES'] ?? 20_000);

function madeFloor(): FloorState {
  const chance = seededChance(7);
  const floor = emptyState();
  for (let at = 0; at < PACKAGES; at += 1) {
    const part = `22-0603-${String(Math.floor(chance() * 800)).padStart(3, '0')}`;
    const reel: Reel = {
      reel: `R-${String(100_000 + at)}`,
      part,
      supplierPart: `MK${part.replaceAll('-', '')}`,
      lot: `LT-${Math.floor(chance() * 4000)}`,
      dateCode: null,
      count: Math.floor(chance() * 5000),
      sd: 10,
      basis: 'label',
      at: null,
      place: `S${Math.floor(chance() * 90)}-${Math.floor(chance() * 40)}`,
    };
    floor.reels.set(reel.reel, reel);
  }
  return floor;
}

function madeEntries(floor: FloorState): readonly Entry[] {
  const chance = seededChance(8);
  const reels = [...floor.reels.values()];
  return Array.from({ length: ENTRIES }, (_, seq) => {
    const reel = reels[Math.floor(chance() * reels.length)] as Reel; // within the list
    const { reel: id, part, lot } = reel;
    const slot = `M${1 + (seq % 3)}-F-${String(1 + (seq % 60)).padStart(3, '0')}`;
    return {
      tablet: 'bench',
      epoch: 'one',
      seq,
      kind: 'reel.verified',
      who: null,
      payload: { line: 'L2', slot, reel: id, part, lot, feeder: `FD-${seq % 400}` },
    } as unknown as Entry; // what search looks at
  });
}

const median = (times: readonly number[]) =>
  [...times].sort((a, b) => a - b)[Math.floor(times.length / 2)] ?? 0;
const worst = (times: readonly number[]) => Math.max(...times);

/** Processor time, so that what else the machine does is not counted. */
function timed<T>(work: () => T): { readonly ms: number; readonly answer: T } {
  const from = process.cpuUsage();
  const answer = work();
  const { user, system } = process.cpuUsage(from);
  return { ms: (user + system) / 1000, answer };
}

const isIn = (query: Folded, text: Folded) =>
  text.plain.includes(query.plain) || text.bare.includes(query.bare);

const floor = madeFloor();
const entries = madeEntries(floor);
const listed = timed(() => [...floorThings(floor), ...entryThings(entries, floor)]);
const things: readonly FindableThing[] = listed.answer;
const indexed = timed(() => indexTexts(things));
const index = indexed.answer;
const textsOf = ({ names, about }: FindableThing) => [...names, ...about];
const foldedBefore = things.map((thing) => textsOf(thing).map(foldText));

const typed = ['R-104233', '22-0603-417', 'LT-2201', 'm2f14', 'FD-77', 'S12-4', 'nothing like it'];
const queries = typed.flatMap((text) => [...text].map((_, at) => text.slice(0, at + 1)));
const times = { index: [] as number[], folded: [] as number[], plain: [] as number[] };
for (const [at, query] of queries.entries()) {
  const found = timed(() => findTexts([index], query, { most: 8, order: thingKinds }));
  times.index.push(found.ms);
  const folded = foldText(query);
  const scanned = timed(
    () => foldedBefore.filter((texts) => texts.some((text) => isIn(folded, text))).length,
  );
  times.folded.push(scanned.ms);
  const count = found.answer.reduce((sum, group) => sum + group.count, 0);
  if (count !== scanned.answer) throw new Error(`“${query}”: ${count} found, ${scanned.answer} by a scan`);
  // The slowest one: a third of the presses say enough.
  if (at % 3 === 0)
    times.plain.push(
      timed(() =>
        things.filter((thing) => textsOf(thing).some((text) => isIn(foldText(query), foldText(text)))),
      ).ms,
    );
}
console.log(
  `search: ${PACKAGES} packages, ${ENTRIES} entries, ${index.texts.length} distinct texts, ${queries.length} key presses`,
);
console.log(
  `  processor time; made ready: list ${listed.ms.toFixed(0)} ms, index ${indexed.ms.toFixed(0)} ms, once`,
);
for (const [name, of] of Object.entries(times))
  console.log(
    `  ${name.padEnd(7)} a key press: median ${median(of).toFixed(2)} ms, longest ${worst(of).toFixed(2)} ms`,
  );
console.log(
  `  index against a scan of folded texts ${(median(times.folded) / median(times.index)).toFixed(1)} times, against a plain scan ${(median(times.plain) / median(times.index)).toFixed(0)} times as fast`,
);
