// Counts come in from the file of a reel counter, whatever its columns are called.

import { useMemo } from 'preact/hooks';
import { hasSheetErrors } from '../../../../../shared/sheet/problems.ts';
import type { ListSummary } from '../../../../worker/list-protocol.ts';
import { useApp, useFloor } from '../../../app.ts';
import { useRefusal } from '../../../may.ts';
import { address, fromHereTo } from '../../../router.ts';
import { Button } from '../../../ui/Button.tsx';
import { partListWords } from '../../../words/part-list.ts';
import { formatCount, say } from '../../../words/words.ts';
import { type CountState, countEntries, countedRows } from './counts-model.ts';
import { TakeList } from './TakeList.tsx';

/** Rows shown one by one. */
const SHOWN = 60;

const chips: Readonly<Record<CountState, readonly [tone: string, mark: string]>> = {
  counted: ['go', '✓'],
  same: ['plain', '='],
  unknown: ['care', '?'],
  loaded: ['care', '!'],
  differs: ['stop', '≠'],
};

export function ReelCounts() {
  const words = say(partListWords).counts;
  return (
    <TakeList
      list="counts"
      title={words.title}
      help={words.help}
      choose={words.choose}
      back={address('stock')}
    >
      {(summary, _, reading) => <Counts summary={summary} reading={reading} />}
    </TakeList>
  );
}

function Counts(props: { readonly summary: ListSummary; readonly reading: string | null }) {
  const { summary, reading } = props;
  const app = useApp();
  const floor = useFloor();
  const all = say(partListWords);
  const words = all.counts;
  const refusal = useRefusal('verify-reel');
  const rows = useMemo(() => countedRows(floor, summary.counts), [summary, app.tick.value]);
  const entries = countEntries(floor, rows);
  const wrong = hasSheetErrors(summary.problems) ? all.take.errors : null;
  const nothing = entries.length === 0 ? words.nothing : null;
  return (
    <section class="card stack" data-testid="list-counts">
      <ul class="joined">
        {rows.slice(0, SHOWN).map(({ reel, count, before, is }) => (
          <li key={reel} class="row">
            <b class="grow code" translate={false}>
              {reel}
            </b>
            <span>{words.was(before === null ? '–' : formatCount(before), formatCount(count))}</span>
            <span class={`chip ${chips[is][0]}`}>
              {chips[is][1]} {words.states[is]}
            </span>
          </li>
        ))}
      </ul>
      {rows.length > SHOWN && <p class="soft">{all.take.more(rows.length - SHOWN)}</p>}
      <div>
        <Button
          tone="act"
          large
          testId="list-take"
          disabledReason={refusal ?? reading ?? wrong ?? nothing}
          onPress={() =>
            app.record([...entries], {
              notice: { tone: 'go', text: words.done(entries.length) },
              next: fromHereTo('stock', 'reels'),
            })
          }
        >
          {words.act(entries.length)}
        </Button>
      </div>
    </section>
  );
}
