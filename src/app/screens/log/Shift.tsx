// The shift's report: its questions, each with its answer and the bars that show it; as a file, as a picture, on paper.

import { useComputed } from '@preact/signals';
import { useEffect, useMemo, useRef, useState } from 'preact/hooks';
import type { FloorEntry } from '../../../../shared/floor/kinds.ts';
import { plantDay } from '../../../../shared/floor/plant-day.ts';
import { shiftAt } from '../../../../shared/forecast/calendar.ts';
import { linePlan } from '../../../../shared/forecast/line-calendar.ts';
import { shiftReport } from '../../../../shared/shift/report.ts';
import { useApp, useFloor } from '../../app.ts';
import { printsLabels } from '../../device/prints-labels.ts';
import { letOut } from '../../let-out.ts';
import type { Watch } from '../../outlook/watch.ts';
import { readSince } from '../../read-since.ts';
import { Button } from '../../ui/Button.tsx';
import { ChoiceField } from '../../ui/Field.tsx';
import { shellWords } from '../../words/shell.ts';
import { shiftWords } from '../../words/shift.ts';
import { formatDay, formatTime, say } from '../../words/words.ts';
import { Handover } from './Handover.tsx';
import { layOnePage } from './one-page.ts';
import type { Bar, Plot } from './plot.ts';
import { plotToCsv, plotToPng } from './shift-files.ts';
import { shiftPlots } from './shift-plots.ts';
import { beginOf, endOf, type ShiftChoice, spanHours, wholeMinute } from './shift-span.ts';
import './shift.css';

const HOUR_MS = 3_600_000;
/** Read before the span as well: a stop that began there has its reason there. */
const BEFORE_MS = 12 * HOUR_MS;

/** The entries that a span asks for; null until they are read. Read anew with the log. */
function useEntries(sinceMs: number | null): readonly FloorEntry[] | null {
  const app = useApp();
  const [entries, setEntries] = useState<readonly FloorEntry[] | null>(null);
  useEffect(() => {
    if (sinceMs === null) return undefined;
    let isOver = false;
    readSince(app.store, sinceMs).then(
      (found) => {
        if (!isOver) setEntries(found);
      },
      () => undefined, // a closed database is told by the fault screen
    );
    return () => {
      isOver = true;
    };
  }, [sinceMs, app.tick.value]);
  return entries;
}

/** Puts the report on one page whenever the browser prints it, by the button or by its own menu; not where labels are what it prints. */
function useOnePage() {
  const report = useRef<HTMLElement>(null);
  useEffect(() => {
    let end = () => {};
    const over = () => {
      end();
      end = () => {};
    };
    const begin = () => {
      over();
      if (report.current && !printsLabels()) end = layOnePage(report.current);
    };
    addEventListener('beforeprint', begin);
    addEventListener('afterprint', over);
    return () => {
      over();
      removeEventListener('beforeprint', begin);
      removeEventListener('afterprint', over);
    };
  }, []);
  return report;
}

export function Shift({ watch }: { readonly watch: Watch }) {
  const app = useApp();
  const floor = useFloor();
  const words = say(shiftWords);
  const paper = useOnePage();
  const line = app.line.value;
  const minuteMs = useComputed(() => wholeMinute(app.nowMs.value)).value;
  const plan = line === null ? null : linePlan(floor, line);
  const shift = plan && shiftAt(plan, minuteMs);
  const [chosen, setChosen] = useState<ShiftChoice>(shift ? 'shift' : 8);
  const fromMs = beginOf(chosen, shift?.fromMs ?? null, minuteMs);
  const [readFromMs, setReadFrom] = useState(fromMs - BEFORE_MS);
  const wantedFromMs = fromMs - BEFORE_MS;
  useEffect(() => {
    if (wantedFromMs < readFromMs || wantedFromMs > readFromMs + HOUR_MS) setReadFrom(wantedFromMs);
  }, [wantedFromMs, readFromMs]);
  const entries = useEntries(line === null ? null : readFromMs);
  // Each minute and with each entry anew, but not at each tick of the clock.
  const { report, toMs } = useMemo(() => {
    const endMs = endOf(app.clock.nowMs());
    const isRead = line !== null && entries !== null;
    return {
      toMs: endMs,
      report: isRead ? shiftReport(floor, entries, { line, fromMs, toMs: endMs }) : null,
    };
  }, [entries, line, fromMs, minuteMs]);
  if (line === null) return <p class="empty">{say(shellWords).noLine}</p>;
  const zone = floor.lines.get(line)?.zone ?? 'UTC';
  const isSameDay = plantDay(floor, line, fromMs) === plantDay(floor, line, toMs);
  const title = words.title(
    floor.lines.get(line)?.name ?? line,
    `${formatDay(fromMs, zone)} – ${isSameDay ? formatTime(toMs, zone) : formatDay(toMs, zone)}`,
  );
  return (
    <section class="shift" data-testid="shift" ref={paper}>
      <div class="shift-head">
        <h2>{title}</h2>
        <ChoiceField<ShiftChoice>
          label={words.span}
          value={chosen}
          choices={[
            ...(shift ? [{ value: 'shift' as const, text: words.thisShift, testId: 'span-shift' }] : []),
            ...spanHours.map((hours) => ({
              value: hours,
              text: words.lastHours(hours),
              testId: `span-${hours}`,
            })),
          ]}
          onChoose={setChosen}
        />
        <Button onPress={() => window.print()} testId="shift-print">
          {words.print}
        </Button>
      </div>
      <Handover key={line} line={line} watch={watch} />
      {report === null ? (
        <p class="empty">{words.reading}</p>
      ) : (
        <div class="plots">
          {shiftPlots(report, floor, toMs).map((plot) => (
            <PlotCard key={plot.id} plot={plot} title={title} />
          ))}
        </div>
      )}
      <p class="soft">{words.onlyEntered}</p>
    </section>
  );
}

function PlotCard({ plot, title }: { readonly plot: Plot; readonly title: string }) {
  const app = useApp();
  const words = say(shiftWords);
  const savePicture = () => {
    void plotToPng(plot, title, document.documentElement.dir === 'rtl').then((picture) => {
      if (picture) letOut(app, `${plot.id}.png`, picture);
    });
  };
  return (
    <section class="card plot" data-testid={`plot-${plot.id}`}>
      <h3>{plot.question}</h3>
      <p>{plot.answer}</p>
      {plot.bars.length > 0 && <Bars plot={plot} />}
      {plot.note !== undefined && <p class="soft">{plot.note}</p>}
      <div class="row">
        <Button
          tone="quiet"
          label={words.asRows(plot.question)}
          onPress={() => letOut(app, `${plot.id}.csv`, new Blob([plotToCsv(plot)], { type: 'text/csv' }))}
          testId={`csv-${plot.id}`}
        >
          {words.rows}
        </Button>
        <Button
          tone="quiet"
          label={words.asPicture(plot.question)}
          onPress={savePicture}
          testId={`png-${plot.id}`}
        >
          {words.picture}
        </Button>
      </div>
    </section>
  );
}

function Bars({ plot: { bars, isByHour } }: { readonly plot: Plot }) {
  const largest = Math.max(...bars.map(({ value }) => value), 0) || 1;
  if (isByHour) return <Hours bars={bars} largest={largest} />;
  return (
    <ul>
      {bars.map(({ name, value, text, isCode }) => (
        <li key={`${name} ${text}`}>
          <span class={isCode ? 'code' : ''}>{name}</span>
          <i style={{ inlineSize: `${Math.round((value / largest) * 100)}%` }} aria-hidden="true" />
          <span>{text}</span>
        </li>
      ))}
    </ul>
  );
}

/** Names under the axis: as many as stand side by side on a phone. */
const MOST_NAMES = 6;

/** Hours side by side. */
function Hours({ bars, largest }: { readonly bars: readonly Bar[]; readonly largest: number }) {
  const every = Math.ceil(bars.length / MOST_NAMES);
  return (
    <ol class="hours">
      {bars.map(({ name, value, text }, at) => (
        <li key={`${at} ${name}`}>
          <span class="hidden">{name}</span>
          <span>{value > 0 ? text : ''}</span>
          <i style={{ blockSize: `${Math.round((value / largest) * 96)}px` }} aria-hidden="true" />
          <span aria-hidden="true">{at % every === 0 ? name : ''}</span>
        </li>
      ))}
    </ol>
  );
}
