// Goods come in: the place is scanned once, then every whole label is one scan and no tap. A label without an id gets one printed first.

import { useLayoutEffect, useRef, useState } from 'preact/hooks';
import { blockReasons } from '../../../../shared/floor/fits.ts';
import { holdsBadge, recognise } from '../../../../shared/floor/recognise.ts';
import type { Scan } from '../../../../shared/labels/scan.ts';
import { useApp } from '../../app.ts';
import { useRefusal } from '../../may.ts';
import { Button } from '../../ui/Button.tsx';
import { Field } from '../../ui/Field.tsx';
import { stockWords } from '../../words/stock.ts';
import { formatCount, say } from '../../words/words.ts';
import type { PutReel } from './PutAway.tsx';
import { putDrafts } from './put-drafts.ts';
import { readReel } from './read-label.ts';

/** The longest name of a place. */
const LONGEST = 64;
/** Reels named of those put away. */
const SHOWN = 8;

/** What the last scan came to. */
type Answer =
  | { readonly is: 'put' | 'wrong'; readonly text: string }
  | { readonly is: 'no-id'; readonly facts: Omit<PutReel, 'reel'> };

export function GoodsIn() {
  const app = useApp();
  const words = say(stockWords).goodsIn;
  const refusal = useRefusal('verify-reel');
  const [place, setPlace] = useState<string | null>(null);
  const [typed, setTyped] = useState('');
  const [answer, setAnswer] = useState<Answer | null>(null);
  const [done, setDone] = useState<readonly string[]>([]);
  const inHand = useRef(place);
  inHand.current = place;
  const take = (scan: Scan): boolean => {
    const floor = app.store.floor();
    const text = scan.codes[0]?.text.trim() ?? '';
    const names = recognise(floor, app.line.value, text);
    // A badge signs in whoever holds it.
    const texts = scan.codes.map((code) => code.text);
    if (holdsBadge(floor, app.line.value, texts)) return false;
    const reel = readReel(floor, scan);
    if (reel === null) {
      const isPlace = scan.codes.length === 1 && text !== '' && text.length <= LONGEST;
      if (
        isPlace &&
        names.every(({ is }) => is === 'place') &&
        (inHand.current === null || names.length > 0)
      ) {
        setPlace(text);
        setAnswer(null);
      } else setAnswer({ is: 'wrong', text: words.notRead(text) });
      return true;
    }
    if (inHand.current === null || refusal !== null) {
      setAnswer({ is: 'wrong', text: refusal ?? words.placeHelp });
      return true;
    }
    if (!('reel' in reel)) {
      setAnswer({ is: 'no-id', facts: reel });
      return true;
    }
    const at = floor.reels.get(reel.reel)?.at;
    if (at) setAnswer({ is: 'wrong', text: words.onLine(reel.reel, at.slot) });
    else {
      const payload = { ...reel, place: inHand.current, via: scan.via };
      app.record([...putDrafts(floor, payload, app.clock.nowMs())]);
      setDone((before) => [reel.reel, ...before.filter((each) => each !== reel.reel)]);
      const isBlocked = blockReasons(floor, reel).length > 0;
      setAnswer(
        isBlocked
          ? { is: 'wrong', text: words.blocked(reel.reel) }
          : { is: 'put', text: say(stockWords).putAt(reel.reel, inHand.current) },
      );
    }
    return true;
  };
  const newest = useRef(take);
  newest.current = take;
  useLayoutEffect(() => app.scans.take((scan) => newest.current(scan)), []);
  return (
    <section class="stack" data-testid="goods-in">
      {place === null ? (
        <PlaceInHand typed={typed} onType={setTyped} onPlace={setPlace} />
      ) : (
        <div class="row goods-row">
          <h2 class="grow" data-testid="goods-place">
            {words.ready(place)}
          </h2>
          <Button testId="goods-another" onPress={() => setPlace(null)}>
            {words.another}
          </Button>
        </div>
      )}
      {refusal !== null && <p class="chip care">{refusal}</p>}
      {answer !== null && answer.is !== 'no-id' && (
        <p class={`chip ${answer.is === 'put' ? 'go' : 'stop'}`} role="status" data-testid="goods-answer">
          {answer.is === 'put' ? '✓' : '✕'} {answer.text}
        </p>
      )}
      {answer?.is === 'no-id' && (
        <div class="row goods-row" data-testid="goods-no-id">
          <span class="chip care grow">! {words.noId}</span>
          <Button
            tone="act"
            testId="goods-print"
            disabledReason={refusal}
            onPress={() => {
              app.labelWanted.value = { fresh: answer.facts };
            }}
          >
            {words.print}
          </Button>
        </div>
      )}
      {done.length > 0 && (
        <div data-testid="goods-done">
          <b>{words.put(done.length)}</b>
          <p class="code soft" translate={false}>
            {done.slice(0, SHOWN).join(' · ')}
            {done.length > SHOWN && ` +${formatCount(done.length - SHOWN)}`}
          </p>
        </div>
      )}
    </section>
  );
}

/** Asks for the place, scanned or typed. */
function PlaceInHand(props: {
  readonly typed: string;
  readonly onType: (text: string) => void;
  readonly onPlace: (place: string) => void;
}) {
  const words = say(stockWords);
  const { typed, onType, onPlace } = props;
  return (
    <div class="row">
      <Field
        more="grow"
        label={words.goodsIn.place}
        testId="goods-place-typed"
        autocomplete="off"
        maxLength={LONGEST}
        value={typed}
        onInput={onType}
        help={words.goodsIn.placeHelp}
      />
      <Button
        tone="act"
        large
        testId="goods-place-yes"
        disabledReason={typed.trim() === '' ? words.placeHelp : null}
        onPress={() => onPlace(typed.trim())}
      >
        {words.goodsIn.yes}
      </Button>
    </div>
  );
}
