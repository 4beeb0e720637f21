// All lines at one glance, as they stand this second.

import { useEffect, useState } from 'preact/hooks';
import { type LineGlance, lineGlance } from '../../../../shared/outlook/glance.ts';
import { useApp, useFloor } from '../../app.ts';
import { type Lines, startLines } from '../../outlook/lines.ts';
import type { Watch } from '../../outlook/watch.ts';
import { type QuietTablet, quietTablets } from './quiet-tablets.ts';

/** A line with what was heard of it. */
export interface SeenLine {
  readonly glance: LineGlance;
  /** True before the first look at a line that is being built. */
  readonly isLooking: boolean;
  /** Milliseconds since its newest entry; null where none was heard. */
  readonly ageMs: number | null;
  /** Who acted last, and when; null where nobody did. */
  readonly lastAct: { readonly name: string; readonly agoMs: number } | null;
}

/** What the view draws. */
export interface Seen {
  readonly nowMs: number;
  readonly lines: readonly SeenLine[];
  readonly quiet: readonly QuietTablet[];
}

/** Follows all lines, in the order of their names. */
export function useLines(watch: Watch): Seen {
  const app = useApp();
  const floor = useFloor();
  const [all, setAll] = useState<Lines | null>(null);
  useEffect(() => {
    const started = startLines(app, watch);
    setAll(started);
    return started.stop;
  }, [app, watch]);
  all?.tick.value; // drawn anew with each look
  const nowMs = Math.max(app.nowMs.value, app.clock.nowMs());
  const lines = [...floor.lines.values()]
    .sort((a, b) => a.name.localeCompare(b.name, undefined, { numeric: true }))
    .flatMap(({ line }): readonly SeenLine[] => {
      const look = all?.lookOf(line) ?? { outlook: null, walks: null, lookedMs: null };
      const glance = lineGlance(floor, line, { nowMs, ...look });
      if (!glance) return [];
      const heard = all?.heard.lines.get(line)?.atMs;
      const act = all?.heard.acts.get(line);
      const name = floor.people.get(act?.who ?? '')?.name;
      return [
        {
          glance,
          isLooking: look.lookedMs === null,
          ageMs: heard === undefined ? null : Math.max(0, nowMs - heard),
          lastAct: act && name !== undefined ? { name, agoMs: Math.max(0, nowMs - act.atMs) } : null,
        },
      ];
    });
  const quiet = quietTablets(floor, all?.heard.tablets ?? new Map(), {
    nowMs,
    own: app.store.identity.tablet,
  });
  return { nowMs, lines, quiet };
}
