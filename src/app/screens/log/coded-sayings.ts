// Facts that are codes: why something was held, what was left open at a release, what a machine or a person said of a reel or a jar.

import type { PayloadOf } from '../../../../shared/floor/kinds.ts';
import type { Json } from '../../../../shared/log/entry.ts';
import { factWords } from '../../words/log-facts.ts';
import { openWorkWords } from '../../words/open-work.ts';
import { pasteWords } from '../../words/paste.ts';
import { sayReason } from '../../words/verdict.ts';
import { say } from '../../words/words.ts';
import { sayHanded } from './handover-sayings.ts';
import { oneOf, type Say } from './plain-sayings.ts';

/** What is wrong with a jar; a code of a later version as it stands. */
function fault(code: string): string {
  const faults: Readonly<Record<string, string>> = say(pasteWords).faults;
  return faults[code] ?? code;
}

/** The titles of a verdict's reasons. */
export const reasons: Say = (value) => {
  if (!Array.isArray(value) || value.length === 0) return null;
  // What keeps a jar off a stencil is a code alone.
  return value
    .map((each) =>
      typeof each === 'string'
        ? fault(each)
        : (sayReason(String((each as { code?: Json }).code))?.title ?? '–'),
    )
    .join(' · ');
};

/** What was left open at a release or a handover: each thing with what it concerns. */
export const left: Say = (value, entry, floor) => {
  if (entry.kind === 'shift.handed') return sayHanded(value, entry, floor);
  return Array.isArray(value) && value.length > 0
    ? value.map((each) => leftText(each as LeftOpen)).join(' · ')
    : null;
};

type LeftOpen = PayloadOf<'changeover.left-open'>['left'][number];

function leftText({ what, slot, part, reel }: LeftOpen): string {
  const said = say(openWorkWords).said[what](1);
  const names = [reel ?? part, slot].filter((name) => name !== null);
  return names.length === 0 ? said : `${said}: ${names.join(', ')}`;
}

/** What a machine says of reels, or a person of a jar. */
export const says: Say = (value, entry, floor) =>
  oneOf(() => (entry.kind === 'jar.told' ? say(pasteWords).says : say(factWords).airedSays))(
    value,
    entry,
    floor,
  );
