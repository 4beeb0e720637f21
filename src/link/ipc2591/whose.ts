// Whose messages does a station take? The machine's that its file names; else the first that was heard there, kept on disk, so that another
// machine that is turned to the same address later is told and not counted.

import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { writeWhole } from '../files.ts';

/** Tells whose messages are taken. */
export interface Whose {
  /** True for the station's machine; the first that asks is it where nobody is named. */
  readonly takes: (handle: string) => boolean;
}

/** Opens it for a station. `named`: the handle of its file, null where none stands there. Throws where the folder cannot be written. */
export function openWhose(folder: string, station: string, named: string | null): Whose {
  if (named !== null) return { takes: (handle) => handle === named };
  const file = join(folder, `${encodeURIComponent(station)}.handle`);
  let first = existsSync(file) ? readFileSync(file, 'utf8') : null;
  return {
    takes: (handle) => {
      if (first === null) {
        writeWhole(file, handle);
        first = handle;
      }
      return handle === first;
    },
  };
}
