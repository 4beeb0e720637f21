// The plant's feeders: which tape each takes. With a list, a load also checks that the feeder fits the tape.

import { useState } from 'preact/hooks';
import type { Feeder } from '../../../../../shared/floor/state.ts';
import { useApp, useFloor } from '../../../app.ts';
import { useRefusal } from '../../../may.ts';
import { Button } from '../../../ui/Button.tsx';
import { partsWords } from '../../../words/parts.ts';
import { say } from '../../../words/words.ts';
import { type Draft, draftOf, emptyDraft, FeederForm, PasteForm } from './FeederForms.tsx';
import { placeText, tapeText } from './feeder-text.ts';
import { ListPage, WithdrawDialog } from './ListPage.tsx';
import { type FeederPlace, feederPlace, matches } from './model.ts';
import { useScans } from './shared.tsx';

export function Feeders() {
  const app = useApp();
  const floor = useFloor();
  const words = say(partsWords).feeders;
  const refusal = useRefusal('define-line');
  const [search, setSearch] = useState('');
  const [draft, setDraft] = useState<Draft | null>(null);
  const [isPasting, setPasting] = useState(false);
  const [leaving, setLeaving] = useState<string | null>(null);
  useScans(({ raw }) => {
    if (!draft) setSearch(raw);
    else if (draft.changes === null) setDraft({ ...draft, feeder: raw });
    else app.notice.value = { tone: 'care', text: words.changing(draft.changes) };
  });
  const feeders = [...floor.feeders.values()].sort((a, b) =>
    a.feeder.localeCompare(b.feeder, 'en', { numeric: true }),
  );
  const found = feeders.filter(({ feeder, tapeWidthMm }) => matches(search, [feeder, `${tapeWidthMm} mm`]));
  const loaded = leaving === null ? null : feederPlace(floor, leaving);
  const form = (draft || isPasting) && (
    <>
      {draft && <FeederForm draft={draft} onChange={setDraft} onClose={() => setDraft(null)} />}
      {isPasting && <PasteForm onClose={() => setPasting(false)} />}
    </>
  );
  return (
    <ListPage
      search={{ value: search, onChange: setSearch }}
      add={{ label: words.add, testId: 'feeder-add', refusal, onPress: () => setDraft(emptyDraft) }}
      acts={
        <Button disabledReason={refusal} testId="feeder-paste" onPress={() => setPasting(true)}>
          {words.paste}
        </Button>
      }
      form={form}
      count={feeders.length}
      none={words.none}
      noneHelp={words.noneHelp}
      found={found}
      noMatch={
        <>
          {words.noMatch(search)}
          {!draft && (
            <Button
              disabledReason={refusal}
              onPress={() => setDraft({ ...emptyDraft, feeder: search.trim() })}
            >
              {words.addIt}
            </Button>
          )}
        </>
      }
      keyOf={({ feeder }) => feeder}
      draw={(feeder) => (
        <FeederRow
          key={feeder.feeder}
          feeder={feeder}
          place={feederPlace(floor, feeder.feeder)}
          mayChange={refusal === null}
          onEdit={() => setDraft(draftOf(feeder))}
          onLeave={() => setLeaving(feeder.feeder)}
        />
      )}
    >
      {leaving !== null && refusal === null && (
        <WithdrawDialog
          title={words.withdrawTitle(leaving)}
          why={words.why}
          choices={words.whys}
          act={words.withdraw}
          caution={loaded && words.withdrawLoaded(leaving, placeText(loaded))}
          entry={(reason) => ({ kind: 'feeder.withdrawn', payload: { feeder: leaving, reason } })}
          done={words.withdrawn(leaving)}
          onClose={() => setLeaving(null)}
        />
      )}
    </ListPage>
  );
}

function FeederRow(props: {
  readonly feeder: Feeder;
  readonly place: FeederPlace | null;
  readonly mayChange: boolean;
  readonly onEdit: () => void;
  readonly onLeave: () => void;
}) {
  const words = say(partsWords).feeders;
  const { feeder } = props.feeder;
  return (
    <div class="listed" data-testid={`feeder-${feeder}`}>
      <span class="grow">
        <b class="code" translate={false}>
          {feeder}
        </b>{' '}
        {props.place !== null && <span class="chip">{placeText(props.place)}</span>}
        <br />
        <span class="soft">{tapeText(props.feeder)}</span>
      </span>
      {props.mayChange && (
        <>
          <Button onPress={props.onEdit} testId={`feeder-edit-${feeder}`}>
            {words.edit}
          </Button>
          <Button tone="stop" onPress={props.onLeave}>
            {words.withdraw}
          </Button>
        </>
      )}
    </div>
  );
}
