// What tablets that were apart disagree about: a lead looks at the machine and says what is true.

import { useState } from 'preact/hooks';
import { type Conflict, slotKey } from '../../../../shared/setup/state.ts';
import { useApp, useFloor } from '../../app.ts';
import { useRefusal } from '../../may.ts';
import { Button } from '../../ui/Button.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { shellWords } from '../../words/shell.ts';
import { traceWords } from '../../words/trace.ts';
import { formatDay, say } from '../../words/words.ts';

export function Conflicts() {
  const floor = useFloor();
  const words = say(traceWords);
  const refusal = useRefusal('settle-conflict');
  const [shown, setShown] = useState<Conflict | null>(null);
  const conflicts = [...floor.conflicts.values()].sort((a, b) => b.atMs - a.atMs);
  if (conflicts.length === 0) return <p class="empty">✓ {words.noConflicts}</p>;
  return (
    <div data-testid="conflicts">
      {conflicts.map((conflict) => (
        <div class="traced row" key={conflict.conflict}>
          <span class="grow">
            <b>{words.conflictKinds[conflict.kind](conflict.slots.join(', '))}</b>
            <br />
            <span class="soft">
              {formatDay(conflict.atMs, floor.lines.get(conflict.line)?.zone ?? 'UTC')}
            </span>
          </span>
          <Button disabledReason={refusal} onPress={() => setShown(conflict)} testId="settle">
            {words.settle}
          </Button>
        </div>
      ))}
      {shown && <SettleDialog conflict={shown} onClose={() => setShown(null)} />}
    </div>
  );
}

function SettleDialog({ conflict, onClose }: { readonly conflict: Conflict; readonly onClose: () => void }) {
  const app = useApp();
  const floor = useFloor();
  const words = say(traceWords);
  const [reason, setReason] = useState('');
  const zone = floor.lines.get(conflict.line)?.zone ?? 'UTC';
  const now = conflict.slots
    .map((slot) => floor.slots.get(slotKey(conflict.line, slot)))
    .filter((slot) => slot !== undefined);
  const choices = conflict.choices.length > 0 ? conflict.choices : now;

  function settle(keep: string | null): void {
    const payload = {
      ...{ conflict: conflict.conflict, line: conflict.line, slot: conflict.slots[0] ?? null, keep },
      ...{ reason: reason.trim(), by: app.person.value?.person ?? '' },
    };
    app.write([{ kind: 'conflict.settled', payload }]).then(
      () => {
        app.notice.value = { tone: 'go', text: words.settled };
        onClose();
      },
      () => undefined, // shown by the fault screen
    );
  }

  const missing = reason.trim() === '' ? words.reason : null;
  return (
    <Dialog title={words.settleTitle} onClose={onClose} tone="care">
      <div class="stack">
        <p>{words.settleHelp}</p>
        <label class="field">
          <span>{words.reason}</span>
          <input
            data-typing
            data-testid="settle-reason"
            maxLength={200}
            value={reason}
            onInput={(event) => setReason(event.currentTarget.value)}
          />
        </label>
        {choices.map((choice) => {
          const tape = choice.tapes.at(-1);
          const what = [tape?.part, tape?.lot, tape?.reel.startsWith('~') ? null : tape?.reel]
            .filter(Boolean)
            .join(' · ');
          return (
            <Button key={choice.entry} large disabledReason={missing} onPress={() => settle(choice.entry)}>
              {words.keep(choice.slot, what, formatDay(choice.atMs, zone))}
            </Button>
          );
        })}
        <Button large disabledReason={missing} onPress={() => settle(null)}>
          {words.neither}
        </Button>
        <Button large tone="quiet" onPress={onClose}>
          {say(shellWords).cancel}
        </Button>
      </div>
    </Dialog>
  );
}
