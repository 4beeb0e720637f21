// What a scanned text names on the lines that a tablet serves: all that the line in hand knows, and slots and panels of the lines beside it.

import { type Recognised, recognise } from '../floor/recognise.ts';
import type { DeskView } from './model.ts';

/** All that a text may name; the line in hand first. The same code on two lines is two things, and a person is asked. */
export function namedIn({ floor, line, beside = [] }: DeskView, text: string): readonly Recognised[] {
  const elsewhere = beside.flatMap((other) => recognise(floor, other, text));
  return [...recognise(floor, line, text), ...elsewhere.filter(({ is }) => is === 'slot' || is === 'panel')];
}
