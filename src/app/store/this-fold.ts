// Which fold is this? Only a state of the same name can be gone on from or handed on.

import { FOLD_VERSION } from '../../../shared/floor/fold-version.ts';

/** The fold of an app: its version in the cache, its name to other tablets. */
export interface FoldVersion {
  readonly version: number;
  readonly name: string;
}

/** Names the fold of this app. */
export const foldName = `floor-${FOLD_VERSION}`;
export const thisFold: FoldVersion = { version: FOLD_VERSION, name: foldName };
