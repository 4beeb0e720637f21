// What is open on a line, and how this tablet stands to its server, for whatever shows it.

import { useMemo, useRef } from 'preact/hooks';
import type { Handed } from '../../../../shared/floor/state-handover.ts';
import type { LawMemory } from '../../../../shared/forecast/run-out.ts';
import type { OpenList } from '../../../../shared/handover/open.ts';
import { useApp, useFloor } from '../../app.ts';
import { useBehind } from '../../behind.ts';
import { lookOpen, type Standing } from './handover-model.ts';

/** How this tablet stands to its server now. */
export function useStanding(): Standing {
  const app = useApp();
  const missing = useBehind()?.missing ?? 0;
  return { status: app.sync.value, missing };
}

/** What is open now, looked at anew with each change of the floor and each minute. */
export function useOpen(line: string, without?: Handed): { readonly list: OpenList; readonly atMs: number } {
  const app = useApp();
  const floor = useFloor();
  const laws = useRef<LawMemory>(new Map());
  const minute = Math.floor(app.nowMs.value / 60_000);
  return useMemo(() => {
    const nowMs = app.clock.nowMs();
    const asked = { line, nowMs, laws: laws.current };
    return { list: lookOpen(floor, without ? { ...asked, without } : asked), atMs: nowMs };
  }, [line, without, minute, app.tick.value]);
}
