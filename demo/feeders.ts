// The invented plant's feeders: enough of each width for its largest setup, and some spare. Every tenth 8 mm feeder steps
// 4 mm only, as older ones do.

import type { PayloadOf } from '../shared/floor/kinds.ts';
import { products, takenSetup } from './setups.ts';

type Feeder = PayloadOf<'feeder.known'>;

/** Feeder positions and pitches by tape width in mm. */
const kinds = [
  { tapeWidthMm: 8, pitchesMm: [2, 4], positions: 1, spare: 22 },
  { tapeWidthMm: 12, pitchesMm: [4, 8], positions: 2, spare: 8 },
  { tapeWidthMm: 16, pitchesMm: [4, 8, 12], positions: 2, spare: 4 },
  { tapeWidthMm: 24, pitchesMm: [4, 8, 12, 16, 20], positions: 3, spare: 4 },
] as const;

function wantedOf(tapeWidthMm: number): number {
  const counts = products.map(
    (product) => takenSetup(product).slots.filter((slot) => slot.tapeWidthMm === tapeWidthMm).length,
  );
  return Math.max(...counts);
}

function makeFeeders(): readonly Feeder[] {
  const made: Feeder[] = [];
  for (const kind of kinds) {
    const count = wantedOf(kind.tapeWidthMm) + kind.spare;
    for (let index = 0; index < count; index += 1) {
      const old = kind.tapeWidthMm === 8 && index % 10 === 9;
      made.push({
        feeder: `F-${String(made.length + 1).padStart(4, '0')}`,
        tapeWidthMm: kind.tapeWidthMm,
        pitchesMm: old ? [4] : [...kind.pitchesMm],
        positions: kind.positions,
      });
    }
  }
  return made;
}

/** Every feeder, F-0001 on. */
export const feeders: readonly Feeder[] = makeFeeders();

/** True where the feeder takes this tape. */
export function takesTape(
  feeder: Feeder,
  tape: { readonly tapeWidthMm: number; readonly pitchMm: number },
): boolean {
  return feeder.tapeWidthMm === tape.tapeWidthMm && feeder.pitchesMm.includes(tape.pitchMm);
}
