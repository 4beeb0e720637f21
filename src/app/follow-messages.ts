// A tap on a message opens its line: by the address in a new window, by word of the service worker in one that is open.

import { effect } from '@preact/signals';
import type { App } from './app.ts';
import { takeLine, tellLine } from './line-in-hand.ts';
import { goTo, place, settleAt } from './router.ts';

/** Follows messages. An address that names a line is used once: kept, it would take that line in hand again after another one was chosen. */
export function followMessages(app: Pick<App, 'store' | 'line' | 'preferences' | 'notice'>): void {
  const show = (line: string) => {
    if (!app.store.floor().lines.has(line) || app.line.peek() === line) return;
    takeLine(app, line);
    tellLine(app, line);
  };
  effect(() => {
    const { screen, rest } = place.value;
    const [line] = rest;
    if (screen !== 'line' || line === undefined) return;
    show(line);
    settleAt('line');
  });
  navigator.serviceWorker?.addEventListener('message', (event) => {
    const { type, line } = (event.data ?? {}) as { readonly type?: unknown; readonly line?: unknown }; // looked at here
    if (type !== 'open-line' || typeof line !== 'string') return;
    show(line);
    goTo('line');
  });
}
