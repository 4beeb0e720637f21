// Rules out of a file: what is new, what stays as it is and why, what the log says to each, and a lead's word to take them in.

import { useMemo, useState } from 'preact/hooks';
import { siteRules } from '../../../../../shared/floor/fold-labels.ts';
import type { LabelRule } from '../../../../../shared/labels/rules.ts';
import { useApp, useFloor } from '../../../app.ts';
import { Button } from '../../../ui/Button.tsx';
import { FileButton } from '../../../ui/FileButton.tsx';
import { shellWords } from '../../../words/shell.ts';
import { teachWords } from '../../../words/teach.ts';
import { say } from '../../../words/words.ts';
import { ApproveDialog } from './ApproveDialog.tsx';
import {
  type ImportedRule,
  type ImportProblem,
  type ImportStatus,
  type RulesImport,
  readRulesFile,
  rulesToTake,
} from './import.ts';
import { Pattern } from './parts.tsx';
import { Trial, TrialOutcome, useLogLabels, useTrials } from './Trial.tsx';

export function ImportButton(props: {
  readonly known: readonly LabelRule[];
  readonly onRead: (read: RulesImport) => void;
}) {
  const words = say(teachWords);
  return (
    <FileButton
      icon="search"
      tone="plain"
      accept=".json,application/json"
      testId="rules-import"
      onFile={(file) => {
        const unreadable: RulesImport = { ok: false, problem: { code: 'not-json' } };
        file.text().then(
          (text) => props.onRead(readRulesFile(text, props.known)),
          () => props.onRead(unreadable),
        );
      }}
    >
      {words.import}
    </FileButton>
  );
}

const tones = {
  new: 'go',
  newer: 'go',
  same: 'plain',
  older: 'care',
  differs: 'care',
  fails: 'stop',
} as const satisfies Readonly<Record<ImportStatus, string>>;

export function Import({ read, onClose }: { readonly read: RulesImport; readonly onClose: () => void }) {
  const words = say(teachWords);
  const shell = say(shellWords);
  if (read.ok) return <ImportRules rules={read.rules} onClose={onClose} />;
  return (
    <section class="card stack" role="alert" data-testid="import-problem">
      <h2>{words.importFailed}</h2>
      <p>✕ {sayProblem(read.problem)}</p>
      <p class="soft">{words.importAgain}</p>
      <div class="row">
        <Button onPress={onClose}>{shell.cancel}</Button>
      </div>
    </section>
  );
}

/** The rules of a file, each tried on the log before anybody can approve it. */
function ImportRules(props: { readonly rules: readonly ImportedRule[]; readonly onClose: () => void }) {
  const { rules, onClose } = props;
  const app = useApp();
  const floor = useFloor();
  const words = say(teachWords);
  const shell = say(shellWords);
  const [approving, setApproving] = useState(false);
  const labels = useLogLabels();
  const taken = useMemo(() => rulesToTake(rules), [rules]);
  const names = new Set(taken.map(({ rule }) => rule));
  // The rules as they will stand afterwards.
  const all = [...siteRules(floor).filter(({ rule }) => !names.has(rule)), ...taken];
  const trials = useTrials(taken, all, labels);
  const waiting = trials === null ? words.trying : null;
  return (
    <section class="card stack" data-testid="import">
      <h2>{words.importTitle}</h2>
      {rules.map(({ rule, status, knownVersion }) => (
        <div key={rule.rule} class="stack" data-testid={`import-${rule.rule}`} data-status={status}>
          <div class="row">
            <h3 class="grow" translate={false}>
              {rule.rule}
            </h3>
            <span class={`chip ${tones[status]}`}>
              {words.importStatus[status](rule.version, knownVersion ?? 0)}
            </span>
          </div>
          {taken.includes(rule) && (
            <>
              {rule.codes.map((pattern, index) => (
                <Pattern key={`${index}`} pattern={pattern} />
              ))}
              <Trial trial={trials?.get(rule.rule) ?? null} testId={`import-trial-${rule.rule}`} />
            </>
          )}
        </div>
      ))}
      <div class="row">
        <Button
          tone="act"
          large
          testId="import-take"
          disabledReason={taken.length === 0 ? words.importNothing : waiting}
          onPress={() => setApproving(true)}
        >
          {words.importTake(taken.length)}
        </Button>
        <Button onPress={onClose}>{shell.cancel}</Button>
      </div>
      {approving && (
        <ApproveDialog
          rules={taken}
          title={words.importTake(taken.length)}
          onApproved={() => {
            app.notice.value = { tone: 'go', text: words.imported(taken.length) };
            onClose();
          }}
          onClose={() => setApproving(false)}
        >
          {[...(trials ?? [])].map(([rule, trial]) => (
            <div key={rule} data-testid={`approve-trial-${rule}`}>
              <b translate={false}>{rule}</b>
              <TrialOutcome trial={trial} />
            </div>
          ))}
        </ApproveDialog>
      )}
    </section>
  );
}

function sayProblem(problem: ImportProblem): string {
  const { importProblems } = say(teachWords);
  switch (problem.code) {
    case 'not-a-rule':
      return importProblems['not-a-rule'](problem.rule, problem.at);
    case 'twice':
      return importProblems.twice(problem.rule);
    default:
      return importProblems[problem.code];
  }
}
