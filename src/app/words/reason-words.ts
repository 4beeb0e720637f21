// The shape of what is said of a verdict's reason, in every language.

import type { ReasonCode } from '../../../shared/verdict/reasons.ts';

/** Facts of a reason as words need them: everything as text. */
export interface ReasonFacts {
  readonly [fact: string]: string;
}

/** Title, sentence and next act of every reason. */
export type ReasonWords = Readonly<
  Record<
    ReasonCode,
    { readonly title: string; readonly say: (f: ReasonFacts) => string; readonly act: string }
  >
>;
