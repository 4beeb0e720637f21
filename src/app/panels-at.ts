// Where panels are scanned at this tablet: at the place of counting, or before a machine, where a scan counts nothing.

import type { Line } from '../../shared/floor/state.ts';
import type { App } from './app.ts';

/** The machine before which panels are scanned here; null where scans count. A machine that the line lost counts as none. */
export function machineAt(
  app: Pick<App, 'preferences' | 'store'>,
  line: string,
): Line['machines'][number] | null {
  const { panelsAt } = app.preferences.value;
  const machines = app.store.floor().lines.get(line)?.machines ?? [];
  return machines.find((each) => each.machine === panelsAt) ?? null;
}
