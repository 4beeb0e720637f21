// What a part comes on, in words.

import type { Words } from '../../../words/areas.ts';
import type { PartWidth } from './part-width.ts';

/** How wide the part's tape is as far as it is known, or that it comes on trays. */
export function sayWidth(words: Words<'board'>, { widthMm, widthFrom, isOnTray }: PartWidth): string {
  if (widthFrom === null) return words.width.none;
  if (isOnTray) return widthFrom === 'usual' ? words.width.maybeTray : words.width.tray;
  return widthMm === null
    ? words.width.none
    : words.width[widthFrom === 'list' ? 'setup' : widthFrom](widthMm);
}
