// Which panels may carry what should not be on them, asked from wherever that is told: a verdict, a clearing, a block, a floor life, a name.

import { isUnderBlock } from '../../../../shared/floor/blocks.ts';
import { idSince } from '../../../../shared/floor/fold-print.ts';
import { hasOwnId, nameByEntry } from '../../../../shared/floor/reel-id.ts';
import type { FloorState } from '../../../../shared/floor/state.ts';
import { type ContainCause, containCauses } from '../../../../shared/floor/vocabulary.ts';
import { type Entry, entryId } from '../../../../shared/log/entry.ts';
import { lifeEndedMs, moistureOfParts } from '../../../../shared/moisture/reel-life.ts';
import { foundStretches } from '../../../../shared/trace/finds.ts';
import { carriedBy, nameOf } from '../../../../shared/trace/material.ts';
import type { TraceQuestion } from '../../../../shared/trace/question.ts';
import type { Stretch, TraceIndex } from '../../../../shared/trace/stretches.ts';
import { type SuspectQuestion, type Suspects, suspectPanels } from '../../../../shared/trace/suspects.ts';

/** Material by name: what a trace or a containment is about. */
export type Material = Pick<TraceQuestion, 'reel' | 'lot' | 'part'>;

/** From where it is asked which panels carry something that they should not. */
export interface HoldAsked {
  readonly cause: ContainCause;
  /** The entry or the block that tells it; null where a person asks by a name alone. */
  readonly of: string | null;
  readonly ask: Pick<SuspectQuestion, 'finding' | 'entry' | 'material'>;
}

/** What a person asks who has traced a name. */
export function askedByName(material: Material): HoldAsked {
  return { cause: 'wrong-reel', of: null, ask: { material } };
}

/**
 * What is asked from the place that names its source: a wrong reel by the verdict that found it or put it on, a hold by its clearing, a block
 * by its id, a floor life by the reel, or by the entry that put it on where it has no id of its own.
 */
export function askedFrom(
  floor: Pick<FloorState, 'findings' | 'blocks'>,
  from: { readonly cause: string; readonly of: string; readonly reel?: string | null },
): HoldAsked | null {
  const { of, reel = null } = from;
  const cause = containCauses.find((each) => each === from.cause);
  switch (cause) {
    case 'wrong-reel':
      return { cause, of, ask: floor.findings.has(of) ? { finding: of } : { entry: of } };
    case 'cleared':
      return { cause, of, ask: { entry: of } };
    case 'floor-life':
      return { cause, of, ask: reel === null ? { entry: of } : { material: { reel } } };
    case 'blocked': {
      const block = floor.blocks.get(of);
      return block ? { cause, of, ask: { material: namesIn(block) } } : null;
    }
    case undefined:
      return null;
  }
}

/** What an entry of the log asks; null where it tells of nothing that panels could carry. */
export function askedOfEntry(
  floor: Pick<FloorState, 'findings' | 'blocks'>,
  entry: Pick<Entry, 'kind' | 'payload' | 'tablet' | 'epoch' | 'seq'>,
): HoldAsked | null {
  const of = entryId(entry);
  const { payload } = entry;
  const text = (name: string) => (typeof payload[name] === 'string' ? String(payload[name]) : null);
  switch (entry.kind) {
    case 'hold.cleared':
      return askedFrom(floor, { cause: 'cleared', of });
    case 'reel.aired':
      return askedFrom(floor, { cause: 'floor-life', of, reel: text('reel') });
    case 'material.blocked':
      return {
        cause: 'blocked',
        of: text('block'),
        ask: { material: namesIn({ reel: text('reel'), lot: text('lot'), part: text('part') }) },
      };
    case 'reel.verified': {
      const isOn = text('verdict') === 'accepted' && text('act') !== 'sweep' && text('cart') === null;
      if (isOn || floor.findings.has(of)) return askedFrom(floor, { cause: 'wrong-reel', of });
      const isOver =
        text('act') === 'sweep' && JSON.stringify(payload['reasons']).includes('floor-life-over');
      return isOver ? askedFrom(floor, { cause: 'floor-life', of, reel: text('reel') }) : null;
    }
    default:
      return null;
  }
}

/** What a block, a find or a stay names; null where it leaves a name open. */
type Named = Readonly<Record<keyof Material, string | null>>;

function namesIn({ reel, lot, part }: Named): Material {
  const named = Object.entries({ reel, lot, part }).filter(([, value]) => value !== null);
  return Object.fromEntries(named);
}

/** The panels of what is asked. A floor life counts from the moment it ended, reel by reel; a reel whose life never ended is left out. */
export function panelsAsked(index: TraceIndex, asked: HoldAsked, nowMs: number): Suspects {
  const { cause, ask } = asked;
  if (cause !== 'floor-life' || ask.finding !== undefined) return suspectPanels(index, { cause, ...ask });
  const parts = moistureOfParts(index.state);
  const afterMs = (stretch: Stretch) =>
    lifeEndedMs(index.state, nameOf(index.state, stretch) ?? nameByEntry(stretch.entry), {
      line: stretch.line,
      nowMs,
      part: parts.get(stretch.part) ?? null,
      openedMs: Date.parse(stretch.at),
    });
  return suspectPanels(index, { cause, ...ask, afterMs });
}

/** What the panels are held for by name, as far as it is known. */
export function materialAsked(index: TraceIndex, { ask }: HoldAsked): Material {
  const { material } = ask;
  if (material && material.reel === undefined) return material;
  if (material?.reel !== undefined) {
    const reel = idSince(index.state, material.reel);
    // What the log calls a reel without an id says nothing to anybody.
    if (hasOwnId(reel)) return { ...material, reel };
    const carried = carriedBy(index.state, material);
    const own = index.stretches.find((stretch) => stretch.reel === null && carried(stretch) !== null);
    const { reel: _, ...others } = material;
    return own ? namesIn(own) : others;
  }
  const found = ask.finding === undefined ? undefined : index.state.findings.get(ask.finding);
  const there = found ?? index.stretches.find((stretch) => stretch.entry === ask.entry);
  return there ? namesIn(there) : {};
}

/** The entry or the block that tells why, where a person asked by a name: for its cause the newest that is about it; null where none is. */
export function sourceOf(index: TraceIndex, { cause, of, ask }: HoldAsked): string | null {
  if (of !== null) return of;
  const carried = carriedBy(index.state, ask.material ?? {});
  const isMeant = (stretch: Stretch) => carried(stretch) !== null;
  const meant = index.stretches.filter(isMeant);
  if (cause === 'blocked') {
    const blocks = [...index.state.blocks.values()].filter((block) =>
      meant.some((stretch) => isUnderBlock(index.state, block, stretch)),
    );
    const newest = blocks.at(-1);
    if (newest) return newest.block;
  }
  const found = cause === 'wrong-reel' ? foundStretches(index.state).filter(isMeant).at(-1) : undefined;
  return (found ?? meant.at(-1))?.entry ?? null;
}
