// What is a package made of? A piece is cut off another, or two are joined: each package bears the others whose parts are in it, and which
// packages all of its parts went through. So a block, and a trace, follow material into pieces and out of joins.
// Method: ways of parts. All parts of a piece went through what it was cut off from; after a join nobody knows which of the two a part is from.
// Refused: a tree of cuts and joins, walked at each question: what was joined after a cut is not in the piece, so that the tree needs times.

import type { FloorState } from './state.ts';

/** What is in a package: `of` the others whose parts are in it, `all` those, the package itself among them, through which all its parts went. */
export interface Material {
  readonly of: readonly string[];
  readonly all: readonly string[];
}

/** The material of a package by now. `cut`: what it was made of when it was cut off; null where it is no piece. */
export interface Made extends Material {
  readonly cut: Material | null;
}

type MadeState = Pick<FloorState, 'madeOf'>;

const union = (one: readonly string[], other: readonly string[]) => [...new Set([...one, ...other])];
const others = (names: readonly string[], own: string) => names.filter((name) => name !== own);

/** The material of a package; of itself alone where nothing was ever cut or joined. */
export function madeOf({ madeOf: made }: MadeState, name: string): Made {
  return made.get(name) ?? { of: [], all: [name], cut: null };
}

/** What a package is made of by now, whatever it was when it was cut off; null where nothing was ever cut or joined. */
export function materialNow({ madeOf: made }: MadeState, name: string): Material | null {
  const there = made.get(name);
  return there === undefined ? null : { of: there.of, all: there.all };
}

/** The material of a package that is in another from now on: it is listed, so that whether anything is made of a package takes no walk. */
function known(state: MadeState, name: string): Made {
  const made = madeOf(state, name);
  state.madeOf.set(name, made);
  return made;
}

/** A package is a piece of another from now on, and was one ever since it is known: pieces that were cut off it before are of that too. */
export function addPiece(state: MadeState, piece: string, from: string): void {
  const was = state.madeOf.get(piece);
  // Told of one id twice: two packages bear it.
  if (piece === from || (was && was.cut !== null)) {
    addJoined(state, piece, from);
    return;
  }
  const source = known(state, from);
  const cut = { of: others(union(source.of, [from]), piece), all: union(source.all, [piece]) };
  state.madeOf.set(piece, was === undefined ? { ...cut, cut } : { ...grown(was, piece, cut), cut });
  // What nothing named yet is in nothing.
  if (was === undefined) return;
  for (const [name, made] of state.madeOf) {
    if (name === piece || !made.of.includes(piece)) continue;
    const whole = grown(made, piece, cut, name);
    state.madeOf.set(name, {
      ...whole,
      cut: made.cut?.of.includes(piece) ? grown(made.cut, piece, cut, name) : made.cut,
    });
  }
}

/** Material in which a package turns out to be a piece. */
function grown(made: Material, piece: string, cut: Material, own = piece): Material {
  return {
    of: others(union(made.of, cut.of), own),
    all: made.all.includes(piece) ? union(made.all, cut.all) : made.all,
  };
}

/** Parts of one package are in another from now on, and with them what is in the first by now: what is added to that later is not. */
export function addJoined(state: MadeState, to: string, from: string): void {
  if (to === from) return;
  const [kept, gone] = [madeOf(state, to), known(state, from)];
  state.madeOf.set(to, {
    of: others(union(kept.of, union(gone.of, [from])), to),
    all: kept.all.filter((name) => gone.all.includes(name)),
    cut: kept.cut,
  });
}
