// What does not add up, by row and column, before anything is taken in. Errors first; problems of one kind together.

import { useState } from 'preact/hooks';
import type { SheetSeverity } from '../../../../../shared/sheet/problem-kind.ts';
import type { SheetSummary } from '../../../../worker/sheet-protocol.ts';
import { Button } from '../../../ui/Button.tsx';
import { sheetWords } from '../../../words/sheet.ts';
import { sheetProblemWords } from '../../../words/sheet-problems.ts';
import { say } from '../../../words/words.ts';
import { groupProblems, listProblems, type ProblemGroup } from './model.ts';

/** Of a kind with many, so many are shown at first. */
const FIRST = 3;

interface ProblemsProps {
  readonly summary: Pick<SheetSummary, 'problems'>;
  /** How errors are put right. */
  readonly help: string;
}

export function Problems({ summary, help }: ProblemsProps) {
  const words = say(sheetWords);
  const [only, setOnly] = useState<SheetSeverity | null>(null);
  const listed = listProblems(summary.problems);
  const count = (severity: SheetSeverity) => listed.filter((each) => each.severity === severity).length;
  const errors = count('error');
  const warnings = count('warning');
  const groups = groupProblems(listed.filter(({ severity }) => only === null || severity === only));
  const choices = [
    { key: null, text: words.all },
    { key: 'error', text: `✕ ${words.errors(errors)}` },
    { key: 'warning', text: `△ ${words.warnings(warnings)}` },
  ] as const;
  return (
    <section class="card stack" data-testid="problems">
      <div class="row">
        <h2>{words.problemsTitle}</h2>
        {listed.length === 0 && <span class="chip go">✓ {words.noProblems}</span>}
        {errors > 0 && warnings === 0 && (
          <span class="chip stop" data-testid="error-count">
            ✕ {words.errors(errors)}
          </span>
        )}
        {warnings > 0 && errors === 0 && <span class="chip care">△ {words.warnings(warnings)}</span>}
      </div>
      {errors > 0 && <p>{help}</p>}
      {errors > 0 && warnings > 0 && (
        <div class="choice">
          {choices.map(({ key, text }) => (
            <button type="button" key={text} aria-pressed={only === key} onClick={() => setOnly(key)}>
              {text}
            </button>
          ))}
        </div>
      )}
      {groups.length > 0 && (
        <div class="problems">
          {groups.map((group) => (
            <Group key={`${group.role}${group.code}`} group={group} />
          ))}
        </div>
      )}
    </section>
  );
}

function Group({ group }: { readonly group: ProblemGroup }) {
  const words = say(sheetWords);
  const sentences = say(sheetProblemWords);
  const [opened, setOpened] = useState(false);
  const hidden = group.problems.length - FIRST;
  const shown = opened || hidden <= 1 ? group.problems : group.problems.slice(0, FIRST);
  return (
    <>
      {shown.map((problem, index) => (
        <div class={`problem ${problem.severity}`} key={`${problem.row}${problem.column}${index}`}>
          <b>
            {problem.severity === 'error' ? '✕' : '△'} {words[problem.severity]}
          </b>
          <span class="where">
            {problem.row !== null && (
              <span>
                {words.row} {problem.row}
              </span>
            )}
            {problem.column !== null && <span translate={false}>{problem.column}</span>}
            {problem.role !== 'sheet' && (
              <span>{problem.role === 'bill' ? words.inBill : words.inPlacements}</span>
            )}
          </span>
          <span class="sentence">{sentences.say(problem)}</span>
        </div>
      ))}
      {hidden > 1 && (
        <Button onPress={() => setOpened(!opened)}>{opened ? words.fewer : words.more(hidden)}</Button>
      )}
    </>
  );
}
