// Where the time went: this changeover against earlier ones of the same pair, by person, by act, and what could be done before.

import { useEffect, useState } from 'preact/hooks';
import { inLanguage } from '../../../../shared/changeover/checklist-steps.ts';
import {
  changeTimes,
  couldBeOutside,
  earlierOfPair,
  lastGoodPanelMs,
  type TimeMark,
  unpausedSeconds,
} from '../../../../shared/changeover/times.ts';
import type { FloorEntry } from '../../../../shared/setup/kinds.ts';
import type { Changeover } from '../../../../shared/setup/state.ts';
import { useApp, useFloor } from '../../app.ts';
import { timesWords } from '../../words/times.ts';
import { formatDay, formatSpan, language, say } from '../../words/words.ts';
import { checklistOf, templateOf } from './checklist-desk.ts';
import { pausesOf, readSince } from './past.ts';

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
  const times = changeTimes(floor, changeover, {
    ...{ entries, nowMs, pauses: pausesOf(floor, changeover.line, nowMs) },
  });
  const list = checklistOf(floor, changeover);
  const template = list ? templateOf(floor, list) : null;
  const steps = template?.steps ?? [];
  const nameOf = (what: string) => {
    const step = steps.find((each) => each.step === what);
    return step ? inLanguage(step.text, language.value) : what;
  };
  const outside = couldBeOutside(times, steps);
  const zone = floor.lines.get(changeover.line)?.zone ?? 'UTC';
  const earlier = earlierOfPair(floor, changeover)
    .slice(0, MOST_ROWS)
    .map((each) => {
      const pauses = pausesOf(floor, each.line, each.beganMs);
      const fromMs = lastGoodPanelMs(floor, each) ?? each.beganMs;
      const seconds = unpausedSeconds(fromMs, each.releasedMs ?? fromMs, pauses);
      return { key: each.changeover, label: formatDay(each.beganMs, zone), seconds };
    });
  const longest = [...times.marks].sort((a, b) => b.seconds - a.seconds).slice(0, MOST_ROWS);
  return (
    <section class="stack" data-testid="times">
      {times.stoodMs === null && <p>{words.running}</p>}
      <Bars
        rows={[
          { key: 'standing', label: words.standing, seconds: times.standingSeconds, tone: 'care' },
          { key: 'external', label: words.external, seconds: times.externalSeconds, tone: 'go' },
        ]}
      />
      {times.pausedSeconds > 0 && <p class="soft">{words.paused(formatSpan(times.pausedSeconds))}</p>}
      <h2>{words.before}</h2>
      {earlier.length === 0 ? (
        <p class="soft">{words.noneBefore}</p>
      ) : (
        <Bars
          rows={[
            { key: 'this', label: words.thisOne, seconds: times.standingSeconds, tone: 'care' },
            ...earlier.map((each) => ({ ...each, tone: 'plain' as const })),
          ]}
        />
      )}
      <h2>{words.people}</h2>
      {times.persons.length === 0 ? (
        <p class="soft">{words.none}</p>
      ) : (
        <Bars
          rows={times.persons.map(({ who, seconds, marks }) => ({
            ...{ key: who ?? '', seconds, tone: 'plain' as const },
            label: `${floor.people.get(who ?? '')?.name ?? who ?? words.nobody} · ${words.marks(marks)}`,
          }))}
        />
      )}
      {longest.length > 0 && (
        <>
          <h2>{words.steps}</h2>
          <Bars
            rows={longest.map((mark) => ({
              ...{ key: `${mark.kind}${mark.what}${mark.atMs}`, seconds: mark.seconds },
              ...{ label: `${nameOf(mark.what)} · ${words.kinds[mark.kind]}`, tone: toneOf(mark) },
            }))}
          />
          <p class="soft">{words.how}</p>
          <h2>{words.outside}</h2>
          {outside.length === 0 ? (
            <p class="soft">{words.noneOutside}</p>
          ) : (
            <ul class="outside" data-testid="times-outside">
              {outside.slice(0, MOST_ROWS).map((each) => (
                <li key={each.step}>
                  <b>{formatSpan(each.seconds)}</b> {nameOf(each.step)}{' '}
                  <span class="soft">{words[each.why]}</span>
                </li>
              ))}
            </ul>
          )}
        </>
      )}
    </section>
  );
}

const toneOf = (mark: TimeMark) => (mark.wasStanding ? ('care' as const) : ('go' as const));

interface Row {
  readonly key: string;
  readonly label: string;
  readonly seconds: number;
  readonly tone: 'plain' | 'go' | 'care';
}

/** Lengths of time side by side, to one scale. */
function Bars({ rows }: { readonly rows: readonly Row[] }) {
  const longest = Math.max(1, ...rows.map((row) => row.seconds));
  return (
    <div class="bars">
      {rows.map((row) => (
        <div class="bar" key={row.key}>
          <span>{row.label}</span>
          <b>{formatSpan(row.seconds)}</b>
          <i class={row.tone} style={{ width: `${(row.seconds / longest) * 100}%` }} />
        </div>
      ))}
    </div>
  );
}
