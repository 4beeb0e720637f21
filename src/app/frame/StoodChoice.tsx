// Asked where a stop is entered after counts have ceased: since when does the line stand?

import { useState } from 'preact/hooks';
import { formatMoment } from '../../../shared/kit/moment.ts';
import { useApp } from '../app.ts';
import { stoodOffer } from '../outlook/stood.ts';
import { runWords } from '../words/run.ts';
import { formatSpan, formatTime, say } from '../words/words.ts';

/** What is asked, as long as a dialog stands. */
export interface Stood {
  /** The moment asked about; null where there is nothing to ask. */
  readonly offer: { readonly lastMs: number; readonly nowMs: number } | null;
  readonly isNow: boolean;
  readonly choose: (isNow: boolean) => void;
  /** What goes into the entry: empty where nothing was asked. */
  readonly fact: { readonly stoodFrom?: string };
}

/** Keeps the question of one dialog. The last panel is taken where nobody says otherwise. */
export function useStood(line: string): Stood {
  const app = useApp();
  const [offer] = useState(() => {
    const nowMs = app.clock.nowMs();
    const lastMs = stoodOffer(app.store.floor(), line, nowMs);
    return lastMs === null ? null : { lastMs: Math.round(lastMs), nowMs };
  });
  const [isNow, choose] = useState(false);
  const fact = offer === null ? {} : { stoodFrom: formatMoment(isNow ? offer.nowMs : offer.lastMs) };
  return { offer, isNow, choose, fact };
}

export function StoodChoice({ line, stood }: { readonly line: string; readonly stood: Stood }) {
  const words = say(runWords);
  const zone = useApp().store.floor().lines.get(line)?.zone ?? 'UTC';
  const { offer, isNow, choose } = stood;
  if (offer === null) return null;
  const ago = formatSpan((offer.nowMs - offer.lastMs) / 1000);
  return (
    <fieldset class="choice stood" data-testid="stood">
      <legend>{words.stoodSince}</legend>
      <button type="button" aria-pressed={!isNow} data-testid="stood-last" onClick={() => choose(false)}>
        {words.stoodLast(formatTime(offer.lastMs, zone), ago)}
      </button>
      <button type="button" aria-pressed={isNow} data-testid="stood-now" onClick={() => choose(true)}>
        {words.stoodNow(formatTime(offer.nowMs, zone))}
      </button>
    </fieldset>
  );
}
