/** Hands a file to the person: the browser's own download. Works offline and in every browser. */
export function saveFile(name: string, content: Blob): void {
  const link = document.createElement('a');
  link.href = URL.createObjectURL(content);
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 60_000);
}

/** A name as part of a file's name: blanks and what file systems refuse as dashes, at most 40 characters; empty where nothing is left. */
export function nameInFile(name: string): string {
  return name
    .normalize('NFC')
    .replace(/[^\p{L}\p{N}]+/gu, '-')
    .replace(/^-+|-+$/g, '')
    .slice(0, 40);
}
