// What the state holds about panels: which are counted, where they are, which are held.

import type { Check, Containment, Finding } from './fold-contain.ts';
import type { PassedPanel, SeenPanel } from './fold-seen.ts';
import type { PayloadOf } from './kinds.ts';
import type { CountedCode } from './tally.ts';

/** The part of the floor's state that is about panels. */
export interface PanelState {
  /** `codeKey` -> the count of a panel's own code, of each line's present run and the one before it: a code counts once a run. */
  readonly codes: Map<string, CountedCode>;
  /** Line -> panels between its machines and the place of counting, where somebody entered them. */
  readonly inLines: Map<string, Readonly<PayloadOf<'line.panels-ruled'>>>;
  /** Panels scanned before a machine and not counted yet, by line, machine and code. */
  readonly seen: Map<string, SeenPanel>;
  /** `machineKey` -> panels scanned both there and at the place of counting, newest last. */
  readonly passed: Map<string, readonly PassedPanel[]>;
  /** `slotKey` -> when it was last seen to be right. */
  readonly checks: Map<string, Check>;
  /** Verdict -> a reel that was found where it did not belong. */
  readonly findings: Map<string, Finding>;
  /** All panels ever held, oldest first. */
  readonly contained: Map<string, Containment>;
}

/** The part before any entry. */
export function emptyPanels(): PanelState {
  return {
    codes: new Map(),
    inLines: new Map(),
    seen: new Map(),
    passed: new Map(),
    checks: new Map(),
    findings: new Map(),
    contained: new Map(),
  };
}
