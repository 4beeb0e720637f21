// Which fold is this? Only a state of the same name can be gone on from or handed on.

import { FOLD_VERSION } from '../../../shared/floor/fold-version.ts';
import type { TabletTrust } from './trust.ts';

/** The fold of an app: its name in the cache and to other tablets, and whose tickets it asks for. */
export interface FoldVersion {
  readonly name: string;
  /** Null where no entry is asked for a ticket. */
  readonly trust: TabletTrust | null;
}

/** Names the fold of this app where the plant gives no tickets. */
export const foldName = `floor-${FOLD_VERSION}`;

/** The fold of this app: with another trust other entries are unproven, and the state is another. */
export function foldWith(trust: TabletTrust | null): FoldVersion {
  return { name: trust === null ? foldName : `${foldName}-${trust.id}`, trust };
}
