// Does what stood on a slot carry the material that is asked for? The one door for it: a reel, a lot or a part is looked for in the package
// itself, in what it was cut off from, and in what was joined with it. A piece surely carries what all its parts went through; out of a join,
// which of the two a panel got nobody can tell, so that each is possible and none sure (both are recorded, as LEVELS.md has it for a joint).
// What was joined counts from then on: panels built before do not carry it. A piece was one ever since, however its cut was told late.

import { idSince } from '../floor/fold-print.ts';
import { linesFeeding } from '../floor/lanes.ts';
import { type Material, materialNow } from '../floor/made-of.ts';
import { hasOwnId, ownIdOf } from '../floor/reel-id.ts';
import type { FloorState, Reel, Tape } from '../floor/state.ts';
import { compareText } from '../log/order.ts';
import { openKey } from './line.ts';
import { asAsked, type TraceQuestion } from './question.ts';
import type { Stretch, TraceIndex } from './stretches.ts';

/** How a stretch carries what is asked for: surely on each of its sure panels, or perhaps. */
export type Carried = 'surely' | 'perhaps';

type Names = Pick<FloorState, 'madeOf' | 'named' | 'reels'>;
/** What a package is asked by. */
const facts = ['reel', 'lot', 'part'] as const;
const otherFacts = ['feeder', 'slot'] as const;
/** What is told of a package, wherever it is. */
type PackageTold = Pick<Stretch, 'reel' | 'unnamed' | 'made' | 'lot'> & { readonly part: string | null };
type Fact = (typeof facts)[number] | (typeof otherFacts)[number];

/** Which of these facts a question gives, as they are looked for: an entry of the log has the name that a package had then. */
function askedOf<F extends Fact>(
  state: Pick<FloorState, 'named'>,
  question: TraceQuestion,
  names: readonly F[],
): readonly (readonly [F, string])[] {
  return names.flatMap((name) => {
    const value = question[name];
    return value === undefined
      ? []
      : [[name, asAsked(name === 'reel' ? idSince(state, value) : value)] as const];
  });
}

/** What a stretch keeps of its tape's package: its name where it has no id, and what it was made of by then. */
export function bornWith(
  state: Pick<FloorState, 'madeOf'>,
  { reel }: Pick<Tape, 'reel'>,
): Pick<Stretch, 'unnamed' | 'made'> {
  const made = materialNow(state, reel);
  return {
    ...(hasOwnId(reel) ? {} : { unnamed: reel }),
    ...(made === null ? {} : { made }),
  };
}

/**
 * What was cut or joined into a package (`name`) that stands on a slot is in what it feeds from then on, and perhaps in what it fed before;
 * on each lane that feeds from there.
 */
export function takeMaterial({ state, open }: Pick<TraceIndex, 'state' | 'open'>, name: string): void {
  for (const [key, { line, tapes }] of state.slots)
    for (const tape of tapes) {
      if (tape.reel !== name) continue;
      for (const lane of linesFeeding(state, line)) {
        const stretch = open.get(openKey(lane, key))?.get(tape.entry);
        if (stretch) Object.assign(stretch, bornWith(state, tape));
      }
    }
}

/** The package of a stretch as it is called by now; null where nothing names it. */
export function nameOf(
  state: Pick<FloorState, 'named'>,
  { reel, unnamed }: Pick<Stretch, 'reel' | 'unnamed'>,
): string | null {
  return reel ?? (unnamed === undefined ? null : idSince(state, unnamed));
}

/** What the package of a stretch was made of while it was there; null where of itself alone. */
export function materialOf(
  state: Names,
  stretch: Pick<Stretch, 'reel' | 'unnamed' | 'made'>,
): Material | null {
  const own = nameOf(state, stretch);
  const cutOf = (name: string) => state.madeOf.get(name)?.cut ?? null;
  if (own === null || (stretch.made === undefined && cutOf(own) === null)) return null;
  const called = (names: readonly string[]) => names.map((name) => idSince(state, name));
  const { of, all }: Material = stretch.made ?? { of: [], all: [own] };
  // A cut that was told later than what became of the piece.
  const wider = new Set([own, ...called(of)].flatMap((name) => [name, ...(cutOf(name)?.of ?? [])]));
  wider.delete(own);
  return {
    of: [...wider],
    all: [...new Set(called(all).flatMap((name) => [name, ...(cutOf(name)?.all ?? [])]))],
  };
}

/** The id of the package of a stretch, though it got that since; null where it has none. */
export function idNow(
  state: Pick<FloorState, 'named'>,
  stretch: Pick<Stretch, 'reel' | 'unnamed'>,
): string | null {
  return ownIdOf(nameOf(state, stretch) ?? undefined);
}

/** A lot or part of a package, as the log has it last. */
const factOf = (state: Names, name: string, fact: 'lot' | 'part'): string | null =>
  state.reels.get(name)?.[fact] ?? null;

/** How material is of the reel, lot or part asked for; null where it is not. */
function carriedIn(
  state: Names,
  stretch: PackageTold,
  of: { readonly material: Material; readonly fact: (typeof facts)[number]; readonly asked: string },
): Carried | null {
  const { material, fact, asked } = of;
  const own = nameOf(state, stretch);
  const isAsked = (value: string | null) => value !== null && asAsked(value) === asked;
  if (fact === 'reel') {
    if (!isAsked(own) && !material.of.some(isAsked)) return null;
    return material.all.some(isAsked) && isOneThing(state, stretch, material) ? 'surely' : 'perhaps';
  }
  const values = material.of.map((name) => ({ name, value: factOf(state, name, fact) }));
  values.push({ name: own ?? '', value: stretch[fact] });
  if (!values.some(({ value }) => isAsked(value))) return null;
  // Where all parts went through it, one label that tells nothing may be told by another; where only some did, each must say it.
  const isSure = values.every(({ name, value }) =>
    value === null ? material.all.includes(name) : isAsked(value),
  );
  return isSure ? 'surely' : 'perhaps';
}

/** False where labels of what all parts are said to have gone through contradict each other. */
function isOneThing(state: Names, stretch: PackageTold, { all }: Material): boolean {
  const own = nameOf(state, stretch);
  return (['lot', 'part'] as const).every((fact) => {
    const told = all.map((name) => (name === own ? stretch[fact] : factOf(state, name, fact)));
    return new Set(told.flatMap((value) => (value === null ? [] : [asAsked(value)]))).size <= 1;
  });
}

/** How packages carry the reel, lot and part that a question asks for; null for those that do not. All do where it asks for none. */
function packageCarries(state: Names, question: TraceQuestion): (told: PackageTold) => Carried | null {
  const ofPackage = askedOf(state, question, facts);
  return (told) => {
    if (ofPackage.length === 0) return 'surely';
    const material = materialOf(state, told);
    if (material === null) {
      const isIt = ofPackage.every(([fact, asked]) => {
        const value = fact === 'reel' ? nameOf(state, told) : told[fact];
        return value !== null && asAsked(value) === asked;
      });
      return isIt ? 'surely' : null;
    }
    const found = ofPackage.map(([fact, asked]) => carriedIn(state, told, { material, fact, asked }));
    if (found.includes(null)) return null;
    return found.includes('perhaps') ? 'perhaps' : 'surely';
  };
}

/** How stretches carry what a question asks for: every field given must fit, and the moment at which they began; null for those that do not. */
export function carriedBy(state: Names, question: TraceQuestion): (stretch: Stretch) => Carried | null {
  const fromMs = question.from === undefined ? Number.NEGATIVE_INFINITY : Date.parse(question.from);
  const toMs = question.to === undefined ? Number.POSITIVE_INFINITY : Date.parse(question.to);
  const isTimed = question.from !== undefined || question.to !== undefined;
  const carries = packageCarries(state, question);
  const ofPlace = askedOf(state, question, otherFacts);
  const exact = (['who', 'run'] as const).filter((name) => question[name] !== undefined);
  const isThere = (stretch: Stretch) => {
    if (!exact.every((name) => stretch[name] === question[name])) return false;
    if (!ofPlace.every(([name, value]) => asAsked(stretch[name] ?? '') === value)) return false;
    // Reading a moment costs more than all the rest.
    const atMs = isTimed ? Date.parse(stretch.at) : 0;
    return atMs >= fromMs && atMs <= toMs;
  };
  return (stretch) => (isThere(stretch) ? carries(stretch) : null);
}

/**
 * The packages that the log knows by now and that carry, surely or perhaps, the reel, lot and part that a question asks for; where and when it
 * asks for does not count. Cost: linear in packages.
 */
export function reelsCarrying(state: Names, question: TraceQuestion): readonly Reel[] {
  const carries = packageCarries(state, question);
  return [...state.reels.values()].filter(
    (reel) => carries({ ...reel, ...bornWith(state, reel), reel: ownIdOf(reel.reel) }) !== null,
  );
}

/**
 * Other names under which stretches may carry what a question asks for, in one letter case: pieces, what was joined, and names from before a
 * package got its id. For those who look stretches up by their names. Cost: linear in packages that were cut, joined or named.
 */
export function namesToo(state: Names, question: TraceQuestion): readonly string[] {
  const found = new Set<string>();
  for (const [fact, value] of askedOf(state, question, facts)) {
    const isAsked = (name: string) =>
      asAsked((fact === 'reel' ? name : factOf(state, name, fact)) ?? '') === value;
    // Whatever has the part asked for by its own label is found by that.
    const isFound = (name: string) => fact === 'part' && isAsked(name);
    for (const [name, { of }] of state.madeOf) if (of.some(isAsked) && !isFound(name)) found.add(name);
    if (fact === 'reel') for (const name of state.named.keys()) if (isAsked(name)) found.add(name);
  }
  const before = [...found].flatMap((name) => state.named.get(name) ?? []);
  return [...new Set([...found, ...before].map(asAsked))];
}

/** What became of a reel and what it is made of, by cuts and joins: null where none was ever cut off, joined or taken. */
export interface Parts {
  /** Packages whose parts are in it: what it was cut off from, what was joined with it. */
  readonly madeOf: readonly string[];
  /** Packages that have parts of it. */
  readonly wentInto: readonly string[];
}

/** The parts of the reel that a question names; null where it names none, or one that was never cut nor joined. */
export function partsAsked(state: Names, question: TraceQuestion): Parts | null {
  const [reel] = askedOf(state, question, ['reel']);
  if (reel === undefined) return null;
  const [, asked] = reel;
  const isAsked = (name: string) => asAsked(name) === asked;
  const madeOf: string[] = [];
  const wentInto: string[] = [];
  for (const [name, { of }] of state.madeOf) {
    if (isAsked(name)) madeOf.push(...of);
    else if (of.some(isAsked)) wentInto.push(name);
  }
  if (madeOf.length + wentInto.length === 0) return null;
  return { madeOf: madeOf.sort(compareText), wentInto: wentInto.sort(compareText) };
}

/** The lot of a stretch: its label's, else that of what all its parts went through. `material`: its own, as `materialOf` has it. */
export function lotOf(state: Names, stretch: Stretch, material: Material | null): string | null {
  if (stretch.lot !== null) return stretch.lot;
  const lots = new Set(material?.all.flatMap((name) => factOf(state, name, 'lot') ?? []));
  const [only, ...others] = lots;
  return others.length === 0 ? (only ?? null) : null;
}

/** Packages of another lot, or of one that nobody told, out of which parts of a stretch may be: what was joined though that was not to be done. `material`: its own. */
export function otherLots(
  state: Names,
  stretch: Stretch,
  material: Material | null,
): readonly {
  readonly reel: string | null;
  readonly lot: string | null;
  readonly supplierPart: string | null;
}[] {
  const own = lotOf(state, stretch, material);
  return (material?.of ?? []).flatMap((name) => {
    const lot = factOf(state, name, 'lot');
    const isSame = lot === null || own === null ? lot === own : asAsked(lot) === asAsked(own);
    if (isSame || (lot === null && material?.all.includes(name))) return [];
    return [{ reel: ownIdOf(name), lot, supplierPart: state.reels.get(name)?.supplierPart ?? null }];
  });
}
