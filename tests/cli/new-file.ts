// Files of a test, each with a name of its own.

import { mkdtempSync, writeFileSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';

/** Makes paths in a folder of their own; a file lies there at once where a text is given. `name`: of the folder. */
export function newFiles(name: string, ending = 'txt'): (text?: string) => string {
  const folder = mkdtempSync(path.join(os.tmpdir(), `reelward-${name}-`));
  let files = 0;
  return (text) => {
    files += 1;
    const file = path.join(folder, `${files}.${ending}`);
    if (text !== undefined) writeFileSync(file, text);
    return file;
  };
}
