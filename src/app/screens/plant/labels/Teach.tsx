// One label taught: scan it, tap its pieces, see what the rule reads here and in the log, have a lead approve it.

import { useLayoutEffect, useState } from 'preact/hooks';
import { siteRules } from '../../../../../shared/floor/fold-labels.ts';
import { holdsBadge } from '../../../../../shared/floor/recognise.ts';
import { dateFormats } from '../../../../../shared/labels/date-formats.ts';
import { parseLabel } from '../../../../../shared/labels/label.ts';
import type { LabelRule } from '../../../../../shared/labels/rules.ts';
import { useApp, useFloor } from '../../../app.ts';
import { Button } from '../../../ui/Button.tsx';
import { Field, SelectField } from '../../../ui/Field.tsx';
import type { Words } from '../../../words/areas.ts';
import { dockWords } from '../../../words/dock.ts';
import { shellWords } from '../../../words/shell.ts';
import { teachWords } from '../../../words/teach.ts';
import { say } from '../../../words/words.ts';
import { ApproveDialog } from './ApproveDialog.tsx';
import { type Taught, type Teaching, teach } from './model.ts';
import { Pattern, Reading, Varied } from './parts.tsx';
import { addCodes, firstTeaching, spoilingKeyboard, teaching } from './session.ts';
import { TapCodes } from './TapCodes.tsx';
import { Trial, useLogLabels, useTrials } from './Trial.tsx';

export function Teach() {
  const app = useApp();
  const floor = useFloor();
  const words = say(teachWords);
  const shell = say(shellWords);
  const [approving, setApproving] = useState<LabelRule | null>(null);
  const now = teaching.value ?? firstTeaching;
  const change = (part: Partial<Teaching>) => {
    teaching.value = { ...now, ...part };
  };
  const take = (codes: readonly string[]) => {
    const layout = spoilingKeyboard(codes);
    if (layout !== null) app.notice.value = { tone: 'care', text: say(dockWords).wrongKeyboard(layout) };
    teaching.value = addCodes(teaching.value ?? firstTeaching, codes);
  };
  useLayoutEffect(() => {
    app.openTasks.value += 1;
    const release = app.scans.take((scan) => {
      const codes = scan.codes.map(({ text }) => text);
      if (holdsBadge(app.store.floor(), app.line.value, codes)) return false;
      take(codes);
      return true;
    });
    return () => {
      app.openTasks.value -= 1;
      release();
    };
  }, []);
  const known = floor.labelRules.get(now.name.trim())?.rule ?? null;
  const taught = teach(now, known);
  const labels = useLogLabels();
  const trials = useTrials(taught.is === 'rule' ? [taught.rule] : [], siteRules(floor), labels);
  const trial = taught.is === 'rule' ? (trials?.get(taught.rule.rule) ?? null) : null;
  return (
    <>
      <section class="card stack">
        <h2>{words.codesTitle}</h2>
        <p class="soft">{now.codes.length === 0 ? words.codesHelp : words.tapHelp}</p>
        {now.codes.length === 0 ? (
          <>
            <p class="well next" role="status">
              {words.waiting}
            </p>
            <TypeCode onTyped={(text) => take([text])} />
          </>
        ) : (
          <TapCodes teaching={now} onChange={change} />
        )}
        <AlreadyRead codes={now.codes} />
      </section>
      {now.codes.length > 0 && <RuleForm teaching={now} taught={taught} known={known} onChange={change} />}
      {taught.is === 'rule' && <Trial trial={trial} testId="trial" />}
      <div class="row">
        <Button
          tone="act"
          large
          testId="teach-approve"
          disabledReason={missing(taught, now, words) ?? (trial === null ? words.trying : null)}
          onPress={() => {
            if (taught.is === 'rule') setApproving(taught.rule);
          }}
        >
          {words.approve}
        </Button>
        <Button large onPress={() => (teaching.value = null)} testId="teach-cancel">
          {shell.cancel}
        </Button>
      </div>
      {approving && (
        <ApproveDialog
          rules={[approving]}
          title={words.approveTitle(approving.rule)}
          onApproved={() => {
            app.notice.value = { tone: 'go', text: words.approved(approving.rule) };
            teaching.value = null;
          }}
          onClose={() => setApproving(null)}
        />
      )}
    </>
  );
}

function missing(taught: Taught, { name }: Teaching, words: Words<'teach'>) {
  if (taught.is === 'missing')
    return taught.code === 'does-not-read' ? words.doesNotRead : words.problems[taught.code];
  return name.trim() === '' ? words.nameMissing : null;
}

/** Says where a label needs no teaching. */
function AlreadyRead({ codes }: { readonly codes: readonly string[] }) {
  const floor = useFloor();
  const words = say(teachWords);
  if (codes.length === 0) return null;
  const reading = parseLabel(codes, { rules: siteRules(floor) });
  if ((reading.part ?? reading.supplierPart) === null) return null;
  const [rule] = reading.rules;
  return (
    <div class="told stack">
      <b>{rule === undefined ? words.alreadyRead : words.readBy(rule)}</b>
      <Reading reading={reading} />
    </div>
  );
}

/** Typing stands in for a scanner that is not at hand. */
function TypeCode({ onTyped }: { readonly onTyped: (text: string) => void }) {
  const words = say(teachWords);
  const shell = say(shellWords);
  const [text, setText] = useState('');
  return (
    <div class="type-code">
      <Field
        more="grow"
        label={words.addTyped}
        testId="teach-typed"
        isCode
        autocomplete="off"
        autocapitalize="off"
        spellcheck={false}
        value={text}
        onInput={setText}
      />
      <Button
        disabledReason={null}
        testId="teach-typed-add"
        onPress={() => {
          onTyped(text);
          setText('');
        }}
      >
        {shell.done}
      </Button>
    </div>
  );
}

function RuleForm(props: {
  readonly teaching: Teaching;
  readonly taught: Taught;
  readonly known: LabelRule | null;
  readonly onChange: (part: Partial<Teaching>) => void;
}) {
  const { teaching: now, taught, known, onChange } = props;
  const words = say(teachWords);
  const dated = (['dateCode', 'expires'] as const).filter((field) =>
    now.taps.some((tap) => tap.field === field),
  );
  return (
    <section class="card stack">
      <h2>{words.ruleTitle}</h2>
      <div class="form">
        <Field
          label={words.name}
          testId="teach-name"
          autocomplete="off"
          maxLength={64}
          value={now.name}
          onInput={(text) => onChange({ name: text })}
          help={known ? words.replaces(known.version) : words.nameHelp}
        />
        {dated.map((field) => (
          <SelectField
            key={field}
            label={words.datePrinted(words.fields[field])}
            testId={`teach-${field}`}
            value={now.dates[field] ?? ''}
            onChoose={(chosen) => {
              const format = dateFormats.find((each) => each === chosen);
              const { [field]: _, ...others } = now.dates;
              onChange({ dates: format === undefined ? others : { ...others, [field]: format } });
            }}
          >
            <option value="">{words.asPrinted}</option>
            {dateFormats.map((format) => (
              <option key={format} value={format}>
                {format}
              </option>
            ))}
          </SelectField>
        ))}
      </div>
      {taught.is === 'rule' && (
        <>
          <h3>{words.reads}</h3>
          <Reading reading={taught.reading} testId="teach-reading" />
          <h3>{words.pattern}</h3>
          {taught.rule.codes.map((pattern, index) => (
            <Pattern key={`${index}`} pattern={pattern} />
          ))}
          {taught.rule.codes.length > 1 && <p class="soft">{words.needsAll(taught.rule.codes.length)}</p>}
          <Varied labels={taught.varied} />
          {taught.lostExamples > 0 && <p class="warned">△ {words.lostExamples(taught.lostExamples)}</p>}
        </>
      )}
    </section>
  );
}
