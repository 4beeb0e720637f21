// A long list drawn piece by piece: a few rows first, the others a piece with each frame that follows, so that a letter typed into a search
// is on the screen before the list's end is. All rows come to stand in the page, for a finger that scrolls, a keyboard, a screen reader and paper
// alike; where it is printed before, the rest of it is drawn at once. Refused: rows in view alone, since a reader that walks the list, or a search of the page, would find its end missing.

import type { VNode } from 'preact';
import { useLayoutEffect, useRef, useState } from 'preact/hooks';
import { afterPaint } from './device/after-paint.ts';
import { printsLabels } from './device/prints-labels.ts';
import { drawNow } from './draw-now.ts';

/** So many rows are drawn at once: a cheap tablet draws them, with the screen around them, in less than a finger notices; a screen of them takes four frames. */
export const ROWS_AT_ONCE = 3;

interface LongRowsProps<T> {
  readonly items: readonly T[];
  /** A name of the item that no other has. */
  readonly keyOf: (item: T) => string;
  /** Its row, which carries that name as its key. */
  readonly draw: (item: T) => VNode;
}

/** What is drawn of a list. */
interface Drawn<T> {
  readonly of: LongRowsProps<T>;
  readonly byKey: ReadonlyMap<string, T>;
  /** Rows by name, the one first that was drawn longest ago. */
  readonly rows: Map<string, VNode>;
  /** Names of the items in the order in which their rows are drawn; the first `upTo` are, the others as for the list before, or not yet. */
  readonly todo: readonly string[];
  readonly upTo: number;
}

/** The rows of a list. Until a row's turn comes it stands as it was drawn before, or not yet. */
export function LongRows<T>(props: LongRowsProps<T>) {
  const drawn = useRef<Drawn<T> | null>(null);
  const isDue = useRef(false);
  const [, drawAnew] = useState(0);
  const isOnPaper = useOnPaper(() => drawAnew((times) => times + 1));
  const piece = isOnPaper.current ? props.items.length : ROWS_AT_ONCE;
  // Handed down anew, the list may have changed in every row; drawn anew by itself, it only goes on.
  if (drawn.current?.of !== props) drawn.current = nextPiece(begunAnew(drawn.current, props), piece);
  else if (isDue.current || isOnPaper.current) drawn.current = nextPiece(drawn.current, piece);
  isDue.current = false;
  const { rows, todo, upTo } = drawn.current;
  const isOver = upTo >= todo.length;
  // No effect: one that waits is done at once where the list is drawn anew meanwhile, and all pieces would come without a frame between them.
  useLayoutEffect(() => {
    if (isOver) return undefined;
    return afterPaint(() => {
      isDue.current = true;
      drawAnew((times) => times + 1);
    });
  });
  return <>{props.items.flatMap((item) => rows.get(props.keyOf(item)) ?? [])}</>;
}

/** True while the browser prints the page, and not labels; the list is drawn anew as that begins. */
function useOnPaper(drawAnew: () => void): { readonly current: boolean } {
  const isOnPaper = useRef(false);
  useLayoutEffect(() => {
    const begin = () => {
      if (printsLabels()) return;
      isOnPaper.current = true;
      drawNow(drawAnew);
    };
    const over = () => {
      isOnPaper.current = false;
    };
    addEventListener('beforeprint', begin);
    addEventListener('afterprint', over);
    return () => {
      removeEventListener('beforeprint', begin);
      removeEventListener('afterprint', over);
    };
  }, []);
  return isOnPaper;
}

/**
 * A list with the rows that stand of the one before. What does not stand yet goes before what is to be drawn anew, and of that the oldest first:
 * a list that is handed down again and again, before it is through, comes to stand whole all the same where a frame comes between, and no row stays old.
 */
function begunAnew<T>(before: Drawn<T> | null, props: LongRowsProps<T>): Drawn<T> {
  const byKey = new Map(props.items.map((item) => [props.keyOf(item), item]));
  const keys = [...byKey.keys()];
  const rows = new Map([...(before?.rows ?? [])].filter(([key]) => byKey.has(key)));
  const missing = keys.filter((key) => !rows.has(key));
  const todo = [...new Set([...keys.slice(0, ROWS_AT_ONCE), ...missing, ...rows.keys()])];
  return { of: props, byKey, rows, todo, upTo: 0 };
}

function nextPiece<T>(drawn: Drawn<T>, length: number): Drawn<T> {
  const { of, byKey, rows, todo, upTo } = drawn;
  const until = upTo + length;
  for (const key of todo.slice(upTo, until)) {
    rows.delete(key); // to the end
    rows.set(key, of.draw(byKey.get(key)!)); // every name in `todo` is of an item
  }
  return { ...drawn, upTo: until };
}
