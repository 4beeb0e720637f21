// What is open on a line, and how this tablet stands to its server, for whatever shows it.

import { useMemo, useState } from 'preact/hooks';
import type { HandedKnown } from '../../../../shared/floor/kinds-handover.ts';
import type { FloorState } from '../../../../shared/floor/state.ts';
import type { Handed } from '../../../../shared/floor/state-handover.ts';
import type { OpenList } from '../../../../shared/handover/open.ts';
import { type App, useApp, useFloor } from '../../app.ts';
import { useBehind } from '../../behind.ts';
import type { Watch } from '../../outlook/watch.ts';
import { knownOf, lookOpenBy, type Standing } from './handover-model.ts';
import { wholeMinute } from './shift-span.ts';

/** How this tablet stands to its server now. */
export function useStanding(): Standing {
  const app = useApp();
  const missing = useBehind()?.missing ?? 0;
  return { status: app.sync.value, missing };
}

/** Which line is looked at, by whose outlook; what was listed at a handover is left out. */
export interface OpenOf {
  readonly line: string;
  readonly watch: Watch;
  readonly without?: Handed | undefined;
}

interface Open {
  readonly list: OpenList;
  /** When it was looked at, ms since 1970. */
  readonly atMs: number;
}

function lookNow(app: App, floor: FloorState, { line, watch, without }: OpenOf): Open {
  const nowMs = app.clock.nowMs();
  return { list: lookOpenBy(floor, watch.outlook.value, { line, nowMs, without }), atMs: nowMs };
}

/** What is open now, looked at anew with each change of the floor, each look of the watch and each minute. */
export function useOpen(of: OpenOf): Open {
  const app = useApp();
  const floor = useFloor();
  const minute = wholeMinute(app.nowMs.value);
  return useMemo(
    () => lookNow(app, floor, of),
    [of.line, of.without, minute, app.tick.value, of.watch.outlook.value],
  );
}

/** What was open as a dialog was opened, and what that rested on: it stands still, since a PIN is typed below it. */
export function useOpenAtFirst(of: OpenOf, standing: Standing): Open & { readonly known: HandedKnown } {
  const app = useApp();
  const [first] = useState(() => {
    const open = lookNow(app, app.store.floor(), of);
    return { ...open, known: knownOf(standing, open.list, open.atMs) };
  });
  return first;
}
