// Shifts played by chance, of which every placement is known (tests/truth): what is said of them is true, and says no less than it did.
// That it is true in thousands of shifts is shown in tests/truth; here few are looked at closely, so that doubt cannot grow unseen.

import { describe, expect, test } from 'vitest';
import { compareEntries } from '../../../shared/log/order.ts';
import { type TracedPlace, tracePlaces } from '../../../shared/trace/ask.ts';
import { traceLog } from '../../../shared/trace/stretches.ts';
import { suspectPanels } from '../../../shared/trace/suspects.ts';
import { playShift } from '../../truth/play.ts';

/** Panels in all places together: those that surely carry what stood there, those that perhaps do, those held for what was wrong. */
type Said = readonly [sure: number, perhaps: number, held: number];

const sizeOf = (places: TracedPlace['sure']) => (places === null ? 0 : places.last - places.first + 1);

function said(seed: number): { readonly figures: Said; readonly untrue: readonly string[] } {
  const { entries, truth } = playShift(seed);
  const index = traceLog([...entries].sort(compareEntries));
  const untrue: string[] = [];
  let [sure, perhaps, held] = [0, 0, 0];
  const carriedBy = new Map<string, number[]>();
  const nameOf = (run: string, slot: string, reel: string | null) => `${run} ${slot} ${reel}`;
  for (const [run, counted] of truth.runs) {
    const real = counted.filter(({ isReal, panel }) => isReal && panel !== null);
    real.forEach(({ panel }, at) => {
      for (const [slot, reels] of panel?.carries ?? [])
        for (const reel of reels) {
          const name = nameOf(run, slot, reel);
          carriedBy.set(name, [...(carriedBy.get(name) ?? []), at + 1]);
        }
    });
  }
  const possible = new Set<string>();
  for (const place of tracePlaces(index, {})) {
    sure += sizeOf(place.sure);
    perhaps += sizeOf(place.possible);
    const name = nameOf(place.run, place.slot, place.reel);
    const carries = new Set(carriedBy.get(name));
    const isGuess = place.guessed.includes('boards');
    for (let panel = place.sure?.first ?? 1; panel <= (place.sure?.last ?? 0); panel++)
      if (!carries.has(panel) && !isGuess) untrue.push(`${name} is not on ${panel}`);
    for (let panel = place.possible?.first ?? 1; panel <= (place.possible?.last ?? 0); panel++)
      possible.add(`${name} ${panel}`);
  }
  for (const [name, panels] of carriedBy)
    for (const panel of panels) if (!possible.has(`${name} ${panel}`)) untrue.push(`${name} is on ${panel}`);
  for (const { how, entry, reel } of truth.wrongs) {
    const question =
      how === 'found'
        ? ({ cause: 'wrong-reel', finding: entry } as const)
        : ({ cause: 'cleared', material: { reel } } as const);
    for (const run of suspectPanels(index, question).runs) held += sizeOf(run.possible);
  }
  return { figures: [sure, perhaps, held], untrue };
}

/** What is said today. Sharper is better: more panels surely, fewer perhaps. */
const shifts: readonly (readonly [seed: number, ...said: Said])[] = [
  [1, 286, 767, 39],
  [2, 240, 450, 0],
  [3, 74, 885, 112],
  [4, 570, 1955, 355],
  [7, 0, 919, 79],
  [8, 48, 150, 73],
  [9, 344, 464, 0],
  [10, 233, 875, 0],
  [12, 158, 282, 55],
  [15, 129, 230, 33],
  [16, 279, 898, 121],
  [17, 307, 1610, 0],
  [19, 0, 1144, 379],
  [20, 298, 1518, 94],
  [22, 678, 1540, 167],
  [23, 144, 456, 84],
  [25, 454, 828, 104],
  [27, 390, 2125, 85],
  [29, 386, 723, 176],
  [31, 244, 750, 221],
  [35, 452, 1055, 163],
  [39, 309, 339, 0],
  [44, 310, 1542, 0],
  [47, 220, 575, 62],
  [49, 431, 960, 0],
  [51, 336, 424, 0],
  [58, 178, 405, 62],
  [60, 0, 1379, 65],
  [63, 170, 393, 65],
  [66, 107, 242, 44],
  [69, 159, 2030, 194],
  [71, 847, 2068, 264],
  [73, 89, 903, 157],
  [76, 85, 157, 31],
  [78, 335, 658, 81],
  [80, 0, 1120, 125],
  [82, 289, 341, 45],
  [85, 76, 578, 252],
  [87, 584, 1252, 33],
];

describe('of a shift played by chance', () => {
  test.each(shifts)(
    '%i, nothing untrue is said, no less than %i panels surely, and no more than %i perhaps and %i held',
    (seed, sure, perhaps, held) => {
      const { figures, untrue } = said(seed);
      expect(untrue).toEqual([]);
      expect(figures[0]).toBeGreaterThanOrEqual(sure);
      expect(figures[1]).toBeLessThanOrEqual(perhaps);
      expect(figures[2]).toBeLessThanOrEqual(held);
    },
  );
});
