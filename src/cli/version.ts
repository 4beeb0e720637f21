// The version of this program: what its package says, wherever it was built to.

import { readFileSync } from 'node:fs';

/** The version, e.g. `0.1.0`. */
export function ownVersion(): string {
  for (const above of ['../../package.json', '../../../package.json']) {
    try {
      const { name, version } = JSON.parse(readFileSync(new URL(above, import.meta.url), 'utf8')) as {
        readonly name?: string;
        readonly version?: string;
      };
      if (name === 'reelward' && version !== undefined) return version;
    } catch {
      // Not there: one folder further up.
    }
  }
  return 'unknown';
}
