// How does a jar of paste stand: where it is, what keeps it off a stencil, and until when it is good?
// Method: hours by the plant's own sheet, from what was told. A jar that went back into the cold unopened takes no hours there, and must thaw anew;
// an open one goes on ageing wherever it is. Without a sheet nothing is limited, and that is said.
// Refused: usual hours of our own; makers print others.

import { blockOn } from './blocks.ts';
import type { Jar } from './fold-paste.ts';
import type { FloorState } from './state.ts';
import { stencilJars } from './stencil.ts';

const HOUR_MS = 3_600_000;

/** Where a jar is. */
export const jarPhases = ['cold', 'out', 'open', 'on', 'empty'] as const;
export type JarPhase = (typeof jarPhases)[number];

/** What keeps a jar off a stencil until a lead decides. */
export const jarFaults = ['expired', 'blocked', 'too-cold', 'out-over', 'open-over', 'stencil-over'] as const;
export type JarFault = (typeof jarFaults)[number];

/** How a jar stands at a moment; moments in ms since 1970, null where nothing limits it. */
export interface JarStand {
  readonly phase: JarPhase;
  /** Whose stencil it is on. */
  readonly line: string | null;
  readonly faults: readonly JarFault[];
  /** When it may be opened at the earliest; null unless it thaws. */
  readonly thawedMs: number | null;
  /** When the first of its limits is reached, should it stay where it is. */
  readonly goodUntilMs: number | null;
  /** False where the plant entered no sheet of its paste. */
  readonly isRuled: boolean;
}

/** A jar on a line's stencil that is not to be used as it stands, or will not be before its run is through. */
export interface StencilJar {
  readonly jar: Jar;
  readonly stand: JarStand;
  /** Something keeps it off a stencil already. */
  readonly isOver: boolean;
}

/**
 * The jar on a line's stencil that something keeps off one, or whose time ends first and before `lastsMs` (ms since 1970; null: nothing is built);
 * null where there is none, or all is well.
 */
export function stencilJar(
  state: FloorState,
  line: string,
  at: { readonly nowMs: number; readonly today: string; readonly lastsMs: number | null },
): StencilJar | null {
  const jars = stencilJars(state, line).map((jar) => ({ jar, stand: jarStand(state, jar, at) }));
  const over = jars.find(({ stand }) => stand.faults.length > 0);
  if (over) return { ...over, isOver: true };
  const { lastsMs } = at;
  const endOf = ({ stand }: Pick<StencilJar, 'stand'>) => stand.goodUntilMs ?? Number.POSITIVE_INFINITY;
  const [first] = jars.sort((a, b) => endOf(a) - endOf(b));
  return first && lastsMs !== null && endOf(first) < lastsMs ? { ...first, isOver: false } : null;
}

interface Hours {
  readonly phase: JarPhase;
  readonly line: string | null;
  /** Since when it is out of the cold now. */
  readonly outSinceMs: number | null;
  /** Out of the cold while closed, in all. */
  readonly outMs: number;
  readonly openedMs: number | null;
  readonly stencilMs: number;
}

/** Adds the hours up, from one thing told to the next. */
function hoursOf({ told }: Jar, nowMs: number): Hours {
  let phase: JarPhase = 'cold';
  let line: string | null = null;
  let outSinceMs: number | null = null;
  let outMs = 0;
  let openedMs: number | null = null;
  let stencilMs = 0;
  let lastMs = 0;
  const passTo = (ms: number) => {
    if (phase === 'out') outMs += ms - lastMs;
    if (phase === 'on') stencilMs += ms - lastMs;
    lastMs = ms;
  };
  for (const { says, fromMs, line: at } of told) {
    if (fromMs > nowMs) break;
    passTo(fromMs);
    if (says === 'cold') {
      // An open jar stays open.
      phase = openedMs === null ? 'cold' : 'open';
      outSinceMs = null;
    } else {
      outSinceMs ??= fromMs;
      if (says === 'out') phase = openedMs === null ? 'out' : 'open';
      else if (says === 'empty') phase = 'empty';
      else {
        openedMs ??= fromMs;
        phase = says === 'on' ? 'on' : 'open';
      }
    }
    line = phase === 'on' ? at : null;
  }
  passTo(nowMs);
  return { phase, line, outSinceMs, outMs, openedMs, stencilMs };
}

/** How a jar stands. `today`: the plant's own day, `YYYY-MM-DD`. */
export function jarStand(
  state: FloorState,
  jar: Jar,
  at: { readonly nowMs: number; readonly today: string },
): JarStand {
  const { nowMs, today } = at;
  const hours = hoursOf(jar, nowMs);
  const rule = state.pasteRules.get(jar.paste);
  const most = (limit: number | null | undefined) => (limit == null ? null : limit * HOUR_MS);
  const [thaw, out, open, stencil] = [
    most(rule?.thawHours),
    most(rule?.outHours),
    most(rule?.openHours),
    most(rule?.stencilHours),
  ];
  const { phase, line, outSinceMs, outMs, openedMs, stencilMs } = hours;
  const thawedMs =
    openedMs === null && phase === 'out' && thaw !== null ? (outSinceMs ?? nowMs) + thaw : null;
  const isCold =
    openedMs === null && thaw !== null && thaw > 0 && (outSinceMs === null || nowMs < outSinceMs + thaw);
  const named = { reel: jar.jar, lot: jar.lot, part: jar.paste };
  const found: readonly (readonly [JarFault, boolean])[] = [
    ['expired', jar.expires !== null && jar.expires < today],
    ['blocked', blockOn(state, named) !== null],
    ['too-cold', isCold],
    ['out-over', openedMs === null && out !== null && outMs > out],
    ['open-over', openedMs !== null && open !== null && nowMs - openedMs > open],
    ['stencil-over', stencil !== null && stencilMs > stencil],
  ];
  const ends = [
    phase === 'out' && out !== null ? nowMs + out - outMs : null,
    openedMs !== null && open !== null ? openedMs + open : null,
    phase === 'on' && stencil !== null ? nowMs + stencil - stencilMs : null,
  ].filter((ms) => ms !== null);
  return {
    phase,
    line,
    faults: phase === 'empty' ? [] : found.flatMap(([fault, is]) => (is ? [fault] : [])),
    thawedMs,
    goodUntilMs: phase === 'empty' || ends.length === 0 ? null : Math.min(...ends),
    isRuled: rule !== undefined,
  };
}
