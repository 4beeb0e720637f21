// Types of feeders: what they share, how long the tape in them is, how many feeders are of each.

import { useState } from 'preact/hooks';
import type { FeederType } from '../../../../../shared/floor/feeder-types.ts';
import { packageKinds } from '../../../../../shared/floor/vocabulary.ts';
import { useApp, useFloor } from '../../../app.ts';
import { useRefusal } from '../../../may.ts';
import { Button } from '../../../ui/Button.tsx';
import { Field, SelectField } from '../../../ui/Field.tsx';
import { feederTypeWords } from '../../../words/feeder-types.ts';
import { feedWords } from '../../../words/feeds.ts';
import { packWords } from '../../../words/packs.ts';
import { formatNumber, say } from '../../../words/words.ts';
import { CareOfFeeders } from './CareOfFeeders.tsx';
import { LengthFields } from './LengthFields.tsx';
import { ListPage, WithdrawDialog } from './ListPage.tsx';
import { lengthTexts, readType, type TypeDraft } from './lengths.ts';

const emptyDraft: TypeDraft = {
  changes: null,
  type: '',
  lanes: 1,
  drive: '',
  pocket: '',
  comesIn: 'tape',
  lengths: lengthTexts(null),
};

export function FeederTypes() {
  const floor = useFloor();
  const words = say(feederTypeWords);
  const refusal = useRefusal('define-line');
  const [draft, setDraft] = useState<TypeDraft | null>(null);
  const [leaving, setLeaving] = useState<string | null>(null);
  const types = [...floor.feederTypes.values()].sort((a, b) =>
    a.type.localeCompare(b.type, 'en', { numeric: true }),
  );
  return (
    <ListPage
      help={words.help}
      add={{ label: words.add, testId: 'type-add', refusal, onPress: () => setDraft(emptyDraft) }}
      form={draft && <TypeForm draft={draft} onChange={setDraft} onClose={() => setDraft(null)} />}
      count={types.length}
      none={words.none}
      noneHelp={words.noneHelp}
      found={types}
      keyOf={({ type }) => type}
      draw={(type) => (
        <div class="listed" key={type.type} data-testid={`type-${type.type}`}>
          <span class="grow">
            <b class="code" translate={false}>
              {type.type}
            </b>
            <br />
            <span class="soft">{typeText(type)}</span>
          </span>
          <span class="chip">
            {words.has([...floor.typed.values()].filter((each) => each.type === type.type).length)}
          </span>
          {refusal === null && (
            <>
              <Button testId={`type-edit-${type.type}`} onPress={() => setDraft(draftOf(type))}>
                {words.change}
              </Button>
              <Button tone="stop" onPress={() => setLeaving(type.type)}>
                {words.withdraw}
              </Button>
            </>
          )}
        </div>
      )}
    >
      <CareOfFeeders />
      {leaving !== null && refusal === null && (
        <WithdrawDialog
          title={words.withdrawTitle(leaving)}
          why={words.why}
          choices={words.whys}
          act={words.withdraw}
          entry={(reason) => ({ kind: 'feeder-type.withdrawn', payload: { type: leaving, reason } })}
          done={words.withdrawn(leaving)}
          onClose={() => setLeaving(null)}
        />
      )}
    </ListPage>
  );
}

function draftOf(type: FeederType): TypeDraft {
  return {
    changes: type.type,
    type: type.type,
    lanes: type.lanes,
    drive: type.drive ?? '',
    pocket: type.pocketMm === null ? '' : String(type.pocketMm),
    comesIn: type.comesIn ?? 'tape',
    lengths: lengthTexts(type),
  };
}

/** What is known of a type, in one line. */
function typeText(type: FeederType): string {
  const words = say(feederTypeWords);
  const { lanes, drive, pocketMm, hubToPickMm, intakeToPickMm, trailerMm } = type;
  const hasWindow = hubToPickMm !== null && intakeToPickMm !== null && trailerMm !== null;
  return [
    type.comesIn === undefined ? null : say(feedWords).kinds[type.comesIn],
    words.lanesAre(lanes),
    drive,
    pocketMm === null ? null : words.depth(formatNumber(pocketMm)),
    hasWindow
      ? `${formatNumber(hubToPickMm)} / ${formatNumber(intakeToPickMm)} / ${formatNumber(trailerMm)} mm`
      : null,
  ]
    .filter((text) => text !== null)
    .join(' · ');
}

function TypeForm(props: {
  readonly draft: TypeDraft;
  readonly onChange: (draft: TypeDraft) => void;
  readonly onClose: () => void;
}) {
  const app = useApp();
  const floor = useFloor();
  const words = say(feederTypeWords);
  const { draft, onChange, onClose } = props;
  const read = readType(floor, draft);
  const field = (name: 'type' | 'drive' | 'pocket', label: string, help: string, unit: string) => (
    <Field
      label={label}
      unit={unit}
      testId={`type-${name}`}
      autocomplete="off"
      maxLength={60}
      disabled={name === 'type' && draft.changes !== null}
      value={draft[name]}
      onInput={(text) => onChange({ ...draft, [name]: text })}
      help={help}
    />
  );
  return (
    <section class="card form" data-testid="type-form">
      {field('type', words.name, words.nameHelp, '')}
      <SelectField
        label={words.lanes}
        testId="type-lanes"
        value={String(draft.lanes)}
        onChoose={(lanes) => onChange({ ...draft, lanes: Number(lanes) })}
      >
        {[1, 2, 3, 4, 5, 6, 7, 8].map((lanes) => (
          <option key={lanes} value={String(lanes)}>
            {lanes}
          </option>
        ))}
      </SelectField>
      <SelectField
        label={say(packWords).comesIn}
        testId="type-comes-in"
        value={draft.comesIn}
        onChoose={(kind) =>
          onChange({ ...draft, comesIn: packageKinds.find((each) => each === kind) ?? 'tape' })
        }
      >
        {packageKinds.map((kind) => (
          <option key={kind} value={kind}>
            {say(feedWords).kinds[kind]}
          </option>
        ))}
      </SelectField>
      {field('drive', words.drive, words.driveHelp, '')}
      {field('pocket', words.pocket, words.pocketHelp, 'mm')}
      <LengthFields id="type" texts={draft.lengths} onChange={(lengths) => onChange({ ...draft, lengths })} />
      <div class="whole row">
        <Button
          tone="act"
          large
          testId="type-save"
          disabledReason={typeof read === 'string' ? words[read] : null}
          onPress={() => {
            if (typeof read === 'string') return;
            app.record([{ kind: 'feeder-type.known', payload: read }], {
              notice: { tone: 'go', text: words.saved(read.type) },
              next: onClose,
            });
          }}
        >
          {words.save}
        </Button>
        <Button large onPress={onClose}>
          {words.cancel}
        </Button>
      </div>
    </section>
  );
}
