// What a reader of labels must be told, as closed codes with facts; the sentences are for the command line and for logs.
// Screens word the codes themselves, so nothing may depend on these sentences.

import type { LabelFieldName } from './reading.ts';

/** Something that a person should know about how a label was read, or why it was not. */
export type LabelWarning =
  | { readonly code: 'no-code' }
  | { readonly code: 'no-part-number' }
  | { readonly code: 'header-damaged'; readonly found: string }
  | { readonly code: 'separators-replaced'; readonly found: string }
  | { readonly code: 'separators-mixed'; readonly found: readonly string[] }
  | { readonly code: 'separators-lost'; readonly text: string }
  | { readonly code: 'trailer-uncertain'; readonly text: string }
  | {
      readonly code: 'keyboard-layout';
      readonly layout: string;
      readonly text: string;
      readonly meant: string | null;
    }
  | { readonly code: 'identifier-lower-case'; readonly id: string }
  | { readonly code: 'identifier-unlisted'; readonly id: string }
  | { readonly code: 'no-identifier'; readonly text: string }
  | { readonly code: 'format-unread'; readonly format: string }
  | { readonly code: 'tags-not-mh10'; readonly tags: readonly string[] }
  | { readonly code: 'one-letter-tags'; readonly text: string }
  | { readonly code: 'blank-separated'; readonly text: string }
  | { readonly code: 'value-may-go-on'; readonly id: string; readonly text: string }
  | { readonly code: 'identifier-unconfirmed'; readonly text: string }
  | { readonly code: 'confirmed-by-setup'; readonly field: LabelFieldName; readonly value: string }
  | { readonly code: 'conflict'; readonly field: LabelFieldName; readonly values: readonly string[] }
  | { readonly code: 'second-lot'; readonly text: string }
  | { readonly code: 'quantity-unreadable'; readonly text: string }
  | { readonly code: 'quantity-marks'; readonly text: string; readonly quantity: number }
  | { readonly code: 'date-code-unclear'; readonly id: string; readonly text: string }
  | { readonly code: 'no-such-week'; readonly id: string; readonly text: string }
  | { readonly code: 'no-such-date'; readonly id: string; readonly text: string }
  | { readonly code: 'day-not-printed'; readonly id: string; readonly text: string }
  | { readonly code: 'country-unlisted'; readonly text: string }
  | { readonly code: 'msl-unlisted'; readonly text: string }
  | { readonly code: 'rule-unclear'; readonly rule: string }
  | { readonly code: 'full-ascii'; readonly text: string; readonly meant: string }
  | { readonly code: 'gs1-unread'; readonly text: string }
  | { readonly code: 'gs1-check-digit'; readonly text: string };

/** Closed list of what a label warning can be about. */
export type LabelWarningCode = LabelWarning['code'];

/** One English sentence for a warning, with the text that it is about in quotes. */
export function formatLabelWarning(warning: LabelWarning): string {
  switch (warning.code) {
    case 'no-code':
      return 'no code was read off this label';
    case 'no-part-number':
      return 'no part number on this label: it must come from elsewhere';
    case 'header-damaged':
      return `the start of the code is damaged: ${quote(warning.found)}`;
    case 'separators-replaced':
      return `the scanner sent ${quote(warning.found)} in place of the separators (GS): set it to send control characters`;
    case 'separators-mixed':
      return `the separators differ (${warning.found.map(quote).join(', ')}): check the scanner and its keyboard layout`;
    case 'separators-lost':
      return `separators are missing in ${quote(warning.text)}: only what is certain was read; set the scanner to send control characters`;
    case 'trailer-uncertain':
      return `the last character of ${quote(warning.text)} may be the end mark of the code`;
    case 'keyboard-layout':
      return `the scanner types for another keyboard (${warning.layout}): ${quote(warning.text)} was not taken; set the layout and scan again`;
    case 'identifier-lower-case':
      return `identifier ${quote(warning.id)} came in lower case and was read as ${warning.id.toUpperCase()}`;
    case 'identifier-unlisted':
      return `identifier ${warning.id} is not known: its value is kept, not used`;
    case 'no-identifier':
      return `${quote(warning.text)} has no identifier: kept as text`;
    case 'format-unread':
      return `format ${warning.format} is not read here: kept as text`;
    case 'tags-not-mh10':
      return `two-letter tags (${warning.tags.join(', ')}) instead of data identifiers`;
    case 'one-letter-tags':
      return 'one-letter tags, read as: R reel, P site part, D date, L lot, V supplier, Q quantity, S supplier part';
    case 'blank-separated':
      return `read in pieces, cut at blanks: if a part number in ${quote(warning.text)} has blanks, it is cut too`;
    case 'value-may-go-on':
      return `${quote(warning.text)} may belong to the value after ${warning.id}: not read`;
    case 'identifier-unconfirmed':
      return `${quote(warning.text)} may begin with an identifier or be a bare number: a person must say which`;
    case 'confirmed-by-setup':
      return `${warning.field} ${quote(warning.value)} is as the setup expects`;
    case 'conflict':
      return `the label has different values for ${warning.field}: ${warning.values.map(quote).join(', ')}`;
    case 'second-lot':
      return `the label has a second lot, ${quote(warning.text)}: the reel holds both`;
    case 'quantity-unreadable':
      return `quantity ${quote(warning.text)} cannot be read without guessing: count or type it`;
    case 'quantity-marks':
      return `quantity ${quote(warning.text)} was read as ${warning.quantity}`;
    case 'date-code-unclear':
      return `date code ${quote(warning.text)} (${warning.id}) is not clear: kept as printed`;
    case 'no-such-week':
      return `date code ${quote(warning.text)} (${warning.id}) is no week of any year: kept as printed`;
    case 'no-such-date':
      return `${quote(warning.text)} (${warning.id}) is no date`;
    case 'day-not-printed':
      return `${quote(warning.text)} (${warning.id}) has no day: the last of the month counts`;
    case 'country-unlisted':
      return `${quote(warning.text)} is no country code`;
    case 'msl-unlisted':
      return `${quote(warning.text)} is no moisture level`;
    case 'rule-unclear':
      return `label rule ${quote(warning.rule)} fits in more than one way: not used`;
    case 'full-ascii':
      return `${quote(warning.text)} looks like Code 39 in full ASCII: it would be ${quote(warning.meant)}; set the scanner to it`;
    case 'gs1-unread':
      return `${quote(warning.text)} has a GS1 identifier that is not known here: kept as text`;
    case 'gs1-check-digit':
      return `the check digit of ${quote(warning.text)} is wrong`;
  }
}

/** Quotes text for people; control characters become visible. */
function quote(text: string): string {
  const cut = text.length > 60 ? `${text.slice(0, 57)}...` : text;
  return JSON.stringify(cut);
}
