// The run in hand in one strip: how far it is, when it ends, count panels, stop with a reason, resume, end.

import { useEffect, useState } from 'preact/hooks';
import { type CountedBy, countedBy } from '../../../../shared/floor/counters.ts';
import type { Run } from '../../../../shared/floor/state.ts';
import { entryId } from '../../../../shared/log/entry.ts';
import type { Outlook } from '../../../../shared/outlook/line.ts';
import { useApp, useFloor } from '../../app.ts';
import { silenceFirst } from '../../counting.ts';
import { later } from '../../device/later.ts';
import { lazy } from '../../frame/lazy.tsx';
import { useRefusal } from '../../may.ts';
import { machineAt } from '../../panels-at.ts';
import { takeSkipped } from '../../skipped.ts';
import { Button } from '../../ui/Button.tsx';
import { Icon } from '../../ui/Icon.tsx';
import { lineWords } from '../../words/line.ts';
import { formatCount, formatNumber, formatSpan, formatTime, say } from '../../words/words.ts';
import { ByStation } from './Counted.tsx';
import { sayMoment } from './moment.ts';
import { SkippedBoards, SkippedDialog } from './SkippedBoards.tsx';

// What is asked beside the plain tap: fetched while nothing else is to be done, so that it opens at once.
const StopDialog = lazy(() => import('./RunDialogs.tsx').then((module) => module.StopDialog));
const EndDialog = lazy(() => import('./RunDialogs.tsx').then((module) => module.EndDialog));
const ManyDialog = lazy(() => import('./CountPanels.tsx').then((module) => module.ManyDialog));
const ScrapDialog = lazy(() => import('./CountPanels.tsx').then((module) => module.ScrapDialog));
const SetRightDialog = lazy(() => import('./SetRightDialog.tsx').then((module) => module.SetRightDialog));
const asked = [StopDialog, EndDialog, ManyDialog, ScrapDialog, SetRightDialog, SkippedDialog];

const ToldState = lazy(() => import('./ToldState.tsx').then((module) => module.ToldState));

type Asked = 'stop' | 'many' | 'scrap' | 'right' | 'end';

/** Names the sentence that says why nothing here can be pressed. */
export const whyId = 'line-why';

/**
 * `isActElsewhere`: the screen's one act is another's now, e.g. to go on a walk; then counting is no more than a button.
 */
export function RunBar(props: {
  readonly outlook: Outlook;
  readonly hold: string | null;
  readonly isActElsewhere: boolean;
}) {
  const app = useApp();
  const words = say(lineWords);
  const [asking, setAsking] = useState<Asked | null>(null);
  const { outlook, hold } = props;
  const { run, line } = outlook;
  const counted = countedBy(useFloor(), line, app.nowMs.value);
  const refusal = useRefusal('count-panels');
  const tone = props.isActElsewhere ? 'plain' : 'act';
  const close = () => setAsking(null);
  useEffect(
    () =>
      later(() => {
        for (const part of asked) part.preload();
      }),
    [],
  );

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
      <Standing outlook={outlook} hold={hold} />
      <Facts outlook={outlook} counted={counted} />
      <div class="acts">
        {refusal !== null && (
          <p class="whynot" id={whyId}>
            <Icon name="person" size={18} /> <span>{refusal}</span>
          </p>
        )}
        {run.phase === 'running' ? (
          <Running
            run={run}
            counted={counted}
            tone={tone}
            refusal={refusal}
            onPlusOne={() => void count(1, takeSkipped(app, run, 'tap'))}
            onAsk={setAsking}
          />
        ) : (
          <Stopped run={run} tone={tone} refusal={refusal} onAsk={setAsking} />
        )}
      </div>
      {asking === 'stop' && <StopDialog outlook={outlook} onClose={close} />}
      {asking === 'many' && (
        <ManyDialog
          run={run}
          onClose={close}
          onSetRight={() => setAsking('right')}
          onScrap={() => setAsking('scrap')}
          onCount={(panels, skipped) => void count(panels, skipped === null ? {} : { skipped })}
        />
      )}
      {asking === 'scrap' && <ScrapDialog run={run} onClose={close} />}
      {asking === 'right' && <SetRightDialog run={run} onClose={close} />}
      {asking === 'end' && <EndDialog run={run} onClose={close} />}
    </section>
  );
}

/** How far the run is, when it ends and at which pace. */
function Standing({ outlook, hold }: { readonly outlook: Outlook; readonly hold: string | null }) {
  const floor = useFloor();
  const words = say(lineWords);
  const { run, line, pace } = outlook;
  const zone = floor.lines.get(line)?.zone ?? 'UTC';
  const ends = sayMoment(outlook.runEndMs, { nowMs: pace.nowMs, zone });
  return (
    <div class="standing">
      <div class="progress">
        <b class="panels">{words.panels(formatCount(run.done), run.panelsWanted)}</b>
        <div class="progressbar">
          <i style={{ width: `${Math.min(100, (100 * run.done) / Math.max(1, run.panelsWanted))}%` }} />
        </div>
      </div>
      <p class="ends" data-testid="line-summary">
        <span>
          {outlook.panelsLeft === 0 ? words.runDone : words.runEnds(ends)}
          {outlook.panelsLeft > 0 && hold !== null && `, ${hold}`}
        </span>
        <span class="pace">{sayPace(outlook)}</span>
      </p>
    </div>
  );
}

/** The pace, and what it rests on: a machine's word of its stops only while it is heard. */
export function sayPace({ paceFrom, told, pace }: Outlook): string {
  const from = paceFrom === 'seen' && told?.isHeard ? 'told' : paceFrom;
  return say(lineWords).pace[from](formatNumber(Math.round(pace.panelSeconds * 10) / 10));
}

/** Slots named in a chip. */
const NAMED = 3;

/** What of the run is not sure or not as usual; nothing where all is. */
function Facts({ outlook, counted }: { readonly outlook: Outlook; readonly counted: CountedBy }) {
  const app = useApp();
  const words = say(lineWords);
  const { run, line, unknown, empty } = outlook;
  const zone = app.store.floor().lines.get(line)?.zone ?? 'UTC';
  const machine = machineAt(app, line);
  return (
    <div class="facts">
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
      {outlook.told?.now && <ToldState outlook={outlook} />}
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
      {unknown.length > 0 && (
        <span class="chip care">
          ? {words.unknown(unknown.length)} <span class="code">{unknown.slice(0, NAMED).join(' ')}</span>
          {unknown.length > NAMED && ' …'}
        </span>
      )}
      {empty.length > 0 && <span class="chip care">○ {words.notLoaded(empty.length)}</span>}
    </div>
  );
}

interface ActsProps {
  readonly run: Run;
  readonly tone: 'plain' | 'act';
  /** Why panels may not be counted; null where they may. */
  readonly refusal: string | null;
  readonly onAsk: (asked: Asked) => void;
}

/** What can be done while it runs. */
function Running(props: ActsProps & { readonly counted: CountedBy; readonly onPlusOne: () => void }) {
  const words = say(lineWords);
  const { run, tone, refusal, onAsk } = props;
  if (props.counted.by === 'station')
    return (
      <>
        <Button onPress={() => onAsk('right')} testId="set-right" disabledReason={refusal}>
          {words.setRight}
        </Button>
        <ScrapButton refusal={refusal} onAsk={onAsk} />
        <StopButton refusal={refusal} onAsk={onAsk} />
      </>
    );
  return (
    <>
      <Button tone={tone} onPress={props.onPlusOne} testId="plus-one" disabledReason={refusal}>
        {words.plusOne}
      </Button>
      <SkippedBoards run={run} refusal={refusal} />
      <Button onPress={() => onAsk('many')} testId="plus-many" disabledReason={refusal}>
        {words.plusMany}
      </Button>
      <StopButton refusal={refusal} onAsk={onAsk} />
    </>
  );
}

function StopButton(props: { readonly refusal: string | null; readonly onAsk: (asked: Asked) => void }) {
  return (
    <Button tone="stop" onPress={() => props.onAsk('stop')} testId="run-stop" disabledReason={props.refusal}>
      <Icon name="pause" size={20} /> {say(lineWords).stop}
    </Button>
  );
}

/** Where nobody counts by hand, and while the line stands: what is scrapped is told beside the count. */
function ScrapButton(props: { readonly refusal: string | null; readonly onAsk: (asked: Asked) => void }) {
  return (
    <Button onPress={() => props.onAsk('scrap')} testId="panels-scrapped" disabledReason={props.refusal}>
      {say(lineWords).scrap}
    </Button>
  );
}

/** What can be done while it stands. */
function Stopped({ run, tone, refusal, onAsk }: ActsProps) {
  const app = useApp();
  const words = say(lineWords);
  return (
    <>
      <Button
        tone={tone}
        testId="run-resume"
        disabledReason={refusal}
        onPress={() => {
          const payload = { run: run.run, line: run.line };
          app.record([{ kind: 'run.resumed', payload }]);
        }}
      >
        <Icon name="play" size={20} /> {words.resume}
      </Button>
      <ScrapButton refusal={refusal} onAsk={onAsk} />
      <Button onPress={() => onAsk('end')} testId="run-end" disabledReason={refusal}>
        {words.end}
      </Button>
    </>
  );
}
