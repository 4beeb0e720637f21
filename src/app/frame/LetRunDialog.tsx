// A lead lets one blocked reel run on where it stands: badge and PIN first, then the reason.

import { useState } from 'preact/hooks';
import type { BlockedTape } from '../../../shared/floor/blocks.ts';
import type { Person } from '../../../shared/floor/state.ts';
import { useApp } from '../app.ts';
import { Button } from '../ui/Button.tsx';
import { Dialog } from '../ui/Dialog.tsx';
import { peopleWords } from '../words/people.ts';
import { shellWords } from '../words/shell.ts';
import { warningWords } from '../words/warning.ts';
import { say } from '../words/words.ts';
import { type Confirmed, ConfirmPerson } from './ConfirmPerson.tsx';

export function LetRunDialog({ of, onClose }: { readonly of: BlockedTape; readonly onClose: () => void }) {
  const app = useApp();
  const words = say(warningWords);
  const [lead, setLead] = useState<{ person: Person; checked: Confirmed['checked'] } | null>(null);
  const [reason, setReason] = useState('');
  const { line, slot, block, tape } = of;

  function letRun(): void {
    if (!lead) return;
    const facts = { block: block.block, line, slot, of: tape.entry, reason: reason.trim() };
    app
      .write([
        { kind: 'blocked.let-run', payload: { ...facts, by: lead.person.person, checked: lead.checked } },
      ])
      .then(
        () => {
          app.notice.value = { tone: 'care', text: words.letRunDone(slot) };
        },
        () => undefined, // shown by the fault screen
      );
    onClose();
  }

  return (
    <Dialog title={words.letRunTitle(slot)} onClose={onClose} tone="stop">
      <div class="stack">
        <p>
          {words.blockedTape(block.reason)}. {words.letRunHelp}
        </p>
        {!lead && (
          <>
            <p class="soft">{say(peopleWords).clearHelp}</p>
            <ConfirmPerson
              needs="lead"
              badgeSuffices={false}
              onConfirmed={(person, { checked }) => setLead({ person, checked })}
            />
          </>
        )}
        {lead && (
          <>
            <label class="field">
              <span>{words.letRunWhy}</span>
              <input
                data-typing
                data-testid="let-run-reason"
                maxLength={200}
                value={reason}
                onInput={(event) => setReason(event.currentTarget.value)}
              />
            </label>
            <Button
              tone="act"
              large
              testId="let-run-yes"
              disabledReason={reason.trim() === '' ? words.letRunWhy : null}
              onPress={letRun}
            >
              {words.letRun}
            </Button>
          </>
        )}
        <Button large onPress={onClose}>
          {say(shellWords).cancel}
        </Button>
      </div>
    </Dialog>
  );
}
