// All readers of what comes from outside.

import { entryTargets } from './entries.ts';
import { fileTargets } from './files.ts';
import { keptTargets } from './kept.ts';
import { labelTargets } from './labels.ts';
import { paperTargets } from './papers.ts';
import { passkeyTargets } from './passkeys.ts';
import { sheetTargets } from './sheets.ts';
import type { FuzzTarget } from './target.ts';
import { wireTargets } from './wire.ts';

/** In the order in which they run. */
export const targets: readonly FuzzTarget[] = [
  ...wireTargets,
  ...entryTargets,
  ...labelTargets,
  ...sheetTargets,
  ...keptTargets,
  ...paperTargets,
  ...passkeyTargets,
  ...fileTargets,
];
