// One slot in one line: which, with what on it, its tape along the axis, and when that is empty.

import { moreBy } from '../../../../shared/floor/packs.ts';
import type { SlotOutlook } from '../../../../shared/outlook/line.ts';
import { Button } from '../../ui/Button.tsx';
import { VerdictShape } from '../../ui/Shape.tsx';
import { TapeStrip } from '../../ui/TapeStrip.tsx';
import { feedWords } from '../../words/feeds.ts';
import { lineWords } from '../../words/line.ts';
import { formatCount, formatSpan, formatTime, say } from '../../words/words.ts';
import type { Geometry } from './axis.ts';

/** A walk's band is at least this wide, px with letters of the usual size: its number must be read. */
const WALK_MIN_PX = 24;
/** Of a tape in its row, px. */
const TAPE_PX = 34;

/** A walk that serves a slot. */
export interface Band {
  readonly number: number;
  readonly startMs: number;
  readonly endMs: number;
}

/** Told apart without colour too: a ring, a disc, a triangle before the word. */
export const levelShapes = { quiet: '', soon: '○', due: '●', late: '▲' } as const;

const tones = { quiet: 'plain', soon: 'care', due: 'care', late: 'stop' } as const;

export function SlotRow(props: {
  readonly slot: SlotOutlook;
  readonly isBlocked: boolean;
  readonly geometry: Geometry;
  readonly band: Band | null;
  readonly hold: string | null;
  readonly onOpen: (slot: string) => void;
  readonly onSplice: (slot: string) => void;
}) {
  const words = say(lineWords);
  const { slot, isBlocked, geometry, band, hold, onOpen, onSplice } = props;
  const { nowMs, zone } = geometry;
  const { level } = slot.warning;
  const runOutMs = slot.forecast.runOutMs.expected;
  return (
    <div
      class={`slotrow ${level}${isBlocked ? ' blocked' : ''}`}
      data-testid={`row-${slot.slot}`}
      data-level={level}
    >
      <button
        type="button"
        class="opens"
        aria-haspopup="dialog"
        data-testid={`open-${slot.slot}`}
        onClick={() => onOpen(slot.slot)}
      >
        <span class="who">
          <b class="code">{slot.slot}</b>
          {isBlocked ? (
            <span class="mark stop" data-testid={`blocked-${slot.slot}`}>
              <VerdictShape verdict="refused" size={18} /> {words.blocked}
            </span>
          ) : (
            level !== 'quiet' && (
              <span class="mark">
                {levelShapes[level]} {sayLevel(slot)}
              </span>
            )
          )}
          <span class="part code">{slot.loaded.tapes.at(-1)?.part || slot.wanted.part}</span>
        </span>
        <span class="strip">
          <Tape slot={slot} geometry={geometry} band={band} height={TAPE_PX} />
        </span>
        <span class="due">
          <b>{sayDue((runOutMs - nowMs) / 1000)}</b>
          <span>
            {formatTime(runOutMs, zone)}
            <span class="parts"> · {sayLeft(slot)}</span>
          </span>
          {hold !== null && <span class="hidden">{hold}</span>}
        </span>
        {slot.turn !== null && <span class="turn">{sayTurn(slot).join(' · ')}</span>}
      </button>
      <Button
        tone="quiet"
        onPress={() => onSplice(slot.slot)}
        testId={`splice-${slot.slot}`}
        label={`${moreWord(slot)} ${slot.slot}`}
      >
        {moreWord(slot)}
      </Button>
    </div>
  );
}

/** A slot's tape along an axis, with its splice window, its joint, and the walk that comes for it. */
export function Tape(props: {
  readonly slot: SlotOutlook;
  readonly geometry: Geometry;
  readonly band: Band | null;
  readonly height: number;
}) {
  const words = say(lineWords);
  const { band, height } = props;
  const { forecast, estimate, loaded, warning } = props.slot;
  const { nowMs, toX, width, scale } = props.geometry;
  const least = WALK_MIN_PX * scale;
  const { windowMs, runOutMs } = forecast;
  const { running, parts } = estimate;
  const hasJoint = estimate.runningIndex < loaded.tapes.length - 1 && running !== null && !!parts;
  return (
    <>
      {band !== null && toX(band.startMs) < width && (
        <span
          class="walkband"
          title={words.walk(band.number)}
          style={{
            // As wide as its number at least, and within the strip.
            left: `${Math.max(0, Math.min(toX(band.startMs), width - least))}px`,
            width: `${Math.max(least, Math.min(width, toX(band.endMs)) - toX(band.startMs))}px`,
          }}
        >
          {band.number}
        </span>
      )}
      <TapeStrip
        width={width}
        height={height}
        early={toX(runOutMs.early)}
        late={toX(runOutMs.late)}
        opens={windowMs === null ? null : toX(windowMs.opens)}
        closes={windowMs === null ? null : toX(windowMs.closes)}
        joint={hasJoint ? toX(nowMs + ((runOutMs.expected - nowMs) * running) / parts) : null}
        tone={tones[warning.level]}
      />
    </>
  );
}

/** What brings more of the part: a splice, or for what is no tape an exchange or a refill. */
export function moreWord({ feeds }: SlotOutlook): string {
  return say(feedWords).acts[moreBy(feeds)];
}

/** How urgent it is; what is due is no splice where no tape feeds. */
export function sayLevel({ warning: { level }, feeds }: SlotOutlook): string {
  return level === 'due' ? say(feedWords).dueNow[moreBy(feeds)] : say(lineWords).levels[level];
}

/** How far away a run-out is; what passed more than a minute ago says so. */
export function sayDue(inSeconds: number): string {
  const words = say(lineWords);
  if (inSeconds > 0) return words.inTime(formatSpan(inSeconds));
  return inSeconds > -60 ? words.overdue : words.ago(formatSpan(-inSeconds));
}

/** `202 parts ± 5` */
export function sayLeft({ estimate }: SlotOutlook): string {
  return `${say(lineWords).parts(Math.round(estimate.parts ?? 0))} ± ${formatCount(Math.max(1, estimate.sd))}`;
}

/** Which slot feeds before this one, and which takes over. */
export function sayTurn({ turn }: SlotOutlook): readonly string[] {
  const words = say(lineWords);
  return [
    ...(turn?.after == null ? [] : [words.feedsAfter(turn.after)]),
    ...(turn?.backup == null ? [] : [words.backup(turn.backup)]),
  ];
}
