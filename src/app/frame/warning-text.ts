// What an open warning says, for the chip of every screen and the band of the line.

import { moreBy } from '../../../shared/floor/packs.ts';
import { needKey } from '../../../shared/floor/state.ts';
import type { Outlook, SlotOutlook } from '../../../shared/outlook/line.ts';
import type { Unanswered } from '../../../shared/outlook/unanswered.ts';
import type { ToSay } from '../ui/SaidOnce.tsx';
import { feedWords } from '../words/feeds.ts';
import { warningWords } from '../words/warning.ts';
import { formatSpan, formatTime, say } from '../words/words.ts';

/** Late with nothing that takes over is the one that stops the line. */
export function warningTone({ warning, turn }: SlotOutlook): 'care' | 'stop' {
  return warning.level === 'late' && (turn?.backup ?? null) === null ? 'stop' : 'care';
}

/** One warning in two or three words, and as a whole sentence that follows the slot. */
export interface WarningSaid {
  readonly short: string;
  readonly long: string;
}

/** Warnings that readers of the screen were told of, on whichever screen. */
export const warningsTold = new Set<string>();

/** By what and when a warning is said; `zone`: of the line. */
export interface SaidAt {
  readonly outlook: Outlook | null;
  readonly nowMs: number;
  readonly zone: string;
}

/** What readers of the screen are told of a warning: once at each of its levels and tones, under the name of its slot. `at` is asked when it is said. */
export function toSayOf(slot: SlotOutlook, name: string, at: () => SaidAt): ToSay {
  const id = `${needKey(slot.loaded.line, slot.slot, slot.need)}#${slot.warning.level} ${warningTone(slot)}`;
  return { id, say: () => `${name} ${sayWarning(slot, at()).long}` };
}

/** Names what nobody answers: another warning, or one that has become graver, is another thing to be told. */
export function askedFor(open: readonly Unanswered[]): string {
  return open.map(({ line, slot, need, level }) => `${needKey(line, slot, need)}#${level}`).join(' ');
}

/** What a warning says at a moment. */
export function sayWarning(slot: SlotOutlook, at: SaidAt): WarningSaid {
  const words = say(warningWords);
  const { outlook, nowMs, zone } = at;
  const level = slot.warning.level === 'quiet' ? 'soon' : slot.warning.level;
  const runOut = slot.forecast.runOutMs.expected;
  const inSeconds = (runOut - nowMs) / 1000;
  const isOver = level === 'late' && inSeconds < 0;
  const away = inSeconds < 0 ? formatSpan(0) : formatSpan(inSeconds);
  const clock = formatTime(runOut, zone);
  const backup = slot.turn?.backup ?? null;
  const more = moreBy(slot.feeds);
  const soon = slot.feeds === 'tape' ? words[level](away, clock) : say(feedWords).warns[more](away, clock);
  const sentences = [isOver ? words.over(clock, formatSpan(-inSeconds)) : soon];
  const isUncounted = outlook?.counting.ceased ?? false;
  const isStopped = outlook?.stands ?? false;
  if (isUncounted) sentences.push(words.ifPace);
  if (isStopped) sentences.push(words.ifStarts);
  if (backup !== null) sentences.push(words.backup(backup));
  const held = isUncounted ? words.shortPace : isStopped ? words.shortStarts : null;
  const isDue = slot.feeds !== 'tape' && !isOver && level !== 'soon';
  const short = isDue ? say(feedWords).dueNow[more] : words.short[isOver ? 'over' : level](away);
  return { short: held ?? short, long: sentences.join(' ') };
}
