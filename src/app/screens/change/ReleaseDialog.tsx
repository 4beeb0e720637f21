// The release: a lead with badge and PIN; whatever is still open is said, and then it takes a reason.

import { useState } from 'preact/hooks';
import { panelChecks } from '../../../../shared/changeover/first-panel.ts';
import type { Changeover, Person } from '../../../../shared/setup/state.ts';
import { useApp, useFloor } from '../../app.ts';
import { type Confirmed, ConfirmPerson } from '../../frame/ConfirmPerson.tsx';
import { goTo } from '../../router.ts';
import { Button } from '../../ui/Button.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { changeWords } from '../../words/change.ts';
import { shellWords } from '../../words/shell.ts';
import { say } from '../../words/words.ts';
import { checklistOf, standingOf, templateOf } from './checklist-desk.ts';
import { planChange } from './model.ts';

export function ReleaseDialog({
  changeover,
  onClose,
}: {
  readonly changeover: Changeover;
  readonly onClose: () => void;
}) {
  const app = useApp();
  const floor = useFloor();
  const words = say(changeWords);
  const [lead, setLead] = useState<{ person: Person; checked: Confirmed['checked'] } | null>(null);
  const [reason, setReason] = useState('');
  const setup = floor.setups.get(changeover.setup);
  const plan = setup ? planChange(floor, changeover.line, setup) : null;
  const handlings = plan?.fits ? plan.steps.steps.length : 0;
  const list = checklistOf(floor, changeover);
  const template = list ? templateOf(floor, list) : null;
  const steps = list && template ? standingOf(floor, list, template).missing.length : 0;
  const parts = setup
    ? panelChecks(setup, changeover).filter((check) => check.isCritical && check.state !== 'accepted').length
    : 0;
  const open = [
    handlings > 0 ? words.openHandlings(handlings) : null,
    steps > 0 ? words.openSteps(steps) : null,
    list === null ? words.openSteps(1) : null,
    parts > 0 ? words.openParts(parts) : null,
  ].filter((text) => text !== null);
  return (
    <Dialog title={words.releaseTitle} onClose={onClose} tone={open.length > 0 ? 'care' : 'plain'}>
      <div class="stack">
        {open.length > 0 && (
          <div data-testid="release-open">
            <b>{words.releaseMissing}</b>
            <ul>
              {open.map((text) => (
                <li key={text}>{text}</li>
              ))}
            </ul>
          </div>
        )}
        {lead === null ? (
          <ConfirmPerson
            needs="lead"
            badgeSuffices={false}
            onConfirmed={(person, { checked }) => setLead({ person, checked })}
          />
        ) : (
          <>
            {open.length > 0 && (
              <label class="field">
                <span>{words.releaseReason}</span>
                <input
                  data-typing
                  data-testid="release-reason"
                  maxLength={200}
                  value={reason}
                  onInput={(event) => setReason(event.currentTarget.value)}
                />
              </label>
            )}
            <Button
              tone="act"
              large
              testId="release-yes"
              disabledReason={open.length > 0 && reason.trim() === '' ? words.releaseReason : null}
              onPress={() => {
                const { changeover: name, line } = changeover;
                const payload = {
                  changeover: name,
                  line,
                  by: lead.person.person,
                  reason: reason.trim(),
                  checked: lead.checked,
                };
                app.write([{ kind: 'changeover.released', payload }]).then(
                  () => {
                    app.notice.value = { tone: 'go', text: words.released };
                    goTo('line');
                  },
                  () => undefined, // shown by the fault screen
                );
              }}
            >
              {words.release}
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
