// Pictures of labels beside an exported log: one archive, each file under the SHA-256 that the log has of it, so that whoever has both can
// compare them.

import { packPictures } from '../../../../shared/log/picture-archive.ts';
import type { Pictures } from '../../store/pictures.ts';

/** The archive of the pictures from a moment on, ms since 1970. */
export async function exportPictures(pictures: Pick<Pictures, 'since'>, fromMs: number): Promise<Blob> {
  const kept = await pictures.since(fromMs);
  const packed = packPictures(kept.map(({ sha256, bytes }) => ({ sha256, bytes: new Uint8Array(bytes) })));
  return new Blob([packed as Uint8Array<ArrayBuffer>], { type: 'application/zip' }); // never shared memory
}

/** The archive's name, from when. `nowMs`: ms since 1970. */
export function picturesName(nowMs: number): string {
  const stamp = new Date(nowMs).toISOString().slice(0, 16).replaceAll(/[-:]/g, '').replace('T', '-');
  return `reelward-pictures-${stamp}.zip`;
}
