// One act holds all panels that may carry what was traced: the whole log is read for it, the cause chosen, and they are in the log.

import { useEffect, useState } from 'preact/hooks';
import { type ContainCause, containCauses } from '../../../../shared/floor/vocabulary.ts';
import type { TraceQuestion } from '../../../../shared/trace/ask.ts';
import { type Suspects, suspectPanels } from '../../../../shared/trace/suspects.ts';
import { useApp } from '../../app.ts';
import { newId } from '../../device/ids.ts';
import { Button } from '../../ui/Button.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { Field } from '../../ui/Field.tsx';
import { heldWords } from '../../words/held.ts';
import { shellWords } from '../../words/shell.ts';
import { traceWords } from '../../words/trace.ts';
import { formatCount, say } from '../../words/words.ts';
import { heldPayload, panelsIn } from './held-model.ts';
import { readIndex } from './read-index.ts';

interface HoldProps {
  readonly material: Pick<TraceQuestion, 'reel' | 'lot' | 'part'>;
  readonly onClose: () => void;
}

export function HoldPanels({ material, onClose }: HoldProps) {
  const app = useApp();
  const words = say(heldWords);
  const [read, setRead] = useState(0);
  const [found, setFound] = useState<Suspects | null>(null);
  const [cause, setCause] = useState<ContainCause>('wrong-reel');
  const [reason, setReason] = useState('');
  useEffect(() => {
    readIndex(app, setRead)
      .then((index) => setFound(suspectPanels(index, { cause, material })))
      .catch(() => undefined); // the dialog goes on saying that it reads
  }, []);

  function hold(): void {
    if (!found) return;
    const line = app.line.value ?? '';
    const containment = newId();
    const payload = heldPayload(found, { containment, line, cause, reason: reason.trim(), material });
    app.write([{ kind: 'panels.contained', payload }]).then(
      () => {
        app.notice.value = { tone: 'care', text: words.done(panelsIn(found.runs, 'possible')) };
        onClose();
      },
      () => undefined, // shown by the fault screen
    );
  }

  if (!found)
    return (
      <Dialog title={words.hold} onClose={onClose}>
        <p role="status">{say(traceWords).reading(formatCount(read))}</p>
      </Dialog>
    );
  const panels = panelsIn(found.runs, 'possible');
  const missing = panels === 0 ? say(traceWords).none : reason.trim() === '' ? words.reason : null;
  return (
    <Dialog title={words.holdTitle(panels)} onClose={onClose} tone="stop">
      <div class="stack" data-testid="hold-panels">
        <p>
          {words.holdHelp} {words.sure(panelsIn(found.runs, 'sure'))} {words.codes(found.codes.length)}
        </p>
        {found.goesOn && <p class="caution">{words.goesOn}</p>}
        <div class="field">
          <span>{words.cause}</span>
          <div class="choice">
            {containCauses.map((each) => (
              <button
                type="button"
                key={each}
                aria-pressed={cause === each}
                data-testid={`hold-${each}`}
                onClick={() => setCause(each)}
              >
                {words.causes[each]}
              </button>
            ))}
          </div>
        </div>
        <Field label={words.reason} testId="hold-reason" maxLength={200} value={reason} onInput={setReason} />
        <Button tone="act" large testId="hold-yes" disabledReason={missing} onPress={hold}>
          {words.hold}
        </Button>
        <Button large onPress={onClose}>
          {say(shellWords).cancel}
        </Button>
      </div>
    </Dialog>
  );
}
