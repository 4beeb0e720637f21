// Which things have a text in them? Method: every text once, however many things say it, one behind the other in one long text a form;
// what is typed is sought there by the engine's own search, and each find leads to the things of that text. A key press so costs one
// pass over the distinct codes. Refused: an index of all pieces of all codes, which takes longer to make than all key presses of a
// search together; and a look at every thing, which asks the same part number once for each of its reels.

import { type Folded, foldText, foldTexts, JOINT, type TextFit } from './text.ts';

/** Something that can be found. */
export interface Findable<K extends string, T> {
  readonly kind: K;
  readonly thing: T;
  /** What it is called: its own codes and names. */
  readonly names: readonly string[];
  /** What else is known of it: a reel's part and lot. */
  readonly about: readonly string[];
  /** What leads to it as a whole only, such as a badge: a piece of it must tell nothing. */
  readonly whole?: readonly string[];
}

/** One thing that was found. */
export interface Hit<T> {
  readonly thing: T;
  /** The text in which it was found, as written; null where that is not to be shown. */
  readonly text: string | null;
  readonly fit: TextFit;
  /** True where the text is one of its own names. */
  readonly isOwn: boolean;
}

/** What was found of one kind. */
export interface HitsOfKind<K extends string, T> {
  readonly kind: K;
  /** How many there are. */
  readonly count: number;
  /** The best of them, best first. */
  readonly first: readonly Hit<T>[];
  /** Names that are the same as what was asked for but for case, blanks, dashes and leading zeros, where there are several: people must look twice. */
  readonly alike: readonly string[];
}

/** Prepared for search. */
export interface TextIndex<K extends string, T> {
  readonly things: readonly Findable<K, T>[];
  readonly texts: readonly string[];
  /** Text -> things that it names (twice the number), or that it is about (one more). */
  readonly leadsTo: readonly (readonly number[])[];
  readonly exact: ReadonlyMap<string, number>;
  readonly whole: ReadonlyMap<string, readonly number[]>;
  readonly plain: LongText;
  readonly bare: LongText;
}

/** Texts one behind the other. */
interface LongText {
  readonly joined: string;
  /** Where each begins, and where the last ends. */
  readonly starts: Uint32Array;
}

/** Finds where each text of a long one begins. */
function layOut(joined: string, count: number): LongText {
  const starts = new Uint32Array(count + 1);
  for (let text = 1; text < count; text += 1)
    starts[text] = joined.indexOf(JOINT, starts[text - 1]) + JOINT.length;
  starts[count] = joined.length + JOINT.length;
  return { joined, starts };
}

/** Prepares things for search. In their order they are told where nothing else tells them apart. Cost: linear in all texts. */
export function indexTexts<K extends string, T>(things: readonly Findable<K, T>[]): TextIndex<K, T> {
  const texts: string[] = [];
  const leadsTo: number[][] = [];
  const exact = new Map<string, number>();
  const whole = new Map<string, number[]>();
  const lead = (written: string, to: number) => {
    const text = written.trim();
    if (text === '') return;
    let id = exact.get(text);
    if (id === undefined) {
      id = texts.length;
      texts.push(text);
      leadsTo.push([]);
      exact.set(text, id);
    }
    leadsTo[id]?.push(to);
  };
  things.forEach(({ names, about, whole: only = [] }, at) => {
    for (const text of names) lead(text, 2 * at);
    for (const text of about) lead(text, 2 * at + 1);
    for (const text of only) whole.set(text.trim(), [...(whole.get(text.trim()) ?? []), at]);
  });
  const { plain, bare } = foldTexts(texts);
  return {
    things,
    texts,
    leadsTo,
    exact,
    whole,
    plain: layOut(plain, texts.length),
    bare: layOut(bare, texts.length),
  };
}

const fitCodes: readonly TextFit[] = ['within', 'start', 'same', 'exact'];

/** Notes for each text how what is asked for lies in it, where it does. Cost: one pass over the long text. */
function note({ joined, starts }: LongText, needle: string, found: Map<number, number>): void {
  if (needle === '') return;
  let text = 0;
  for (let at = joined.indexOf(needle); at >= 0; at = joined.indexOf(needle, starts[text + 1])) {
    while ((starts[text + 1] ?? 0) <= at) text += 1;
    const start = starts[text] ?? 0;
    const length = (starts[text + 1] ?? 0) - start - JOINT.length;
    const fit = at > start ? 0 : length > needle.length ? 1 : 2;
    if (fit > (found.get(text) ?? -1)) found.set(text, fit);
  }
}

/** How good a find is: what is called so before what has it about it, whole codes before pieces. 0 is none. */
const ownScores = [2, 4, 7, 8];
const aboutScores = [1, 3, 5, 6];
const BEST = 8;
/** From here on the text is a whole name. */
const LEAST_ALIKE = 7;

/** What was found best, thing by thing. */
interface Marks {
  readonly scores: Uint8Array;
  readonly by: Int32Array;
}

/** The text by which a thing was found that is not to be shown. */
const UNSHOWN = -1;

function mark<K extends string, T>(index: TextIndex<K, T>, query: string, folded: Folded): Marks {
  const fitOf = new Map<number, number>();
  note(index.plain, folded.plain, fitOf);
  note(index.bare, folded.bare, fitOf);
  const exact = index.exact.get(query);
  if (exact !== undefined) fitOf.set(exact, 3);
  const scores = new Uint8Array(index.things.length);
  const by = new Int32Array(index.things.length);
  const put = (at: number, score: number, text: number) => {
    if (score <= (scores[at] ?? 0)) return;
    scores[at] = score;
    by[at] = text;
  };
  for (const [text, fit] of fitOf)
    for (const to of index.leadsTo[text] ?? [])
      put(to >> 1, (to % 2 === 0 ? ownScores : aboutScores)[fit] ?? 0, text);
  for (const at of index.whole.get(query) ?? []) put(at, BEST, UNSHOWN);
  return { scores, by };
}

/** What was found of one kind, while it is gathered. */
interface Gathered<T> {
  count: number;
  best: number;
  /** One list a score, filled in the order of the things: the best are then taken from the top. */
  readonly lists: readonly Hit<T>[][];
  readonly alike: Set<string>;
}

function gather<K extends string, T>(
  index: TextIndex<K, T>,
  { scores, by }: Marks,
  { kinds, most }: { readonly kinds: Map<K, Gathered<T>>; readonly most: number },
): void {
  scores.forEach((score, at) => {
    const found = index.things[at];
    if (score === 0 || found === undefined) return;
    let of = kinds.get(found.kind);
    if (!of) {
      of = { count: 0, best: 0, lists: Array.from({ length: BEST + 1 }, () => []), alike: new Set() };
      kinds.set(found.kind, of);
    }
    of.count += 1;
    of.best = Math.max(of.best, score);
    const text = index.texts[by[at] ?? UNSHOWN] ?? null;
    if (score >= LEAST_ALIKE && text !== null) of.alike.add(text);
    const list = of.lists[score];
    if (!list || list.length >= most) return;
    const isOwn = ownScores.includes(score);
    const fit = fitCodes[(isOwn ? ownScores : aboutScores).indexOf(score)] ?? 'within';
    list.push({ thing: found.thing, text, fit, isOwn });
  });
}

/**
 * What has a text in it, kind by kind: the kind of the best find first, then as `order` has them. At most `most` of a kind are told, and how many
 * there are. Nothing is found for a text of separators alone, but what is written so. `indexes`: one after the other, so that long lists can be
 * made ready in parts; nothing may be in two of them.
 */
export function findTexts<K extends string, T>(
  indexes: readonly TextIndex<K, T>[],
  asked: string,
  { most, order }: { readonly most: number; readonly order: readonly K[] },
): readonly HitsOfKind<K, T>[] {
  const query = asked.trim();
  if (query === '') return [];
  const folded = foldText(query);
  const kinds = new Map<K, Gathered<T>>();
  for (const index of indexes) gather(index, mark(index, query, folded), { kinds, most });
  return [...kinds]
    .sort(([a, { best }], [b, { best: other }]) => other - best || order.indexOf(a) - order.indexOf(b))
    .map(([kind, { count, lists, alike }]) => ({
      kind,
      count,
      first: [...lists].reverse().flat().slice(0, most),
      alike: alike.size > 1 ? [...alike] : [],
    }));
}
