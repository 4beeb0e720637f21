import { shellWords } from '../words/shell.ts';
import { say } from '../words/words.ts';
import { Button, type ButtonProps } from './Button.tsx';

/** The feet of a question: the act it asks for, and the way back. */
export interface AskFeetProps extends Pick<ButtonProps, 'children' | 'testId' | 'disabledReason'> {
  readonly tone?: 'act' | 'stop';
  readonly onYes: () => void;
  readonly onNo: () => void;
  /** What the way back says; for an act that is itself a cancelling, what stays. Absent: cancel. */
  readonly no?: string;
}

export function AskFeet({ tone = 'act', onYes, onNo, no, ...act }: AskFeetProps) {
  return (
    <div class="acts">
      <Button tone={tone} large onPress={onYes} {...act} />
      <Button large onPress={onNo}>
        {no ?? say(shellWords).cancel}
      </Button>
    </div>
  );
}
