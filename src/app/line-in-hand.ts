// Which line is in hand, and which ones the tablet serves besides: one place changes it, so that whatever follows it changes with it.

import { effect } from '@preact/signals';
import { feedersOf } from '../../shared/floor/lanes.ts';
import type { App } from './app.ts';
import { shellWords } from './words/shell.ts';
import { say } from './words/words.ts';

/** The line in hand: the one that was taken; where that is gone, the line whose slots it fed from as a lane, else the plant's first. */
export function lineInHand(taken: string | null, lines: ReadonlyMap<string, unknown>): string | null {
  const there = taken === null ? undefined : [taken, feedersOf(taken)].find((line) => lines.has(line));
  return there ?? lines.keys().next().value ?? null;
}

/** The lines served besides the one in hand; a line that the plant does not know any more is none. */
export function linesBeside(
  serves: readonly string[],
  line: string | null,
  lines: ReadonlyMap<string, unknown>,
): readonly string[] {
  return serves.filter((each) => each !== line && lines.has(each));
}

/**
 * Takes a line in hand. The lines that the tablet serves stay served, also where this is none of them: their warnings go on to sound while
 * somebody looks at a third.
 */
export function takeLine({ preferences }: Pick<App, 'preferences'>, line: string): void {
  const now = preferences.peek();
  if (now.line !== line) preferences.value = { ...now, line };
}

/**
 * The tablet stands at this line from now on: in the place of the one in hand, or, where it serves the line already, with what it serves left
 * as it is, so that no line's warnings fall silent.
 */
export function standAt({ preferences, beside }: Pick<App, 'preferences' | 'beside'>, line: string): void {
  if (preferences.peek().serves.includes(line)) takeLine({ preferences }, line);
  else serveLines({ preferences }, line, beside.peek()[0] ?? null);
}

/** The tablet serves these two lines, or with null for the second the first alone. */
export function serveLines(
  { preferences }: Pick<App, 'preferences'>,
  line: string,
  other: string | null,
): void {
  preferences.value = {
    ...preferences.peek(),
    line,
    serves: other === null || other === line ? [] : [line, other],
  };
}

/** The name of a line where the tablet serves several, so that nobody mixes them up; null where it serves one. */
export function lineToTell(app: Pick<App, 'beside' | 'store'>, line: string): string | null {
  return app.beside.value.length === 0 ? null : (app.store.floor().lines.get(line)?.name ?? line);
}

/** A slot, behind the name of its line where the tablet serves several. */
export function slotToTell(app: Pick<App, 'beside' | 'store'>, line: string, slot: string): string {
  const name = lineToTell(app, line);
  return name === null ? slot : `${name} · ${slot}`;
}

/** Says at the foot of the screen which line is in hand now. */
export function tellLine(app: Pick<App, 'store' | 'notice'>, line: string): void {
  const name = app.store.floor().lines.get(line)?.name ?? line;
  app.notice.value = { tone: 'plain', text: say(shellWords).nowOn(name) };
}

/** Says, once, when another line is in hand without a tap: the lane in hand was taken away, or is a lane again. */
export function tellMoves(app: Pick<App, 'store' | 'notice' | 'line' | 'preferences'>): void {
  const kept = app.preferences.peek();
  let taken = kept.line;
  let known = kept.movedTo ?? taken;
  effect(() => {
    const now = app.line.value;
    const before = taken;
    const preferences = app.preferences.value;
    taken = preferences.line;
    if (now === null) return; // the plant's lines have not come yet
    if (taken !== null && taken === before && now !== known) tellLine(app, now);
    known = now;
    // Kept, so that the next start does not tell it again; the line that was taken stays, as it may be one again.
    const movedTo = taken === null || now === taken ? null : now;
    if (preferences.movedTo !== movedTo) app.preferences.value = { ...preferences, movedTo };
  });
}
