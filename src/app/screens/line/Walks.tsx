// The next walks along the line, whose they are, and what no walk reaches with what would save it.

import type { Cure } from '../../../../shared/forecast/cure.ts';
import { useApp, useFloor } from '../../app.ts';
import { useRefusal } from '../../may.ts';
import type { Outlook } from '../../outlook/model.ts';
import { CURED, type PlannedMiss, type PlannedRound, type WalkPlan } from '../../outlook/rounds.ts';
import { Icon } from '../../ui/Icon.tsx';
import { lineWords } from '../../words/line.ts';
import { formatCount, formatSpan, formatTime, say } from '../../words/words.ts';

/** Walks shown in full; the rest is a number. */
const SHOWN = 3;
/** Slots of one walk shown in full. */
const SLOTS_SHOWN = 8;
const CREWS = [1, 2, 3] as const;

export function Walks({ outlook, walks }: { readonly outlook: Outlook; readonly walks: WalkPlan | null }) {
  const floor = useFloor();
  const words = say(lineWords);
  const zone = floor.lines.get(outlook.line)?.zone ?? 'UTC';
  const operators = floor.crews.get(outlook.line) ?? 1;
  const rounds = walks?.rounds ?? [];
  return (
    <section class="walks" data-testid="walks" aria-label={words.walksTitle}>
      <div class="row">
        <h2>{words.walksTitle}</h2>
        <span class="soft grow">{rounds.length > SHOWN && words.walkMore(rounds.length - SHOWN)}</span>
        <CrewChoice line={outlook.line} operators={operators} />
      </div>
      {rounds.length === 0 && <p class="soft">{words.walkNone}</p>}
      <ol>
        {rounds.slice(0, SHOWN).map((round, index) => (
          <Walk
            key={round.splices.map((splice) => splice.slot.slot).join()}
            {...{ round, zone }}
            number={index + 1}
            person={operators > 1 ? round.operator + 1 : null}
          />
        ))}
      </ol>
      {walks && walks.missed.length > 0 && <Misses missed={walks.missed} zone={zone} />}
    </section>
  );
}

function CrewChoice({ line, operators }: { readonly line: string; readonly operators: number }) {
  const app = useApp();
  const words = say(lineWords);
  const refusal = useRefusal('acknowledge-warning');
  return (
    <fieldset class="choice crew" aria-label={words.crew}>
      <Icon name="person" />
      {CREWS.map((crew) => (
        <button
          type="button"
          key={crew}
          aria-pressed={crew === operators}
          aria-disabled={refusal !== null}
          title={refusal ?? words.crew}
          data-testid={`crew-${crew}`}
          onClick={() => {
            if (refusal !== null || crew === operators) return;
            app.write([{ kind: 'line.crewed', payload: { line, operators: crew } }]).catch(() => undefined); // shown by the fault screen
          }}
        >
          {crew}
        </button>
      ))}
    </fieldset>
  );
}

function Walk(props: {
  readonly round: PlannedRound;
  readonly number: number;
  readonly person: number | null;
  readonly zone: string;
}) {
  const app = useApp();
  const words = say(lineWords);
  const { round, zone, person } = props;
  const inSeconds = (round.startMs - app.nowMs.value) / 1000;
  const isNow = inSeconds <= 30;
  const slots = round.splices.map((splice) => splice.slot.slot);
  return (
    <li class={isNow ? 'now' : ''} data-testid={`walk-${props.number}`}>
      <span class="number">{props.number}</span>
      <span class="when-walk">
        <b>{isNow ? words.walkNow : words.walkAt(formatTime(round.startMs, zone), formatSpan(inSeconds))}</b>
        <span class="soft">
          {person !== null && `${words.walkOf(person)} · `}
          {words.walkSplices(slots.length)}
        </span>
      </span>
      <span class="stops code" translate={false}>
        {slots.slice(0, SLOTS_SHOWN).join(' ')}
        {slots.length > SLOTS_SHOWN && ` + ${formatCount(slots.length - SLOTS_SHOWN)}`}
      </span>
    </li>
  );
}

function Misses({ missed, zone }: { readonly missed: readonly PlannedMiss[]; readonly zone: string }) {
  const words = say(lineWords);
  return (
    <div class="misses" data-testid="misses" role="status">
      <h3>▲ {words.missTitle}</h3>
      {missed.slice(0, CURED).map((miss) => (
        <div class="listed" key={miss.slot.slot}>
          <b class="code">{miss.slot.slot}</b>
          <span>{words.miss[miss.reason](formatTime(miss.byMs, zone))}</span>
          <ul>
            {miss.cures.map((cure, at) => (
              <li key={cure.kind}>
                {at === 0 ? <b>{cureText(cure, zone)}</b> : words.orCure(cureText(cure, zone))}
              </li>
            ))}
            {miss.cures.length === 0 && <li>{words.noCure}</li>}
          </ul>
        </div>
      ))}
      {missed.length > CURED && <p>{words.missMore(missed.length - CURED)}</p>}
    </div>
  );
}

function cureText(cure: Cure, zone: string): string {
  const { cures } = say(lineWords);
  switch (cure.kind) {
    case 'cutEarly':
      return cures.cutEarly(formatCount(cure.wastedParts), formatTime(cure.beginsMs, zone));
    case 'secondPerson':
      return cures.secondPerson(formatTime(cure.startMs, zone));
    case 'secondSlot':
      return cures.secondSlot(formatTime(cure.byMs, zone));
  }
}
