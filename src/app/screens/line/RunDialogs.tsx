// Why and since when the line stands, and whether the run is over: what the run's bar asks.

import type { Run } from '../../../../shared/floor/state.ts';
import { stopReasons } from '../../../../shared/floor/vocabulary.ts';
import type { Outlook } from '../../../../shared/outlook/line.ts';
import { useApp } from '../../app.ts';
import { StoodChoice, useStood } from '../../frame/StoodChoice.tsx';
import { AskFeet } from '../../ui/Ask.tsx';
import { Button } from '../../ui/Button.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { lineWords } from '../../words/line.ts';
import { runWords } from '../../words/run.ts';
import { shellWords } from '../../words/shell.ts';
import { formatCount, say } from '../../words/words.ts';
import { ToldState } from './ToldState.tsx';

/** Whether the run is over. */
export function EndDialog({ run, onClose }: { readonly run: Run; readonly onClose: () => void }) {
  const app = useApp();
  const words = say(runWords);
  return (
    <Dialog title={words.endTitle} onClose={onClose}>
      <p>{words.endText(formatCount(run.done), run.panelsWanted)}</p>
      <AskFeet
        testId="run-end-yes"
        onYes={() => {
          const payload = { run: run.run, line: run.line, panels: run.done, note: '' };
          app.record([{ kind: 'run.ended', payload }]);
          onClose();
        }}
        onNo={onClose}
      >
        {say(lineWords).end}
      </AskFeet>
    </Dialog>
  );
}

/** Why the line stands, and since when where counts ceased before. One tap on a reason writes it. */
export function StopDialog({
  outlook,
  onClose,
}: {
  readonly outlook: Outlook;
  readonly onClose: () => void;
}) {
  const app = useApp();
  const words = say(runWords);
  const {
    run: { run },
    line,
    told,
  } = outlook;
  const code = told?.now?.code;
  const stood = useStood(line);
  return (
    <Dialog title={words.stopTitle} onClose={onClose} wide>
      {code !== undefined && <ToldState outlook={outlook} />}
      <StoodChoice line={line} stood={stood} />
      <div class="evenly">
        {stopReasons.map((reason) => (
          <Button
            key={reason}
            large
            testId={`stop-${reason}`}
            onPress={() => {
              const payload = {
                run,
                line,
                reason,
                note: '',
                ...stood.fact,
                ...(code === undefined ? {} : { code }),
              };
              app.record([{ kind: 'run.stopped', payload }]);
              onClose();
            }}
          >
            {say(lineWords).stopReasons[reason]}
          </Button>
        ))}
      </div>
      <div class="acts">
        <Button onPress={onClose}>{say(shellWords).cancel}</Button>
      </div>
    </Dialog>
  );
}
