// The questions of a shift's report, each as one answer and the bars that show it: pure, so that screen, CSV, PNG and paper say the same.

import type { FloorState } from '../../../../shared/floor/state.ts';
import type { ShiftReport } from '../../../../shared/shift/report.ts';
import { lineWords } from '../../words/line.ts';
import { shiftWords } from '../../words/shift.ts';
import { verdictWords } from '../../words/verdict.ts';
import { formatCount, formatDay, formatShare, formatSpan, formatTime, say } from '../../words/words.ts';
import { attritionPlots } from './attrition-plots.ts';
import { dryPlot } from './dry-plot.ts';
import { MOST_BARS, type Plot } from './plot.ts';

const MINUTE_MS = 60_000;

const spanOf = ({ fromMs, toMs }: { readonly fromMs: number; readonly toMs: number }) => toMs - fromMs;

/** The questions of a report, in their order; what lost parts cost is asked where a price is known. `nowMs` ends what still goes on. */
export function shiftPlots(report: ShiftReport, floor: FloorState, nowMs: number): readonly Plot[] {
  const zone = floor.lines.get(report.line)?.zone ?? 'UTC';
  return [
    dryPlot(report, zone),
    splicesPlot(report, zone),
    stopsPlot(report),
    changesPlot(report, floor, { zone, nowMs }),
    feedersPlot(report),
    ...attritionPlots(floor, report.parts),
    reasonsPlot(report),
  ];
}

function splicesPlot({ hours, splices, walks }: ShiftReport, zone: string): Plot {
  const words = say(shiftWords);
  return {
    id: 'splices',
    question: words.splicesHour,
    answer: splices === 0 ? words.splicesNone : words.splices(splices, walks),
    unit: 'splices',
    isByHour: true,
    bars:
      splices === 0
        ? []
        : hours.map(({ fromMs, splices: value }) => ({
            name: formatTime(fromMs, zone),
            value,
            text: formatCount(value),
          })),
  };
}

function stopsPlot({ stops }: ShiftReport): Plot {
  const words = say(shiftWords);
  const byReason = new Map<string, { ms: number; times: number }>();
  for (const stop of stops) {
    const name = stop.reason === null ? words.notSaid : say(lineWords).stopReasons[stop.reason];
    const seen = byReason.get(name) ?? { ms: 0, times: 0 };
    byReason.set(name, { ms: seen.ms + spanOf(stop), times: seen.times + 1 });
  }
  const allMs = stops.reduce((sum, stop) => sum + spanOf(stop), 0);
  return {
    id: 'stops',
    question: words.stops,
    answer: stops.length === 0 ? words.stopsNone : words.stopsSome(stops.length, formatSpan(allMs / 1000)),
    unit: 'minutes',
    bars: [...byReason]
      .sort(([, a], [, b]) => b.ms - a.ms)
      .slice(0, MOST_BARS)
      .map(([name, { ms, times }]) => ({
        name,
        value: ms / MINUTE_MS,
        text: `${formatSpan(ms / 1000)} · ${words.times(times)}`,
      })),
  };
}

function changesPlot(
  { changes, fromMs }: ShiftReport,
  floor: FloorState,
  { zone, nowMs }: { readonly zone: string; readonly nowMs: number },
): Plot {
  const words = say(shiftWords);
  return {
    id: 'changes',
    question: words.changes,
    answer: changes.length === 0 ? words.changesNone : words.changesSome(changes.length),
    unit: 'minutes',
    bars: changes.slice(0, MOST_BARS).map(({ setup, beganMs, releasedMs }) => {
      const ms = (releasedMs ?? nowMs) - beganMs;
      const began = beganMs < fromMs ? formatDay(beganMs, zone) : formatTime(beganMs, zone);
      const product = floor.setups.get(setup)?.product ?? setup;
      const span = formatSpan(ms / 1000);
      return {
        name: `${began} ${product}`,
        value: ms / MINUTE_MS,
        text: releasedMs === null ? `${span} · ${words.notReleased}` : span,
      };
    }),
  };
}

function feedersPlot({ feeders }: ShiftReport): Plot {
  const words = say(shiftWords);
  const lost = feeders.reduce((sum, each) => sum + each.lost, 0);
  const picks = feeders.reduce((sum, each) => sum + each.picks, 0);
  const isCertain = feeders.every(({ sd }) => sd === 0);
  return {
    id: 'feeders',
    question: words.feeders,
    answer:
      feeders.length === 0
        ? words.feedersNone
        : words.feedersSome(`${isCertain ? '' : '≈ '}${formatCount(lost)}`, formatCount(picks)),
    unit: 'parts',
    bars: feeders.slice(0, MOST_BARS).map((each) => {
      const share = formatShare(each.lost / each.picks);
      const lost =
        each.sd === 0
          ? formatCount(each.lost)
          : `${formatCount(each.lost)} ± ${formatCount(Math.ceil(each.sd))}`;
      return {
        name: each.feeder,
        isCode: true,
        value: each.lost,
        text: `${lost} · ${each.before === null ? share : words.share(share, formatShare(each.before))}`,
      };
    }),
  };
}

function reasonsPlot({ reasons, verdicts }: ShiftReport): Plot {
  const words = say(shiftWords);
  const titles: Readonly<Record<string, { readonly title: string } | undefined>> = say(verdictWords).reasons;
  const all = verdicts.accepted + verdicts.refused + verdicts.held;
  return {
    id: 'reasons',
    question: words.reasons,
    answer:
      reasons.length === 0 ? words.reasonsNone(all) : words.reasonsSome(verdicts.refused, verdicts.held, all),
    unit: 'times',
    bars: reasons.slice(0, MOST_BARS).map(({ code, verdict, times }) => ({
      name: titles[code]?.title ?? say(verdictWords)[verdict],
      value: times,
      text: words.times(times),
    })),
  };
}
