// The running line: how far the run is, what runs out when, where to go next.

import { useEffect, useMemo, useState } from 'preact/hooks';
import { blockedTapes } from '../../../../shared/floor/blocks.ts';
import { buildingOn } from '../../../../shared/floor/building.ts';
import type { FloorState } from '../../../../shared/floor/state.ts';
import { dueSlots, type Outlook } from '../../../../shared/outlook/line.ts';
import { useApp, useFloor } from '../../app.ts';
import type { DeskRun } from '../../desk/desk.ts';
import { hasScreen, later, screenStands } from '../../device/later.ts';
import { holdText } from '../../frame/hold-text.ts';
import { lazy } from '../../frame/lazy.tsx';
import { OfLine } from '../../frame/OfLine.tsx';
import { useRefusal } from '../../may.ts';
import type { LineBeside } from '../../outlook/beside.ts';
import type { Watch } from '../../outlook/watch.ts';
import { address } from '../../router.ts';
import { AroundButton } from '../../ui/ActGroup.tsx';
import { Button } from '../../ui/Button.tsx';
import { Icon } from '../../ui/Icon.tsx';
import { lineWords } from '../../words/line.ts';
import { formatCount, formatSpan, formatTime, say } from '../../words/words.ts';
import { NowBand } from './NowBand.tsx';
import { RunBar, sayPace, whyId } from './RunBar.tsx';
import { rowsShown } from './rows.ts';
import { Timeline } from './Timeline.tsx';
import './line.css';

/** Rows of what is due; nobody walks to the rest before these are done. */
const FIRST_DUE = 40;

// What the first look at the line does not need.
const BesideLines = lazy(() => import('./BesideLines.tsx').then((module) => module.BesideLines));
const NoSetup = lazy(() => import('../../frame/NoSetup.tsx').then((module) => module.NoSetup));
const BeginsShort = lazy(() => import('./BeginsShort.tsx').then((module) => module.BeginsShort));
const StartDialog = lazy(() => import('./StartDialog.tsx').then((module) => module.StartDialog));
const SlotSheet = lazy(() => import('./SlotSheet.tsx').then((module) => module.SlotSheet));
const RisingLosses = lazy(() => import('./Losses.tsx').then((module) => module.RisingLosses));
const LifeEnds = lazy(() => import('./LifeEnds.tsx').then((module) => module.LifeEnds));
const StencilPaste = lazy(() => import('./StencilPaste.tsx').then((module) => module.StencilPaste));
const MachineBelieves = lazy(() => import('./MachineBelieves.tsx').then((module) => module.MachineBelieves));
const MachineRecipe = lazy(() => import('./MachineRecipe.tsx').then((module) => module.MachineRecipe));
const Losses = lazy(() => import('./Losses.tsx').then((module) => module.Losses));

const recipesTold = ({ stations }: FloorState): boolean =>
  [...stations.values()].some(({ recipe }) => recipe !== null);

interface LineProps {
  readonly desk: DeskRun;
  readonly watch: Watch;
  /** The other lines that the tablet serves. */
  readonly beside: readonly LineBeside[];
}

export function Line({ desk, watch, beside }: LineProps) {
  return (
    <>
      {beside.length > 0 && <BesideLines beside={beside} here={watch} />}
      <OfLine>
        <LineInHand desk={desk} watch={watch} />
      </OfLine>
    </>
  );
}

function LineInHand({ desk, watch }: Pick<LineProps, 'desk' | 'watch'>) {
  const app = useApp();
  const floor = useFloor();
  const words = say(lineWords);
  const [starting, setStarting] = useState(false);
  const line = app.line.value;
  const outlook = watch.outlook.value;
  const isLooking = !outlook && buildingOn(floor, line) !== null;
  useEffect(() => {
    if (!isLooking) screenStands();
  }, [isLooking]);
  if (line === null || !floor.chosen.has(line)) {
    return <NoSetup icon="line" />;
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
        {recipesTold(floor) && <MachineRecipe line={line} />}
        {floor.stencils.has(line) && <StencilPaste line={line} lastsMs={null} isOver />}
        {!starting && <BeginsShort line={line} onSplice={desk.chooseSlot} />}
        {starting && <StartDialog line={line} onClose={() => setStarting(false)} />}
      </div>
    );
  }
  return <Running line={line} outlook={outlook} desk={desk} watch={watch} />;
}

/** The line while something is built: how far it is, what to do now, and every slot's tape along the axis. */
function Running(props: {
  readonly line: string;
  readonly outlook: Outlook;
  readonly desk: DeskRun;
  readonly watch: Watch;
}) {
  const floor = useFloor();
  const words = say(lineWords);
  const { line, outlook, desk, watch } = props;
  const [all, setAll] = useState(false);
  const [open, setOpen] = useState<string | null>(null);
  const [withLosses, setWithLosses] = useState(hasScreen);
  useEffect(() => later(() => setWithLosses(true)), []);
  const mayCount = useRefusal('count-panels');
  const mayGo = useRefusal('acknowledge-warning');
  const walks = watch.walks.value;
  const hold = holdText(outlook);
  // As a text: the same slots are no new rows.
  const blocked = blockedTapes(floor, line)
    .map(({ slot }) => slot)
    .join('\n');
  const due = dueSlots(outlook);
  // Many rows: drawn anew with each look at the line and with another language, not with each entry.
  const rows = useMemo(() => {
    const marked = new Set(blocked.split('\n'));
    const shown = rowsShown(outlook, { all, blocked: marked, most: FIRST_DUE });
    return (
      <Timeline
        slots={shown}
        blocked={marked}
        outlook={outlook}
        walks={walks}
        hold={hold}
        onOpen={setOpen}
        onSplice={desk.chooseSlot}
      >
        <Button tone="quiet" onPress={() => setAll(!all)} testId="line-all">
          {all ? words.less : words.more}
        </Button>
      </Timeline>
    );
  }, [outlook, walks, all, hold, blocked, words]);
  // The bar says once for the whole screen why nothing can be pressed.
  const saidInBar = mayCount === null ? null : { reason: mayCount, at: whyId, point: () => undefined };
  const opened = open === null ? undefined : outlook.slots.find(({ slot }) => slot === open);
  return (
    <div class="lineview">
      <AroundButton.Provider value={saidInBar}>
        <RunBar
          outlook={outlook}
          hold={hold}
          isActElsewhere={watch.warnings.value.length > 0 && mayGo === null}
        />
        {outlook.counting.ceased && (
          <NobodyCounts outlook={outlook} zone={floor.lines.get(line)?.zone ?? 'UTC'} />
        )}
        <NowBand outlook={outlook} watch={watch} hold={hold} />
      </AroundButton.Provider>
      {floor.believed.size > 0 && <MachineBelieves line={line} />}
      {recipesTold(floor) && <MachineRecipe line={line} />}
      {withLosses && <RisingLosses line={line} />}
      {withLosses && <LifeEnds outlook={outlook} />}
      {withLosses && floor.stencils.has(line) && (
        <StencilPaste line={line} lastsMs={outlook.runEndMs} isOver />
      )}
      {rows}
      <div class="stack after">
        {withLosses && floor.stencils.has(line) && (
          <StencilPaste line={line} lastsMs={outlook.runEndMs} isOver={false} />
        )}
        {due.length === 0 && <p class="soft">{words.nothingDue}</p>}
        <p class="row soft">
          {!all && due.length > FIRST_DUE && (
            <span>{words.firstOf(formatCount(FIRST_DUE), formatCount(due.length))}</span>
          )}
          <span>{words.outlast(outlook.slots.length - due.length)}</span>
          <span class="pace">{sayPace(outlook)}</span>
        </p>
        <p class="caution">
          <Icon name="warn" />
          {words.caution}
        </p>
        {withLosses && <Losses line={line} />}
      </div>
      {opened && (
        <SlotSheet
          slot={opened}
          outlook={outlook}
          watch={watch}
          walks={walks}
          hold={hold}
          onClose={() => setOpen(null)}
          onSplice={() => {
            setOpen(null);
            desk.chooseSlot(opened.slot);
          }}
        />
      )}
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
    <div class="rising slim" role="status" data-testid="nobody-counts">
      <p>
        <Icon name="warn" />
        <span>
          <b>{words.quietSince(formatTime(lastMs, zone), span)}</b> {words.quietAct}
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
