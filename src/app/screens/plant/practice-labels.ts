// Labels to practise with, made for the line as it is now: what it still wants loaded, what runs out next, and reels that must not go on.
// Written by MH10.8.2 data identifiers, as labels without an envelope are, so that each code can be printed as bars of its own.

import { freeFeeders } from '../../../../shared/floor/feeder-fits.ts';
import { isReelKnown } from '../../../../shared/floor/gone-reels.ts';
import type { SetupSlot } from '../../../../shared/floor/kinds.ts';
import { setupProgress } from '../../../../shared/floor/progress.ts';
import { slotLeft } from '../../../../shared/floor/remaining.ts';
import type { FloorState, SlotState } from '../../../../shared/floor/state.ts';

/** Slots of a group for which labels are made: more than fit a screen help nobody. */
const SLOTS_MOST = 8;
/** Parts on a practice reel. */
const REEL_PARTS = 5000;

/** What stands on a label: texts as a scanner sends them. `other`: the slot that a wrong reel belongs on, null where none. */
export interface PracticeLabel {
  readonly id: string;
  readonly group: 'load' | 'splice' | 'wrong' | 'panels';
  readonly what: 'slot' | 'right' | 'wrong' | 'bare' | 'feeder' | 'panel';
  readonly slot: string | null;
  readonly part: string | null;
  readonly other: string | null;
  readonly codes: readonly string[];
}

/** All labels for a line; empty where it has no setup. The next reel of a slot has a new id as soon as the one before is known. */
export function practiceLabels(floor: FloorState, line: string): readonly PracticeLabel[] {
  const { slots } = setupProgress(floor, line);
  const missing = slots.filter((slot) => slot.phase === 'missing').slice(0, SLOTS_MOST);
  const due = slots
    .filter(({ phase, wanted }) => phase === 'verified' && wanted.perPanel > 0)
    .sort((a, b) => panelsLeft(floor, a.loaded, a.wanted) - panelsLeft(floor, b.loaded, b.wanted))
    .slice(0, SLOTS_MOST);
  const feeders = feedersToTake(
    floor,
    missing.map(({ wanted }) => wanted),
  );
  return [
    ...missing.flatMap(({ wanted }) =>
      slotAndReel(floor, wanted, { group: 'load', feeder: feeders.get(wanted.slot) ?? null }),
    ),
    ...due.flatMap(({ wanted }) => slotAndReel(floor, wanted, { group: 'splice', feeder: null })),
    ...wrongReels(
      floor,
      [...missing, ...due].map(({ wanted }) => wanted),
    ),
    ...panel(floor, line),
  ];
}

function panelsLeft(floor: FloorState, loaded: SlotState | null, wanted: SetupSlot): number {
  if (!loaded) return Number.POSITIVE_INFINITY;
  return (slotLeft(floor, loaded, 0).parts ?? Number.POSITIVE_INFINITY) / wanted.perPanel;
}

function slotAndReel(
  floor: FloorState,
  wanted: SetupSlot,
  { group, feeder }: { readonly group: 'load' | 'splice'; readonly feeder: string | null },
): PracticeLabel[] {
  const { slot, part } = wanted;
  const common = { group, slot, part, other: null };
  return [
    { ...common, id: `slot-${slot}`, what: 'slot', codes: [slot] },
    ...(feeder === null
      ? []
      : [{ ...common, id: `feeder-${slot}`, what: 'feeder' as const, codes: [feeder] }]),
    { ...common, id: `reel-${slot}`, what: 'right', codes: reelCodes(floor, wanted, REEL_PARTS) },
  ];
}

/** Codes of a new reel of what a slot wants. */
function reelCodes(
  floor: FloorState,
  { slot, part }: SetupSlot,
  quantity: number | null,
  mark = '',
): string[] {
  let number = 1;
  const idOf = () => `PR-${slot}${mark}-${number}`;
  while (isReelKnown(floor, idOf())) number += 1;
  return [
    `P${part}`,
    ...(quantity === null ? [] : [`Q${quantity}`]),
    `1TLP-${slot}-${number}`,
    `3S${idOf()}`,
  ];
}

function wrongReels(floor: FloorState, wanted: readonly SetupSlot[]): PracticeLabel[] {
  const [first] = wanted;
  if (!first) return [];
  const fits = [first.part, ...first.alternates];
  const other = wanted.find(({ part }) => !fits.includes(part));
  const foreign: SetupSlot = { ...first, part: 'NO-SUCH-PART' };
  const common = { group: 'wrong', slot: first.slot } as const;
  return [
    ...(other
      ? [
          {
            ...common,
            id: 'reel-wrong',
            what: 'wrong' as const,
            part: other.part,
            other: other.slot,
            codes: reelCodes(floor, other, REEL_PARTS, '-W'),
          },
        ]
      : []),
    {
      ...common,
      id: 'reel-foreign',
      what: 'wrong',
      part: foreign.part,
      other: null,
      codes: reelCodes(floor, foreign, REEL_PARTS, '-X'),
    },
    {
      ...common,
      id: 'reel-bare',
      what: 'bare',
      part: first.part,
      other: null,
      codes: reelCodes(floor, first, null, '-B'),
    },
  ];
}

/** A free feeder for each slot that is to be loaded, as far as the plant lists feeders. */
function feedersToTake(floor: FloorState, wanted: readonly SetupSlot[]): ReadonlyMap<string, string> {
  const used = new Set<string>();
  const found = new Map<string, string>();
  for (const each of wanted) {
    const free = freeFeeders(floor, each).find((feeder) => !used.has(feeder));
    if (free === undefined) continue;
    used.add(free);
    found.set(each.slot, free);
  }
  return found;
}

const nothing = { slot: null, part: null, other: null } as const;

function panel(floor: FloorState, line: string): PracticeLabel[] {
  const run = floor.runs.get(floor.current.get(line) ?? '');
  if (!run?.panelPrefix) return [];
  const serial = `${run.panelPrefix}${String(run.done + 1).padStart(4, '0')}`;
  return [{ ...nothing, id: 'panel', group: 'panels', what: 'panel', codes: [serial] }];
}
