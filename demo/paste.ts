// The invented plant's solder paste: one sheet, and the jar that is on the stencil when the demo opens.

import type { PayloadOf } from '../shared/floor/kinds.ts';
import type { JarSays } from '../shared/floor/kinds-paste.ts';

const HOUR_MS = 3_600_000;
const paste = 'SP-4405';

/** The plant's sheet: hours are invented, of the size that makers print. */
const sheet: PayloadOf<'paste.ruled'> = {
  paste,
  thawHours: 4,
  outHours: 72,
  openHours: 24,
  stencilHours: 6,
  source: 'Data sheet',
};

/** A jar of it, by when the first run starts: out of the cold overnight, and on the stencil shortly before the line is loaded. */
export function pasteOf(startMs: number): {
  readonly jar: string;
  readonly paste: string;
  readonly lot: string;
  readonly sheet: PayloadOf<'paste.ruled'>;
  readonly told: readonly { readonly says: JarSays; readonly fromMs: number }[];
} {
  const told = [
    { says: 'out', fromMs: startMs - 8 * HOUR_MS },
    { says: 'opened', fromMs: startMs - 2 * HOUR_MS },
    { says: 'on', fromMs: startMs - 1.9 * HOUR_MS },
  ] as const;
  return { jar: 'J-0417', paste, lot: 'LP-2231', sheet, told };
}
