// What was open at a handover, in words: alike on the page, in the log and on paper.

import type { HandedItem, HandedKnown } from '../../../../shared/floor/kinds-handover.ts';
import { hasOwnId } from '../../../../shared/floor/reel-id.ts';
import type { FloorState } from '../../../../shared/floor/state.ts';
import { visible } from '../../ui/visible.ts';
import { handoverWords } from '../../words/handover.ts';
import { sayText } from '../../words/shipped-steps.ts';
import { sayReason } from '../../words/verdict.ts';
import { say } from '../../words/words.ts';

/** A thing that was open, in words. */
export interface HandedText {
  readonly kind: string;
  /** Slot, reel or part: codes, which nobody translates. */
  readonly codes: readonly string[];
  /** Why, or which: a reason, a product, a station, a checklist. */
  readonly why: string | null;
  /** When it is due, ends or began. */
  readonly when: string | null;
}

/** Says a thing that was open. `atMs`: when it was listed; `moment`: how a moment is written. */
export function handedText(
  item: HandedItem,
  floor: Pick<FloorState, 'templates'>,
  { atMs, moment }: { readonly atMs: number; readonly moment: (ms: number) => string },
): HandedText {
  const { slot, reel, part, sinceMs } = item;
  const words = say(handoverWords);
  const named = reel !== null && hasOwnId(reel) ? reel : part;
  return {
    kind: kindText(item),
    codes: [slot, named].filter((each) => each !== null).map(visible),
    why: whyText(item, floor),
    when: dueText(item, atMs, moment) ?? (sinceMs === null ? null : words.since(moment(sinceMs))),
  };
}

/** What is open; a tray or tube is exchanged and bulk refilled where a tape is spliced. */
function kindText({ what, why }: HandedItem): string {
  const words = say(handoverWords);
  const isOther = what === 'splice' && (why === 'exchange' || why === 'refill');
  return isOther ? words.dueBeside[why] : words.kinds[what];
}

function dueText({ what, dueMs }: HandedItem, atMs: number, moment: (ms: number) => string): string | null {
  if (dueMs === null) return null;
  const words = say(handoverWords);
  if (what === 'splice') return words.due(moment(dueMs));
  return dueMs <= atMs ? words.over(moment(dueMs)) : words.ends(moment(dueMs));
}

function whyText({ what, why, count }: HandedItem, floor: Pick<FloorState, 'templates'>): string | null {
  if (what === 'panels-held') return count ? say(handoverWords).panels(count) : null;
  if (why === null || what === 'splice') return null;
  if (what === 'hold') return sayReason(why)?.title ?? why;
  const template = what === 'checklist' ? floor.templates.get(why)?.at(-1) : undefined;
  if (what === 'checklist') return template ? sayText(template.title) : null;
  return visible(why);
}

/** What a list rests on, in sentences: how this tablet stood to its server, and how far ahead was looked. */
export function knownText(known: HandedKnown, moment: (ms: number) => string): readonly string[] {
  const words = say(handoverWords);
  const { heardMs, toSend, missing, spliceMs, lifeMs } = known;
  const lives = moment(lifeMs);
  return [
    serverText(known, heardMs === null ? null : moment(heardMs)),
    ...(toSend > 0 && known.sync !== 'alone' ? [words.toSend(toSend)] : []),
    ...(missing > 0 ? [words.missing(missing)] : []),
    spliceMs === null ? words.aheadNoRun(lives) : words.ahead(moment(spliceMs), lives),
  ];
}

function serverText({ sync }: HandedKnown, heard: string | null): string {
  const words = say(handoverWords);
  if (sync === 'alone') return words.alone;
  if (sync === 'other-window') return words.otherWindow;
  if (heard === null) return words.neverHeard;
  return sync === 'in-step' ? words.synced(heard) : words.behind(heard);
}

/** A thing that was open in one line. */
export function handedLine(text: HandedText): string {
  const rest = [text.codes.join(' '), text.why, text.when].filter((each) => each !== null && each !== '');
  return rest.length === 0 ? text.kind : `${text.kind}: ${rest.join(', ')}`;
}
