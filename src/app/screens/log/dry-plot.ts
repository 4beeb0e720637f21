// Run-outs of a shift: how many were prevented and which were missed, as one question of the report. Pure, as the others.

import { formatMoment } from '../../../../shared/kit/moment.ts';
import type { Came } from '../../../../shared/shift/in-time.ts';
import type { ShiftReport } from '../../../../shared/shift/report.ts';
import { shiftWords } from '../../words/shift.ts';
import { formatSpan, formatTime, say } from '../../words/words.ts';
import { type Bar, MOST_BARS, type Plot } from './plot.ts';

const MINUTE_MS = 60_000;

/** Columns of a spreadsheet and what stands in the first: alike in every language, as those who compute with them need. */
const HEADS = ['run-out', 'time', 'slot', 'parts left by count', 'minutes stopped'] as const;
const called = { prevented: 'prevented', unsure: 'not sure', late: 'too late' } as const satisfies Record<
  Came['is'],
  string
>;

/** Did a slot run dry? Stops for an empty slot, and what came before one. `zone`: of the line, IANA. */
export function dryPlot({ dry, came }: Pick<ShiftReport, 'dry' | 'came'>, zone: string): Plot {
  const words = say(shiftWords);
  const allMs = dry.reduce((sum, { fromMs, toMs }) => sum + toMs - fromMs, 0);
  const prevented = came.filter(({ is }) => is === 'prevented').length;
  const unsure = came.filter(({ is }) => is === 'unsure').length;
  const counts: readonly Bar[] = [
    { name: words.prevented, value: prevented, text: words.times(prevented) },
    { name: words.unsure, value: unsure, text: words.times(unsure) },
  ];
  const missed = dry.map(
    ({ fromMs, toMs }): Bar => ({
      name: words.missedAt(formatTime(fromMs, zone)),
      value: 1,
      text: formatSpan((toMs - fromMs) / 1000),
    }),
  );
  return {
    id: 'dry',
    question: words.dry,
    answer: [
      dry.length === 0 ? words.dryNone : words.drySome(dry.length, formatSpan(allMs / 1000)),
      ...(prevented > 0 ? [words.preventedSome(prevented)] : []),
    ].join(' '),
    unit: 'times',
    bars: [...counts.filter(({ value }) => value > 0), ...missed].slice(0, MOST_BARS),
    ...(prevented + unsure > 0
      ? { note: [words.preventedMeans, ...(unsure > 0 ? [words.unsureMeans] : [])].join(' ') }
      : {}),
    table: { heads: HEADS, rows: rowsOf(dry, came) },
  };
}

function rowsOf(dry: ShiftReport['dry'], came: ShiftReport['came']): NonNullable<Plot['table']>['rows'] {
  const rows = [
    ...came.map(({ atMs, slot, left, is }) => ({ atMs, row: [called[is], slot, left, null] as const })),
    ...dry.map(({ fromMs, toMs }) => ({
      atMs: fromMs,
      row: ['missed', null, null, Math.round(((toMs - fromMs) / MINUTE_MS) * 1000) / 1000] as const,
    })),
  ];
  return rows
    .sort((a, b) => a.atMs - b.atMs)
    .map(({ atMs, row: [is, ...facts] }) => [is, formatMoment(atMs), ...facts]);
}
