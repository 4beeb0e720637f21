// The count of panels set right by hand.

import { useState } from 'preact/hooks';
import type { Run } from '../../../../shared/floor/state.ts';
import { useApp } from '../../app.ts';
import { AskFeet } from '../../ui/Ask.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { Field } from '../../ui/Field.tsx';
import { lineWords } from '../../words/line.ts';
import { runWords } from '../../words/run.ts';
import { formatCount, say } from '../../words/words.ts';

/** Panels = N, because. */
export function SetRightDialog({ run, onClose }: { readonly run: Run; readonly onClose: () => void }) {
  const app = useApp();
  const words = say(runWords);
  const [typed, setTyped] = useState('');
  const [reason, setReason] = useState('');
  const panels = /^\d{1,7}$/.test(typed.trim()) ? Number(typed.trim()) : null;
  const isReady = panels !== null && panels !== run.done && reason.trim() !== '';
  return (
    <Dialog title={words.setRightTitle} onClose={onClose}>
      <div class="stack">
        <p>{words.setRightHelp}</p>
        <Field
          label={say(lineWords).panels(formatCount(run.done), run.panelsWanted)}
          value={typed}
          onInput={setTyped}
          inputMode="numeric"
          testId="right-panels"
        />
        <Field
          label={words.setRightWhy}
          value={reason}
          onInput={setReason}
          maxLength={200}
          testId="right-reason"
        />
        <AskFeet
          testId="right-yes"
          disabledReason={isReady ? null : words.setRightMissing}
          onYes={() => {
            if (panels === null) return;
            const payload = { run: run.run, line: run.line, panels, reason: reason.trim() };
            app.record([{ kind: 'panels.corrected', payload }]);
            onClose();
          }}
          onNo={onClose}
        >
          {words.setRightYes(panels === null ? '…' : formatCount(panels))}
        </AskFeet>
      </div>
    </Dialog>
  );
}
