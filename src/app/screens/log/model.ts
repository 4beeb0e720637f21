// What an entry says in one line, and which entries the filters want.

import type { EntryKind } from '../../../../shared/floor/kinds.ts';
import type { Entry } from '../../../../shared/log/entry.ts';
import type { ExportFilter } from '../../../../shared/log/export.ts';

/** Spans of time to choose from, in hours; null = all. */
export const spans = { shift: 8, day: 24, week: 168, all: null } as const;
export type Span = keyof typeof spans;

/** The filters as chosen on the screen; null or '' does not narrow. */
export interface LogFilters {
  readonly span: Span;
  readonly line: string | null;
  readonly slot: string;
  readonly who: string | null;
  readonly verdict: string | null;
}

export const firstFilters: LogFilters = { span: 'shift', line: null, slot: '', who: null, verdict: null };

/** The filters that a link asks for: `who` and a person; else the first ones. */
export function filtersAsked([page, person]: readonly string[]): LogFilters {
  return page === 'who' && person !== undefined
    ? { ...firstFilters, span: 'all', who: person }
    : firstFilters;
}

/** The chosen filters as an export filter. */
export function toExportFilter(filters: LogFilters, nowMs: number): ExportFilter {
  const hours = spans[filters.span];
  return {
    ...(hours === null ? {} : { from: new Date(nowMs - hours * 3_600_000).toISOString() }),
    ...(filters.line === null ? {} : { line: filters.line }),
    ...(filters.slot.trim() === '' ? {} : { slot: filters.slot.trim().toUpperCase() }),
    ...(filters.who === null ? {} : { who: filters.who }),
    ...(filters.verdict === null ? {} : { verdict: filters.verdict }),
  };
}

/** Kinds that the app writes by itself: no person acts, whoever is signed in. */
const ownKinds: readonly string[] = ['tablet.opened', 'warning.raised'] satisfies readonly EntryKind[];

/** Who or what acted: the person's id, the tablet itself, the machine, or somebody who had not signed in. */
export function actorOf(entry: Entry): { readonly person: string } | 'tablet' | 'machine' | 'nobody' {
  if (entry.who !== null) return { person: entry.who };
  if (entry.payload['via'] === 'machine' || /^(station|tape|parts)\./.test(entry.kind)) return 'machine';
  return ownKinds.includes(entry.kind) ? 'tablet' : 'nobody';
}
