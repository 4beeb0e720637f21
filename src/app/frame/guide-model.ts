// Guided practice: which steps a guide has, what of the log or of the address shows that one is done, and what of it is told. Pure; it
// sees entries as they come. A script that presses on by time was refused: a step is over when it is seen, not when it was read.

import type { FloorState } from '../../../shared/floor/state.ts';
import type { Entry } from '../../../shared/log/entry.ts';
import type { Place } from '../router.ts';

/** Every guide with its steps, in their order. */
export const guideSteps = {
  operator: ['first', 'wrong', 'second', 'splice', 'run', 'warning', 'answer'],
  lead: ['hold', 'clear', 'export'],
  engineer: ['open', 'take', 'look'],
} as const;

export type Guide = keyof typeof guideSteps;
export type GuideStep = (typeof guideSteps)[Guide][number];

/** The guides, in the order in which they are offered. */
export const guides = Object.keys(guideSteps) as readonly Guide[]; // its own keys

/** Where a step is done: the address that leads there. */
export const guidePlaces: Readonly<Record<GuideStep, Place>> = {
  first: { screen: 'plant', rest: ['practice'] },
  wrong: { screen: 'plant', rest: ['practice'] },
  second: { screen: 'plant', rest: ['practice'] },
  splice: { screen: 'plant', rest: ['practice'] },
  run: { screen: 'line', rest: [] },
  warning: { screen: 'line', rest: [] },
  answer: { screen: 'line', rest: [] },
  hold: { screen: 'plant', rest: ['practice'] },
  clear: { screen: 'load', rest: [] },
  export: { screen: 'log', rest: [] },
  open: { screen: 'plant', rest: [] },
  take: { screen: 'plant', rest: ['sheet'] },
  look: { screen: 'plant', rest: ['setups'] },
};

/** What was seen: the step that it ends, or something else that was tried meanwhile; `about`: the slot or the product of it. */
export type SeenStep = { readonly ends: true; readonly about: string } | { readonly ends: false };

const ends = (about: unknown): SeenStep => ({ ends: true, about: typeof about === 'string' ? about : '' });
const other: SeenStep = { ends: false };

/** A reel that was judged: does the verdict end the step? */
function judged({ payload }: Entry, isIt: (verdict: unknown, act: unknown) => boolean): SeenStep {
  return isIt(payload['verdict'], payload['act']) ? ends(payload['slot']) : other;
}

const joins = (act: unknown) => act === 'splice' || act === 'refill' || act === 'exchange';

/** Entries that end a step, whatever stands in them. */
const endingKinds: Readonly<Partial<Record<GuideStep, readonly string[]>>> = {
  run: ['run.started', 'run.resumed'],
  warning: ['warning.raised'],
  answer: ['warning.acknowledged'],
  clear: ['hold.cleared', 'hold.declined'],
  export: ['log.exported'],
  take: ['setup.taken'],
};

/** Pages of the plant that end a step once they are open. */
const endingPages: Readonly<Partial<Record<GuideStep, string>>> = { open: 'sheet', look: 'setups' };

/** What an entry is to a step; null where it has nothing to do with it. */
export function seeEntry(step: GuideStep, entry: Entry): SeenStep | null {
  const { kind, payload } = entry;
  if (kind === 'reel.verified') {
    switch (step) {
      case 'first':
      case 'second':
        return judged(entry, (verdict) => verdict === 'accepted');
      case 'wrong':
        return judged(entry, (verdict) => verdict === 'refused');
      case 'splice':
      case 'answer':
        return judged(entry, (verdict, act) => verdict === 'accepted' && joins(act));
      case 'hold':
        return judged(entry, (verdict) => verdict === 'held');
      default:
        return null;
    }
  }
  if (!endingKinds[step]?.includes(kind)) return null;
  return ends(step === 'take' ? payload['product'] : payload['slot']);
}

/** What the place that was gone to is to a step; null where it has nothing to do with it. */
export function seePlace(step: GuideStep, { screen, rest }: Place): SeenStep | null {
  const page = endingPages[step];
  return page !== undefined && screen === 'plant' && rest[0] === page ? ends('') : null;
}

/** What is so already when a step begins: a run that runs, a slot that warned before. */
export function seenBefore(
  step: GuideStep,
  floor: FloorState,
  line: string,
  newest: readonly Entry[],
): SeenStep | null {
  if (step === 'run')
    return floor.runs.get(floor.current.get(line) ?? '')?.phase === 'running' ? ends('') : null;
  if (step !== 'warning') return null;
  const raised = newest.find(({ kind, payload }) => kind === 'warning.raised' && payload['line'] === line);
  return raised ? ends(raised.payload['slot']) : null;
}

/** The step to go on at: a decision wants a reel that is held, which a practice that was ended took with it. */
export function goOnAt(guide: Guide, at: number, floor: FloorState): number {
  return guideSteps[guide][at] === 'clear' && floor.holds.size === 0 ? at - 1 : at;
}
