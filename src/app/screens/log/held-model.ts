// What is held, in numbers and texts: pure.

import { type Containment, isHeld } from '../../../../shared/floor/fold-contain.ts';
import type { PayloadOf } from '../../../../shared/floor/kinds.ts';
import type { FloorState } from '../../../../shared/floor/state.ts';
import type { ContainCause } from '../../../../shared/floor/vocabulary.ts';
import { toCsv } from '../../../../shared/log/table-csv.ts';
import type { SuspectRun, Suspects } from '../../../../shared/trace/suspects.ts';
import type { Material } from './hold-asked.ts';

/** Panels in these runs, each once, that surely or perhaps carry it. */
export function panelsIn(runs: readonly SuspectRun[], how: 'sure' | 'possible'): number {
  const places = new Set<string>();
  for (const run of runs) {
    const span = run[how];
    if (!span) continue;
    for (let place = span.first; place <= span.last; place++) places.add(`${run.run}#${place}`);
  }
  return places.size;
}

/** What is written when panels are held. */
export function heldPayload(
  found: Suspects,
  held: {
    readonly containment: string;
    readonly line: string;
    readonly cause: ContainCause;
    readonly of: string | null;
    readonly reason: string;
    readonly material: Material;
  },
): PayloadOf<'panels.contained'> {
  const { containment, line, cause, reason, material } = held;
  const [first] = found.runs;
  return {
    containment,
    line: first?.line ?? line,
    slot: first?.slot ?? null,
    cause,
    of: held.of,
    reel: material.reel ?? null,
    part: material.part ?? null,
    lot: material.lot ?? null,
    runs: [...found.runs],
    codes: [...found.codes],
    reason,
  };
}

/** All that is or was held: what waits for a lead first, newest first. */
export function heldList(floor: Pick<FloorState, 'contained'>): readonly Containment[] {
  const all = [...floor.contained.values()].sort((a, b) => b.atMs - a.atMs);
  return [...all.filter(isHeld), ...all.filter((each) => !isHeld(each))];
}

/** The columns, in their order. */
export const heldColumns = ['panel', 'signedBy', 'signedAt', 'reason'] as const;

/** Held panels for a spreadsheet: code, who signed it, when and what for. RFC 4180, with a byte order mark. */
export function heldCsv(containment: Containment, floor: Pick<FloorState, 'people'>): string {
  const rows = [...containment.held].map(([code, signed]) => [
    code,
    signed === null ? '' : (floor.people.get(signed.by)?.name ?? signed.by),
    signed === null ? '' : new Date(signed.atMs).toISOString(),
    signed?.reason ?? '',
  ]);
  return toCsv(heldColumns, rows);
}
