// Out of which other reels a reel has parts, and into which others parts of it went, by cuts and joins.

import type { Parts } from '../../../../shared/trace/material.ts';
import { reelName } from '../../reel-name.ts';
import { traceWords } from '../../words/trace.ts';
import { say } from '../../words/words.ts';

export function ReelParts({ madeOf, wentInto }: Parts) {
  const words = say(traceWords);
  const named = (reels: readonly string[]) => [...new Set(reels.map(reelName))].join(', ');
  return (
    <>
      {madeOf.length > 0 && <p data-testid="trace-parts-from">{words.partsFrom(named(madeOf))}</p>}
      {wentInto.length > 0 && <p data-testid="trace-parts-to">{words.partsTo(named(wentInto))}</p>}
    </>
  );
}
