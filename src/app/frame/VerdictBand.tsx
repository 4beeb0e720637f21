// A verdict takes the whole screen: shape and word first, then what was decided on, then the next act. A refusal has a face of its own.

import { useId } from 'preact/hooks';
import { slotKey } from '../../../shared/floor/state.ts';
import { reasonVerdicts } from '../../../shared/verdict/reasons.ts';
import { useApp, useFloor } from '../app.ts';
import type { DeskRun, ShownVerdict } from '../desk/desk.ts';
import { lineToTell } from '../line-in-hand.ts';
import { address } from '../router.ts';
import { Button } from '../ui/Button.tsx';
import { PracticeMark } from '../ui/PracticeMark.tsx';
import { useTakesPlace } from '../ui/place.ts';
import { VerdictShape } from '../ui/Shape.tsx';
import { changeWords } from '../words/change.ts';
import { feedWords } from '../words/feeds.ts';
import { verdictWords } from '../words/verdict.ts';
import { say } from '../words/words.ts';
import { longestWord } from './far-word.ts';
import { nextSaid } from './next-said.ts';
import { Refusal } from './Refusal.tsx';
import { reasonFacts } from './reason-facts.ts';
import { verdictTitle } from './verdict-title.ts';
import './verdict.css';
import './verdict-far.css';

function Facts({ shown }: { readonly shown: ShownVerdict }) {
  const words = say(verdictWords);
  const { reel } = shown;
  const line = lineToTell(useApp(), shown.line);
  return (
    <p class="facts">
      {line !== null && <span>{line}</span>}
      <span class="code">{shown.slot}</span>
      <span class="code">{reel.part ?? reel.supplierPart}</span>
      {reel.quantity !== null && <span>{words.parts(reel.quantity)}</span>}
      {reel.lot !== null && <span>{words.lot(reel.lot)}</span>}
      {reel.reel !== null && <span>{words.reel(reel.reel)}</span>}
      {reel.via === 'practice' && <span class="chip care">{words.practice}</span>}
    </p>
  );
}

interface BandProps {
  readonly desk: DeskRun;
  readonly shown: ShownVerdict;
  readonly onClear: (entry: string) => void;
  readonly onQuantity: () => void;
}

/** Shows a durable verdict. `onClear` opens the lead's clearing, `onQuantity` asks for the count. */
export function VerdictBand(props: BandProps) {
  return props.shown.verdict === 'refused' ? (
    <Refusal desk={props.desk} shown={props.shown} />
  ) : (
    <AcceptedOrHeld {...props} />
  );
}

/** What was joined or poured in is offered a label: of what hangs or lies together from now on. */
function LabelDoor({ desk, shown }: Pick<BandProps, 'desk' | 'shown'>) {
  const app = useApp();
  const floor = useFloor();
  const { slot, act, entry } = shown;
  const there = slot === null ? undefined : floor.slots.get(slotKey(shown.line, slot));
  const last = there?.tapes.at(-1);
  if (last?.entry !== entry || act === 'sweep') return null;
  if (act !== 'splice' && act !== 'refill' && last.comesIn !== 'bulk') return null;
  return (
    <p>
      <Button
        tone="quiet"
        testId="verdict-label"
        onPress={() => {
          desk.goOn();
          app.labelWanted.value = { reel: last.reel };
        }}
      >
        {say(feedWords).label}
      </Button>
    </p>
  );
}

function AcceptedOrHeld(props: BandProps) {
  const { desk, shown } = props;
  const words = say(verdictWords);
  const band = useTakesPlace<HTMLElement>();
  const title = useId();
  const [first, ...rest] = shown.reasons;
  const lacksQuantity = shown.reasons.some(({ code }) => code === 'no-quantity');
  const against = first && reasonVerdicts[first.code] !== 'accepted' ? first : undefined;
  // Notes in favour of a reel are no help beside what speaks against it.
  const others = against
    ? rest.filter((reason) => reasonVerdicts[reason.code] !== 'accepted')
    : shown.reasons;
  const headline = verdictTitle(shown);
  const goOn = (
    <Button
      tone={shown.verdict === 'accepted' ? 'act' : 'plain'}
      large
      onPress={desk.goOn}
      testId="verdict-go-on"
    >
      {words.goOn}
    </Button>
  );
  return (
    <section
      ref={band}
      class={`verdict ${shown.verdict}`}
      role="alert"
      aria-labelledby={title}
      data-testid="verdict"
      data-verdict={shown.verdict}
      style={{ '--letters': longestWord(shown.verdict === 'accepted' ? headline : words[shown.verdict]) }}
    >
      <VerdictShape verdict={shown.verdict} />
      <div class="told">
        <PracticeMark brief />
        <p class="kind">{shown.verdict === 'accepted' ? <>&nbsp;</> : words[shown.verdict]}</p>
        <h1 id={title}>{headline}</h1>
        <Facts shown={shown} />
        {against && <p class="say">{words.reasons[against.code].say(reasonFacts(against))}</p>}
        {others.map((reason) => (
          <p class="also" key={reason.code}>
            {against && <b>{words.also}: </b>}
            {words.reasons[reason.code].title}. {words.reasons[reason.code].say(reasonFacts(reason))}
          </p>
        ))}
        <p class="act">
          {against
            ? words.reasons[against.code].act
            : shown.act === 'load'
              ? nextSaid(shown, (code) => code)
              : ''}
        </p>
        <div class="row">
          {shown.verdict === 'accepted' && goOn}
          {shown.verdict === 'held' && lacksQuantity && (
            <Button tone="act" large onPress={props.onQuantity}>
              {words.typeQuantity}
            </Button>
          )}
          {shown.verdict === 'held' && (
            <Button
              tone={lacksQuantity ? 'plain' : 'act'}
              large
              onPress={() => props.onClear(shown.entry)}
              testId="verdict-clear"
            >
              {words.callLead}
            </Button>
          )}
          {shown.verdict !== 'accepted' && goOn}
          {shown.verdict === 'accepted' && shown.act !== 'sweep' && (
            <Button
              large
              tone="quiet"
              onPress={() => {
                desk.undo().catch(() => undefined); // a failed write is shown by the store's fault screen
              }}
              testId="verdict-undo"
            >
              {words.takeBack}
            </Button>
          )}
        </div>
        {(shown.act === 'splice' || shown.act === 'exchange') && shown.verdict === 'accepted' && (
          <>
            {shown.act === 'splice' && <p class="mind">{words.spliceCaution}</p>}
            {shown.slot !== null && (
              <p>
                <a
                  class="button quiet"
                  href={address('change', 'list', shown.act, shown.slot)}
                  onClick={desk.goOn}
                  data-testid="verdict-checklist"
                >
                  {say(changeWords)[shown.act]}
                </a>
              </p>
            )}
          </>
        )}
        {(shown.act === 'exchange' || shown.act === 'refill') && shown.verdict === 'accepted' && (
          <p class="mind">
            {say(feedWords).accepted[shown.act]} {words.loadCaution}
          </p>
        )}
        {shown.verdict === 'accepted' && <LabelDoor desk={desk} shown={shown} />}
        {shown.act === 'load' && shown.verdict === 'accepted' && <p class="mind">{words.loadCaution}</p>}
      </div>
    </section>
  );
}
