// Asks the product what it says of a shift, and holds that against what was so.

import type { Entry } from '../../shared/log/entry.ts';
import { compareEntries } from '../../shared/log/order.ts';
import { tracePanel } from '../../shared/trace/ask.ts';
import { traceLog } from '../../shared/trace/stretches.ts';
import { suspectPanels } from '../../shared/trace/suspects.ts';
import type { Truth } from './play.ts';

/** What was found in one or many shifts. */
export interface Score {
  shifts: number;
  /** Panels counted. */
  panels: number;
  /** Of those, how many had boards skipped. */
  skipping: number;
  /** Reel on panel, as it was. */
  carried: number;
  /** Of those, how many the product did not hold for possible. */
  missed: number;
  /** Claims that a panel surely carries a reel. */
  sure: number;
  wrongSure: number;
  /** Of all claims, those that the product says rest on a guess of which boards a slot serves; how many of them were wrong. */
  onBoards: number;
  wrongOnBoards: number;
  /** Panels numbered otherwise than they were counted. */
  misnumbered: number;
  /** Reels found late or cleared in error. */
  wrongs: number;
  /** Panels with such a reel on them, and how many of them were not held. */
  suspects: number;
  escaped: number;
  /** Panels held surely without such a reel on them. */
  wrongHeld: number;
  /** Panels held, and those that nobody could have left out. */
  held: number;
  best: number;
  /** What went wrong first, for a person to look at. */
  readonly faults: string[];
}

export function emptyScore(): Score {
  return {
    shifts: 0,
    panels: 0,
    skipping: 0,
    carried: 0,
    missed: 0,
    sure: 0,
    wrongSure: 0,
    onBoards: 0,
    wrongOnBoards: 0,
    misnumbered: 0,
    wrongs: 0,
    suspects: 0,
    escaped: 0,
    wrongHeld: 0,
    held: 0,
    best: 0,
    faults: [],
  };
}

/** Adds a shift to the score. `name`: how a fault names it. */
export function checkShift(
  score: Score,
  name: string,
  shift: { readonly entries: readonly Entry[]; readonly truth: Truth },
): void {
  const { entries, truth } = shift;
  const index = traceLog([...entries].sort(compareEntries));
  const fault = (text: string) => {
    if (score.faults.length < 20) score.faults.push(`${name}: ${text}`);
  };
  score.shifts += 1;
  for (const [run, counted] of truth.runs) {
    const real = counted.filter((each) => each.isReal && each.panel !== null);
    if (index.state.runs.get(run)?.done !== real.length) {
      score.misnumbered += 1;
      fault(`${run} has ${index.state.runs.get(run)?.done} panels, was ${real.length}`);
    }
    real.forEach(({ panel }, at) => {
      if (!panel) return;
      score.panels += 1;
      if (panel.skipped.size > 0) score.skipping += 1;
      const found = tracePanel(index, truth.isScanned ? panel.code : String(at + 1), run);
      if (found?.panel !== at + 1) {
        score.misnumbered += 1;
        fault(`${run} panel ${at + 1} is number ${found?.panel}`);
        return;
      }
      for (const slot of truth.slots.get(run) ?? []) {
        const lots = found.slots.find((each) => each.slot === slot)?.lots ?? [];
        const is = panel.carries.get(slot) ?? new Set<string>();
        for (const reel of is) {
          score.carried += 1;
          if (lots.some((lot) => lot.reel === reel)) continue;
          score.missed += 1;
          fault(
            `${run} panel ${at + 1} carries ${reel} on ${slot}; said ${lots.map((lot) => lot.reel).join(' ')}`,
          );
        }
        for (const lot of lots) {
          if (!lot.sure) continue;
          score.sure += 1;
          const isGuess = found.guessed.includes('boards');
          if (isGuess) score.onBoards += 1;
          if (is.has(lot.reel ?? '')) continue;
          if (isGuess) {
            score.wrongOnBoards += 1;
            continue;
          }
          score.wrongSure += 1;
          fault(`${run} panel ${at + 1} surely carries ${lot.reel} on ${slot}; was ${[...is].join(' ')}`);
        }
      }
    });
  }
  checkWrongs(score, index, { truth, fault });
}

function checkWrongs(
  score: Score,
  index: ReturnType<typeof traceLog>,
  { truth, fault }: { readonly truth: Truth; readonly fault: (text: string) => void },
): void {
  for (const wrong of truth.wrongs) {
    score.wrongs += 1;
    const { runs, guessed } =
      wrong.how === 'found'
        ? suspectPanels(index, { cause: 'wrong-reel', finding: wrong.entry })
        : suspectPanels(index, { cause: 'cleared', material: { reel: wrong.reel } });
    for (const [run, counted] of truth.runs) {
      counted.forEach(({ panel, isReal }, at) => {
        if (!panel || !isReal) return;
        const mine = runs.filter((each) => each.run === run && each.slot === wrong.slot);
        const place = at + 1; // places count what was taken back too
        const isHeld = mine.some(({ possible }) => place >= possible.first && place <= possible.last);
        const isSurely = mine.some(({ sure }) => sure !== null && place >= sure.first && place <= sure.last);
        const carries = panel.carries.get(wrong.slot)?.has(wrong.reel) ?? false;
        const isBest =
          wrong.how === 'cleared' ? carries : (panel.epochs.get(wrong.slot)?.has(wrong.epoch) ?? false);
        if (isHeld) score.held += 1;
        if (isBest) score.best += 1;
        if (carries) score.suspects += 1;
        if (carries && !isHeld) {
          score.escaped += 1;
          fault(`${run} panel ${place} carries wrong ${wrong.reel} on ${wrong.slot} and is not held`);
        }
        if (isSurely && !carries && guessed.includes('boards')) score.wrongOnBoards += 1;
        else if (isSurely && !carries) {
          score.wrongHeld += 1;
          fault(`${run} panel ${place} surely carries wrong ${wrong.reel} on ${wrong.slot}: it does not`);
        }
      });
    }
  }
}
