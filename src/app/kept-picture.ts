// Which picture was kept of a verdict? The one whose hash the log has. What the server hands over in its place is not shown: it keeps pictures, it does not
// vouch for them. To take the server's own word for the hash was refused: it could lay any picture under any verdict.

import { fetchPicture } from './fetch-picture.ts';
import { shaOf } from './store/pictures.ts';

type Ends = Parameters<typeof fetchPicture>[0] & {
  readonly store: {
    readonly entry: (
      key: readonly [tablet: string, epoch: string, seq: number],
    ) => Promise<LoggedEntry | null>;
  };
};

interface LoggedEntry {
  readonly kind: string;
  readonly payload: Readonly<Record<string, unknown>>;
}

/** Where pictures of this tablet lie. */
interface OwnPictures {
  readonly bySha: (sha256: string) => Promise<{ readonly bytes: ArrayBuffer } | null>;
}

/** How many entries after a verdict the one of its picture is looked for: the tablet writes it as soon as the picture is small enough. */
const LOOKED_AFTER = 100;

/** SHA-256 (hex) of the picture that was kept of a verdict, by the log; null where it tells of none near the verdict. */
async function hashInLog({ store }: Pick<Ends, 'store'>, of: string): Promise<string | null> {
  const [tablet = '', epoch = '', seq = ''] = of.split('/');
  for (let at = Number(seq) + 1; at <= Number(seq) + LOOKED_AFTER; at++) {
    const entry = await store.entry([tablet, epoch, at]);
    if (entry === null) return null;
    const { of: pictured, sha256 } = entry.payload;
    if (entry.kind === 'picture.kept' && pictured === of) return typeof sha256 === 'string' ? sha256 : null;
  }
  return null;
}

/**
 * The picture kept of the verdict `of` (an entry's id), of this tablet, else of the server; 'broken' where what came is not the picture that the log
 * has, 'none' where the log tells of none or nobody has it. `sha256`: the hash where the entry of the picture is at hand, else null.
 */
export async function keptPicture(
  app: Ends,
  own: OwnPictures,
  { of, sha256 }: { readonly of: string; readonly sha256: string | null },
): Promise<ArrayBuffer | 'none' | 'broken'> {
  const hash = sha256 ?? (await hashInLog(app, of));
  if (hash === null) return 'none';
  const bytes = (await own.bySha(hash))?.bytes ?? (await fetchPicture(app, of));
  if (bytes === null) return 'none';
  return (await shaOf(bytes)) === hash ? bytes : 'broken';
}
