// The release: a lead with badge and PIN. All that is open or wrong is said by name; then it takes a reason, and the log keeps both.

import { useState } from 'preact/hooks';
import { isWrong } from '../../../../shared/changeover/open-work.ts';
import type { Changeover } from '../../../../shared/floor/state.ts';
import { useApp, useFloor } from '../../app.ts';
import { type Confirmed, ConfirmPerson } from '../../frame/ConfirmPerson.tsx';
import { useConfirmed } from '../../frame/confirmed.ts';
import { goTo } from '../../router.ts';
import { Button } from '../../ui/Button.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { changeWords } from '../../words/change.ts';
import { openWorkWords } from '../../words/open-work.ts';
import { shellWords } from '../../words/shell.ts';
import { say } from '../../words/words.ts';
import { changeWork, checklistOf, templateOf } from './checklist-desk.ts';
import { OpenList } from './OpenList.tsx';

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
  const opens = say(openWorkWords);
  const [lead, setLead] = useConfirmed();
  const [reason, setReason] = useState('');
  const list = checklistOf(floor, changeover);
  const template = list ? templateOf(floor, list) : null;
  const open = changeWork(floor, changeover);
  const groups = [
    { title: opens.isWrong, items: open.filter(isWrong), testId: 'release-wrong' },
    { title: opens.isOpen, items: open.filter((item) => !isWrong(item)), testId: 'release-open' },
  ].filter(({ items }) => items.length > 0);
  const release = (by: string, checked: Confirmed['checked']) => {
    const { changeover: name, line } = changeover;
    const payload = { changeover: name, line, by, reason: reason.trim(), checked };
    const left = open.map((item) => ({ ...item }));
    app
      .write([
        ...(left.length > 0
          ? [{ kind: 'changeover.left-open' as const, payload: { changeover: name, line, by, left } }]
          : []),
        { kind: 'changeover.released', payload },
      ])
      .then(
        () => {
          app.notice.value = { tone: 'go', text: words.released };
          goTo('line');
        },
        () => undefined, // shown by the fault screen
      );
  };
  return (
    <Dialog title={words.releaseTitle} onClose={onClose} tone={open.length > 0 ? 'care' : 'plain'}>
      <div class="stack">
        {groups.map(({ title, items, testId }) => (
          <section key={testId} data-testid={testId}>
            <h3>{title}</h3>
            <OpenList items={items} template={template} />
          </section>
        ))}
        {open.length === 0 && <p class="chip go">✓ {opens.nothing}</p>}
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
              onPress={() => release(lead.person.person, lead.checked)}
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
