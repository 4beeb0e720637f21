// Pictures of labels beside an exported log: one archive. As they are, since a JPEG does not get smaller by packing.

import { unzipSync, zipSync } from 'fflate';

/** An archive (zip) of pictures, each under the SHA-256 (hex) that the log has of it. */
export function packPictures(
  pictures: readonly { readonly sha256: string; readonly bytes: Uint8Array }[],
): Uint8Array {
  const files = Object.fromEntries(pictures.map(({ sha256, bytes }) => [`${sha256}.jpg`, bytes] as const));
  return zipSync(files, { level: 0 });
}

/** The files of an archive by their names, whoever packed it (folders are none); null where it is no archive. */
export function unpackPictures(
  archive: Uint8Array,
): readonly { readonly name: string; readonly bytes: Uint8Array }[] | null {
  try {
    const files = unzipSync(archive, { filter: ({ name }) => !name.endsWith('/') });
    return Object.entries(files).map(([name, bytes]) => ({ name, bytes }));
  } catch {
    return null;
  }
}
