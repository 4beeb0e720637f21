// The bar codes that a line's rules add to the usual ones, and the lengths that their codes have. Interleaved 2 of 5 reads part of a code as a
// shorter whole one, so that it is read by its lengths alone.

import type { LineRules } from '../../../shared/floor/state.ts';
import type { CodeFormat } from '../../worker/decode-protocol.ts';

/** Numbers of characters that codes of a format have; a format that is not there may have any. */
export type CodeLengths = Readonly<Partial<Record<CodeFormat, readonly number[]>>>;

/** What a line's rules add; nothing where they say nothing. */
export function siteFormats(rules: Pick<LineRules, 'alsoRead'> | undefined): {
  readonly formats: readonly CodeFormat[];
  readonly lengths: CodeLengths;
} {
  const { code93 = [], itf = [] } = rules?.alsoRead ?? {};
  const formats: CodeFormat[] = [];
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
