// Each slot's tape lies along the time axis and ends where it runs out, fading between the early and the late bound; the
// bracket is the splice window. One look tells where to go next.

import { useEffect, useRef, useState } from 'preact/hooks';
import type { Outlook, SlotOutlook } from '../../../../shared/outlook/line.ts';
import type { WalkPlan } from '../../../../shared/outlook/walks.ts';
import { useApp } from '../../app.ts';
import type { DeskRun } from '../../desk/desk.ts';
import type { Watch } from '../../outlook/watch.ts';
import { Button } from '../../ui/Button.tsx';
import { VerdictShape } from '../../ui/Shape.tsx';
import { TapeStrip } from '../../ui/TapeStrip.tsx';
import { feederTypeWords } from '../../words/feeder-types.ts';
import { lineWords } from '../../words/line.ts';
import { formatCount, formatShare, formatSpan, formatTime, say } from '../../words/words.ts';
import { type Beheld, sayMoment, sayStretch } from './moment.ts';

/** Hours that the axis may show. */
const HORIZONS = [1, 2, 4, 8] as const;
const HOUR_MS = 3_600_000;

interface TimelineProps {
  readonly outlook: Outlook;
  readonly slots: readonly SlotOutlook[];
  /** Slots with a blocked reel that no lead has let run on. */
  readonly blocked: ReadonlySet<string>;
  readonly desk: DeskRun;
  readonly watch: Watch;
  /** Why warnings may not be taken note of; null where they may. */
  readonly refusal: string | null;
  readonly walks: WalkPlan | null;
  /** What every moment hangs on, such as a pace that nobody counted; null where on nothing. */
  readonly hold: string | null;
}

/** What the word for now and half a time of day need beside each other, px. */
const NOW_WIDTH = 64;
/** A walk's band is at least this wide, px: its number must be read. */
const WALK_MIN_PX = 26;

/** Moments at which the axis is labelled: whole steps of the clock, five or so across the width. */
export function axisTicks(fromMs: number, hours: number): readonly number[] {
  const stepMs = (hours * HOUR_MS) / 4;
  const first = Math.ceil(fromMs / stepMs) * stepMs;
  return [0, 1, 2, 3, 4].map((index) => first + index * stepMs).filter((ms) => ms < fromMs + hours * HOUR_MS);
}

export function Timeline({ outlook, slots, blocked, ...given }: TimelineProps) {
  const app = useApp();
  const words = say(lineWords);
  const { desk, watch, refusal, walks, hold } = given;
  const [hours, setHours] = useState<number>(2);
  const [width, setWidth] = useState(600);
  const axis = useRef<HTMLDivElement>(null);
  useEffect(() => {
    const element = axis.current;
    if (!element) return;
    const watcher = new ResizeObserver(() => setWidth(Math.max(120, Math.floor(element.clientWidth))));
    watcher.observe(element);
    return () => watcher.disconnect();
  }, []);
  // Rows move with each look, not each second: they say the same, and a slow tablet has better things to do.
  const { nowMs } = outlook.pace;
  const zone = app.store.floor().lines.get(outlook.line)?.zone ?? 'UTC';
  const toX = (ms: number) => Math.max(0, ((ms - nowMs) / (hours * HOUR_MS)) * width);
  const stops = outlook.calendar.fromMs
    .map((fromMs, index) => ({ fromMs, toMs: outlook.calendar.toMs[index] ?? fromMs }))
    .filter((stop) => stop.toMs > nowMs && stop.fromMs < nowMs + hours * HOUR_MS);
  return (
    <div class="timeline" data-testid="timeline">
      <div class="axisrow">
        <div class="choice">
          {HORIZONS.map((each) => (
            <button type="button" key={each} aria-pressed={hours === each} onClick={() => setHours(each)}>
              {words.horizon(each)}
            </button>
          ))}
        </div>
        <div class="axis" ref={axis}>
          <i style={{ left: 0 }}>{words.now}</i>
          {axisTicks(nowMs + (HOUR_MS * hours * NOW_WIDTH) / width, hours)
            .filter((ms) => toX(ms) < width - NOW_WIDTH / 2)
            .map((ms) => (
              <i key={ms} style={{ left: `${toX(ms)}px` }}>
                {formatTime(ms, zone)}
              </i>
            ))}
          {stops.map((stop) => (
            <span
              key={stop.fromMs}
              class="standstill"
              title={words.shiftBreak}
              style={{
                left: `${toX(stop.fromMs)}px`,
                width: `${Math.min(width, toX(stop.toMs)) - toX(stop.fromMs)}px`,
              }}
            />
          ))}
        </div>
      </div>
      {slots.map((slot) => (
        <SlotRow
          key={slot.slot}
          slot={slot}
          isBlocked={blocked.has(slot.slot)}
          geometry={{ nowMs, zone, width, toX }}
          band={bandOf(walks, slot.slot)}
          desk={desk}
          watch={watch}
          refusal={refusal}
          hold={hold}
        />
      ))}
    </div>
  );
}

/** The walk that serves a slot: its number in the list, and when. */
interface Band {
  readonly number: number;
  readonly startMs: number;
  readonly endMs: number;
}

function bandOf(walks: WalkPlan | null, slot: string): Band | null {
  const at = walks?.walks.findIndex((walk) => walk.splices.some((splice) => splice.slot.slot === slot));
  const walk = at === undefined || at < 0 ? undefined : walks?.walks[at];
  return at === undefined || !walk ? null : { number: at + 1, startMs: walk.startMs, endMs: walk.endMs };
}

interface Geometry {
  readonly nowMs: number;
  readonly zone: string;
  readonly width: number;
  readonly toX: (ms: number) => number;
}

const tones = { quiet: 'plain', soon: 'care', due: 'care', late: 'stop' } as const;

function SlotRow(props: {
  readonly slot: SlotOutlook;
  readonly isBlocked: boolean;
  readonly geometry: Geometry;
  readonly band: Band | null;
  readonly desk: DeskRun;
  readonly watch: Watch;
  readonly refusal: string | null;
  readonly hold: string | null;
}) {
  const words = say(lineWords);
  const { slot, isBlocked, geometry, band, desk, watch, refusal, hold } = props;
  const { nowMs, zone, toX, width } = geometry;
  const { forecast, warning } = slot;
  const inSeconds = (forecast.runOutMs.expected - nowMs) / 1000;
  const level = warning.level;
  const waits = level !== 'quiet' && slot.acknowledged !== level;
  const joint =
    slot.estimate.runningIndex < slot.loaded.tapes.length - 1 &&
    slot.estimate.running !== null &&
    slot.estimate.parts;
  const jointX =
    joint && slot.estimate.running !== null
      ? toX(nowMs + (forecast.runOutMs.expected - nowMs) * (slot.estimate.running / joint))
      : null;
  const { windowMs } = forecast;
  return (
    <div
      class={`slotrow ${level}${isBlocked ? ' blocked' : ''}`}
      data-testid={`row-${slot.slot}`}
      data-level={level}
    >
      <div class="who">
        <b class="code">{slot.slot}</b>
        <span class="code">{slot.loaded.tapes.at(-1)?.part || slot.wanted.part}</span>
        {isBlocked && (
          <p class="chip stop" data-testid={`blocked-${slot.slot}`}>
            <VerdictShape verdict="refused" size={20} /> {words.blocked}
          </p>
        )}
      </div>
      <div class="strip">
        {band !== null && toX(band.startMs) < width && (
          <span
            class="walkband"
            title={words.walk(band.number)}
            style={{
              // As wide as its number at least, and within the strip.
              left: `${Math.max(0, Math.min(toX(band.startMs), width - WALK_MIN_PX))}px`,
              width: `${Math.max(WALK_MIN_PX, Math.min(width, toX(band.endMs)) - toX(band.startMs))}px`,
            }}
          >
            {band.number}
          </span>
        )}
        <TapeStrip
          width={width}
          early={toX(forecast.runOutMs.early)}
          late={toX(forecast.runOutMs.late)}
          opens={windowMs === null ? null : toX(windowMs.opens)}
          closes={windowMs === null ? null : toX(windowMs.closes)}
          joint={jointX}
          tone={tones[level]}
        />
      </div>
      <div class="due">
        <b>
          {level !== 'quiet' && <i>{words.levels[level]}</i>}
          {sayDue(inSeconds)}
        </b>
        <span>
          {formatTime(forecast.runOutMs.expected, zone)} · {words.parts(Math.round(slot.estimate.parts ?? 0))}{' '}
          ± {formatCount(Math.max(1, slot.estimate.sd))}
        </span>
        {hold !== null && <small>{hold}</small>}
      </div>
      <div class="acts">
        {waits && (
          <Button
            onPress={() => void watch.acknowledge(slot)}
            testId={`ack-${slot.slot}`}
            disabledReason={refusal}
            label={`${words.acknowledge} ${slot.slot}`}
          >
            {words.acknowledge}
          </Button>
        )}
        <Button
          tone={level === 'due' || level === 'late' ? 'act' : 'plain'}
          onPress={() => desk.chooseSlot(slot.slot)}
          testId={`splice-${slot.slot}`}
          label={`${words.splice} ${slot.slot}`}
        >
          {words.splice}
        </Button>
      </div>
      <p class="when">
        {sayStretch(words.between, [forecast.runOutMs.early, forecast.runOutMs.late], geometry)}
        {` · ${words.lossIs(formatShare(slot.loss.mean))}`}
        {slot.turn?.after != null && ` · ${words.feedsAfter(slot.turn.after)}`}
        {slot.turn?.backup != null && ` · ${words.backup(slot.turn.backup)}`}
        {` · ${windowMs === null ? say(feederTypeWords).windowUnknown : sayWindow(windowMs, geometry)}`}
      </p>
    </div>
  );
}

/** How far away a run-out is; what passed more than a minute ago says so. */
function sayDue(inSeconds: number): string {
  const words = say(lineWords);
  if (inSeconds > 0) return words.inTime(formatSpan(inSeconds));
  return inSeconds > -60 ? words.overdue : words.ago(formatSpan(-inSeconds));
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
