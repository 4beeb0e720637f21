// What there is to say, by area: the names and the sentences as English has them. Types only: every language is checked against it.

import type { first, later } from './en/pack.ts';
import type { Sentences } from './words.ts';

type First = typeof first;
type Later = typeof later;

/** The name of an area: that of its file in each language's folder. */
export type AreaName = keyof First | keyof Later;

type English<A extends AreaName> = A extends keyof First
  ? First[A]
  : A extends keyof Later
    ? Awaited<ReturnType<Later[A]>>['words']
    : never;

/** The sentences of an area, in whatever language. */
export type Words<A extends AreaName> = Sentences<English<A>>;

/** All sentences of a language: an area or a sentence that it lacks is a compile error. */
export interface Pack {
  /** What the first screen says: comes with the pack. */
  readonly first: { readonly [A in keyof First]: Words<A> };
  /** What is said later: fetched by area. */
  readonly later: { readonly [A in keyof Later]: () => Promise<{ readonly words: Words<A> }> };
}
