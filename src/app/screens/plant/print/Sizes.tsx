// The plant's sizes of labels, the one that this tablet prints on, and how its printer lies.

import { useState } from 'preact/hooks';
import type { LabelSize } from '../../../../../shared/floor/state.ts';
import { useApp, useFloor } from '../../../app.ts';
import { useRefusal } from '../../../may.ts';
import { paperInUse } from '../../../print/paper.ts';
import { printPages } from '../../../print/sheet.tsx';
import { AskFeet } from '../../../ui/Ask.tsx';
import { Button } from '../../../ui/Button.tsx';
import { Dialog } from '../../../ui/Dialog.tsx';
import { Field } from '../../../ui/Field.tsx';
import { printWords } from '../../../words/print.ts';
import { formatNumber, say } from '../../../words/words.ts';
import { fieldsFor, formOf, readSize, type SizeField, type SizeForm, type SizeWrong } from './size-form.ts';

export function Sizes() {
  const app = useApp();
  const floor = useFloor();
  const words = say(printWords).sizes;
  const refusal = useRefusal('rule-line');
  const [editing, setEditing] = useState<LabelSize | 'new' | null>(null);
  const paper = paperInUse(floor, app.preferences.value, words.first);
  return (
    <section class="stack card">
      <h2>{words.title}</h2>
      {floor.labelSizes.size === 0 && <p class="soft">{words.none}</p>}
      {[...floor.labelSizes.values()].map((size) => (
        <SizeRow
          key={size.size}
          size={size}
          isUsed={paper.size === size.size}
          onEdit={() => setEditing(size)}
        />
      ))}
      <div>
        <Button testId="size-add" disabledReason={refusal} onPress={() => setEditing('new')}>
          {words.add}
        </Button>
      </div>
      <Printer />
      {editing !== null && (
        <SizeDialog size={editing === 'new' ? null : editing} onClose={() => setEditing(null)} />
      )}
    </section>
  );
}

function SizeRow(props: { readonly size: LabelSize; readonly isUsed: boolean; readonly onEdit: () => void }) {
  const app = useApp();
  const words = say(printWords).sizes;
  const refusal = useRefusal('rule-line');
  const { size, widthMm, heightMm, dpi, paper } = props.size;
  const remove = () => {
    app.record([{ kind: 'labels.size-withdrawn', payload: { size } }], {
      notice: { tone: 'plain', text: words.removed(size) },
    });
  };
  return (
    <div class="row size-row" data-testid={`size-${size}`}>
      <span class="grow">
        <b>{size}</b> {props.isUsed && <span class="chip go">✓ {words.used}</span>}
        <br />
        <small class="soft">
          {words.papers[paper]} · {words.about(formatNumber(widthMm), formatNumber(heightMm), dpi)}
        </small>
      </span>
      {!props.isUsed && (
        <Button
          testId={`size-use-${size}`}
          onPress={() => {
            app.preferences.value = { ...app.preferences.value, labelSize: size };
          }}
        >
          {words.use}
        </Button>
      )}
      <Button testId={`size-edit-${size}`} disabledReason={refusal} onPress={props.onEdit}>
        {words.edit}
      </Button>
      <Button testId={`size-remove-${size}`} disabledReason={refusal} onPress={remove}>
        {words.remove}
      </Button>
    </div>
  );
}

/** Where this tablet's printer must be told to move a label, and the test that shows it. */
function Printer() {
  const app = useApp();
  const floor = useFloor();
  const words = say(printWords).sizes;
  const { labelOffset } = app.preferences.value;
  const [typed, setTyped] = useState({ xMm: String(labelOffset.xMm), yMm: String(labelOffset.yMm) });
  const change = (axis: 'xMm' | 'yMm', text: string) => {
    setTyped({ ...typed, [axis]: text });
    const mm = readOffset(text);
    if (mm !== null)
      app.preferences.value = { ...app.preferences.value, labelOffset: { ...labelOffset, [axis]: mm } };
  };
  const field = (axis: 'xMm' | 'yMm') => (
    <Field
      label={axis === 'xMm' ? words.offsetX : words.offsetY}
      testId={`offset-${axis}`}
      unit="mm"
      autocomplete="off"
      value={typed[axis]}
      onInput={(text) => change(axis, text)}
      wrong={readOffset(typed[axis]) === null ? words.wrong.range('-20', '20') : null}
    />
  );
  return (
    <div class="stack">
      <div class="row">
        <Button
          testId="print-test"
          onPress={() => {
            const { xMm, yMm } = app.preferences.value.labelOffset;
            const paper = paperInUse(floor, app.preferences.value, words.first);
            printPages(paper, { test: words.testText }, { first: 0, offsetXMm: xMm, offsetYMm: yMm });
          }}
        >
          {words.test}
        </Button>
        <p class="soft grow">{words.testHelp}</p>
      </div>
      <div class="offsets">
        {field('xMm')}
        {field('yMm')}
      </div>
      <p class="soft">{words.offsetHelp}</p>
    </div>
  );
}

/** Millimetres, with a sign; null where it is no number or more than 20 either way. */
function readOffset(text: string): number | null {
  const plain = text.trim().replace(',', '.').replace('−', '-');
  const mm = /^-?\d+(\.\d+)?$/.test(plain) ? Number(plain) : Number.NaN;
  return Math.abs(mm) <= 20 ? mm : null;
}

function sayWrong(wrong: SizeWrong): string {
  const words = say(printWords).sizes.wrong;
  switch (wrong.code) {
    case 'range':
      return words.range(formatNumber(wrong.least), formatNumber(wrong.most));
    case 'too-wide':
    case 'too-high':
      return words[wrong.code](formatNumber(wrong.overMm));
    default:
      return words[wrong.code];
  }
}

function SizeDialog({ size, onClose }: { readonly size: LabelSize | null; readonly onClose: () => void }) {
  const app = useApp();
  const words = say(printWords).sizes;
  const refusal = useRefusal('rule-line');
  const [form, setForm] = useState<SizeForm>(() => formOf(size));
  const read = readSize(form);
  const wrongAt = (field: SizeField | 'size') =>
    !read.ok && read.wrong.field === field && field !== 'size' ? sayWrong(read.wrong) : null;
  const save = () => {
    if (!read.ok) return;
    app.record([{ kind: 'labels.sized', payload: read.size }], {
      notice: { tone: 'plain', text: words.saved(read.size.size) },
      next: () => {
        app.preferences.value = { ...app.preferences.value, labelSize: read.size.size };
      },
    });
    onClose();
  };
  return (
    <Dialog title={size === null ? words.add : size.size} onClose={onClose} wide>
      <div class="stack">
        {size === null && (
          <Field
            label={words.name}
            testId="size-name"
            autocomplete="off"
            maxLength={40}
            value={form.size}
            onInput={(text) => setForm({ ...form, size: text })}
          />
        )}
        <div class="choice">
          {(['roll', 'sheet'] as const).map((paper) => (
            <button
              type="button"
              key={paper}
              aria-pressed={form.paper === paper}
              data-testid={`size-paper-${paper}`}
              onClick={() => setForm({ ...form, paper })}
            >
              {words.papers[paper]}
            </button>
          ))}
        </div>
        <div class="size-fields">
          {fieldsFor(form.paper).map((field) => (
            <Field
              key={field}
              label={words.fields[field]}
              testId={`size-field-${field}`}
              inputMode="decimal"
              autocomplete="off"
              unit={field.endsWith('Mm') ? 'mm' : ''}
              value={form[field]}
              onInput={(text) => setForm({ ...form, [field]: text })}
              wrong={wrongAt(field)}
              help={field === 'dpi' ? words.dpiHelp : null}
            />
          ))}
        </div>
        <AskFeet
          testId="size-save"
          disabledReason={refusal ?? (read.ok ? null : sayWrong(read.wrong))}
          onYes={save}
          onNo={onClose}
        >
          {words.save}
        </AskFeet>
      </div>
    </Dialog>
  );
}
