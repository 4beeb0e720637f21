// Who counts the run's panels, where it is not a person alone; and setting the number itself right.

import { useState } from 'preact/hooks';
import type { CountedBy } from '../../../../shared/floor/counters.ts';
import type { Run } from '../../../../shared/floor/state.ts';
import { useApp, useFloor } from '../../app.ts';
import { stationName } from '../../station-name.ts';
import { AskFeet } from '../../ui/Ask.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { Field } from '../../ui/Field.tsx';
import { Icon } from '../../ui/Icon.tsx';
import { lineWords } from '../../words/line.ts';
import { formatCount, formatTime, say } from '../../words/words.ts';

/** The line says who counts: the machine, or people in its place. Nothing where people count by the line's rules. */
export function ByStation({ counted, zone }: { readonly counted: CountedBy; readonly zone: string }) {
  const floor = useFloor();
  const words = say(lineWords);
  if (counted.by === 'hand') return null;
  const { beside } = counted.counter;
  if (counted.by === 'silent') {
    return (
      <span class="chip care" data-testid="counted-by" data-by="silent">
        <Icon name="warn" size={18} /> {words.countedByHand},{' '}
        {words.machineUntil(formatTime(counted.sinceMs, zone))}
      </span>
    );
  }
  return (
    <>
      <span class="chip go" data-testid="counted-by" data-by="station">
        <Icon name="check" size={18} /> {words.countedByStation(stationName(floor, counted.station.station))}
      </span>
      {beside > 0 && (
        <span class="chip plain" data-testid="counted-beside">
          {words.besideHand(beside)}
        </span>
      )}
    </>
  );
}

/** Panels = N, because. */
export function SetRightDialog({ run, onClose }: { readonly run: Run; readonly onClose: () => void }) {
  const app = useApp();
  const words = say(lineWords);
  const [typed, setTyped] = useState('');
  const [reason, setReason] = useState('');
  const panels = /^\d{1,7}$/.test(typed.trim()) ? Number(typed.trim()) : null;
  const isReady = panels !== null && panels !== run.done && reason.trim() !== '';
  return (
    <Dialog title={words.setRightTitle} onClose={onClose}>
      <div class="stack">
        <p>{words.setRightHelp}</p>
        <Field
          label={words.panels(formatCount(run.done), run.panelsWanted)}
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
