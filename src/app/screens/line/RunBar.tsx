// The run in hand: count panels, stop with a reason, resume, end.

import { useState } from 'preact/hooks';
import { type CountedBy, countedBy } from '../../../../shared/floor/counters.ts';
import type { Run } from '../../../../shared/floor/state.ts';
import { stopReasons } from '../../../../shared/floor/vocabulary.ts';
import { entryId } from '../../../../shared/log/entry.ts';
import type { Outlook } from '../../../../shared/outlook/line.ts';
import { useApp, useFloor } from '../../app.ts';
import { silenceFirst } from '../../counting.ts';
import { StoodChoice, useStood } from '../../frame/StoodChoice.tsx';
import { useRefusal } from '../../may.ts';
import { machineAt } from '../../panels-at.ts';
import { takeSkipped } from '../../skipped.ts';
import { AskFeet } from '../../ui/Ask.tsx';
import { Button } from '../../ui/Button.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { Icon } from '../../ui/Icon.tsx';
import { lineWords } from '../../words/line.ts';
import { shellWords } from '../../words/shell.ts';
import { formatCount, formatSpan, formatTime, say } from '../../words/words.ts';
import { ByStation, SetRightDialog } from './Counted.tsx';
import { ManyDialog, SkippedBoards } from './CountPanels.tsx';

type Asked = 'stop' | 'many' | 'right' | 'end';

export function RunBar({ outlook }: { readonly outlook: Outlook }) {
  const app = useApp();
  const words = say(lineWords);
  const [asking, setAsking] = useState<Asked | null>(null);
  const { run, line } = outlook;
  const counted = countedBy(useFloor(), line, app.nowMs.value);
  const close = () => setAsking(null);

  async function count(add: number, skips: { readonly skipped?: number | number[] }): Promise<void> {
    const facts = { run: run.run, line, add, panels: run.done + add, serial: null, via: 'typed' as const };
    const silence = silenceFirst(app.store.floor(), line, app.clock.nowMs());
    const written = await app.write([
      ...silence,
      { kind: 'panels.counted', payload: { ...facts, ...skips } },
    ]);
    const entry = written.at(-1);
    if (!entry) return;
    app.notice.value = {
      tone: 'plain',
      text: words.counted(formatCount(run.done + add)),
      act: {
        label: words.takeBack,
        run: () => {
          const payload = { of: entryId(entry), line, slot: null, reason: 'count taken back' };
          app.record([{ kind: 'entry.corrected', payload }]);
        },
      },
    };
  }

  return (
    <section class="runbar" data-testid="runbar">
      <Standing outlook={outlook} counted={counted} />
      {run.phase === 'running' ? (
        <Running
          {...{ run, counted }}
          onPlusOne={() => void count(1, takeSkipped(app, run, 'tap'))}
          onAsk={setAsking}
        />
      ) : (
        <Stopped run={run} onAsk={setAsking} />
      )}
      {asking === 'stop' && <StopDialog run={run.run} line={line} onClose={close} />}
      {asking === 'many' && (
        <ManyDialog
          run={run}
          onClose={close}
          onSetRight={() => setAsking('right')}
          onCount={(panels, skipped) => void count(panels, skipped === null ? {} : { skipped })}
        />
      )}
      {asking === 'right' && <SetRightDialog run={run} onClose={close} />}
      {asking === 'end' && <EndDialog run={run} onClose={close} />}
    </section>
  );
}

/** How far the run is, what of it is not sure, and since when it stands. */
function Standing({ outlook, counted }: { readonly outlook: Outlook; readonly counted: CountedBy }) {
  const app = useApp();
  const words = say(lineWords);
  const { run, line } = outlook;
  const zone = app.store.floor().lines.get(line)?.zone ?? 'UTC';
  const machine = machineAt(app, line);
  return (
    <div class="grow">
      <b class="panels">{words.panels(formatCount(run.done), run.panelsWanted)}</b>
      <div class="progressbar">
        <i style={{ width: `${Math.min(100, (100 * run.done) / Math.max(1, run.panelsWanted))}%` }} />
      </div>
      <ByStation counted={counted} zone={zone} />
      {outlook.slots.some(({ estimate }) => estimate.skipsUnknown) && (
        <span class="chip care" data-testid="skips-unknown">
          ? {words.skipsUnknown}
        </span>
      )}
      {machine !== null && (
        <span class="chip plain" data-testid="panels-at">
          {words.scansBefore(machine.name)}
        </span>
      )}
      {run.scrapped > 0 && (
        <span class="chip plain" data-testid="scrapped">
          {words.scrapped(run.scrapped)}
        </span>
      )}
      {run.phase === 'stopped' && (
        <span class="chip care" data-testid="stopped">
          <Icon name="pause" size={18} />
          {words.stoppedSince(
            words.stopReasons[run.stopReason ?? 'other'],
            formatTime(run.sinceMs, zone),
            formatSpan(Math.max(0, app.nowMs.value - run.sinceMs) / 1000),
          )}
        </span>
      )}
    </div>
  );
}

/** What can be done while it runs. */
function Running(props: {
  readonly run: Run;
  readonly counted: CountedBy;
  readonly onPlusOne: () => void;
  readonly onAsk: (asked: Asked) => void;
}) {
  const words = say(lineWords);
  const refusal = useRefusal('count-panels');
  const { run, onAsk } = props;
  if (props.counted.by === 'station')
    return (
      <>
        <Button large onPress={() => onAsk('right')} testId="set-right" disabledReason={refusal}>
          {words.setRight}
        </Button>
        <StopButton {...{ refusal, onAsk }} />
      </>
    );
  return (
    <>
      <Button tone="act" large onPress={props.onPlusOne} testId="plus-one" disabledReason={refusal}>
        {words.plusOne}
      </Button>
      <SkippedBoards run={run} refusal={refusal} />
      <Button large onPress={() => onAsk('many')} testId="plus-many" disabledReason={refusal}>
        {words.plusMany}
      </Button>
      <StopButton {...{ refusal, onAsk }} />
    </>
  );
}

function StopButton(props: { readonly refusal: string | null; readonly onAsk: (asked: Asked) => void }) {
  return (
    <Button
      large
      tone="stop"
      onPress={() => props.onAsk('stop')}
      testId="run-stop"
      disabledReason={props.refusal}
    >
      <Icon name="pause" /> {say(lineWords).stop}
    </Button>
  );
}

/** What can be done while it stands. */
function Stopped({ run, onAsk }: { readonly run: Run; readonly onAsk: (asked: Asked) => void }) {
  const app = useApp();
  const words = say(lineWords);
  const refusal = useRefusal('count-panels');
  return (
    <>
      <Button
        tone="act"
        large
        testId="run-resume"
        disabledReason={refusal}
        onPress={() => {
          const payload = { run: run.run, line: run.line };
          app.record([{ kind: 'run.resumed', payload }]);
        }}
      >
        <Icon name="play" /> {words.resume}
      </Button>
      <Button large onPress={() => onAsk('end')} testId="run-end" disabledReason={refusal}>
        {words.end}
      </Button>
    </>
  );
}

function EndDialog({ run, onClose }: { readonly run: Run; readonly onClose: () => void }) {
  const app = useApp();
  const words = say(lineWords);
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
        {words.end}
      </AskFeet>
    </Dialog>
  );
}

/** Why the line stands, and since when where counts ceased before. One tap on a reason writes it. */
function StopDialog(props: { readonly run: string; readonly line: string; readonly onClose: () => void }) {
  const app = useApp();
  const words = say(lineWords);
  const { run, line, onClose } = props;
  const stood = useStood(line);
  return (
    <Dialog title={words.stopTitle} onClose={onClose} wide>
      <StoodChoice line={line} stood={stood} />
      <div class="evenly">
        {stopReasons.map((reason) => (
          <Button
            key={reason}
            large
            testId={`stop-${reason}`}
            onPress={() => {
              const payload = { run, line, reason, note: '', ...stood.fact };
              app.record([{ kind: 'run.stopped', payload }]);
              onClose();
            }}
          >
            {words.stopReasons[reason]}
          </Button>
        ))}
      </div>
      <div class="acts">
        <Button onPress={onClose}>{say(shellWords).cancel}</Button>
      </div>
    </Dialog>
  );
}
