// Pictures of labels beside an exported log: one archive, each file under the SHA-256 that the log has of it, so that whoever has both can
// compare them.

import { packPictures } from '../../../../shared/log/picture-archive.ts';
import type { Pictures } from '../../store/pictures.ts';
import { type ExportedFile, stampOf } from './export-log.ts';

/** The archive of the pictures from a moment on, ms since 1970, and how many it holds. */
export async function exportPictures(
  pictures: Pick<Pictures, 'since'>,
  fromMs: number,
): Promise<ExportedFile> {
  const kept = await pictures.since(fromMs);
  const packed = packPictures(kept.map(({ sha256, bytes }) => ({ sha256, bytes: new Uint8Array(bytes) })));
  const blob = new Blob([packed as Uint8Array<ArrayBuffer>], { type: 'application/zip' }); // never shared memory
  return { blob, rows: kept.length };
}

/** The archive's name: of which plant ('' = nobody named it), from when. `nowMs`: ms since 1970. */
export function picturesName(nowMs: number, plant: string): string {
  return `reelward-pictures-${stampOf(nowMs, plant)}.zip`;
}
