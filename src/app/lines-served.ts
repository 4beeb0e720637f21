// Which lines the tablet serves. Apart from what changes that and tells it: the calls that ask this say no words, and wait for none.

import type { App } from './app.ts';

/** All lines that the tablet serves, the one in hand first; empty where the plant has none. */
export function linesServed({ line, beside }: Pick<App, 'line' | 'beside'>): readonly string[] {
  return line.value === null ? beside.value : [line.value, ...beside.value];
}
