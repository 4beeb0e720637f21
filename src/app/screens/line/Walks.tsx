// All walks along the line, one tap away from the next one: whose they are, and what no walk reaches with what would save it.

import { Fragment } from 'preact';
import type { Remedy } from '../../../../shared/forecast/remedy.ts';
import type { Outlook } from '../../../../shared/outlook/line.ts';
import {
  type PlannedMiss,
  type PlannedWalk,
  REMEDIES_FOR,
  type WalkPlan,
} from '../../../../shared/outlook/walks.ts';
import { useApp, useFloor } from '../../app.ts';
import { useRefusal } from '../../may.ts';
import { Button } from '../../ui/Button.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { Icon } from '../../ui/Icon.tsx';
import { lineWords } from '../../words/line.ts';
import { shellWords } from '../../words/shell.ts';
import { walksWords } from '../../words/walks.ts';
import { formatCount, formatSpan, formatTime, say } from '../../words/words.ts';
import { type Beheld, sayMoment } from './moment.ts';
import './walks.css';

/** Walks shown in full; the rest is a number. */
const SHOWN = 12;
/** Slots of one walk shown in full. */
const SLOTS_SHOWN = 8;
const CREWS = [1, 2, 3] as const;

/** All walks as they are planned, and among how many people. */
export function WalksDialog(props: {
  readonly outlook: Outlook;
  readonly walks: WalkPlan | null;
  /** What every moment hangs on; null where on nothing. */
  readonly hold: string | null;
  readonly onClose: () => void;
}) {
  const { outlook, walks, hold, onClose } = props;
  const floor = useFloor();
  const words = say(walksWords);
  const zone = floor.lines.get(outlook.line)?.zone ?? 'UTC';
  const operators = floor.crews.get(outlook.line) ?? 1;
  const planned = walks?.walks ?? [];
  return (
    <Dialog title={words.walksTitle} onClose={onClose} wide>
      <div class="walks" data-testid="walks">
        <CrewChoice line={outlook.line} operators={operators} />
        {walks && walks.missed.length > 0 && (
          <Misses missed={walks.missed} at={{ zone, nowMs: outlook.pace.nowMs }} hold={hold} />
        )}
        {planned.length === 0 && <p class="soft">{say(lineWords).walkNone}</p>}
        <ol>
          {planned.slice(0, SHOWN).map((walk, index) => (
            <Walk
              key={walk.splices.map((splice) => splice.slot.slot).join()}
              walk={walk}
              zone={zone}
              hold={hold}
              number={index + 1}
              person={operators > 1 ? walk.operator + 1 : null}
            />
          ))}
        </ol>
        {planned.length > SHOWN && <p class="soft">{words.walkMore(planned.length - SHOWN)}</p>}
      </div>
      <div class="acts">
        <Button onPress={onClose} testId="walks-close">
          {say(shellWords).close}
        </Button>
      </div>
    </Dialog>
  );
}

function CrewChoice({ line, operators }: { readonly line: string; readonly operators: number }) {
  const app = useApp();
  const words = say(walksWords);
  const refusal = useRefusal('acknowledge-warning');
  return (
    <fieldset class="choice crew" aria-label={words.crew}>
      <span>
        <Icon name="person" /> {words.crew}
      </span>
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
            app.record([{ kind: 'line.crewed', payload: { line, operators: crew } }]);
          }}
        >
          {crew}
        </button>
      ))}
    </fieldset>
  );
}

function Walk(props: {
  readonly walk: PlannedWalk;
  readonly number: number;
  readonly person: number | null;
  readonly zone: string;
  readonly hold: string | null;
}) {
  const app = useApp();
  const words = say(walksWords);
  const line = say(lineWords);
  const { walk, zone, person } = props;
  const inSeconds = (walk.startMs - app.nowMs.value) / 1000;
  const isNow = inSeconds <= 30;
  const slots = walk.splices.map((splice) => splice.slot.slot);
  return (
    <li class={isNow ? 'now' : ''} data-testid={`walk-${props.number}`}>
      <span class="number">{props.number}</span>
      <span class="when-walk">
        <b>{isNow ? line.walkNow : line.walkAt(formatTime(walk.startMs, zone), formatSpan(inSeconds))}</b>
        <span class="soft">
          {person !== null && `${line.walkOf(person)} · `}
          {words.walkSplices(slots.length)}
          {props.hold !== null && ` · ${props.hold}`}
        </span>
      </span>
      <span class="stops code" translate={false}>
        {slots.slice(0, SLOTS_SHOWN).map((slot) => (
          <Fragment key={slot}>
            <span>{slot}</span>{' '}
          </Fragment>
        ))}
        {slots.length > SLOTS_SHOWN && `+ ${formatCount(slots.length - SLOTS_SHOWN)}`}
      </span>
    </li>
  );
}

function Misses(props: {
  readonly missed: readonly PlannedMiss[];
  readonly at: Beheld;
  readonly hold: string | null;
}) {
  const { missed, at, hold } = props;
  const words = say(walksWords);
  return (
    <div class="misses" data-testid="misses" role="status">
      <h3>
        ▲ {words.missTitle}
        {hold !== null && ` ${hold}`}
      </h3>
      {missed.slice(0, REMEDIES_FOR).map((miss) => (
        <div class="listed" key={miss.slot.slot}>
          <b class="code">{miss.slot.slot}</b>
          <span>{words.miss[miss.reason](sayMoment(miss.byMs, at))}</span>
          <ul>
            {miss.remedies.map((remedy, index) => (
              <li key={remedy.kind}>
                {index === 0 ? <b>{remedyText(remedy, at)}</b> : words.orRemedy(remedyText(remedy, at))}
              </li>
            ))}
            {miss.remedies.length === 0 && <li>{words.noRemedy}</li>}
          </ul>
        </div>
      ))}
      {missed.length > REMEDIES_FOR && <p>{words.missMore(missed.length - REMEDIES_FOR)}</p>}
    </div>
  );
}

function remedyText(remedy: Remedy, at: Beheld): string {
  const { remedies } = say(walksWords);
  switch (remedy.kind) {
    case 'cutEarly':
      return remedies.cutEarly(remedy.wastedParts, sayMoment(remedy.beginsMs, at));
    case 'secondPerson':
      return remedies.secondPerson(sayMoment(remedy.startMs, at));
    case 'secondSlot':
      return remedies.secondSlot(sayMoment(remedy.byMs, at));
  }
}
