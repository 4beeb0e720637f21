// One act holds all panels that may carry what should not be there: the whole log is read for it, panels and codes are listed, the cause
// stands or is chosen, and they are in the log.

import { useEffect, useState } from 'preact/hooks';
import { type ContainCause, containCauses } from '../../../../shared/floor/vocabulary.ts';
import { numberAt } from '../../../../shared/trace/order.ts';
import type { TraceIndex } from '../../../../shared/trace/stretches.ts';
import type { SuspectRun, Suspects } from '../../../../shared/trace/suspects.ts';
import { useApp } from '../../app.ts';
import { newId } from '../../device/ids.ts';
import { Button } from '../../ui/Button.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { ChoiceField, Field } from '../../ui/Field.tsx';
import { heldWords } from '../../words/held.ts';
import { shellWords } from '../../words/shell.ts';
import { traceWords } from '../../words/trace.ts';
import { formatCount, say } from '../../words/words.ts';
import { heldPayload, panelsIn } from './held-model.ts';
import { type HoldAsked, materialAsked, panelsAsked, sourceOf } from './hold-asked.ts';
import { runName } from './names.ts';
import { readIndex } from './read-index.ts';

interface HoldProps {
  readonly asked: HoldAsked;
  readonly onClose: () => void;
}

export function HoldPanels({ asked: first, onClose }: HoldProps) {
  const app = useApp();
  const words = say(heldWords);
  const [read, setRead] = useState(0);
  const [index, setIndex] = useState<TraceIndex | null>(null);
  const [cause, setCause] = useState<ContainCause>(first.cause);
  const [reason, setReason] = useState('');
  useEffect(() => {
    readIndex(app, setRead)
      .then(setIndex)
      .catch(() => undefined); // the dialog goes on saying that it reads
  }, []);
  if (!index)
    return (
      <Dialog title={words.which} onClose={onClose}>
        <p role="status">{say(traceWords).reading(formatCount(read))}</p>
      </Dialog>
    );
  const asked: HoldAsked = { ...first, cause };
  const found = panelsAsked(index, asked, app.clock.nowMs());
  const panels = panelsIn(found.runs, 'possible');

  function hold(from: TraceIndex): void {
    const payload = heldPayload(found, {
      containment: newId(),
      line: app.line.value ?? '',
      cause,
      of: sourceOf(from, asked),
      reason: reason.trim(),
      material: materialAsked(from, asked),
    });
    app.record([{ kind: 'panels.contained', payload }], {
      notice: { tone: 'care', text: words.done(panels) },
      next: onClose,
    });
  }

  const none = cause === 'floor-life' ? words.noLifeOver : say(traceWords).none;
  const missing = panels === 0 ? none : reason.trim() === '' ? words.reason : null;
  return (
    <Dialog title={words.holdTitle(panels)} onClose={onClose} tone="stop">
      <div class="stack to-hold" data-testid="hold-panels">
        <Found found={found} index={index} />
        <ChoiceField
          label={words.cause}
          value={cause}
          choices={containCauses.map((each) => ({
            value: each,
            text: words.causes[each],
            testId: `hold-${each}`,
          }))}
          onChoose={setCause}
        />
        {cause === 'floor-life' && <p class="soft">{words.lifeHelp}</p>}
        <Field label={words.reason} testId="hold-reason" maxLength={200} value={reason} onInput={setReason} />
        <Button tone="act" large testId="hold-yes" disabledReason={missing} onPress={() => hold(index)}>
          {words.hold}
        </Button>
        <Button large onPress={onClose}>
          {say(shellWords).cancel}
        </Button>
      </div>
    </Dialog>
  );
}

/** The panels run by run, how many of them surely carry it, their codes, and what the answer rests on. */
function Found({ found, index }: { readonly found: Suspects; readonly index: TraceIndex }) {
  const words = say(heldWords);
  const { runs, codes, goesOn, guessed } = found;
  return (
    <>
      <p>
        {words.holdHelp} {words.sure(panelsIn(runs, 'sure'))}
      </p>
      <div data-testid="hold-found">
        {runs.map((run) => (
          <p key={`${run.run}${run.slot}${run.possible.first}`}>
            <Span run={run} index={index} />
          </p>
        ))}
      </div>
      {codes.length > 0 && (
        <details>
          <summary>{words.codes(codes.length)}</summary>
          <p class="code wrap">{codes.join(' ')}</p>
        </details>
      )}
      {goesOn && <p class="caution">{words.goesOn}</p>}
      {guessed.map((each) => (
        <p class="caution" key={each}>
          {say(traceWords).guessed[each]}
        </p>
      ))}
    </>
  );
}

function Span({ run, index }: { readonly run: SuspectRun; readonly index: TraceIndex }) {
  const words = say(heldWords);
  const counted = index.state.runs.get(run.run);
  const number = (place: number) => formatCount(counted ? numberAt(counted, place) : place);
  return (
    <>
      {counted ? runName(index.state, run.run) : run.run} · <span class="code">{run.slot}</span> ·{' '}
      <b>{words.span(number(run.possible.first), number(run.possible.last))}</b>
    </>
  );
}
