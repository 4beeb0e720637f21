// The bar codes that a line's rules add to the usual ones, and the lengths that their codes have. Interleaved 2 of 5 reads part of a code as a
// shorter whole one, so that it is read by its lengths alone.

import { type CodeFormat, DEFAULT_FORMATS } from '../../worker/decode-protocol.ts';

/** Numbers of characters that codes of a format have; a format that is not there may have any. */
export type CodeLengths = Readonly<Partial<Record<CodeFormat, readonly number[]>>>;

/** What a line's rules name: numbers of characters; empty: not read. */
export interface AlsoRead {
  readonly code93: readonly number[];
  readonly itf: readonly number[];
}

/** The usual symbologies with those that a line's rules add; nothing is added where they say nothing. */
export function siteFormats(alsoRead: AlsoRead | undefined): {
  readonly formats: readonly CodeFormat[];
  readonly lengths: CodeLengths;
} {
  const { code93 = [], itf = [] } = alsoRead ?? {};
  const formats = [...DEFAULT_FORMATS];
  if (code93.length > 0) formats.push('Code93');
  if (itf.length > 0) formats.push('ITF');
  return { formats, lengths: { Code93: code93, ITF: itf } };
}

/** The codes that have a length of their format. */
export function ofKnownLength<C extends { readonly format: CodeFormat; readonly text: string }>(
  codes: readonly C[],
  lengths: CodeLengths,
): readonly C[] {
  return codes.filter(({ format, text }) => lengths[format]?.includes(text.length) ?? true);
}
