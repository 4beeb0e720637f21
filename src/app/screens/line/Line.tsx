// The running line: how far the run is, what runs out when, where to go next.

import { useEffect, useMemo, useState } from 'preact/hooks';
import { blockedTapes } from '../../../../shared/floor/blocks.ts';
import { buildingOn } from '../../../../shared/floor/building.ts';
import { dueSlots, type Outlook } from '../../../../shared/outlook/line.ts';
import { useApp, useFloor } from '../../app.ts';
import type { DeskRun } from '../../desk/desk.ts';
import { hasScreen, later, screenStands } from '../../device/later.ts';
import { holdText } from '../../frame/hold-text.ts';
import { lazy } from '../../frame/lazy.tsx';
import { useRefusal } from '../../may.ts';
import type { Watch } from '../../outlook/watch.ts';
import { address } from '../../router.ts';
import { Button } from '../../ui/Button.tsx';
import { Icon } from '../../ui/Icon.tsx';
import { lineWords } from '../../words/line.ts';
import { formatCount, formatSpan, formatTime, say } from '../../words/words.ts';
import { BeginsShort } from './BeginsShort.tsx';
import { sayMoment } from './moment.ts';
import { RunBar } from './RunBar.tsx';
import { rowsShown } from './rows.ts';
import { Timeline } from './Timeline.tsx';
import { Walks } from './Walks.tsx';
import './line.css';

/** Rows of what is due; nobody walks to the rest before these are done. */
const FIRST_DUE = 40;
/** Slots named in a chip. */
const NAMED = 3;

// What the first look at the line does not need.
const StartDialog = lazy(() => import('./StartDialog.tsx').then((module) => module.StartDialog));
const RisingLosses = lazy(() => import('./Losses.tsx').then((module) => module.RisingLosses));
const LifeEnds = lazy(() => import('./LifeEnds.tsx').then((module) => module.LifeEnds));
const MachineBelieves = lazy(() => import('./MachineBelieves.tsx').then((module) => module.MachineBelieves));
const Losses = lazy(() => import('./Losses.tsx').then((module) => module.Losses));

export function Line({ desk, watch }: { readonly desk: DeskRun; readonly watch: Watch }) {
  const app = useApp();
  const floor = useFloor();
  const words = say(lineWords);
  const [starting, setStarting] = useState(false);
  const [all, setAll] = useState(false);
  const line = app.line.value;
  const outlook = watch.outlook.value;
  const refusal = useRefusal('acknowledge-warning');
  const walks = watch.walks.value;
  const isLooking = !outlook && buildingOn(floor, line) !== null;
  const hold = holdText(outlook);
  // As a text: the same slots are no new rows.
  const blocked = blockedTapes(floor, line ?? '')
    .map(({ slot }) => slot)
    .join('\n');
  const [withLosses, setWithLosses] = useState(hasScreen);
  useEffect(() => {
    if (isLooking) return;
    screenStands();
    later(() => setWithLosses(true));
  }, [isLooking]);
  // Many rows: drawn anew with each look at the line, not with each entry.
  const rows = useMemo(() => {
    if (!outlook) return null;
    const marked = new Set(blocked.split('\n'));
    const shown = rowsShown(outlook, { all, blocked: marked, most: FIRST_DUE });
    if (shown.length === 0) return null;
    return <Timeline slots={shown} blocked={marked} {...{ outlook, desk, watch, walks, refusal, hold }} />;
  }, [outlook, walks, all, refusal, hold, blocked]);
  if (line === null || !floor.chosen.has(line)) {
    return (
      <div class="empty">
        <Icon name="line" size={56} />
        <h2>{words.noSetup.title}</h2>
        <p>{words.noSetup.help}</p>
        <div class="row">
          <a class="button act large" href={address('plant', 'setups')}>
            {words.noSetup.choose}
          </a>
          <a class="button large" href={address('plant', 'sheet')}>
            {words.noSetup.bring}
          </a>
        </div>
      </div>
    );
  }
  if (isLooking) return floor.rules.has(line) ? null : <NoRules />;
  if (!outlook) {
    return (
      <div class="empty">
        <Icon name="line" size={56} />
        <h2>{words.noRun}</h2>
        <p>{words.noRunHelp}</p>
        <Button tone="act" large onPress={() => setStarting(true)} testId="run-start">
          <Icon name="play" /> {words.start}
        </Button>
        {floor.believed.size > 0 && <MachineBelieves line={line} />}
        {!starting && <BeginsShort line={line} onSplice={desk.chooseSlot} />}
        {starting && <StartDialog line={line} onClose={() => setStarting(false)} />}
      </div>
    );
  }
  const due = dueSlots(outlook);
  const zone = floor.lines.get(line)?.zone ?? 'UTC';
  return (
    <div class="stack">
      <RunBar outlook={outlook} />
      {outlook.counting.ceased && <NobodyCounts outlook={outlook} zone={zone} />}
      <Walks outlook={outlook} walks={walks} hold={hold} />
      {floor.believed.size > 0 && <MachineBelieves line={line} />}
      {withLosses && <RisingLosses line={line} />}
      {withLosses && <LifeEnds outlook={outlook} />}
      <div class="row">
        <h2 class="grow">{words.dueTitle}</h2>
        {outlook.unknown.length > 0 && (
          <span class="chip care">
            ? {words.unknown(outlook.unknown.length)}{' '}
            <span class="code">{outlook.unknown.slice(0, NAMED).join(' ')}</span>
            {outlook.unknown.length > NAMED && ' …'}
          </span>
        )}
        {outlook.empty.length > 0 && <span class="chip care">{words.notLoaded(outlook.empty.length)}</span>}
        {!all && due.length > FIRST_DUE && (
          <span class="soft">{words.firstOf(formatCount(FIRST_DUE), formatCount(due.length))}</span>
        )}
        <Button onPress={() => setAll(!all)} testId="line-all">
          {all ? words.less : words.more}
        </Button>
      </div>
      {rows ?? <p class="empty">{words.nothingDue}</p>}
      <Summary {...{ outlook, hold, zone }} due={due.length} />
      <p class="caution">
        <Icon name="warn" />
        {words.caution}
      </p>
      {withLosses && <Losses line={line} />}
    </div>
  );
}

/** Since when no panel was counted, and what to do. */
function NobodyCounts({ outlook, zone }: { readonly outlook: Outlook; readonly zone: string }) {
  const app = useApp();
  const words = say(lineWords);
  const { lastMs } = outlook.counting;
  // Either may be the newer look at the clock.
  const nowMs = Math.max(app.nowMs.value, outlook.pace.nowMs);
  const span = formatSpan((nowMs - lastMs) / 1000);
  return (
    <div class="rising" role="status" data-testid="nobody-counts">
      <p>
        <Icon name="warn" />
        <span>
          <b>{words.quietSince(formatTime(lastMs, zone), span)}</b>
          <br />
          {words.quietAct}
        </span>
      </p>
    </div>
  );
}

/** Something is built on a line of which too little is known for a forecast. */
function NoRules() {
  const words = say(lineWords);
  return (
    <div class="empty" data-testid="no-rules">
      <Icon name="line" size={56} />
      <p>{words.noRules}</p>
      <a class="button act large" href={address('plant', 'rules')}>
        {words.toRules}
      </a>
    </div>
  );
}

function Summary(props: {
  readonly outlook: Outlook;
  readonly due: number;
  readonly zone: string;
  readonly hold: string | null;
}) {
  const words = say(lineWords);
  const { outlook, hold, zone } = props;
  const ends = sayMoment(outlook.runEndMs, { nowMs: outlook.pace.nowMs, zone });
  return (
    <p class="row soft" data-testid="line-summary">
      <span>{words.outlast(outlook.slots.length - props.due)}</span>
      <span>·</span>
      <span>
        {outlook.panelsLeft === 0 ? words.runDone : words.runEnds(ends)}
        {outlook.panelsLeft > 0 && hold !== null && `, ${hold}`}
      </span>
      <span>·</span>
      <span>{words.pace[outlook.paceFrom](outlook.pace.panelSeconds.toFixed(1))}</span>
    </p>
  );
}
