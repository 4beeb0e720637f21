// One question at a time: a code that two lists know, or a text on the label whose meaning is not certain.

import type { DeskQuestion } from '../../../shared/desk/model.ts';
import type { Recognised } from '../../../shared/floor/recognise.ts';
import type { FloorState } from '../../../shared/floor/state.ts';
import { useFloor } from '../app.ts';
import type { Answers } from '../desk/away.ts';
import { Button } from '../ui/Button.tsx';
import { Dialog } from '../ui/Dialog.tsx';
import { dockWords } from '../words/dock.ts';
import { refusalWords } from '../words/refusal.ts';
import { shellWords } from '../words/shell.ts';
import { formatCount, say } from '../words/words.ts';
import { ValueDialog, valueKey } from './ValueDialog.tsx';

/** The name of the line that a slot or a panel is on; null for what is on none. */
function lineOf(floor: FloorState, known: Recognised): string | null {
  const line =
    known.is === 'slot' ? known.line : known.is === 'panel' ? floor.runs.get(known.run)?.line : null;
  return line == null ? null : (floor.lines.get(line)?.name ?? line);
}

export function QuestionDialog({
  desk,
  question,
}: {
  readonly desk: Answers;
  readonly question: DeskQuestion;
}) {
  const words = say(dockWords);
  const shell = say(shellWords);
  const floor = useFloor();
  if (question.ask === 'value')
    return <ValueDialog key={valueKey(question)} desk={desk} question={question} />;
  if (question.ask === 'runs-here') {
    const { title, text, same, second } = say(refusalWords).runsHere;
    return (
      <Dialog title={title} onClose={() => desk.chooseRunsHere(false)} tone="care">
        <p data-testid="runs-here">{text(question.slot)}</p>
        <div class="acts">
          <Button tone="act" large testId="runs-here-same" onPress={() => desk.chooseRunsHere(false)}>
            {same}
          </Button>
          <Button large testId="runs-here-second" onPress={() => desk.chooseRunsHere(true)}>
            {second}
          </Button>
        </div>
      </Dialog>
    );
  }
  if (question.ask === 'came-before') {
    const { title, text, same, fresh } = say(refusalWords).cameBefore;
    const left = question.left === null ? null : formatCount(question.left);
    return (
      <Dialog title={title} onClose={desk.leaveQuestion} tone="care">
        <p data-testid="came-before">{text(question.lot, left)}</p>
        <div class="acts">
          <Button large testId="came-before-same" onPress={() => desk.chooseCameBefore(true)}>
            {same}
          </Button>
          <Button large testId="came-before-fresh" onPress={() => desk.chooseCameBefore(false)}>
            {fresh}
          </Button>
        </div>
      </Dialog>
    );
  }
  if (question.ask !== 'meaning') {
    // The same code on two lines is told apart by its line.
    const nameOf = (option: Recognised) => {
      const line = lineOf(floor, option);
      const isTwice = question.options.filter(({ is }) => is === option.is).length > 1;
      return isTwice && line !== null ? `${words.is[option.is]} · ${line}` : words.is[option.is];
    };
    const which = question.ask === 'which';
    return (
      <Dialog title={which ? words.whichTitle : words.meaningTitle} onClose={desk.leaveQuestion}>
        <p>{which ? words.whichText(question.text) : words.unlistedFeeder(question.text)}</p>
        <div class="acts">
          {question.options.map((option) => (
            <Button
              key={`${option.is} ${lineOf(floor, option) ?? ''}`}
              large
              testId={`which-${option.is}`}
              onPress={() => desk.chooseKnown(option)}
            >
              {nameOf(option)}
            </Button>
          ))}
          <Button large tone="quiet" onPress={desk.leaveQuestion}>
            {shell.cancel}
          </Button>
        </div>
      </Dialog>
    );
  }
  const { text, candidates } = question.question;
  return (
    <Dialog title={words.meaningTitle} onClose={desk.leaveQuestion}>
      <p>{words.meaningText(text)}</p>
      <div class="acts">
        {candidates.map((candidate) => (
          <Button
            key={`${candidate.field}${candidate.value}`}
            large
            onPress={() => desk.chooseMeaning(candidate.field, candidate.value)}
          >
            {candidate.field in words.fieldNames
              ? words.fieldNames[candidate.field as keyof typeof words.fieldNames] // just looked up
              : words.fieldNames.other}
            : <span class="code">{candidate.value}</span>
          </Button>
        ))}
        <Button large tone="quiet" onPress={desk.leaveQuestion}>
          {shell.cancel}
        </Button>
      </div>
    </Dialog>
  );
}
