// What became of each jar of paste, and on which panels it may be: a jar on a line's stencil is on what that line prints until it comes off.
// Method: a jar takes the place of what was on the stencil before it, whether or not anybody told that it came off. Where it was told to be put on top,
// all of it lies there until all of it came off. Refused: to take every jar to be on top, since many a log tells of no jar that it came off.

import { entryId } from '../log/entry.ts';
import type { EntryOf, PayloadOf } from './kinds.ts';
import type { JarSays } from './kinds-paste.ts';
import type { FloorState } from './state.ts';
import { tallyOf } from './tally.ts';

/** The plant's sheet of a paste, as it was last entered. */
export type PasteRule = Readonly<PayloadOf<'paste.ruled'>>;

/** One thing that was told of a jar. */
export interface JarTold {
  readonly says: JarSays;
  readonly fromMs: number;
  readonly line: string | null;
}

/** A jar of paste. */
export interface Jar {
  readonly jar: string;
  readonly paste: string;
  readonly lot: string | null;
  readonly expires: string | null;
  /** In the order of their moments. */
  readonly told: readonly JarTold[];
}

/** A jar on a line's stencil during one run. Tallies as of `tallyOf`. */
export interface PasteStretch {
  readonly jar: string;
  readonly paste: string;
  readonly lot: string | null;
  readonly line: string;
  readonly run: string;
  readonly fromTally: number;
  /** True where it was on the stencil when the run began. */
  readonly wasThere: boolean;
  /** Null while nothing ends it. */
  readonly toTally: number | null;
  readonly entry: string;
  readonly who: string | null;
  readonly atMs: number;
}

/** Kinds that this fold handles. */
type PasteEntry = EntryOf<'paste.ruled' | 'jar.known' | 'jar.told' | 'run.started'>;

/** Applies one entry to the jars. Must see a run's start after the run itself is there. */
export function foldPaste(state: FloorState, entry: PasteEntry): void {
  switch (entry.kind) {
    case 'paste.ruled':
      state.pasteRules.set(entry.payload.paste, entry.payload);
      return;
    case 'jar.known': {
      const { jar, paste, lot, expires } = entry.payload;
      const told = state.jars.get(jar)?.told ?? [];
      state.jars.set(jar, { jar, paste, lot, expires, told });
      return;
    }
    case 'jar.told':
      tell(state, entry);
      return;
    case 'run.started': {
      const { line } = entry.payload;
      for (const jar of state.stencils.get(line) ?? []) begin(state, { line, jar, wasThere: true }, entry);
      return;
    }
    default:
      entry satisfies never;
  }
}

function tell(state: FloorState, entry: EntryOf<'jar.told'>): void {
  const { jar, says, line, from, onTop = false } = entry.payload;
  const known = state.jars.get(jar);
  const fromMs = Date.parse(from);
  if (known === undefined || Number.isNaN(fromMs)) return;
  // Nobody can tell what is still to come.
  const told = [...known.told, { says, line, fromMs: Math.min(fromMs, entry.hlc.ms) }];
  state.jars.set(jar, { ...known, told: told.sort((a, b) => a.fromMs - b.fromMs) });
  for (const [on, there] of state.stencils) {
    const isOver = there.includes(jar) && !there.some((each) => isOn(state, each, on));
    if (!isOver) continue;
    state.stencils.delete(on);
    end(state, on);
  }
  if (says !== 'on' || line === null) return;
  const there = state.stencils.get(line) ?? [];
  const isAlone = there.length === 1;
  if (there.includes(jar) && (onTop || isAlone)) return;
  if (there.length > 0 && !onTop) end(state, line);
  state.stencils.set(line, onTop ? [...there, jar] : [jar]);
  begin(state, { line, jar, wasThere: false }, entry);
}

/** True while the newest that was told of a jar is that it is on this line's stencil. */
function isOn(state: FloorState, jar: string, line: string): boolean {
  const last = state.jars.get(jar)?.told.at(-1);
  return last?.says === 'on' && last.line === line;
}

function begin(
  state: FloorState,
  at: { readonly line: string; readonly jar: string; readonly wasThere: boolean },
  entry: EntryOf<'jar.told' | 'run.started'>,
): void {
  const { line, jar, wasThere } = at;
  const run = state.runs.get(state.current.get(line) ?? '');
  const known = state.jars.get(jar);
  if (run === undefined || known === undefined) return;
  const { paste, lot } = known;
  const stretch = { jar, paste, lot, line, run: run.run, fromTally: tallyOf(run), wasThere, toTally: null };
  const told = { entry: entryId(entry), who: entry.who, atMs: entry.hlc.ms };
  state.pasted.set(line, [...(state.pasted.get(line) ?? []), { ...stretch, ...told }]);
}

function end(state: FloorState, line: string): void {
  const ended = (state.pasted.get(line) ?? []).map((each) => {
    const run = state.runs.get(each.run);
    const isOpen = each.toTally === null && run !== undefined && run.phase !== 'ended';
    return isOpen ? { ...each, toTally: tallyOf(run) } : each;
  });
  state.pasted.set(line, ended);
}
