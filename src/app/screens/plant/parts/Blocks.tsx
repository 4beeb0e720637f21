// Material that must not be used: one reel, a lot or a part, and why. What is loaded already is named, as a block does not stop it.

import { useState } from 'preact/hooks';
import type { Block, BlockFacts } from '../../../../../shared/floor/blocks.ts';
import { useApp, useFloor } from '../../../app.ts';
import { newId } from '../../../device/ids.ts';
import { useRefusal } from '../../../may.ts';
import { Button } from '../../../ui/Button.tsx';
import { ChoiceField, Field } from '../../../ui/Field.tsx';
import { Icon } from '../../../ui/Icon.tsx';
import { whichPanels } from '../../../which-panels.ts';
import { heldWords } from '../../../words/held.ts';
import { partsWords } from '../../../words/parts.ts';
import { say } from '../../../words/words.ts';
import { ListPage, WithdrawDialog } from './ListPage.tsx';
import {
  type BlockKind,
  blockedSlots,
  blockKinds,
  blockObstacle,
  blockTarget,
  matches,
  type ScannedThing,
} from './model.ts';
import { useScans } from './shared.tsx';

interface Draft {
  readonly kind: BlockKind;
  readonly values: Readonly<Record<BlockKind, string>>;
  readonly reason: string;
}

const emptyDraft: Draft = { kind: 'lot', values: { reel: '', lot: '', part: '' }, reason: '' };

/** A scanned label fills every field that it states; a bare code fills the field in hand. */
function fillDraft(draft: Draft, { raw, reel, lot, part }: ScannedThing): Draft {
  const values = { reel: reel ?? '', lot: lot ?? '', part: part ?? '' };
  if (reel === null && lot === null && part === null) values[draft.kind] = raw;
  return { ...draft, values };
}

export function Blocks() {
  const app = useApp();
  const floor = useFloor();
  const words = say(partsWords).blocks;
  const refusal = useRefusal('block-material');
  const [search, setSearch] = useState('');
  const [draft, setDraft] = useState<Draft | null>(null);
  const [lifting, setLifting] = useState<Block | null>(null);
  useScans((thing) => {
    if (draft) return setDraft(fillDraft(draft, thing));
    const blocks = [...floor.blocks.values()];
    const hit = [thing.reel, thing.lot, thing.part].find(
      (text) => text !== null && blocks.some((block) => blockTarget(block).value === text),
    );
    setSearch(hit ?? thing.reel ?? thing.lot ?? thing.part ?? thing.raw);
  });
  const blocks = [...floor.blocks.values()].reverse();
  const found = blocks.filter(({ reel, lot, part, reason }) => matches(search, [reel, lot, part, reason]));
  const by = app.person.value?.person ?? app.store.identity.tablet;
  return (
    <ListPage
      search={{ value: search, onChange: setSearch }}
      add={{ label: words.add, testId: 'block-add', refusal, onPress: () => setDraft(emptyDraft) }}
      form={draft && <BlockForm draft={draft} onChange={setDraft} onClose={() => setDraft(null)} />}
      count={blocks.length}
      none={words.none}
      found={found}
      noMatch={words.noMatch(search)}
      keyOf={({ block }) => block}
      draw={(block) => (
        <BlockRow
          key={block.block}
          block={block}
          slots={blockedSlots(floor, block)}
          refusal={refusal}
          onLift={() => setLifting(block)}
        />
      )}
    >
      {lifting && (
        <WithdrawDialog
          title={words.liftTitle(blockTarget(lifting).value)}
          why={words.liftWhy}
          act={words.lift}
          entry={(reason) => ({ kind: 'material.released', payload: { block: lifting.block, reason, by } })}
          done={words.lifted(blockTarget(lifting).value)}
          onClose={() => setLifting(null)}
        />
      )}
    </ListPage>
  );
}

function BlockRow(props: {
  readonly block: Block;
  readonly slots: readonly string[];
  readonly refusal: string | null;
  readonly onLift: () => void;
}) {
  const words = say(partsWords).blocks;
  const { kind, value } = blockTarget(props.block);
  return (
    <div class="listed" data-testid={`block-${value}`}>
      <span class="grow">
        <span class="soft">{words.values[kind]}</span>{' '}
        <b class="code" translate={false}>
          {value}
        </b>
        <br />
        {props.block.reason}
        {props.slots.length > 0 && (
          <span class="loaded">
            <span class="chip stop">✕ {words.onLine(props.slots.join(', '))}</span>{' '}
            <span class="soft">{words.onLineHelp}</span>
          </span>
        )}
      </span>
      <a
        class="button"
        href={whichPanels({ ...props.block, cause: 'blocked', of: props.block.block })}
        data-testid={`panels-${value}`}
      >
        {say(heldWords).which}
      </a>
      <Button disabledReason={props.refusal} onPress={props.onLift} testId={`lift-${value}`}>
        {words.lift}
      </Button>
    </div>
  );
}

function BlockForm(props: {
  readonly draft: Draft;
  readonly onChange: (draft: Draft) => void;
  readonly onClose: () => void;
}) {
  const app = useApp();
  const floor = useFloor();
  const all = say(partsWords);
  const words = all.blocks;
  const { draft, onChange } = props;
  const { kind, values, reason } = draft;
  const value = values[kind].trim();
  const obstacle = blockObstacle(floor, kind, { value, reason });
  const block: BlockFacts = {
    block: newId(),
    reel: null,
    lot: null,
    part: null,
    reason: reason.trim(),
    [kind]: value,
  };
  const loaded = value === '' ? [] : blockedSlots(floor, block);
  return (
    <section class="card form">
      <ChoiceField
        label={words.what}
        isWhole
        value={kind}
        choices={blockKinds.map((each) => ({
          value: each,
          text: (
            <>
              {words.kinds[each]}
              {values[each] !== '' && <span class="code"> {values[each]}</span>}
            </>
          ),
          testId: `block-kind-${each}`,
        }))}
        onChoose={(each) => onChange({ ...draft, kind: each })}
      />
      <Field
        label={words.values[kind]}
        testId="block-value"
        isCode
        autocomplete="off"
        maxLength={64}
        value={values[kind]}
        onInput={(text) => onChange({ ...draft, values: { ...values, [kind]: text } })}
        help={words.formHelp}
      />
      <Field
        label={words.reason}
        testId="block-reason"
        maxLength={200}
        value={reason}
        onInput={(text) => onChange({ ...draft, reason: text })}
        help={words.reasonHelp}
      />
      {loaded.length > 0 && (
        <div class="caution whole">
          <Icon name="warn" />
          <div>
            <b>{words.onLine(loaded.join(', '))}</b>
            <br />
            {words.onLineHelp}
          </div>
        </div>
      )}
      <div class="whole row">
        <Button
          tone="act"
          large
          testId="block-save"
          disabledReason={obstacle && words[obstacle]}
          onPress={() => {
            app.record([{ kind: 'material.blocked', payload: block }], {
              notice: { tone: 'go', text: words.saved(value) },
              next: props.onClose,
            });
          }}
        >
          {words.save}
        </Button>
        <Button large onPress={props.onClose}>
          {all.cancel}
        </Button>
      </div>
    </section>
  );
}
