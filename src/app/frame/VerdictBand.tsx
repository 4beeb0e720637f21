// A verdict takes the whole screen: shape and word first, then the part numbers with what differs, then the next act.

import { differingCharacters } from '../../../shared/labels/part-numbers.ts';
import type { Reason } from '../../../shared/verdict/reasons.ts';
import { reasonVerdicts } from '../../../shared/verdict/reasons.ts';
import type { DeskRun, ShownVerdict } from '../desk/desk.ts';
import { address } from '../router.ts';
import { Button } from '../ui/Button.tsx';
import { PracticeMark } from '../ui/PracticeMark.tsx';
import { VerdictShape } from '../ui/Shape.tsx';
import { changeWords } from '../words/change.ts';
import { type ReasonFacts, verdictWords } from '../words/verdict.ts';
import { formatSpan, say } from '../words/words.ts';
import './verdict.css';

/** The facts of a reason as texts for its sentence. */
export function reasonFacts(reason: Reason): ReasonFacts {
  const facts: Record<string, string> = {};
  for (const [key, value] of Object.entries(reason)) {
    if (key.endsWith('Seconds') && typeof value === 'number') facts[key] = formatSpan(Math.max(0, value));
    else facts[key] = Array.isArray(value) ? value.join(', ') : value === null ? '' : String(value);
  }
  return facts;
}

/** The two part numbers, the differing characters marked. */
export function PartPair({
  wanted,
  found,
  slot,
}: {
  readonly wanted: string;
  readonly found: string;
  readonly slot: string;
}) {
  const words = say(verdictWords);
  const pieces = differingCharacters(wanted, found);
  return (
    <dl class="pair">
      <dt>{words.wants(slot)}</dt>
      <dd class="code" translate={false}>
        {pieces.map((piece) => (piece.same ? piece.wanted : <mark key={piece.wanted}>{piece.wanted}</mark>))}
      </dd>
      <dt>{words.says}</dt>
      <dd class="code" translate={false}>
        {pieces.map((piece) => (piece.same ? piece.found : <mark key={piece.found}>{piece.found}</mark>))}
      </dd>
    </dl>
  );
}

function Facts({ shown }: { readonly shown: ShownVerdict }) {
  const words = say(verdictWords);
  const { reel } = shown;
  return (
    <p class="facts">
      <span class="code">{shown.slot}</span>
      <span class="code">{reel.part ?? reel.supplierPart}</span>
      {reel.quantity !== null && <span>{words.parts(reel.quantity)}</span>}
      {reel.lot !== null && <span>{words.lot(reel.lot)}</span>}
      {reel.reel !== null && <span>{words.reel(reel.reel)}</span>}
      {reel.via === 'practice' && <span class="chip care">{words.practice}</span>}
    </p>
  );
}

/** Shows a durable verdict. `onClear` opens the lead's clearing, `onQuantity` asks for the count. */
export function VerdictBand(props: {
  readonly desk: DeskRun;
  readonly shown: ShownVerdict;
  readonly onClear: (entry: string) => void;
  readonly onQuantity: () => void;
}) {
  const { desk, shown } = props;
  const words = say(verdictWords);
  const [first, ...rest] = shown.reasons;
  const against = first && reasonVerdicts[first.code] !== 'accepted' ? first : undefined;
  const title = against
    ? words.reasons[against.code].title
    : shown.verdict === 'accepted'
      ? words.accepted[shown.act]
      : words[shown.verdict];
  // Notes in favour of a reel are no help beside what speaks against it.
  const others = against
    ? rest.filter((reason) => reasonVerdicts[reason.code] !== 'accepted')
    : shown.reasons;
  return (
    <section
      class={`verdict ${shown.verdict}`}
      role="alert"
      data-testid="verdict"
      data-verdict={shown.verdict}
    >
      <VerdictShape verdict={shown.verdict} />
      <div class="told">
        <PracticeMark brief />
        <p class="kind">{shown.verdict === 'accepted' ? <>&nbsp;</> : words[shown.verdict]}</p>
        <h1>{title}</h1>
        {against?.code === 'wrong-part' ? (
          <PartPair wanted={String(against['wanted'])} found={String(against['found'])} slot={shown.slot} />
        ) : (
          <Facts shown={shown} />
        )}
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
              ? shown.next === null
                ? words.allLoaded
                : words.nextIs(shown.next)
              : ''}
        </p>
        <div class="row">
          <Button
            tone={shown.verdict === 'accepted' ? 'act' : 'plain'}
            large
            onPress={desk.goOn}
            testId="verdict-go-on"
          >
            {shown.verdict === 'refused' ? words.another : words.goOn}
          </Button>
          {shown.verdict === 'held' && shown.reasons.some((reason) => reason.code === 'no-quantity') && (
            <Button tone="act" large onPress={props.onQuantity}>
              {words.typeQuantity}
            </Button>
          )}
          {shown.verdict === 'held' && (
            <Button large onPress={() => props.onClear(shown.entry)} testId="verdict-clear">
              {words.callLead}
            </Button>
          )}
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
        {shown.act === 'splice' && shown.verdict === 'accepted' && (
          <>
            <p class="mind">{words.spliceCaution}</p>
            {shown.slot !== null && (
              <p>
                <a
                  class="button quiet"
                  href={address('change', 'list', 'splice', shown.slot)}
                  onClick={desk.goOn}
                  data-testid="verdict-checklist"
                >
                  {say(changeWords).splice}
                </a>
              </p>
            )}
          </>
        )}
        {shown.act === 'load' && shown.verdict === 'accepted' && <p class="mind">{words.loadCaution}</p>}
      </div>
    </section>
  );
}
