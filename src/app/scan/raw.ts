// Scans of the keyboard-wedge scanner as they came, before anybody reads them: for the page that tests the scanner.
// While somebody looks at them they go nowhere else, as a test scan is no reel.

import type { WedgeScan } from './wedge.ts';

/** The channel of raw scans. */
export interface RawScans {
  /** Hands a scan to whoever looks; answers false where that keeps it from everybody else. */
  push(scan: WedgeScan): boolean;
  /** Looks at every scan until released. */
  take(looker: (scan: WedgeScan) => void): () => void;
}

/** Makes the channel. */
export function createRawScans(): RawScans {
  const lookers = new Set<(scan: WedgeScan) => void>();
  return {
    push(scan) {
      for (const look of [...lookers]) look(scan);
      return lookers.size === 0;
    },
    take(looker) {
      lookers.add(looker);
      return () => lookers.delete(looker);
    },
  };
}
