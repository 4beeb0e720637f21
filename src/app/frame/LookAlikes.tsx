// Parts of a setup that are easily taken for one another, pair by pair with their slots: told before a run, and by the list of parts.

import { useMemo, useState } from 'preact/hooks';
import { type LookAlike, lookAlikeGrounds, lookAlikesOf } from '../../../shared/floor/look-alikes.ts';
import { useFloor } from '../app.ts';
import { useSameList } from '../same-list.ts';
import { Button } from '../ui/Button.tsx';
import { partListWords } from '../words/part-list.ts';
import { say } from '../words/words.ts';
import './look-alikes.css';

/** Pairs shown at first. */
const FIRST = 3;
/** Slots named of a part; the map has the rest. */
const SLOTS = 3;

/** Why two parts look alike, in words. */
export function likenessText({ by, apart }: Pick<LookAlike, 'by' | 'apart'>): string {
  const words = say(partListWords).alike;
  return by
    .map((each) => (each === 'number' && apart !== null ? words.apart(apart) : words.by[each]))
    .join(', ');
}

interface LookAlikesProps {
  readonly setup: string;
  /** Said where there is none; absent: nothing is shown then. */
  readonly saysNone?: boolean;
}

export function LookAlikes({ setup, saysNone = false }: LookAlikesProps) {
  const floor = useFloor();
  const words = say(partListWords).alike;
  const [opened, setOpened] = useState(false);
  const grounds = useSameList(lookAlikeGrounds(floor, setup));
  const pairs = useMemo(() => lookAlikesOf(floor, setup), [setup, grounds]);
  if (pairs.length === 0) return saysNone ? <p class="soft">{words.none}</p> : null;
  const shown = opened ? pairs : pairs.slice(0, FIRST);
  return (
    <section class="alikes" data-testid="look-alikes">
      <b>≈ {words.title(pairs.length)}</b>
      <p class="soft">{words.help}</p>
      <ul>
        {shown.map((pair) => (
          <li key={pair.parts.join(' ')}>
            {pair.parts.map((part, at) => (
              <span class="alike" key={part}>
                <b class="code" translate={false}>
                  {part}
                </b>
                <small class="code soft" translate={false}>
                  {pair.slots[at]?.slice(0, SLOTS).join(' ')}
                  {(pair.slots[at]?.length ?? 0) > SLOTS && ' …'}
                </small>
              </span>
            ))}
            <small>
              {likenessText(pair)}
              {pair.value !== null && (
                <span class="code" translate={false}>
                  {' '}
                  {pair.value}
                </span>
              )}
            </small>
          </li>
        ))}
      </ul>
      {pairs.length > FIRST && !opened && (
        <Button testId="look-alikes-all" onPress={() => setOpened(true)}>
          {words.all}
        </Button>
      )}
    </section>
  );
}
