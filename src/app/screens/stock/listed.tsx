// A reel as the list and its own dialog show it.

import { placeOf } from '../../../../shared/floor/fold-places.ts';
import type { Reel } from '../../../../shared/floor/state.ts';
import { spread } from '../../frame/CountDialog.tsx';
import { countWords } from '../../words/count.ts';
import type { ReelLifeText } from '../../words/life-text.ts';
import { stockWords } from '../../words/stock.ts';
import { formatCount, say } from '../../words/words.ts';

/** A reel with what is reckoned of it. */
export interface Listed {
  readonly reel: Reel;
  readonly parts: number | null;
  readonly sd: number;
  readonly isBlocked: boolean;
  /** Null where its parts bear any time out of the bag. */
  readonly life: ReelLifeText | null;
}

/** True where nothing is left on it. */
export function isUsedUp({ parts }: Pick<Listed, 'parts'>): boolean {
  return parts !== null && Math.round(parts) === 0;
}

/** Where a reel is; empty where it is used up and off the line. */
export function whereText(reel: Reel, isEmpty: boolean): string {
  const words = say(stockWords);
  if (reel.at) return words.onSlot(reel.at.slot);
  return isEmpty ? '' : (placeOf(reel) ?? words.offLine);
}

/** How many parts it still has, how surely, and what that rests on. */
export function LeftOfReel({ listed }: { readonly listed: Listed }) {
  const words = say(stockWords);
  const { reel, parts, sd } = listed;
  if (parts === null) return <>{words.unknown}</>;
  if (isUsedUp(listed)) return <>{words.empty}</>;
  return (
    <>
      <b>{formatCount(parts)}</b>
      {sd > 0 && <span class="soft"> ± {spread(sd)}</span>}{' '}
      <small class="soft">{say(countWords).bases[reel.at ? 'counted-down' : reel.basis]}</small>
    </>
  );
}
