// Does the registry say what each kind does? On random entries of every kind and on a simulated shift: the state is the one that all
// folds in their old row give, and nothing changes on a slot or a reel that the kind does not name.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import * as z from 'zod/mini';
import { simulateShift } from '../../../demo/simulate.ts';
import { foldBlocks } from '../../../shared/floor/blocks.ts';
import { foldFeeders } from '../../../shared/floor/feeder-types.ts';
import { applyFloorEntry } from '../../../shared/floor/fold.ts';
import { foldBelieved } from '../../../shared/floor/fold-believed.ts';
import { foldChange } from '../../../shared/floor/fold-change.ts';
import { foldContain } from '../../../shared/floor/fold-contain.ts';
import { foldExposures } from '../../../shared/floor/fold-exposures.ts';
import { endsWork, foldRunFeeders, keepWork, workingBefore } from '../../../shared/floor/fold-feeders.ts';
import { foldHandover } from '../../../shared/floor/fold-handover.ts';
import { foldInterlock } from '../../../shared/floor/fold-interlock.ts';
import { foldLabels } from '../../../shared/floor/fold-labels.ts';
import { foldLoss } from '../../../shared/floor/fold-loss.ts';
import { foldMaterial } from '../../../shared/floor/fold-material.ts';
import { foldMoisture } from '../../../shared/floor/fold-moisture.ts';
import { foldOffered } from '../../../shared/floor/fold-offered.ts';
import { foldPanels } from '../../../shared/floor/fold-panels.ts';
import { foldParts } from '../../../shared/floor/fold-parts.ts';
import { foldPasskeys } from '../../../shared/floor/fold-passkeys.ts';
import { foldPaste } from '../../../shared/floor/fold-paste.ts';
import { foldPlaces } from '../../../shared/floor/fold-places.ts';
import { foldPlant } from '../../../shared/floor/fold-plant.ts';
import { foldPrint } from '../../../shared/floor/fold-print.ts';
import { foldRun } from '../../../shared/floor/fold-run.ts';
import { foldSeen } from '../../../shared/floor/fold-seen.ts';
import { foldStations } from '../../../shared/floor/fold-stations.ts';
import { foldStore } from '../../../shared/floor/fold-store.ts';
import { foldTapes } from '../../../shared/floor/fold-tapes.ts';
import { type EntryKind, entryKinds, type FloorEntry, readFloorEntry } from '../../../shared/floor/kinds.ts';
import { laneLine } from '../../../shared/floor/lanes.ts';
import { foldPacks } from '../../../shared/floor/packs.ts';
import { foldPeople } from '../../../shared/floor/people.ts';
import { nothing, registry, touchesOf } from '../../../shared/floor/registry.ts';
import { copyState, emptyState, type FloorState, slotKey } from '../../../shared/floor/state.ts';
import { type Entry, entryId } from '../../../shared/log/entry.ts';
import { payloadExamples } from './examples.ts';
import {
  beginStory,
  brookSetup,
  counted,
  type Story,
  started,
  tellPlant,
  verified,
  wantedSlot,
} from './story.ts';

/** The folds in the row in which every entry once went through all of them, each with the kinds that it takes. */
const inRow: readonly (readonly [kinds: RegExp, fold: (state: FloorState, entry: never) => void])[] = [
  [/^(badges\.keyed|person\.(added|removed|language-chosen))$/, foldPeople],
  [
    /^(plant|tablet|supplier|setup(?!\.offered)|sweep|warning)\.|^feeder\.(known|withdrawn)|^line\.(?!tape|counted-by)|^entry\.corrected$/,
    foldPlant,
  ],
  [/^feeder-type\.|^feeder\.typed$|^line\.tape-ruled$/, foldFeeders],
  [/^label\./, foldLabels],
  [
    /^run\.(started|stopped|resumed|ended)$|^panels\.(counted|corrected)$|^station\.(counted|doubled)$|^entry\.corrected$/,
    foldRun,
  ],
  [/^panels\.(counted|scrapped)$|^station\.counted$|^entry\.corrected$/, foldPanels],
  [/^panel\.seen$|^panels\.counted$|^station\.counted$|^entry\.corrected$/, foldSeen],
  [/^reel\.(calibrated|counted)$|^entry\.corrected$/, foldLoss],
  [
    /^reel\.(aired|verified)$|^parts\.aired$|^cart\.filled$|^feeder\.readied$|^hold\.cleared$|^entry\.corrected$/,
    foldExposures,
  ],
  [/^reel\.(verified|unloaded|counted)$|^hold\.|^entry\.corrected$|^conflict\.settled$/, foldMaterial],
  [/^material\.|^blocked\.let-run$/, foldBlocks],
  [/^paste\.ruled$|^jar\.(known|told)$|^run\.started$/, foldPaste],
  [/^place\.described$|^reel\.(split|merged)$/, foldStore],
  [/^parts\.(listed|priced)$|^part\.(unlisted|pictured)$/, foldParts],
  [/^part\.described$|^moisture\.ruled$|^reel\.timed$|^entry\.corrected$/, foldMoisture],
  [/^reel\.(put|dated|measured)$/, foldPlaces],
  [/^reel\.named$|^labels\./, foldPrint],
  [
    /^reel\.(verified|unloaded)$|^hold\.cleared$|^panels\.(counted|contained)$|^station\.counted$|^containment\.|^entry\.corrected$/,
    foldContain,
  ],
  [
    /^station\.(?!interlock-ruled|answered)|^recipe\.known$|^line\.counted-by$|^panels\.(counted|corrected)$|^run\.started$|^entry\.corrected$/,
    foldStations,
  ],
  [/^tape\.|^parts\.(used|missed|aired)$/, foldTapes],
  [/^machine\.loaded$/, foldBelieved],
  [/^setup\.offered$/, foldOffered],
  [/^passkey\./, foldPasskeys],
  [/^shift\./, foldHandover],
  [/^reel\.packed$|^bulk\./, foldPacks],
  [/^feeder\.(readied|stripped|moved|set-aside|cared|care-ruled)$/, foldRunFeeders],
  [/^reel\.verified$|^station\.(interlock-ruled|answered(-again)?)$/, foldInterlock],
  [
    /^(checklist|step|cart|plan)\.|^panel\.(measured|looked)$|^changeover\.(began|released|dropped)$/,
    foldChange,
  ],
];

function foldInRow(state: FloorState, entry: FloorEntry): void {
  const working = endsWork.has(entry.kind) ? workingBefore(state, touchesOf(state, entry).slots) : null;
  for (const [kinds, fold] of inRow) if (kinds.test(entry.kind)) fold(state, entry as never); // its own kinds only
  if (working) keepWork(state, working);
}

/** What an entry changed and its kind did not name. */
function unnamed(before: FloorState, after: FloorState, entry: FloorEntry): readonly string[] {
  const { slots, computed, reels } = touchesOf(before, entry);
  const changed = (was: ReadonlyMap<string, unknown>, now: ReadonlyMap<string, unknown>) =>
    [...new Set([...was.keys(), ...now.keys()])].filter((key) => was.get(key) !== now.get(key));
  const onSlots = changed(before.slots, after.slots);
  const tapesOf = (state: FloorState, key: string) => JSON.stringify(state.slots.get(key)?.tapes ?? null);
  return [
    ...onSlots.filter((key) => !slots.includes(key) && !computed.includes(key)),
    ...onSlots.filter((key) => !slots.includes(key) && tapesOf(before, key) !== tapesOf(after, key)),
    ...changed(before.reels, after.reels).filter((reel) => !reels.includes(reel)),
  ];
}

/** Folds entries both ways and looks at each; gives the two states. */
function foldBoth(entries: readonly Entry[]): { readonly state: FloorState; readonly old: FloorState } {
  const state = emptyState();
  const old = emptyState();
  for (const raw of entries) {
    const entry = readFloorEntry(raw);
    if (!entry) continue;
    const before = copyState(state);
    applyFloorEntry(state, entry);
    foldInRow(old, entry);
    const left = unnamed(before, state, entry);
    if (left.length > 0) throw new Error(`${entry.kind} changes ${left.join(', ')} and does not name it`);
  }
  return { state, old };
}

const material: readonly EntryKind[] = [
  'reel.packed',
  'feeder.moved',
  'reel.verified',
  'reel.unloaded',
  'reel.counted',
  'hold.cleared',
  'conflict.settled',
  'entry.corrected',
  'cart.filled',
  'cart.docked',
  'run.started',
  'run.ended',
  'panels.counted',
  'panels.corrected',
  'station.known',
  'station.counted',
  'line.counted-by',
];
const actArb = fc.record({
  kind: fc.oneof(fc.constantFrom(...entryKinds), fc.constantFrom(...material)),
  picks: fc.array(fc.nat(1000), { minLength: 16, maxLength: 16 }),
});
type Act = typeof actArb extends fc.Arbitrary<infer A> ? A : never;

/** The example of a kind with its slot, reel, run … picked among few, so that entries meet. */
function tellAct(story: Story, { kind, picks }: Act): void {
  let at = 0;
  const pick = <T>(of: readonly T[]): T | undefined => of[(picks[at++ % picks.length] ?? 0) % of.length];
  const ids = story.entries.map(entryId);
  const conflict = pick([...story.floor().conflicts.values()]);
  const pools: Readonly<Record<string, readonly unknown[]>> = {
    line: ['L1'],
    setup: ['turns', 'turns', 'brook-top-a'],
    slot: ['M1-F-001', 'M1-F-002', 'M1-R-003', 'M1-R-003', null],
    slots: [['M1-F-001', 'M1-F-002'], ['M1-R-003']],
    reel: ['K1', 'K2', 'K3', null],
    part: ['R-100', 'C-200'],
    run: ['run-1', 'run-2', 'run-3'],
    cart: ['CA'],
    boot: ['b1', 'b2'],
    total: [3, 7, 20],
    panels: [0, 4, 30],
    serial: ['SN-1', 'SN-2', null],
    act: ['load', 'load', 'splice', 'sweep', 'exchange', 'refill'],
    verdict: ['accepted', 'accepted', 'held', 'refused'],
    quantity: [null, 3, 500],
    of: ids,
    conflict: [conflict?.conflict ?? 'none'],
    keep: [conflict?.entries[0] ?? null, conflict?.entries[1] ?? null],
  };
  const example = payloadExamples[kind] as Readonly<Record<string, unknown>>;
  const payload = Object.fromEntries(
    Object.entries(example).map(([name, value]) => {
      const isFree = kind === 'setup.taken' || (kind === 'reel.verified' && name === 'cart');
      return [name, pools[name] && !isFree ? pick(pools[name]) : value];
    }),
  );
  // What does not fit its kind (a reel that must be named, say) is not told.
  if (z.safeParse(registry[kind].schema(), payload).success) story.tell(kind, payload as never);
}

describe('registry', () => {
  test('entries of every kind give the state of all folds in their row, and name what they change', () => {
    const seen = new Set<string>();
    let computed = 0;
    const check = (story: Story) => {
      for (const { kind } of story.entries) seen.add(kind);
      const { state, old } = foldBoth(story.entries);
      computed += state.runs.size;
      expect(state).toEqual(old);
    };
    // Each kind once by its own example: random cases come to nearly all, and nearly is a run in hundreds that fails.
    const whole = beginStory();
    tellPlant(whole);
    for (const kind of entryKinds) whole.tell(kind, payloadExamples[kind] as never); // the example of its own kind
    check(whole);
    fc.assert(
      fc.property(fc.array(actArb, { minLength: 10, maxLength: 40 }), (acts) => {
        const story = beginStory();
        tellPlant(story);
        const slots = brookSetup.slots.map((slot, at) =>
          slot.part === 'R-100' ? { ...slot, turn: at + 1 } : slot,
        );
        story.tell('setup.taken', { ...brookSetup, setup: 'turns', slots });
        for (const act of acts) tellAct(story, act);
        check(story);
      }),
      { numRuns: 150 },
    );
    expect([...entryKinds].filter((kind) => !seen.has(kind))).toEqual([]);
    expect(computed).toBeGreaterThan(0);
  });

  test('what another lane uses in turn with the slot is named too', () => {
    const lane2 = laneLine('L1', 2);
    const story = beginStory();
    tellPlant(story);
    const [one, two] = ['M1-F-001', 'M1-F-002'];
    const slots = [one, two].map((slot, at) => wantedSlot(slot, 'R-100', { turn: at + 1 }));
    story.tell('setup.taken', { ...brookSetup, setup: 'turns', line: lane2, slots });
    story.tell('run.started', started('run-1'));
    story.tell('run.started', started('run-2', { line: lane2, setup: 'turns' }));
    story.tell('reel.verified', verified(one, 'R-100', { reel: 'K1', quantity: 40 }));
    story.tell('reel.verified', verified(two, 'R-100', { reel: 'K2', line: lane2, setup: 'turns' }));
    story.tell('panels.counted', { ...counted('run-2', 30), line: lane2 });
    story.tell('reel.verified', verified(one, 'R-100', { reel: 'K3', act: 'splice' }));
    const used = foldBoth(story.entries).state.slots.get(slotKey('L1', two))?.usedBefore;
    expect(used).toBe(20); // of 60 placements the first slot gave 40
  });

  test('a simulated shift gives the state of all folds in their row, and names what it changes', () => {
    const { entries } = simulateShift({ seed: 5, hours: 4, startMs: 1_772_431_200_000 });
    const { state, old } = foldBoth(entries);
    expect(state).toEqual(old);
    expect(state.slots.size).toBeGreaterThan(10);
  });

  test('a kind that says nothing changes no state', () => {
    const quiet = entryKinds.filter((kind) => registry[kind].fold === nothing);
    expect(quiet).toContain('log.exported');
    for (const kind of quiet) {
      const story = beginStory();
      tellPlant(story);
      const before = story.floor();
      story.tell(kind, payloadExamples[kind] as never); // the example of its own kind
      expect(story.floor()).toEqual(before);
    }
  });
});
