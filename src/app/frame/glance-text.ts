// How a line stands at one glance, as shape, colour and sentence: for the view of all lines and for the line that a tablet serves besides.

import type { LineGlance, LineStateName } from '../../../shared/outlook/glance.ts';
import type { IconName } from '../ui/Icon.tsx';
import { linesWords } from '../words/all-lines.ts';
import { lineWords } from '../words/line.ts';
import { formatSpan, formatTime, say } from '../words/words.ts';

/** Shape and colour of each state; its word stands beside it. */
export const stateLooks: Readonly<
  Record<LineStateName, { readonly icon: IconName; readonly tone: 'go' | 'care' | 'stop' | 'act' | 'plain' }>
> = {
  running: { icon: 'play', tone: 'go' },
  stopped: { icon: 'pause', tone: 'stop' },
  silent: { icon: 'warn', tone: 'care' },
  changing: { icon: 'change', tone: 'act' },
  loading: { icon: 'load', tone: 'plain' },
  ready: { icon: 'check', tone: 'go' },
  idle: { icon: 'more', tone: 'plain' },
};

/** Slots named of the next walk. */
const NAMED = 3;

/** The next walk, or the splice that no walk reaches; empty where nothing is built. */
export function sayNext(
  { walks, missed, zone, run }: LineGlance,
  { nowMs, isLooking }: { readonly nowMs: number; readonly isLooking: boolean },
): string {
  const words = say(linesWords);
  const [miss] = missed;
  if (miss) return words.missed(miss.slot, formatTime(miss.byMs, zone));
  const [walk] = walks;
  if (!walk) return run === null ? '' : isLooking ? words.looking : words.noWalk;
  const inMs = walk.startMs - nowMs;
  const when =
    inMs < 60_000 ? words.now : say(lineWords).soon(formatTime(walk.startMs, zone), formatSpan(inMs / 1000));
  const named = walk.slots.slice(0, NAMED).join(', ');
  return words.nextWalk(when, walk.slots.length, walk.slots.length > NAMED ? `${named}, …` : named);
}
