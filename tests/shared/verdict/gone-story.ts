// Random histories of reels on an invented line, some of which were used up before: told by two tablets, with cuts, joins, names, blocks and holds.

import fc from 'fast-check';
import { packageIdOf } from '../../../shared/floor/package-name.ts';
import { type Entry, entryId } from '../../../shared/log/entry.ts';
import { payloadExamples } from '../floor/examples.ts';
import {
  beginStory,
  idOf,
  type Story,
  started,
  startMs,
  tellPlant,
  unloaded,
  verified,
} from '../floor/story.ts';

/** Slots of the line. */
export const slots = ['M1-F-001', 'M1-F-002', 'M1-R-003'] as const;
/** Reels with an id, and one without. */
export const reels = ['K1', 'K2', 'K3', 'K4', 'K5', null] as const;
/** Something that is done. */
export const actArb = fc.record({
  is: fc.constantFrom(
    'load',
    'load',
    'splice',
    'used up',
    'used up',
    'used up',
    'unload',
    'hold',
    'clear',
    'correct',
    'put',
    'count',
    'date',
    'air',
    'name',
    'block',
    'split',
    'merge',
    'run',
  ),
  tablet: fc.constantFrom('T1', 'T2'),
  slot: fc.constantFrom(...slots),
  reel: fc.constantFrom(...reels),
  at: fc.integer({ min: 30, max: 90 }),
  which: fc.nat(30),
});
/** As it is drawn. */
export type Act = typeof actArb extends fc.Arbitrary<infer A> ? A : never;

/** What the labels say beside id and lot. */
export const label = {
  part: 'R-100',
  supplierPart: null,
  lot: 'L-1',
  dateCode: null,
  quantity: 500,
} as const;

/** Reels that stood on one slot, one after the other, till nothing was left. */
export function useUp(story: Story, used: readonly string[]): void {
  for (const reel of used) {
    story.tell('reel.verified', verified('M1-F-001', 'R-100', { reel, lot: `L-${reel}` }));
    story.tell('reel.unloaded', unloaded('M1-F-001', { reel, part: 'R-100', quantity: 0 }));
  }
}

/** K1, used up and back after forty days, baked or not, and put on a slot 30 hours later, where a run goes on. Its floor life is 168 h (level 3). */
export function comeBack({ isBaked }: { readonly isBaked: boolean }): Story {
  const story = beginStory();
  tellPlant(story);
  useUp(story, ['K1', 'K2']);
  story.tell('run.started', started('r1'));
  const hour = 3600;
  const back = 40 * 24 * hour;
  const onSlot = back + 30 * hour;
  const run = { panelsWanted: 900, panelSeconds: 60 };
  story.tell('part.described', { ...payloadExamples['part.described'], part: 'R-100', msl: '3', bodyMm: 1 });
  story.tell('run.started', started('r2', run), { at: back });
  const from = new Date(startMs + back * 1000).toISOString();
  const oven = { air: 'bake', celsius: 125, humidity: null, msl: '3', from } as const;
  if (isBaked) story.tell('reel.aired', { ...label, ...oven, reel: 'K1', via: 'typed' }, { at: back });
  const facts = { reel: 'K1', quantity: 30_000, run: 'r2' };
  story.tell('reel.verified', verified('M1-F-001', 'R-100', facts), { at: onSlot });
  return story;
}

/** Tells it all. */
export function tell(told: readonly Act[]): Story {
  const story = beginStory();
  tellPlant(story);
  useUp(story, ['K1', 'K2', 'K3', 'K4', 'K5']);
  const start = story.entries.at(-1);
  const pieces: string[] = [];
  // What is told of a lot agrees with its label.
  const lots = new Map<string | null, string>(reels.map((reel) => [reel, `L-${reel}`]));
  for (const [number, { is, tablet, slot, reel: drawn, at, which }] of told.entries()) {
    const how = { tablet, at, ...(start ? { seen: start } : {}) };
    const verdicts = story.entries.filter(({ kind }) => kind === 'reel.verified' || kind === 'reel.unloaded');
    const some = verdicts[which % Math.max(1, verdicts.length)];
    const since = some ? { tablet, at, seen: some } : how;
    const named = [...reels, ...pieces];
    const reel = named[(reels.indexOf(drawn) + which) % named.length] ?? null;
    const from = named[which % named.length] ?? null;
    const lot = lots.get(reel) ?? 'L-1';
    const tellOf: Readonly<Record<Act['is'], () => void>> = {
      load: () => story.tell('reel.verified', verified(slot, 'R-100', { act: 'load', reel, lot }), how),
      splice: () => story.tell('reel.verified', verified(slot, 'R-100', { act: 'splice', reel, lot }), how),
      hold: () => story.tell('reel.verified', verified(slot, 'R-100', { reel, lot, verdict: 'held' }), how),
      'used up': () => story.tell('reel.unloaded', unloaded(slot, { reel, part: 'R-100', quantity: 0 }), how),
      unload: () => story.tell('reel.unloaded', unloaded(slot, { reel, part: 'R-100' }), how),
      clear: () => {
        const facts = { line: 'L1', slot, by: 'lea', checked: 'tablet', reason: 'fits' } as const;
        if (some) story.tell('hold.cleared', { of: idOf(some), ...facts }, since);
      },
      correct: () => {
        const facts = { line: 'L1', slot: null, reason: 'slip' } as const;
        if (some) story.tell('entry.corrected', { of: idOf(some), ...facts }, since);
      },
      put: () => {
        if (reel !== null) story.tell('reel.put', { ...label, lot, reel, place: 'A', via: 'typed' }, how);
      },
      count: () => {
        const facts = { line: null, slot: null, reel, part: 'R-100', lot: null, panels: 0 } as const;
        const count = { quantity: which % 3 === 0 ? 0 : 40, sd: 0, basis: 'one-by-one' } as const;
        story.tell('reel.counted', { ...facts, ...count }, how);
      },
      date: () => {
        if (reel !== null) story.tell('reel.dated', { reel, expires: '2026-01-31' }, how);
      },
      air: () => {
        const air = { air: 'floor', celsius: null, humidity: null, msl: '3' } as const;
        const from = new Date(startMs + at * 1000).toISOString();
        if (reel !== null) story.tell('reel.aired', { ...label, ...air, lot, reel, from, via: 'typed' }, how);
      },
      name: () => {
        if (!some) return;
        const was = idOf(some);
        const facts = { ...label, sd: 0, basis: 'label', via: 'typed' } as const;
        story.tell('reel.named', { ...facts, reel: packageIdOf(was), was: `~${was}` }, since);
      },
      block: () => {
        const facts = { lot: reel === null ? 'L-K1' : null, part: null, reason: 'held back' };
        story.tell('material.blocked', { block: `B${number}`, reel, ...facts }, how);
      },
      split: () => {
        if (from === null) return;
        const chain = story.entries.filter((entry) => entry.tablet === tablet);
        const into = packageIdOf(`${tablet}/${tablet}-life-1/${chain.length + 1}`);
        const cut = { reel: from, into, part: 'R-100', lot: lots.get(from) ?? 'L-1', quantity: 10, left: 0 };
        lots.set(into, cut.lot);
        story.tell('reel.split', { ...cut, via: 'typed' }, how);
        pieces.push(into);
      },
      merge: () => {
        if (reel === null || from === null || from === reel) return;
        const facts = { part: 'R-100', lot, quantity: 90, sd: 0, basis: 'combined' } as const;
        story.tell('reel.merged', { ...facts, reel, from, via: 'typed' }, how);
      },
      run: () => story.tell('run.started', started(`r${number}`), how),
    };
    tellOf[is]();
  }
  return story;
}

/** All that may be named. */
export function namesIn(entries: readonly Entry[]): readonly (string | null)[] {
  const told = entries.filter(({ kind }) => kind === 'reel.verified' || kind === 'reel.split');
  const ids = told.flatMap((entry) => [`~${entryId(entry)}`, packageIdOf(entryId(entry))]);
  return [...reels, 'nobody knows', ...ids];
}
