// Labels that follow no standard: the rules that were taught, what they read, and what a scan reads now.

import { useLayoutEffect, useState } from 'preact/hooks';
import { siteRules } from '../../../../../shared/floor/fold-labels.ts';
import { holdsBadge } from '../../../../../shared/floor/recognise.ts';
import type { TaughtRule } from '../../../../../shared/floor/taught-rule.ts';
import { parseLabel } from '../../../../../shared/labels/label.ts';
import type { LabelRule } from '../../../../../shared/labels/rules.ts';
import { failedExamples } from '../../../../../shared/labels/teach.ts';
import { useApp, useFloor } from '../../../app.ts';
import { saveFile } from '../../../device/save-file.ts';
import { useRefusal } from '../../../may.ts';
import { AskFeet } from '../../../ui/Ask.tsx';
import { Button } from '../../../ui/Button.tsx';
import { Dialog } from '../../../ui/Dialog.tsx';
import { Icon } from '../../../ui/Icon.tsx';
import { visible } from '../../../ui/visible.ts';
import { teachWords } from '../../../words/teach.ts';
import { formatDay, say } from '../../../words/words.ts';
import { Import, ImportButton } from './Import.tsx';
import type { RulesImport } from './import.ts';
import { rulesDocument } from './model.ts';
import { Pattern, Reading } from './parts.tsx';
import { addCodes, firstTeaching, spoilingKeyboard, teaching } from './session.ts';
import { Teach } from './Teach.tsx';
import './labels.css';
import { Field } from '../../../ui/Field.tsx';

const fileName = 'reelward-label-rules.json';

export function Labels() {
  const app = useApp();
  const isTeaching = teaching.value !== null;
  useLayoutEffect(() => {
    const unread = app.unreadLabel.peek();
    if (unread !== null && teaching.value !== null) teaching.value = addCodes(teaching.value, unread);
    app.unreadLabel.value = null;
  }, []);
  return <div class="stack labels">{isTeaching ? <Teach /> : <RuleList />}</div>;
}

function RuleList() {
  const app = useApp();
  const floor = useFloor();
  const words = say(teachWords);
  // A label that the line could not read comes along; it is taken over once.
  const [scanned, setScanned] = useState(app.unreadLabel.peek());
  const [imported, setImported] = useState<RulesImport | null>(null);
  const [leaving, setLeaving] = useState<string | null>(null);
  useLayoutEffect(
    () =>
      app.scans.take((scan) => {
        const codes = scan.codes.map(({ text }) => text);
        if (holdsBadge(app.store.floor(), app.line.value, codes)) return false;
        setScanned(codes);
        return true;
      }),
    [],
  );
  const rules = siteRules(floor);
  return (
    <>
      <div class="row">
        <Button tone="act" large testId="teach" onPress={() => (teaching.value = firstTeaching)}>
          {words.teach}
        </Button>
        <span class="soft grow">{words.listHelp}</span>
        <ImportButton known={rules} onRead={setImported} />
        {rules.length > 0 && (
          <Button
            testId="rules-export"
            onPress={() => {
              saveFile(fileName, new Blob([rulesDocument(rules)], { type: 'application/json' }));
              app.notice.value = { tone: 'go', text: words.exported(fileName) };
            }}
          >
            <Icon name="save" size={20} /> {words.export}
          </Button>
        )}
      </div>
      {imported && <Import read={imported} onClose={() => setImported(null)} />}
      {scanned && <Scanned codes={scanned} rules={rules} onClear={() => setScanned(null)} />}
      {rules.length === 0 && !scanned && (
        <p class="empty">
          <b>{words.none}</b>
          {words.noneHelp}
        </p>
      )}
      {[...floor.labelRules.values()].map((taught) => (
        <RuleCard key={taught.rule.rule} taught={taught} onLeave={() => setLeaving(taught.rule.rule)} />
      ))}
      {leaving !== null && <WithdrawDialog rule={leaving} onClose={() => setLeaving(null)} />}
    </>
  );
}

/** A label scanned on this page: what it reads now, and the way to teach it. */
function Scanned(props: {
  readonly codes: readonly string[];
  readonly rules: readonly LabelRule[];
  readonly onClear: () => void;
}) {
  const words = say(teachWords);
  const reading = parseLabel(props.codes, { rules: props.rules });
  const [rule] = reading.rules;
  const isRead = reading.fields.length > 0 && (reading.part ?? reading.supplierPart ?? reading.reel) !== null;
  return (
    <section class="card stack" data-testid="scanned">
      <div class="row">
        <h2 class="grow">{words.scanned}</h2>
        <span class={`chip ${isRead ? 'go' : 'care'}`}>
          {isRead
            ? `✓ ${rule === undefined ? words.readByStandard : words.readBy(rule)}`
            : `△ ${words.notRead}`}
        </span>
      </div>
      {props.codes.map((code) => (
        <p key={code} class="code whole-code" translate={false}>
          {visible(code)}
        </p>
      ))}
      <Reading reading={reading} />
      <div class="row">
        {!isRead && spoilingKeyboard(props.codes) === null && (
          <Button
            tone="act"
            large
            testId="teach-scanned"
            onPress={() => (teaching.value = addCodes(firstTeaching, props.codes))}
          >
            {words.teachThis}
          </Button>
        )}
        <Button onPress={props.onClear}>{words.lookAgain}</Button>
      </div>
    </section>
  );
}

function RuleCard({ taught, onLeave }: { readonly taught: TaughtRule; readonly onLeave: () => void }) {
  const app = useApp();
  const floor = useFloor();
  const words = say(teachWords);
  const refusal = useRefusal('teach-label');
  const { rule, by, atMs } = taught;
  const zone = floor.lines.get(app.line.value ?? '')?.zone ?? 'UTC';
  const failed = failedExamples(rule).length;
  const count = rule.examples?.length ?? 0;
  return (
    <section class="card stack" data-testid={`rule-${rule.rule}`}>
      <div class="row">
        <div class="grow">
          <h2 translate={false}>{rule.rule}</h2>
          <span class="soft">
            {words.version(rule.version)}
            {by !== null && ` · ${words.approvedBy(floor.people.get(by)?.name ?? by, formatDay(atMs, zone))}`}
          </span>
        </div>
        {count > 0 && (
          <span class={`chip ${failed === 0 ? 'go' : 'stop'}`}>
            {failed === 0 ? `✓ ${words.examples(count)}` : `✕ ${words.examplesFail(failed, count)}`}
          </span>
        )}
      </div>
      {rule.codes.map((pattern, index) => (
        <Pattern key={`${index}`} pattern={pattern} />
      ))}
      {rule.codes.length > 1 && <p class="soft">{words.needsAll(rule.codes.length)}</p>}
      <div class="row">
        <Button onPress={() => (teaching.value = { ...firstTeaching, name: rule.rule })}>
          {words.again}
        </Button>
        <Button tone="stop" disabledReason={refusal} testId={`withdraw-${rule.rule}`} onPress={onLeave}>
          {words.withdraw}
        </Button>
      </div>
    </section>
  );
}

function WithdrawDialog({ rule, onClose }: { readonly rule: string; readonly onClose: () => void }) {
  const app = useApp();
  const words = say(teachWords);
  const [reason, setReason] = useState('');
  return (
    <Dialog title={words.withdrawTitle(rule)} onClose={onClose}>
      <Field
        label={words.withdrawWhy}
        testId="withdraw-why"
        maxLength={200}
        value={reason}
        onInput={setReason}
      />
      <AskFeet
        tone="stop"
        testId="withdraw-yes"
        disabledReason={reason.trim() === '' ? words.withdrawWhy : null}
        onYes={() => {
          const by = app.person.value?.person ?? null;
          app.record([{ kind: 'label.withdrawn', payload: { rule, reason: reason.trim(), by } }], {
            notice: { tone: 'plain', text: words.withdrawn(rule) },
            next: onClose,
          });
        }}
        onNo={onClose}
      >
        {words.withdraw}
      </AskFeet>
    </Dialog>
  );
}
