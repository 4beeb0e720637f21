// A picture made small enough for the log: every tablet carries it, so it may have a few kilobytes and no more.

/** Longest side, px; and the most characters of its data URL, under what an entry takes. */
const SIDE_PX = 240;
const MOST_CHARACTERS = 24_000;

/** The picture as a data URL of a small JPEG; null where the file is no picture that this browser can show, or will not become small. */
export async function smallPicture(file: Blob): Promise<string | null> {
  const bitmap = await createImageBitmap(file).catch(() => null); // no picture
  if (bitmap === null) return null;
  const share = Math.min(1, SIDE_PX / Math.max(bitmap.width, bitmap.height));
  const canvas = document.createElement('canvas');
  canvas.width = Math.max(1, Math.round(bitmap.width * share));
  canvas.height = Math.max(1, Math.round(bitmap.height * share));
  const pen = canvas.getContext('2d');
  if (pen === null) return null;
  // A see-through ground would turn black in a JPEG.
  pen.fillStyle = '#fff';
  pen.fillRect(0, 0, canvas.width, canvas.height);
  pen.drawImage(bitmap, 0, 0, canvas.width, canvas.height);
  bitmap.close();
  for (const quality of [0.8, 0.6, 0.4]) {
    const made = canvas.toDataURL('image/jpeg', quality);
    if (made.length <= MOST_CHARACTERS) return made;
  }
  return null;
}
