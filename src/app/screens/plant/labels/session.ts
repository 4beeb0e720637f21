// The label being taught. It lives as long as the page, so that a look at another screen loses nothing.

import { signal } from '@preact/signals';
import { findKeyboardLayout } from '../../../../../shared/labels/keyboard.ts';
import type { Teaching } from './model.ts';

export const firstTeaching: Teaching = { codes: [], taps: [], name: '', dates: {} };

/** The label in hand; null = none is being taught. */
export const teaching = signal<Teaching | null>(null);

/** The keyboard that spoiled one of the codes, null where none did: such a label is never taught, the scanner is set. */
export function spoilingKeyboard(codes: readonly string[]): string | null {
  for (const code of codes) {
    const found = findKeyboardLayout(code.trim());
    if (found !== null) return found.layout;
  }
  return null;
}

/** Adds codes to the label in hand; those that are on it already change nothing, and what a wrong keyboard typed is left out. */
export function addCodes(now: Teaching, codes: readonly string[]): Teaching {
  const fresh = [...new Set(codes.map((code) => code.trim()))].filter(
    (code) => code !== '' && !now.codes.includes(code) && spoilingKeyboard([code]) === null,
  );
  return { ...now, codes: [...now.codes, ...fresh] };
}
