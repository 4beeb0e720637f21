// What is or was open on a line, one row a thing: what, where, why and when; at a handover that is past also whether it is open still.

import { Fragment } from 'preact';
import { useState } from 'preact/hooks';
import type { HandedItem, HandedKnown } from '../../../../shared/floor/kinds-handover.ts';
import { handedKey } from '../../../../shared/handover/open.ts';
import { isOpenStill } from '../../../../shared/handover/still-open.ts';
import { useApp, useFloor } from '../../app.ts';
import { address } from '../../router.ts';
import { Button } from '../../ui/Button.tsx';
import { checklistWords } from '../../words/checklist.ts';
import { handoverWords } from '../../words/handover.ts';
import { formatDay, formatTime, say } from '../../words/words.ts';
import { handedText, knownText } from './handover-text.ts';
import { zoneOf } from './names.ts';

/** Rows shown before the rest is asked for; on paper all stand. */
const SHOWN = 6;

/** Writes a moment: the time alone on the day of `nowMs` in the line's zone, else with its day. */
export function momentNear(nowMs: number, zone: string): (ms: number) => string {
  const day = new Intl.DateTimeFormat('en-CA', { timeZone: zone, dateStyle: 'short' });
  return (ms) => (day.format(ms) === day.format(nowMs) ? formatTime(ms, zone) : formatDay(ms, zone));
}

interface OpenMattersProps {
  readonly line: string;
  readonly items: readonly HandedItem[];
  /** Things beyond the list. */
  readonly more: number;
  /** When it was listed, ms since 1970. */
  readonly atMs: number;
  /** True for a list of a moment that is past: each row says how it stands now. */
  readonly isPast: boolean;
  /** Things that the last handover listed, by `handedKey`: marked. */
  readonly left?: ReadonlySet<string>;
  readonly isWhole?: boolean;
}

export function OpenMatters(props: OpenMattersProps) {
  const { line, items, more, atMs, isPast, left } = props;
  const app = useApp();
  const floor = useFloor();
  const words = say(handoverWords);
  const [isOpen, setOpen] = useState(props.isWhole === true);
  const nowMs = app.nowMs.value;
  const moment = momentNear(nowMs, zoneOf(floor, line));
  if (items.length === 0) return <p>✓ {words.nothing}</p>;
  return (
    <>
      <ul class={`matters${isOpen ? '' : ' short'}`}>
        {items.map((item) => {
          const { kind, codes, why, when } = handedText(item, floor, { atMs, moment });
          const isStill = !isPast || isOpenStill(floor, item, { line, nowMs });
          return (
            <li key={handedKey(item)} data-what={item.what} data-open={isStill}>
              <span aria-hidden="true">{isStill ? '?' : '✓'}</span>
              <span>
                <b>{kind}</b>{' '}
                {codes.map((code, at) => (
                  <Fragment key={code}>
                    {at > 0 && ' · '}
                    <span class="code whole">{code}</span>
                  </Fragment>
                ))}
                {why !== null && <small>{why}</small>}
                {item.what === 'checklist' && isStill && props.isWhole !== true && (
                  <a class="button" href={address('change', 'checklist', item.of)} data-testid="matter-list">
                    {say(checklistWords).open}
                  </a>
                )}
              </span>
              <span>
                {when}
                {isPast && <small>{isStill ? words.open : words.closed}</small>}
                {left?.has(handedKey(item)) && <small>{words.left}</small>}
              </span>
            </li>
          );
        })}
      </ul>
      {!isOpen && items.length > SHOWN && (
        <Button tone="quiet" onPress={() => setOpen(true)} testId="matters-all">
          {words.showAll(items.length)}
        </Button>
      )}
      {more > 0 && <p>{words.more(more)}</p>}
    </>
  );
}

/** What a list rests on. */
export function KnownBy({ line, known }: { readonly line: string; readonly known: HandedKnown }) {
  const app = useApp();
  const floor = useFloor();
  const moment = momentNear(app.nowMs.value, zoneOf(floor, line));
  return (
    <p class="soft" data-testid="known-by" data-sync={known.sync}>
      {knownText(known, moment).join(' ')}
    </p>
  );
}
