// A part of the log may leave out the head that vouches for an entry in it: so the tablet signs what of its own chain the part ends with, gap by
// gap. What others wrote only they can sign: of a part of that, the server's export proves where it lies in the plant's log.
// Refused: the entries up to the head, which the filter was to leave out.

import { chainId, type Entry } from '../../../../shared/log/entry.ts';
import { goesOn } from '../../../../shared/log/vouched.ts';
import { type Identity, signHash } from '../../store/identity.ts';

interface Written {
  readonly entry: Entry;
  /** Writes it anew, with its signature. */
  readonly rewrite: (signed: Entry) => void;
}

/** Hears what of the log is written, in folding order, and signs the ends of the tablet's own stretches when all of it is. */
export interface EndSigner {
  readonly take: (entry: Entry, rewrite: (signed: Entry) => void) => void;
  readonly end: () => Promise<void>;
}

/** Makes one; without a key it signs nothing. Cost: one signature a stretch that no head ends. */
export function createEndSigner(identity: Identity): EndSigner {
  const own = chainId(identity);
  const ends: Written[] = [];
  let last: Written | null = null;
  return {
    take: (entry, rewrite) => {
      // A life of the chain that ended has its own head, and may have had another key.
      if (chainId(entry) !== own) return;
      if (last !== null && !goesOn(last.entry, entry)) ends.push(last);
      last = { entry, rewrite };
    },
    end: async () => {
      if (last !== null) ends.push(last);
      for (const { entry, rewrite } of ends) {
        const sig = entry.sig === null ? await signHash(identity, entry.hash) : null;
        if (sig !== null) rewrite({ ...entry, sig });
      }
    },
  };
}
