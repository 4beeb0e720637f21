// What does a view of all lines cost? The demo's lines multiplied, each panel of each line counted as it happens, data one second old: share of one
// core for looks, walks and glances together, as the page's watch over all lines does them (a line anew when something on it changed, else every
// 15 s). Baseline in the same run: every line looked at anew every second.

import { simulateLines } from '../../demo/more-lines.ts';
import { applyEntry } from '../../shared/floor/fold.ts';
import { emptyState } from '../../shared/floor/state.ts';
import { lineCalendar } from '../../shared/forecast/line-calendar.ts';
import type { LawMemory } from '../../shared/forecast/run-out.ts';
import { answerWalks } from '../../shared/forecast/walks.ts';
import { lineGlance } from '../../shared/outlook/glance.ts';
import { lineOutlook, type Outlook } from '../../shared/outlook/line.ts';
import { toWalkPlan, type WalkPlan, walkQuestion } from '../../shared/outlook/walks.ts';

const LINES = Number(process.env['REELWARD_LINES'] ?? 12);
const SECONDS = Number(process.env['REELWARD_SECONDS'] ?? 120);
const LOOK_AGAIN_MS = 15_000;
const startMs = Date.UTC(2026, 2, 2, 6);

const entries = simulateLines({ seed: 1, hours: 1.5, startMs }, LINES);
const fromMs = startMs + 60 * 60_000;
const laws = new Map<string, LawMemory>();

function cpuMs(work: () => void): number {
  const from = process.cpuUsage();
  work();
  const { user, system } = process.cpuUsage(from);
  return (user + system) / 1000;
}

function play(everySecond: boolean): {
  readonly ms: number;
  readonly looks: number;
  readonly walkMs: number;
} {
  const floor = emptyState();
  let at = 0;
  const changed = new Set<string>();
  const take = (untilMs: number) => {
    for (let next = entries[at]; next && next.hlc.ms <= untilMs; next = entries[at]) {
      applyEntry(floor, next);
      const line = next.payload['line'];
      if (typeof line === 'string') changed.add(line);
      at += 1;
    }
  };
  take(fromMs);
  const known = new Map<string, { outlook: Outlook | null; walks: WalkPlan | null; ms: number }>();
  let [ms, looks, walkMs] = [0, 0, 0];
  for (let second = 0; second < SECONDS; second += 1) {
    const nowMs = fromMs + second * 1000;
    take(nowMs);
    ms += cpuMs(() => {
      for (const line of floor.lines.keys()) {
        const before = known.get(line);
        const isDue = everySecond || changed.has(line) || !before || nowMs - before.ms >= LOOK_AGAIN_MS;
        if (!isDue) continue;
        looks += 1;
        const memory: LawMemory = laws.get(line) ?? new Map();
        laws.set(line, memory);
        const outlook = lineOutlook(floor, line, {
          nowMs,
          calendar: lineCalendar(floor, line, nowMs),
          laws: memory,
        });
        let walks: WalkPlan | null = null;
        if (outlook) {
          const { question, slots } = walkQuestion(outlook, {
            operators: floor.crews.get(line) ?? 1,
            keepShares: before?.walks != null,
            ...(before?.walks ? { known: before.walks.known } : {}),
          });
          walkMs += cpuMs(() => {
            walks = toWalkPlan(answerWalks(question), slots);
          });
        }
        known.set(line, { outlook, walks, ms: nowMs });
      }
      for (const [line, { outlook, walks }] of known) lineGlance(floor, line, { nowMs, outlook, walks });
    });
    changed.clear();
  }
  return { ms, looks, walkMs };
}

const share = (ms: number) => `${((100 * ms) / (SECONDS * 1000)).toFixed(2)} % of a core`;
play(false); // code that has run before answers sooner, as in a view that hangs all day
const view = play(false);
const anew = play(true);
console.log(`lines: ${LINES} lines, ${entries.length} entries, ${SECONDS} s of the shift, processor time`);
console.log(
  `  as the view looks: ${share(view.ms)} (${view.looks} looks, ${(view.ms / view.looks).toFixed(1)} ms each; walks ${share(view.walkMs)} of it, off the page’s thread)`,
);
console.log(`  every line every second: ${share(anew.ms)} (${anew.looks} looks)`);
