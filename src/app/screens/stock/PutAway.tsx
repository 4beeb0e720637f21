// Where a reel is put away: its place in the store, scanned or typed; the next scan answers it.

import { useLayoutEffect, useState } from 'preact/hooks';
import type { PayloadOf } from '../../../../shared/floor/kinds.ts';
import { recognise } from '../../../../shared/floor/recognise.ts';
import { useApp } from '../../app.ts';
import { useRefusal } from '../../may.ts';
import { AskFeet } from '../../ui/Ask.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { Field } from '../../ui/Field.tsx';
import { stockWords } from '../../words/stock.ts';
import { say } from '../../words/words.ts';
import { putDrafts } from './put-drafts.ts';

/** What is known of a reel that is put away. */
export type PutReel = Omit<PayloadOf<'reel.put'>, 'place' | 'via'>;

/** The longest name of a place. */
const LONGEST = 64;

interface PutAwayProps {
  readonly reel: PutReel;
  /** Where it lay before; empty where nobody said. */
  readonly before: string;
  readonly onClose: () => void;
}

export function PutAway({ reel, before, onClose }: PutAwayProps) {
  const app = useApp();
  const words = say(stockWords);
  const refusal = useRefusal('verify-reel');
  const [place, setPlace] = useState(before);
  const [wrong, setWrong] = useState<string | null>(null);

  function put(text: string, via: PayloadOf<'reel.put'>['via']): void {
    const payload = { ...reel, place: text, via };
    app.record([...putDrafts(app.store.floor(), payload, app.clock.nowMs())], {
      notice: { tone: 'plain', text: words.putAt(reel.reel, text) },
    });
    onClose();
  }

  useLayoutEffect(
    () =>
      app.scans.take((scan) => {
        const text = scan.codes[0]?.text.trim() ?? '';
        const isElse = recognise(app.store.floor(), app.line.value, text).some(({ is }) => is !== 'place');
        if (text === '' || text.length > LONGEST || scan.codes.length > 1 || isElse)
          setWrong(words.noPlace(text));
        else if (refusal === null) put(text, scan.via);
        else setPlace(text);
        return true;
      }),
    [refusal],
  );

  return (
    <Dialog title={words.putTitle(reel.reel)} onClose={onClose}>
      <div class="stack">
        <Field
          label={words.place}
          testId="put-place"
          autocomplete="off"
          maxLength={LONGEST}
          value={place}
          onInput={(text) => {
            setWrong(null);
            setPlace(text);
          }}
          help={words.placeHelp}
        />
        {wrong !== null && (
          <p class="chip stop" role="alert">
            {wrong}
          </p>
        )}
        <AskFeet
          testId="put-yes"
          disabledReason={refusal ?? (place.trim() === '' ? words.placeHelp : null)}
          onYes={() => put(place.trim(), 'typed')}
          onNo={onClose}
        >
          {words.putYes}
        </AskFeet>
      </div>
    </Dialog>
  );
}
