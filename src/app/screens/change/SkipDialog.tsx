// A mandatory step is skipped only by a lead: badge, PIN and a reason.

import { useState } from 'preact/hooks';
import type { Checklist } from '../../../../shared/floor/state.ts';
import { useApp } from '../../app.ts';
import { ConfirmPerson } from '../../frame/ConfirmPerson.tsx';
import { useConfirmed } from '../../frame/confirmed.ts';
import { Button } from '../../ui/Button.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { checklistWords } from '../../words/checklist.ts';
import { shellWords } from '../../words/shell.ts';
import { say } from '../../words/words.ts';

interface SkipDialogProps {
  readonly list: Checklist;
  readonly step: string;
  readonly onClose: () => void;
}

export function SkipDialog({ list, step, onClose }: SkipDialogProps) {
  const app = useApp();
  const words = say(checklistWords);
  const [lead, setLead] = useConfirmed();
  const [reason, setReason] = useState('');
  return (
    <Dialog title={words.skipTitle} onClose={onClose} tone="care">
      {lead === null ? (
        <ConfirmPerson
          needs="lead"
          badgeSuffices={false}
          onConfirmed={(person, { checked }) => setLead({ person, checked })}
        />
      ) : (
        <label class="field">
          <span>{words.skipReason}</span>
          <input
            data-typing
            data-testid="skip-reason"
            maxLength={200}
            value={reason}
            onInput={(event) => setReason(event.currentTarget.value)}
          />
        </label>
      )}
      <div class="acts">
        {lead !== null && (
          <Button
            tone="act"
            large
            testId="skip-yes"
            disabledReason={reason.trim() === '' ? words.skipReason : null}
            onPress={() => {
              const { checklist, line } = list;
              const payload = {
                checklist,
                line,
                step,
                by: lead.person.person,
                reason: reason.trim(),
                checked: lead.checked,
              };
              app.write([{ kind: 'step.skipped', payload }]).then(onClose, () => undefined); // shown by the fault screen
            }}
          >
            {words.skip}
          </Button>
        )}
        <Button large onPress={onClose}>
          {say(shellWords).cancel}
        </Button>
      </div>
    </Dialog>
  );
}
