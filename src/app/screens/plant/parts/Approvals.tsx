// Supplier numbers that stand for the site's own part numbers. An engineer approves and withdraws; everybody may look.

import { useState } from 'preact/hooks';
import { useApp, useFloor } from '../../../app.ts';
import { recordOwn } from '../../../frame/signed.ts';
import { useRefusal } from '../../../may.ts';
import { Button } from '../../../ui/Button.tsx';
import { Field } from '../../../ui/Field.tsx';
import { partsWords } from '../../../words/parts.ts';
import { say } from '../../../words/words.ts';
import { ListPage } from './ListPage.tsx';
import { type ApprovedPart, approvedParts, approveObstacle, matches } from './model.ts';
import { useScans } from './shared.tsx';

interface Draft {
  readonly part: string;
  readonly supplierPart: string;
}

export function Approvals() {
  const floor = useFloor();
  const all = say(partsWords);
  const words = all.approved;
  const refusal = useRefusal('approve-supplier');
  const [search, setSearch] = useState('');
  const [draft, setDraft] = useState<Draft | null>(null);
  useScans(({ raw, part, supplierPart }) => {
    if (!draft) return setSearch(supplierPart ?? part ?? raw);
    const isOwn = part !== null && supplierPart === null;
    setDraft(
      isOwn ? { ...draft, part } : { part: draft.part || (part ?? ''), supplierPart: supplierPart ?? raw },
    );
  });
  const parts = approvedParts(floor);
  const found = parts.filter(({ part, supplierParts }) => matches(search, [part, ...supplierParts]));
  const known = parts.some(({ part }) => part.toLowerCase() === search.trim().toLowerCase());
  const add = () => setDraft({ part: known ? search.trim() : '', supplierPart: '' });
  return (
    <ListPage
      search={{ value: search, onChange: setSearch }}
      add={{ label: words.add, testId: 'approve-add', refusal, onPress: add }}
      form={draft && <ApproveForm draft={draft} onChange={setDraft} onClose={() => setDraft(null)} />}
      count={parts.length}
      none={words.none}
      noneHelp={words.noneHelp}
      found={found}
      noMatch={
        <>
          {words.noMatch(search)}
          {!draft && (
            <Button
              disabledReason={refusal}
              onPress={() => setDraft({ part: '', supplierPart: search.trim() })}
            >
              {words.approveIt}
            </Button>
          )}
        </>
      }
      keyOf={({ part }) => part}
      draw={(part) => <PartRow key={part.part} part={part} refusal={refusal} />}
    />
  );
}

function PartRow({ part, refusal }: { readonly part: ApprovedPart; readonly refusal: string | null }) {
  const app = useApp();
  const words = say(partsWords).approved;
  function withdraw(supplierPart: string): void {
    const payload = { supplierPart, part: part.part };
    app.record([{ kind: 'supplier.withdrawn', payload }], {
      notice: {
        tone: 'plain',
        text: words.withdrawn(supplierPart, part.part),
        act: {
          label: words.undo,
          run: () => app.record([{ kind: 'supplier.approved', payload }]),
        },
      },
    });
  }
  return (
    <div class="listed" data-testid={`part-${part.part}`}>
      <span class="own">
        <b class="code" translate={false}>
          {part.part}
        </b>
        {part.slots > 0 && <span class="soft"> {words.wantedBy(part.slots)}</span>}
      </span>
      <span class="supplier">
        {part.supplierParts.length === 0 && <span class="soft">–</span>}
        {part.supplierParts.map((supplierPart) => (
          <span key={supplierPart} class="number">
            <span class="code" translate={false}>
              {supplierPart}
            </span>
            {refusal === null && (
              <Button
                tone="quiet"
                label={`${words.withdraw} ${supplierPart}`}
                testId={`withdraw-${supplierPart}`}
                onPress={() => withdraw(supplierPart)}
              >
                {words.withdraw}
              </Button>
            )}
          </span>
        ))}
      </span>
    </div>
  );
}

function ApproveForm(props: {
  readonly draft: Draft;
  readonly onChange: (draft: Draft) => void;
  readonly onClose: () => void;
}) {
  const app = useApp();
  const floor = useFloor();
  const all = say(partsWords);
  const words = all.approved;
  const { draft, onChange } = props;
  const obstacle = approveObstacle(floor, draft.part, draft.supplierPart);
  const payload = { supplierPart: draft.supplierPart.trim(), part: draft.part.trim() };
  return (
    <section class="card form">
      <Field
        label={words.supplierPart}
        testId="approve-supplier"
        isCode
        autocomplete="off"
        maxLength={64}
        value={draft.supplierPart}
        onInput={(text) => onChange({ ...draft, supplierPart: text })}
        help={words.formHelp}
      />
      <Field
        label={words.part}
        testId="approve-part"
        isCode
        autocomplete="off"
        maxLength={64}
        list="site-parts"
        value={draft.part}
        onInput={(text) => onChange({ ...draft, part: text })}
      >
        <datalist id="site-parts">
          {approvedParts(floor).map(({ part }) => (
            <option key={part} value={part} />
          ))}
        </datalist>
      </Field>
      <div class="whole row">
        <Button
          tone="act"
          large
          testId="approve-save"
          disabledReason={obstacle && words[obstacle]}
          onPress={() => {
            recordOwn(app, [{ kind: 'supplier.approved', payload }], {
              notice: { tone: 'go', text: words.saved(payload.supplierPart, payload.part) },
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
