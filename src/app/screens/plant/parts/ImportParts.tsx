// The plant's list of parts comes in as a file: what is new, what changes, and by what.

import { useMemo } from 'preact/hooks';
import { hasSheetErrors } from '../../../../../shared/sheet/problems.ts';
import type { ListSummary } from '../../../../worker/list-protocol.ts';
import { useApp, useFloor } from '../../../app.ts';
import { useRefusal } from '../../../may.ts';
import { address, fromHereTo } from '../../../router.ts';
import { useSameList } from '../../../same-list.ts';
import { Button } from '../../../ui/Button.tsx';
import { partListWords } from '../../../words/part-list.ts';
import { say } from '../../../words/words.ts';
import { changedFields, compareList, listEntries, listGrounds } from './part-list-model.ts';
import { TakeList } from './TakeList.tsx';

/** Changes shown one by one. */
const SHOWN = 40;

export function ImportParts() {
  const words = say(partListWords).take;
  return (
    <TakeList
      list="parts"
      title={words.title}
      help={words.help}
      choose={words.choose}
      back={address('plant', 'parts', 'list')}
    >
      {(summary, name, reading) => <Changes summary={summary} name={name} reading={reading} />}
    </TakeList>
  );
}

function Changes(props: {
  readonly summary: ListSummary;
  readonly name: string;
  readonly reading: string | null;
}) {
  const { summary, name, reading } = props;
  const app = useApp();
  const floor = useFloor();
  const all = say(partListWords);
  const words = all.take;
  const refusal = useRefusal('describe-part');
  const grounds = useSameList(listGrounds(floor, summary.parts));
  const { changed, fresh, same } = useMemo(() => compareList(floor, summary.parts), [summary, grounds]);
  const wrong = hasSheetErrors(summary.problems) ? words.errors : null;
  const nothing = changed.length === 0 ? words.nothing : null;
  return (
    <section class="card stack" data-testid="list-changes">
      <h2>{words.changes}</h2>
      <p>{[words.fresh(fresh), words.changed(changed.length - fresh), words.same(same)].join(' · ')}</p>
      <ul class="joined">
        {changed.slice(0, SHOWN).map((each) => (
          <li key={each.part.part}>
            <b class="code" translate={false}>
              {each.before === null ? '+' : '≠'} {each.part.part}
            </b>{' '}
            <span class="soft">
              {each.before === null
                ? [each.part.value, each.part.package].filter(Boolean).join(' ')
                : changedFields(each)
                    .map((field) => all.fields[field] ?? field)
                    .join(', ')}
            </span>
          </li>
        ))}
      </ul>
      {changed.length > SHOWN && <p class="soft">{words.more(changed.length - SHOWN)}</p>}
      <div>
        <Button
          tone="act"
          large
          testId="list-take"
          disabledReason={refusal ?? reading ?? wrong ?? nothing}
          onPress={() => {
            const parts = changed.map(({ part }) => part);
            app.record([...listEntries(parts, name)], {
              notice: { tone: 'go', text: words.done(parts.length) },
              next: fromHereTo('plant', 'parts', 'list'),
            });
          }}
        >
          {words.act(changed.length)}
        </Button>
      </div>
    </section>
  );
}
