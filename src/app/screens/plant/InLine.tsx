// How many panels lie between each machine and the place of counting: what a trace leaves in doubt where a reel changes.

import { useState } from 'preact/hooks';
import { useApp, useFloor } from '../../app.ts';
import { recordOwn } from '../../frame/signed.ts';
import { Button } from '../../ui/Button.tsx';
import { Field } from '../../ui/Field.tsx';
import { inLineWords } from '../../words/in-line.ts';
import { formatCount, say } from '../../words/words.ts';
import { fromInLineForm, type InLineForm, type InLineRow, toInLineForm, withSeen } from './in-line-form.ts';

export function InLine() {
  const line = useApp().line.value;
  return line === null ? null : <OfLine line={line} />;
}

function OfLine({ line }: { readonly line: string }) {
  const app = useApp();
  const floor = useFloor();
  const words = say(inLineWords);
  const [form, setForm] = useState<InLineForm>(() => toInLineForm(floor, line));
  const [isWrong, setWrong] = useState(false);
  const change = (machine: string, part: Partial<InLineRow>) => {
    setWrong(false);
    setForm({ ...form, rows: form.rows.map((row) => (row.machine === machine ? { ...row, ...part } : row)) });
  };
  const field = (row: InLineRow, key: 'behind' | 'before') => (
    <Field
      key={`${row.machine}${key}`}
      label={words[key](row.name)}
      testId={`in-line-${row.machine}-${key}`}
      inputMode="numeric"
      value={row[key]}
      onInput={(text) => change(row.machine, { [key]: text })}
    >
      {row.seen && row.seen[key] > 0 && (
        <small data-testid={`in-line-${row.machine}-${key}-seen`}>
          {words.seen(row.seen.panels, formatCount(row.seen[key]))}
        </small>
      )}
      {row.behind === '' && row.before === '' && <small>{words.guess(formatCount(row.assumed[key]))}</small>}
    </Field>
  );

  function save(): void {
    const payload = fromInLineForm(form, line);
    if (!payload) {
      setWrong(true);
      return;
    }
    recordOwn(app, [{ kind: 'line.panels-ruled', payload }], { notice: { tone: 'go', text: words.saved } });
  }

  return (
    <section class="form">
      <h2 class="whole">{words.title}</h2>
      <p class="soft whole">{words.help}</p>
      {form.rows.flatMap((row) => [field(row, 'behind'), field(row, 'before')])}
      <Field
        label={words.missed}
        unit={'%'}
        testId="in-line-missed"
        inputMode="decimal"
        value={form.missed}
        onInput={(text) => {
          setWrong(false);
          setForm({ ...form, missed: text });
        }}
      />
      {form.rows.some((row) => row.seen !== null) && (
        <div class="whole row">
          <Button testId="in-line-take" onPress={() => setForm(withSeen(form))}>
            {words.takeSeen}
          </Button>
          <span class="soft">{words.takeHelp}</span>
        </div>
      )}
      <div class="whole row">
        <Button large testId="in-line-save" onPress={save}>
          {words.save}
        </Button>
        {isWrong && (
          <span class="chip stop" role="alert" data-testid="in-line-wrong">
            {words.wrong}
          </span>
        )}
      </div>
    </section>
  );
}
