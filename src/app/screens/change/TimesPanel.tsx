// Where the time went: this changeover against earlier ones of the same pair, by person, by act, and what could be done before.

import { useEffect, useState } from 'preact/hooks';
import {
  type ChangeTimes,
  changeTimes,
  couldBeOutside,
  earlierOfPair,
  lastGoodPanelMs,
  type MarkKind,
  savedAtMost,
  type TimeMark,
  unpausedSeconds,
} from '../../../../shared/changeover/times.ts';
import type { ChecklistStep } from '../../../../shared/floor/checklist.ts';
import type { FloorEntry } from '../../../../shared/floor/kinds.ts';
import { lineEver } from '../../../../shared/floor/lanes.ts';
import type { Changeover, FloorState } from '../../../../shared/floor/state.ts';
import { median } from '../../../../shared/kit/median.ts';
import { useApp, useFloor } from '../../app.ts';
import { readSince } from '../../read-since.ts';
import { sayText } from '../../words/shipped-steps.ts';
import { timesWords } from '../../words/times.ts';
import { formatDay, formatSpan, say } from '../../words/words.ts';
import { checklistOf, templateOf } from './checklist-desk.ts';
import { pausesOf } from './past.ts';
import { TimesPicture } from './TimesPicture.tsx';

/** Rows shown of a list that may be long. */
const MOST_ROWS = 8;

export function TimesPanel({ changeover }: { readonly changeover: Changeover }) {
  const app = useApp();
  const floor = useFloor();
  const words = say(timesWords);
  const [entries, setEntries] = useState<readonly FloorEntry[] | null>(null);
  const { tick } = app;
  useEffect(() => {
    readSince(app.store, changeover.beganMs).then(setEntries, () => undefined); // a failed read is shown by the fault screen
  }, [changeover.changeover, tick.value]);
  if (entries === null) return <p class="soft">{words.loading}</p>;
  const nowMs = app.nowMs.value;
  const pauses = pausesOf(floor, changeover.line, changeover.releasedMs ?? nowMs);
  const times = changeTimes(floor, changeover, { entries, nowMs, pauses });
  const list = checklistOf(floor, changeover);
  const steps = (list ? templateOf(floor, list)?.steps : null) ?? [];
  const isStopped = floor.runs.get(floor.current.get(changeover.line) ?? '')?.phase === 'stopped';
  const seen: Seen = { floor, changeover, times, steps, pauses };
  return (
    <section class="stack" data-testid="times">
      {times.stoodMs === null && <p>{isStopped ? words.stopped : words.running}</p>}
      <Bars
        rows={[
          { key: 'standing', label: words.standing, seconds: times.standingSeconds, tone: 'care' },
          { key: 'external', label: words.external, seconds: times.externalSeconds, tone: 'go' },
        ]}
      />
      {times.pausedSeconds > 0 && <p class="soft">{words.paused(formatSpan(times.pausedSeconds))}</p>}
      <Where {...seen} />
      <Before {...seen} />
      <People {...seen} />
    </section>
  );
}

/** One changeover as it was seen. */
interface Seen {
  readonly floor: FloorState;
  readonly changeover: Changeover;
  readonly times: ChangeTimes;
  readonly steps: readonly ChecklistStep[];
  readonly pauses: ReturnType<typeof pausesOf>;
}

const personOf = (floor: FloorState, who: string | null) =>
  floor.people.get(who ?? '')?.name ?? who ?? say(timesWords).nobody;

/** The longest acts, and which of them could be done before the line stands. */
function Where({ floor, changeover, times, steps, pauses }: Seen) {
  const words = say(timesWords);
  const nameOf = ({ kind, what }: { readonly kind: MarkKind; readonly what: string }) => {
    const step = kind === 'step' || kind === 'skip' ? steps.find((each) => each.step === what) : undefined;
    return step ? sayText(step.text) : `${what} · ${words.kinds[kind]}`;
  };
  const outside = couldBeOutside(times, steps);
  const isOutside = (mark: TimeMark) =>
    mark.kind === 'step' && mark.wasStanding && outside.some((each) => each.step === mark.what);
  // What a person made ready before the line stood is no standing time.
  const timeOf = (mark: TimeMark) => (mark.wasStanding ? mark.standingSeconds : mark.seconds);
  const longest = times.marks
    .filter((mark) => mark.wasStanding === (times.stoodMs !== null))
    .sort((a, b) => timeOf(b) - timeOf(a))
    .slice(0, MOST_ROWS);
  if (longest.length === 0)
    return (
      <>
        <h2>{words.where}</h2>
        <p class="soft">{words.none}</p>
      </>
    );
  const saved = savedAtMost(times, steps, pauses);
  return (
    <>
      <h2>{words.where}</h2>
      <TimesPicture
        times={times}
        pauses={pauses}
        isOutside={isOutside}
        nameOf={nameOf}
        personOf={(who) => personOf(floor, who)}
        beganMs={changeover.beganMs}
        listed={longest}
      />
      <h3>{words.steps}</h3>
      <ol class="act-list">
        {longest.map((mark) => (
          <li key={`${mark.kind}${mark.what}${mark.atMs}`}>
            <span>
              {nameOf(mark)} <span class="soft">· {personOf(floor, mark.who)}</span>
              {isOutside(mark) && <span class="soft"> · ◇ {words.legend.outside}</span>}
            </span>
            <b>{formatSpan(timeOf(mark))}</b>
          </li>
        ))}
      </ol>
      <p class="soft">{words.how}</p>
      {times.stoodMs !== null && (
        <>
          <h2>{words.outside}</h2>
          <p data-testid="times-saved">
            {outside.length === 0 ? words.noneOutside : words.saved(outside.length, formatSpan(saved))}
          </p>
          {outside.length > 0 && (
            <ul class="outside" data-testid="times-outside">
              {outside.slice(0, MOST_ROWS).map((each) => (
                <li key={each.step}>
                  <b>{formatSpan(each.seconds)}</b> {nameOf({ kind: 'step', what: each.step })}{' '}
                  <span class="soft">{words[each.why]}</span>
                </li>
              ))}
            </ul>
          )}
        </>
      )}
    </>
  );
}

/** This changeover against earlier ones of the same pair. */
function Before({ floor, changeover, times }: Seen) {
  const words = say(timesWords);
  const zone = lineEver(floor, changeover.line)?.zone ?? 'UTC';
  const earlier = earlierOfPair(floor, changeover).map((each) => {
    const fromMs = lastGoodPanelMs(floor, each) ?? each.beganMs;
    const toMs = each.releasedMs ?? fromMs;
    const seconds = unpausedSeconds(fromMs, toMs, pausesOf(floor, each.line, toMs));
    return { key: each.changeover, label: formatDay(each.beganMs, zone), seconds };
  });
  const middle = median(earlier.map((each) => each.seconds));
  return (
    <>
      <h2>{words.before}</h2>
      {middle === null ? (
        <p class="soft">{words.noneBefore}</p>
      ) : (
        <>
          {times.stoodMs !== null && (
            <p data-testid="times-median">
              {words.median(earlier.length, formatSpan(middle))} {sayAgainst(times.standingSeconds - middle)}
            </p>
          )}
          <Bars
            median={middle}
            rows={[
              { key: 'this', label: words.thisOne, seconds: times.standingSeconds, tone: 'care' },
              ...earlier.slice(0, MOST_ROWS).map((each) => ({ ...each, tone: 'plain' as const })),
            ]}
          />
        </>
      )}
    </>
  );
}

/** Who spent how long, and what they made ready before. */
function People({ floor, times }: Seen) {
  const words = say(timesWords);
  if (times.persons.length === 0) return null;
  const row = ({ who, seconds, standingSeconds, marks }: ChangeTimes['persons'][number]): Row => {
    const label = `${personOf(floor, who)} · ${words.marks(marks)}`;
    const key = who ?? '';
    if (times.stoodMs === null) return { key, label, seconds, tone: 'plain' };
    const before = seconds - standingSeconds;
    const ready = before > 0 ? ` · ${words.madeReady(formatSpan(before))}` : '';
    return { key, label: `${label}${ready}`, seconds: standingSeconds, tone: 'plain' };
  };
  return (
    <>
      <h2>{words.people}</h2>
      <Bars rows={times.persons.map(row)} />
    </>
  );
}

/** Longer or shorter than the median, by how much. */
function sayAgainst(seconds: number): string {
  const words = say(timesWords);
  if (Math.abs(seconds) < 30) return words.asMedian;
  const span = formatSpan(Math.abs(seconds));
  return seconds > 0 ? words.longer(span) : words.shorter(span);
}

interface Row {
  readonly key: string;
  readonly label: string;
  readonly seconds: number;
  readonly tone: 'plain' | 'go' | 'care';
}

/** Lengths of time side by side, to one scale; a line across where the median is. */
function Bars({ rows, median }: { readonly rows: readonly Row[]; readonly median?: number }) {
  const longest = Math.max(1, median ?? 0, ...rows.map((row) => row.seconds));
  const share = (seconds: number) => `${(seconds / longest) * 100}%`;
  return (
    <div class="bars">
      {rows.map((row) => (
        <div class="bar" key={row.key}>
          <span>{row.label}</span>
          <b>{formatSpan(row.seconds)}</b>
          <span class="full">
            <i class={row.tone} style={{ width: share(row.seconds) }} />
            {median !== undefined && <i class="median" style={{ left: share(median) }} />}
          </span>
        </div>
      ))}
      {median !== undefined && <p class="soft">┃ {say(timesWords).medianMark(formatSpan(median))}</p>}
    </div>
  );
}
