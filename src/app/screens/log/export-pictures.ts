// Pictures of labels beside an exported log: one archive, each file under the SHA-256 that the log has of it, so that whoever has both can
// compare them. As they are: a JPEG does not get smaller by packing.

import { zipSync } from 'fflate';
import type { Pictures } from '../../store/pictures.ts';

/** The archive of the pictures from a moment on, ms since 1970. */
export async function exportPictures(pictures: Pick<Pictures, 'since'>, fromMs: number): Promise<Blob> {
  const files = Object.fromEntries(
    (await pictures.since(fromMs)).map(
      ({ sha256, bytes }) => [`${sha256}.jpg`, new Uint8Array(bytes)] as const,
    ),
  );
  const packed = zipSync(files, { level: 0 }) as Uint8Array<ArrayBuffer>; // never shared memory
  return new Blob([packed], { type: 'application/zip' });
}

/** The archive's name, from when. `nowMs`: ms since 1970. */
export function picturesName(nowMs: number): string {
  const stamp = new Date(nowMs).toISOString().slice(0, 16).replaceAll(/[-:]/g, '').replace('T', '-');
  return `reelward-pictures-${stamp}.zip`;
}
