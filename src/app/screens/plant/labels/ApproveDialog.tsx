// A lead says so, with badge and PIN; then every tablet reads by these rules.

import type { ComponentChildren } from 'preact';
import type { LabelRule } from '../../../../../shared/labels/rules.ts';
import { useApp, useFloor } from '../../../app.ts';
import { ConfirmPerson } from '../../../frame/ConfirmPerson.tsx';
import { Button } from '../../../ui/Button.tsx';
import { Dialog } from '../../../ui/Dialog.tsx';
import { shellWords } from '../../../words/shell.ts';
import { teachWords } from '../../../words/teach.ts';
import { say } from '../../../words/words.ts';

interface ApproveDialogProps {
  readonly rules: readonly LabelRule[];
  readonly title: string;
  readonly onApproved: () => void;
  readonly onClose: () => void;
  /** What the approval is about to do, shown above it. */
  readonly children?: ComponentChildren;
}

export function ApproveDialog({ rules, title, onApproved, onClose, children }: ApproveDialogProps) {
  const app = useApp();
  const floor = useFloor();
  const words = say(teachWords);
  const shell = say(shellWords);
  function approve(by: string | null): void {
    app.record(
      rules.map((rule) => ({
        kind: 'label.taught',
        payload: { rule: rule.rule, version: rule.version, definition: rule, by },
      })),
      { next: onApproved },
    );
  }
  return (
    <Dialog title={title} onClose={onClose}>
      <div class="stack">
        {children}
        <p>{words.approveHelp}</p>
        {floor.people.size > 0 ? (
          <ConfirmPerson needs="lead" badgeSuffices={false} onConfirmed={({ person }) => approve(person)} />
        ) : (
          <Button tone="act" large onPress={() => approve(null)}>
            {words.approve}
          </Button>
        )}
      </div>
      <div class="acts">
        <Button onPress={onClose}>{shell.cancel}</Button>
      </div>
    </Dialog>
  );
}
