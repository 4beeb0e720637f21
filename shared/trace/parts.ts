// The trace's index in parts, for those who keep it elsewhere: a copy to go on from, and what can be put away since nothing in the
// log to come changes it.

import { copyState } from '../floor/state.ts';
import { addSerial, type SerialPanel } from './serials.ts';
import type { Stretch, TraceIndex } from './stretches.ts';

/** A copy that can go on by itself; what never changes is shared. Cost: linear in open stretches and the state's maps. */
export function copyTrace(index: TraceIndex): TraceIndex {
  const copies = new Map<Stretch, Stretch>();
  for (const open of index.open.values())
    for (const stretch of open.values()) copies.set(stretch, { ...stretch });
  const copyOf = (stretch: Stretch) => copies.get(stretch) ?? stretch;
  return {
    state: copyState(index.state),
    stretches: index.stretches.map(copyOf),
    serials: new Map(index.serials),
    serialByPanel: new Map([...index.serialByPanel].map(([run, panels]) => [run, new Map(panels)])),
    open: new Map(
      [...index.open].map(([key, open]) => [
        key,
        new Map([...open].map(([tape, stretch]) => [tape, copyOf(stretch)])),
      ]),
    ),
  };
}

/** Takes out what is settled: stretches that are closed, and scanned panels. What is left goes on as before. */
export function takeSettled(index: TraceIndex): {
  readonly stretches: readonly Stretch[];
  readonly serials: readonly SerialPanel[];
} {
  const open = new Set([...index.open.values()].flatMap((slot) => [...slot.values()]));
  const stretches = index.stretches.filter((stretch) => !open.has(stretch));
  const left = index.stretches.filter((stretch) => open.has(stretch));
  index.stretches.splice(0, index.stretches.length, ...left);
  const serials = [...index.serials.values()].flat();
  index.serials.clear();
  index.serialByPanel.clear();
  return { stretches, serials };
}

/** Puts stretches and scanned panels beside others, e.g. those taken out before. */
export function addSettled(
  index: TraceIndex,
  settled: { readonly stretches: readonly Stretch[]; readonly serials: readonly SerialPanel[] },
): void {
  index.stretches.push(...settled.stretches);
  for (const scanned of settled.serials) addSerial(index, scanned);
}
