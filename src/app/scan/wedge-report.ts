// What should the scanner be set to? The self-test screen prints the calibration code, takes a scan of it, and shows this.
// Method: findings as closed codes with facts, and the settings that would make the scanner work as it is.
// Refused: sentences here; the words for people live in the app's words.

import { checkCalibration, type SeparatorName } from './calibration.ts';
import type { Layout } from './layouts.ts';
import type { WedgeScan, WedgeSettings } from './wedge.ts';

export type WedgeFinding =
  | { readonly code: 'nothing-arrived' }
  | { readonly code: 'all-equal' }
  | { readonly code: 'half-arrived'; readonly characters: number; readonly wanted: number }
  /** Set the scanner's keyboard to `tablet`, or the tablet's layout to `scanner`. */
  | { readonly code: 'layout-differs'; readonly tablet: Layout; readonly scanner: Layout }
  | { readonly code: 'characters-differ'; readonly wanted: string; readonly found: string }
  | { readonly code: 'case-inverted' }
  /** Set "send control characters" to Ctrl sequences (or Alt with number pad). Structured labels are refused until then. */
  | { readonly code: 'separator-lost'; readonly separator: SeparatorName }
  | { readonly code: 'separator-replaced'; readonly separator: SeparatorName; readonly by: string }
  /** Set the suffix to Enter: without it, the end of a scan is only a guess by silence. */
  | { readonly code: 'terminator-missing' }
  | { readonly code: 'unknown-key'; readonly key: string }
  | { readonly code: 'slow'; readonly paceMs: number }
  | { readonly code: 'symbology-id-sent'; readonly symbologyId: string };

export interface WedgeReport {
  readonly findings: readonly WedgeFinding[];
  /** Whether structured labels (those with separators) may be read from this scanner. */
  readonly isFitForStructured: boolean;
  /** Whether any label may be read: characters arrive as printed. */
  readonly isFit: boolean;
  /** What to keep for this scanner: pace, ending, substitutes. */
  readonly settings: Partial<WedgeSettings>;
}

/** Above this mean time between characters a scanner overlaps with fast typists; typing fields then wait longer. */
const SLOW_MS = 30;

/** Judges one scan of the calibration code; null when none came. */
export function wedgeReport(received: WedgeScan | null): WedgeReport {
  if (received === null || received.text === '') {
    return { findings: [{ code: 'nothing-arrived' }], isFitForStructured: false, isFit: false, settings: {} };
  }
  const symbologyId = /^\][A-Za-z][0-9A-Za-z](?=A|a|q|Q)/.exec(received.text)?.[0] ?? null;
  const text = symbologyId === null ? received.text : received.text.slice(3);
  const calibration = checkCalibration(text);
  const findings: WedgeFinding[] = [];
  if (calibration.isEqual) findings.push({ code: 'all-equal' });
  if (calibration.characters.kind === 'layout') {
    const { tablet, scanner } = calibration.characters;
    findings.push({ code: 'layout-differs', tablet, scanner });
  } else if (calibration.characters.kind === 'unknown') {
    findings.push(unknownCharacters(calibration.characters));
  }
  if (calibration.isCaseInverted) findings.push({ code: 'case-inverted' });
  // Half a code, or another one, says nothing about separators.
  const isKnown = calibration.characters.kind !== 'unknown';
  for (const { name, fate, by } of isKnown ? calibration.separators : []) {
    if (fate === 'lost') findings.push({ code: 'separator-lost', separator: name });
    if (fate === 'replaced') findings.push({ code: 'separator-replaced', separator: name, by: by ?? '' });
  }
  if (received.endedBy === 'silence') findings.push({ code: 'terminator-missing' });
  for (const key of new Set(received.unknownKeys)) findings.push({ code: 'unknown-key', key });
  if (received.paceMs !== null && received.paceMs > SLOW_MS)
    findings.push({ code: 'slow', paceMs: received.paceMs });
  if (symbologyId !== null) findings.push({ code: 'symbology-id-sent', symbologyId });
  const isFit = calibration.characters.kind === 'equal' && !calibration.isCaseInverted;
  const hasSeparators = calibration.separators.every(({ fate }) => fate === 'kept');
  return { findings, isFit, isFitForStructured: isFit && hasSeparators, settings: settingsFor(received) };
}

function unknownCharacters(characters: { readonly wanted: string; readonly found: string }): WedgeFinding {
  const { wanted, found } = characters;
  if (found.length < wanted.length && wanted.startsWith(found)) {
    return { code: 'half-arrived', characters: found.length, wanted: wanted.length };
  }
  return { code: 'characters-differ', wanted, found };
}

function settingsFor(received: WedgeScan): Partial<WedgeSettings> {
  const paceMs = received.paceMs ?? 0;
  return {
    ending: received.endedBy === 'silence' ? 'silence' : 'terminator',
    // Room for half as much again, and for a stall of one Bluetooth interval.
    gapMs: Math.max(200, Math.round(paceMs * 1.5 + 80)),
    fastGapMs: Math.min(140, Math.max(35, Math.round(paceMs * 1.3))),
  };
}
