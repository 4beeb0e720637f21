// Watches over the lines that the tablet serves besides the one in hand, so that their warnings sound here too. One watch a line, begun with its
// first use and kept: a line that is not served any more is not looked at.

import { effect, type ReadonlySignal, signal, untracked } from '@preact/signals';
import type { App } from '../app.ts';
import { startWatch, type Watch, type WatchMemory } from './watch.ts';

/** A line beside with its watch. */
export interface LineBeside {
  readonly line: string;
  readonly watch: Watch;
}

/** The lines beside, each with its watch; new where the tablet serves others. */
export function watchBeside(app: App, memory: WatchMemory): ReadonlySignal<readonly LineBeside[]> {
  const watches = new Map<string, Watch>();
  const shown = signal<readonly LineBeside[]>([]);
  const watchOf = (line: string): Watch => {
    const known = watches.get(line);
    if (known) return known;
    const watch = startWatch(app, memory, () => (app.beside.value.includes(line) ? line : null));
    watches.set(line, watch);
    return watch;
  };
  effect(() => {
    const lines = app.beside.value;
    untracked(() => {
      shown.value = lines.map((line) => ({ line, watch: watchOf(line) }));
    });
  });
  return shown;
}
