// What is still open or wrong before a run is released: handlings, slots, held reels, the first panel, the checklist. Counted from
// what the log knows and never from what somebody ticked.

import type { KnownFact, OpenKind } from '../floor/checklist.ts';
import { setupProgress } from '../floor/progress.ts';
import type { Changeover, FloorState } from '../floor/state.ts';
import { type PanelCheck, panelChecks } from './first-panel.ts';

/** One thing that is open or wrong; what does not apply is null. */
export interface OpenItem {
  readonly what: OpenKind;
  readonly slot: string | null;
  readonly part: string | null;
  readonly reel: string | null;
  /** Step of the checklist. */
  readonly step: string | null;
}

/** What is wrong, and not only unfinished. */
const wrong: ReadonlySet<OpenKind> = new Set([
  'misfit',
  'slot-other',
  'slot-held',
  'measured-wrong',
  'looked-wrong',
]);

/** True for what is wrong: it must not run as it is, while the rest is only unfinished. */
export function isWrong(item: Pick<OpenItem, 'what'>): boolean {
  return wrong.has(item.what);
}

/** What the floor alone does not tell. */
export interface OpenFacts {
  /** Handlings left; null where the setup does not fit the line. */
  readonly moves: readonly { readonly slot: string; readonly part: string }[] | null;
  /** Mandatory steps of the checklist that are open; null where none was opened. */
  readonly steps: readonly string[] | null;
}

const nothing = { slot: null, part: null, reel: null, step: null } as const;

/** All that is open or wrong in a changeover, what is wrong first. */
export function openWork(floor: FloorState, changeover: Changeover, facts: OpenFacts): readonly OpenItem[] {
  const items: OpenItem[] = [
    ...(facts.moves ?? []).map(({ slot, part }) => ({ ...nothing, what: 'move' as const, slot, part })),
    ...openSlots(floor, changeover),
    ...openChecks(floor, changeover),
    ...(facts.steps ?? []).map((step) => ({ ...nothing, what: 'step' as const, step })),
  ];
  if (facts.moves === null) items.push({ ...nothing, what: 'misfit' });
  if (facts.steps === null) items.push({ ...nothing, what: 'no-checklist' });
  return items.sort((a, b) => Number(isWrong(b)) - Number(isWrong(a)));
}

/** How much of what a checklist's `known` steps ask is open. */
export function knownOpen(items: readonly OpenItem[]): Readonly<Record<KnownFact, number>> {
  const count = (...kinds: readonly OpenKind[]) => items.filter(({ what }) => kinds.includes(what)).length;
  return {
    moves: count('move', 'misfit'),
    slots: count('slot-empty', 'slot-other', 'slot-held'),
    'first-panel': count('measured-wrong', 'looked-wrong', 'cannot-tell', 'unchecked'),
  };
}

/** Slots without the verified reel that the next setup wants, and reels of the line that wait for a lead. */
function openSlots(floor: FloorState, { line, setup }: Changeover): readonly OpenItem[] {
  const held = [...floor.holds.values()]
    .filter(({ facts }) => facts.line === line)
    .map(({ facts }) => ({
      ...nothing,
      what: 'slot-held' as const,
      slot: facts.slot,
      part: facts.part,
      reel: facts.reel,
    }));
  const progress = setupProgress(floor, line);
  if (progress.setup !== setup) {
    // The line is still set up for the product before.
    const wanted = floor.setups.get(setup)?.slots ?? [];
    return [
      ...held,
      ...wanted.map(({ slot, part }) => ({ ...nothing, what: 'slot-empty' as const, slot, part })),
    ];
  }
  const open = progress.slots.flatMap(({ slot, wanted, phase, loaded }): OpenItem[] => {
    if (phase === 'missing') return [{ ...nothing, what: 'slot-empty', slot, part: wanted.part }];
    if (phase !== 'other' && phase !== 'kept') return [];
    return [{ ...nothing, what: 'slot-other', slot, part: loaded?.tapes.at(-1)?.part ?? null }];
  });
  return [...held, ...open];
}

function openChecks(floor: FloorState, changeover: Changeover): readonly OpenItem[] {
  const setup = floor.setups.get(changeover.setup);
  return setup ? panelChecks(setup, changeover).flatMap(checkItems) : [];
}

function checkItems({ wanted, measured, looked, state }: PanelCheck): readonly OpenItem[] {
  const { slot, part } = wanted;
  const found: OpenKind[] = [];
  if (measured?.verdict === 'refused') found.push('measured-wrong');
  if (looked?.right === false) found.push('looked-wrong');
  if (measured?.verdict === 'held') found.push('cannot-tell');
  if (state === 'open') found.push('unchecked');
  return found.map((what) => ({ ...nothing, what, slot, part }));
}
