// One folder for the built command line of a whole run of tests: named here, filled by the first file that asks for it, removed at the end.

import type { TestProject } from 'vitest/node';
import { newFolder } from '../contract/databases.ts';

declare module 'vitest' {
  interface ProvidedContext {
    /** The folder that `useBuiltCli` builds into. */
    builtCli: string;
  }
}

/** Called by vitest before the first test and, by what it answers, after the last. */
export default function nameFolder(project: TestProject): () => void {
  const folder = newFolder();
  project.provide('builtCli', folder.path);
  return folder.remove;
}
