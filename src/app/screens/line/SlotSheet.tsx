// One slot from near: its tape as large as it fits, how long it lasts and how that is known, and what can be done about it.

import type { Outlook, SlotOutlook } from '../../../../shared/outlook/line.ts';
import { pickFaultsOn } from '../../../../shared/outlook/losses.ts';
import { runOutWithStops } from '../../../../shared/outlook/stops-to-come.ts';
import type { WalkPlan } from '../../../../shared/outlook/walks.ts';
import { useApp, useFloor } from '../../app.ts';
import { ForLanes } from '../../frame/ForLanes.tsx';
import { useRefusal } from '../../may.ts';
import type { Watch } from '../../outlook/watch.ts';
import { Button } from '../../ui/Button.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { Icon } from '../../ui/Icon.tsx';
import { countWords } from '../../words/count.ts';
import { feederTypeWords } from '../../words/feeder-types.ts';
import { feedWords } from '../../words/feeds.ts';
import { lineWords } from '../../words/line.ts';
import { shellWords } from '../../words/shell.ts';
import { comma, formatCount, formatDay, formatShare, formatTime, say } from '../../words/words.ts';
import { Axis } from './Axis.tsx';
import { geometryOf, hoursUntil } from './axis.ts';
import { type Beheld, sayMoment, sayStretch } from './moment.ts';
import { levelShapes, moreWord, sayDue, sayLeft, sayLevel, sayTurn, Tape } from './SlotRow.tsx';
import { bandOf, useRoom } from './Timeline.tsx';
import './slot-sheet.css';

interface SlotSheetProps {
  readonly slot: SlotOutlook;
  readonly outlook: Outlook;
  readonly watch: Watch;
  readonly walks: WalkPlan | null;
  readonly hold: string | null;
  readonly onSplice: () => void;
  readonly onClose: () => void;
}

export function SlotSheet(props: SlotSheetProps) {
  const words = say(lineWords);
  const refusal = useRefusal('acknowledge-warning');
  const { slot, watch, onSplice, onClose } = props;
  const { level } = slot.warning;
  // What is open is the watch's to say: a note taken meanwhile is in it.
  const waits = watch.warnings.value.some((each) => each.slot === slot.slot && each.need === slot.need);
  return (
    <Dialog title={slot.slot} onClose={onClose} wide>
      <div class="stack slotsheet" data-testid="slot-sheet" data-level={level}>
        <p class="row">
          <b class="code">{slot.loaded.tapes.at(-1)?.part || slot.wanted.part}</b>
          {level !== 'quiet' && (
            <span class={`chip ${level === 'late' ? 'stop' : 'care'}`}>
              {levelShapes[level]} {sayLevel(slot)}
            </span>
          )}
        </p>
        <OnItsAxis {...props} />
        <Facts {...props} />
        <ForLanes line={props.outlook.line} slot={slot.slot} />
        <p class="caution">
          <Icon name="warn" />
          {words.caution}
        </p>
        <div class="does">
          {waits && (
            <Button
              tone="act"
              large
              onPress={() => void watch.acknowledge([{ slot, outlook: props.outlook }])}
              testId={`ack-${slot.slot}`}
              disabledReason={refusal}
            >
              {words.acknowledge}
            </Button>
          )}
          <Button
            large
            tone={waits && refusal === null ? 'plain' : 'act'}
            onPress={onSplice}
            testId="slot-splice"
          >
            {moreWord(slot)}
          </Button>
          <Button large tone="quiet" onPress={onClose} testId="slot-close">
            {say(shellWords).close}
          </Button>
        </div>
      </div>
    </Dialog>
  );
}

/** The tape along an axis as long as it lasts. */
function OnItsAxis({ slot, outlook, walks }: SlotSheetProps) {
  const app = useApp();
  const { width, scale, measured } = useRoom();
  const { nowMs } = outlook.pace;
  const zone = app.store.floor().lines.get(outlook.line)?.zone ?? 'UTC';
  const hours = hoursUntil(slot.forecast.runOutMs.late, nowMs);
  const geometry = geometryOf({ nowMs, zone, width, hours, scale });
  return (
    <div class="alone">
      <div class="strip" ref={measured}>
        <Tape slot={slot} geometry={geometry} band={bandOf(walks, slot.slot)} height={52} />
      </div>
      <div class="axis">
        <Axis geometry={geometry} calendar={outlook.calendar} walks={[]} />
      </div>
    </div>
  );
}

/** Stops that put a run-out off by less than this are not spoken of, ms. */
const WORTH_SAYING_MS = 60_000;

/** Facts first, then how they are known. */
function Facts({ slot, outlook, walks, hold }: SlotSheetProps) {
  const floor = useFloor();
  const words = say(lineWords);
  const { forecast, loaded, loss } = slot;
  const at: Beheld = {
    nowMs: outlook.pace.nowMs,
    zone: floor.lines.get(outlook.line)?.zone ?? 'UTC',
  };
  const faults = pickFaultsOn(floor, outlook.line, slot.slot);
  const { early, expected, late } = forecast.runOutMs;
  const withStops = runOutWithStops(outlook, slot);
  const band = bandOf(walks, slot.slot);
  const tape = loaded.tapes.at(-1);
  const reel = [tape?.reel, tape?.lot].filter((each) => each != null && each !== '').join(' · ');
  return (
    <dl>
      <dt>{slot.feeds === 'tape' ? words.sheet.window : say(feedWords).kinds[slot.feeds]}</dt>
      <dd data-testid="slot-feeds">
        <b>
          {slot.feeds !== 'tape'
            ? say(feedWords).sayFeeds[slot.feeds]
            : forecast.windowMs === null
              ? say(feederTypeWords).windowUnknown
              : sayWindow(forecast.windowMs, at)}
        </b>
        {band !== null && <span>{`${words.walk(band.number)}${comma()}${sayMoment(band.startMs, at)}`}</span>}
      </dd>
      <dt>{words.sheet.runsOut}</dt>
      <dd>
        <b>
          {formatTime(expected, at.zone)}, {sayDue((expected - at.nowMs) / 1000)}
        </b>
        <span>
          {sayStretch(words.between, [early, late], at)}
          {hold !== null && `, ${hold}`}
        </span>
        {withStops !== null && withStops - expected >= WORTH_SAYING_MS && (
          <span data-testid="with-stops">{words.withStops(formatTime(withStops, at.zone))}</span>
        )}
        {sayTurn(slot).map((turn) => (
          <span key={turn}>{turn}</span>
        ))}
      </dd>
      <dt>{words.sheet.left}</dt>
      <dd>
        <b>{sayLeft(slot)}</b>
        <span>{words.lossIs(formatShare(loss.mean))}</span>
        {faults !== null && (
          <span class="faults">
            {say(countWords).pickFaults(formatCount(faults.times), formatDay(faults.sinceMs, at.zone))}
          </span>
        )}
      </dd>
      {reel !== '' && (
        <>
          <dt>{words.sheet.reel}</dt>
          <dd>
            <b class="code" translate={false}>
              {reel}
            </b>
          </dd>
        </>
      )}
    </dl>
  );
}

function sayWindow(
  { opens, closes }: { readonly opens: number; readonly closes: number },
  at: Beheld,
): string {
  const words = say(lineWords);
  const until = sayMoment(closes, at);
  if (closes < at.nowMs) return words.windowGone(until);
  if (opens <= at.nowMs) return words.windowNow(until);
  return sayStretch(words.window, [opens, closes], at);
}
