// The plant's sheet of a paste: the hours that it bears, as its maker's own sheet says.

import { useState } from 'preact/hooks';
import type { PasteRule } from '../../../../shared/floor/fold-paste.ts';
import { parseNumber } from '../../../../shared/sheet/cells.ts';
import { useApp, useFloor } from '../../app.ts';
import { AskFeet } from '../../ui/Ask.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { Field } from '../../ui/Field.tsx';
import { pasteWords } from '../../words/paste.ts';
import { say } from '../../words/words.ts';

const hours = ['thawHours', 'outHours', 'openHours', 'stencilHours'] as const;
type Hours = (typeof hours)[number];

interface Form extends Readonly<Record<Hours, string>> {
  readonly paste: string;
  readonly source: string;
}

function formOf(paste: string, rule: PasteRule | undefined): Form {
  const text = (value: number | null | undefined) => (value == null ? '' : String(value));
  return {
    paste,
    source: rule?.source ?? '',
    thawHours: text(rule?.thawHours),
    outHours: text(rule?.outHours),
    openHours: text(rule?.openHours),
    stencilHours: text(rule?.stencilHours),
  };
}

/** The sheet as typed; null where an hour cannot be read. */
function ruleOf(form: Form): PasteRule | null {
  const read = (text: string): number | null | undefined => {
    if (text.trim() === '') return null;
    const value = parseNumber(text.trim(), 'length');
    return value !== null && value >= 0 ? value : undefined;
  };
  const [thawHours, outHours, openHours, stencilHours] = hours.map((name) => read(form[name]));
  if (thawHours === undefined || outHours === undefined) return null;
  if (openHours === undefined || stencilHours === undefined) return null;
  const { paste, source } = form;
  return { paste: paste.trim(), source: source.trim(), thawHours, outHours, openHours, stencilHours };
}

export function PasteSheet({ paste, onClose }: { readonly paste: string; readonly onClose: () => void }) {
  const app = useApp();
  const floor = useFloor();
  const words = say(pasteWords).sheet;
  const [form, setForm] = useState<Form>(() => formOf(paste, floor.pasteRules.get(paste)));
  const rule = ruleOf(form);
  return (
    <Dialog title={words.title} onClose={onClose}>
      <div class="stack">
        <Field
          label={words.paste}
          testId="paste-name"
          isCode
          autocomplete="off"
          maxLength={64}
          value={form.paste}
          onInput={(name) => {
            const known = floor.pasteRules.get(name.trim());
            setForm(known ? formOf(name, known) : { ...form, paste: name });
          }}
          help={words.help}
        />
        {hours.map((name) => (
          <Field
            key={name}
            label={words[name]}
            testId={`paste-${name}`}
            inputMode="decimal"
            value={form[name]}
            onInput={(text) => setForm({ ...form, [name]: text })}
          />
        ))}
        <Field
          label={words.source}
          testId="paste-source"
          maxLength={200}
          value={form.source}
          onInput={(source) => setForm({ ...form, source })}
        />
      </div>
      <AskFeet
        testId="paste-save"
        disabledReason={form.paste.trim() === '' ? words.nameless : rule === null ? words.wrong : null}
        onYes={() => {
          if (rule === null) return;
          app.record([{ kind: 'paste.ruled', payload: rule }], {
            notice: { tone: 'go', text: words.saved(rule.paste) },
            next: onClose,
          });
        }}
        onNo={onClose}
      >
        {words.save}
      </AskFeet>
    </Dialog>
  );
}
