// One stream of scans: camera, wedge scanner, typing and practice labels all end here.
// Method: a stack of takers, the newest is the task in hand and gets the scan; watchers only look on.
// Refused: delivering to the focused element, as a scan would then land in whatever field was touched last.

import type { Scan, ScannedCode } from '../../../shared/labels/scan.ts';

/** Gets a scan; `false` hands it on to the taker below. */
export type ScanTaker = (scan: Scan) => unknown;

export interface ScanStream {
  /** Gives the scan to the task in hand. Answers whether anybody took it. */
  push(scan: Scan): boolean;
  /** Looks on at every scan, taken or not. Answers how to stop. */
  subscribe(watch: (scan: Scan) => void): () => void;
  /** Becomes the task in hand until released; a dialog over a task takes over and gives back. */
  take(taker: ScanTaker): () => void;
}

/** Makes the one stream that the composition root hands down. */
export function createScanStream(): ScanStream {
  const watchers = new Set<(scan: Scan) => void>();
  let takers: readonly { readonly taker: ScanTaker }[] = [];
  return {
    push(scan) {
      for (const watch of [...watchers]) watch(scan);
      return [...takers].reverse().some(({ taker }) => taker(scan) !== false);
    },
    subscribe(watch) {
      watchers.add(watch);
      return () => watchers.delete(watch);
    },
    take(taker) {
      const entry = { taker };
      takers = [...takers, entry];
      return () => {
        takers = takers.filter((each) => each !== entry);
      };
    },
  };
}

// ISO/IEC 15424: flag "]", a letter for the symbology, a modifier.
const SYMBOLOGY_ID = /^\][A-Za-z][0-9A-Za-z]/;
const FORMATS_BY_LETTER: Readonly<Record<string, string>> = {
  A: 'Code39',
  C: 'Code128',
  d: 'DataMatrix',
  E: 'EANUPC',
  G: 'Code93',
  I: 'ITF',
  L: 'PDF417',
  Q: 'QRCode',
  z: 'Aztec',
};

/** Splits a symbology identifier off a text that a scanner was set to send it with; other texts stay whole. */
export function textToScannedCode(text: string): ScannedCode {
  if (!SYMBOLOGY_ID.test(text)) return { text, format: null, symbologyId: null };
  return {
    text: text.slice(3),
    format: FORMATS_BY_LETTER[text.charAt(1)] ?? null,
    symbologyId: text.slice(0, 3),
  };
}

/** What a person typed, as a scan; null when nothing but blanks was typed. Blanks at the ends are dropped. */
export function typedScan(text: string, atMs: number): Scan | null {
  const trimmed = text.replace(/^[ \t\r\n]+|[ \t\r\n]+$/g, '');
  return trimmed === ''
    ? null
    : { codes: [{ text: trimmed, format: null, symbologyId: null }], via: 'typed', atMs };
}
