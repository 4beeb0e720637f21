// A part of the log may leave out the head that vouches for an entry in it: so the tablet signs what of its own chain the part ends with, gap by
// gap. Only what a signed head vouches for here already is signed: the chain is followed on from the end of each stretch, by its texts, through what is
// left out too. An entry altered in the tablet's store would else be proven by a signature made for the file, with the break left out of it.
// What others wrote only they can sign: of a part of that, the server's export proves where it lies in the plant's log.
// Refused: the entries up to the head, which the filter was to leave out.

import { fromBase64Url } from '../../../../shared/kit/base64.ts';
import { chainId, type Entry, signatureForm } from '../../../../shared/log/entry.ts';
import { sealedHash } from '../../../../shared/log/seal.ts';
import { goesOn } from '../../../../shared/log/vouched.ts';
import { type Identity, signHash } from '../../store/identity.ts';
import { type SignedHeads, withHeads } from '../../store/signed-heads.ts';

interface Written {
  readonly entry: Entry;
  /** Writes it anew, with its signature. */
  readonly rewrite: (signed: Entry) => void;
}

/** Hears what of the log is read and written, in folding order, and signs the ends of the tablet's own stretches when all of it is. */
export interface EndSigner {
  /** An entry is written; before it is passed. */
  readonly take: (entry: Entry, rewrite: (signed: Entry) => void) => void;
  /** An entry of the log, as it lies there, is read: written or left out. Each one, in folding order. */
  readonly pass: (entry: Entry) => Promise<void>;
  /** All is read. `heads`: those that are signed by now, for what came in meanwhile. */
  readonly end: (heads: SignedHeads) => Promise<void>;
}

/** True where an entry's hash is signed by this tablet's own key; false without a signature or a key. */
async function isSignedBy({ keys }: Identity, { hash, sig }: Pick<Entry, 'hash' | 'sig'>): Promise<boolean> {
  if (!keys || sig === null || !signatureForm.test(sig)) return false;
  const signature = Uint8Array.from(fromBase64Url(sig) ?? []);
  const how = { name: 'ECDSA', hash: 'SHA-256' };
  return crypto.subtle.verify(how, keys.publicKey, signature, new TextEncoder().encode(hash));
}

const isWhole = (entry: Entry) => sealedHash(entry) === entry.hash;

/** Makes one; without a key it signs nothing. Cost: one signature a stretch that no head ends, and a hash for each own entry from there to the next head. */
export function createEndSigner(identity: Identity): EndSigner {
  const own = chainId(identity);
  /** Ends from which the chain holds as far as it is read, and those from which it holds up to a head. */
  let waiting: Written[] = [];
  const vouched: Written[] = [];
  let last: Written | null = null;
  let before: Entry | null = null;
  /** The last entry written is an end, where it is the last one read. */
  const closeStretch = () => {
    if (last !== null && before !== null && last.entry.seq === before.seq && isWhole(before))
      waiting.push(last);
  };
  const reachHead = async (entry: Entry) => {
    if (waiting.length === 0 || !(await isSignedBy(identity, entry))) return;
    vouched.push(...waiting);
    waiting = [];
  };
  return {
    take: (entry, rewrite) => {
      // A life of the chain that ended has its own head, and may have had another key.
      if (chainId(entry) === own) last = { entry, rewrite };
    },
    pass: async (entry) => {
      if (chainId(entry) !== own) return;
      if (last?.entry.seq !== entry.seq) closeStretch();
      if (waiting.length > 0 && !(before && goesOn(before, entry) && isWhole(entry))) waiting = [];
      before = entry;
      await reachHead(entry);
    },
    end: async (heads) => {
      closeStretch();
      const [head] = before ? withHeads([before], identity.tablet, heads) : [];
      if (head) await reachHead(head);
      for (const { entry, rewrite } of vouched) {
        const sig = entry.sig === null ? await signHash(identity, entry.hash) : null;
        if (sig !== null) rewrite({ ...entry, sig });
      }
    },
  };
}
