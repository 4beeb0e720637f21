// Pictures go into the log, so they are made small first: 960 px on the longer side, JPEG.

const LONGEST_PX = 960;
const QUALITY = 0.7;

/** A picture as a small data address. Rejects where the file is no picture. */
export async function shrinkPicture(file: Blob): Promise<string> {
  const bitmap = await createImageBitmap(file);
  const scale = Math.min(1, LONGEST_PX / Math.max(bitmap.width, bitmap.height));
  const canvas = document.createElement('canvas');
  canvas.width = Math.round(bitmap.width * scale);
  canvas.height = Math.round(bitmap.height * scale);
  canvas.getContext('2d')?.drawImage(bitmap, 0, 0, canvas.width, canvas.height);
  bitmap.close();
  return canvas.toDataURL('image/jpeg', QUALITY);
}
