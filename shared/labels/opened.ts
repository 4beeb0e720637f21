// What stands inside an opened envelope: GS1 identifiers (05), MH10.8.2 identifiers (06), text element identifiers (12),
// and the dialects that use a 06 envelope for something else.

import { type Basket, type LabelElement, mh10Element } from './elements.ts';
import type { Envelope } from './envelope.ts';
import { collectGs1 } from './gs1.ts';
import { IDENTIFIERS, identifierLength, identifierTitle } from './identifiers.ts';
import type { LabelExpectation } from './reading.ts';

/** Puts the elements of an opened envelope into the basket. */
export function collectEnvelope(
  envelope: Envelope,
  basket: Basket,
  _expected: LabelExpectation | undefined,
): void {
  basket.warnings.push(...envelope.warnings);
  if (envelope.lostBody !== null) {
    basket.warnings.push({ code: 'separators-lost', text: envelope.lostBody });
    basket.unidentified.push(envelope.lostBody);
    return;
  }
  for (const { format, elements } of envelope.formats) {
    if (format === '05') for (const element of elements) collectGs1(element, basket);
    else if (format === '06') collectMh10(elements, envelope, basket);
    else {
      basket.warnings.push({ code: 'format-unread', format });
      basket.unidentified.push(...elements);
    }
  }
}

function collectMh10(elements: readonly string[], envelope: Envelope, basket: Basket): void {
  for (const text of elements) {
    const element = readMh10(text, envelope, basket);
    if (element === 'empty') continue;
    if (element !== null) basket.elements.push(element);
    else {
      basket.unidentified.push(text);
      basket.warnings.push({ code: 'no-identifier', text });
    }
  }
}

function readMh10(text: string, envelope: Envelope, basket: Basket): LabelElement | 'empty' | null {
  let length = identifierLength(text, 0);
  let id = text.slice(0, length);
  if (length === 0 && envelope.separator !== '\x1d') {
    length = identifierLength(text, 0, true);
    const printed = text.slice(0, length);
    id = printed.toUpperCase();
    if (length > 0 && !IDENTIFIERS.has(id)) length = 0;
    if (length > 0) basket.warnings.push({ code: 'identifier-lower-case', id: printed });
  }
  if (length === 0) return null;
  const value = text.slice(length).trim();
  if (value === '') return 'empty';
  if (!IDENTIFIERS.has(id)) basket.warnings.push({ code: 'identifier-unlisted', id });
  return mh10Element(id, value);
}

void identifierTitle;
