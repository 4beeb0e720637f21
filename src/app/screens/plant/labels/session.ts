// The label being taught. It lives as long as the page, so that a look at another screen loses nothing.

import { signal } from '@preact/signals';
import type { Teaching } from './model.ts';

export const firstTeaching: Teaching = { codes: [], taps: [], name: '', dates: {} };

/** The label in hand; null = none is being taught. */
export const teaching = signal<Teaching | null>(null);

/** Adds codes to the label in hand; those that are on it already change nothing. */
export function addCodes(now: Teaching, codes: readonly string[]): Teaching {
  const fresh = [...new Set(codes.map((code) => code.trim()))].filter(
    (code) => code !== '' && !now.codes.includes(code),
  );
  return { ...now, codes: [...now.codes, ...fresh] };
}
