// A shelf of labels and a hand that passes a tablet along it: what the pan bench reads, and what a browser test plays as a lens.
// Method: the sheet and the camera of the frame bench, with labels in columns and rows; the hand goes from the left end to the right
// one, sways, and tilts; each picture has its own blur, noise and glare. Refused: still pictures moved about, which have no blur.

import { chanceBelow, seededChance } from '../../shared/kit/chance.ts';
import type { GrayImage, Point } from '../../src/worker/decode-protocol.ts';
import { makeShelf, type ShelfLabel } from './frames-labels.ts';
import { pointInPicture, type Shot, takePicture } from './frames-render.ts';

/** Pictures of one pass, and the time from one to the next as the camera's beat has it. */
export const PAN_FRAMES = 60;
export const BEAT_MS = 140;
const PICTURE = { width: 1280, height: 720 };
/** Columns of the shelf and of those in view at once; rows are all in view. */
const COLUMNS = 6;
const IN_VIEW = 4;
const ROWS = 3;

export interface PanCase {
  readonly labels: readonly ShelfLabel[];
  readonly frames: readonly GrayImage[];
  /** Label by label the frames in which it is wholly in the picture: the first, and the last of the unbroken run from it. */
  readonly inView: readonly { readonly from: number; readonly to: number }[];
}

/** One pass. `seed`: every picture follows from it. */
export function makePan(seed: number): PanCase {
  const chance = seededChance(seed);
  const shelf = makeShelf(chance, { columns: COLUMNS, rows: ROWS, pixelsPerMm: 12 });
  const { sheet, labels } = shelf;
  const pixelsPerMm = PICTURE.width / ((sheet.widthMm * IN_VIEW) / COLUMNS);
  // As far as the hand goes: the shelf's end comes to the picture's edge.
  const travel = (sheet.widthMm * pixelsPerMm - PICTURE.width) / 2;
  const steady = {
    ...PICTURE,
    bendMm: null,
    light: 0.6 + 0.4 * chance(),
    noise: 1 + 4 * chance(),
    glare: 60 + 90 * chance(),
  };
  const lean = { tiltDeg: 12 * chance(), tiltTowardsDeg: 360 * chance(), turnDeg: (chance() - 0.5) * 8 };
  const shots = Array.from({ length: PAN_FRAMES }, (_, at): Shot => {
    // The hand rests at both ends, as a person begins and ends a pass.
    const along = Math.min(1, Math.max(0, (at - 8) / (PAN_FRAMES - 22)));
    const sway = (every: number, reach: number) => reach * Math.sin((at / every) * 2 * Math.PI);
    return {
      ...steady,
      pixelsPerMm: pixelsPerMm * (0.97 + 0.02 * Math.sin(at / 7)),
      turnDeg: lean.turnDeg + sway(23, 1.2),
      tiltDeg: Math.max(0, lean.tiltDeg + sway(17, 1.5)),
      tiltTowardsDeg: lean.tiltTowardsDeg,
      offset: { x: travel * (1 - 2 * along) + (chance() - 0.5) * 6, y: sway(13, 10) + (chance() - 0.5) * 6 },
      blurPx: 0.35 + 0.35 * chance(),
      motionPx: (along > 0 && along < 1 ? 0.6 : 0.2) + 0.8 * chance(),
      motionDeg: (chance() - 0.5) * 30,
      glareAt: { x: 200 + chanceBelow(chance, 880), y: 100 + chanceBelow(chance, 520) },
    };
  });
  const inView = labels.map(({ box }) => stay(shots.map((shot) => isInPicture(box, sheet, shot))));
  return { labels, frames: shots.map((shot) => takePicture(sheet, shot, chance)), inView };
}

function isInPicture(
  box: ShelfLabel['box'],
  sheet: { readonly widthMm: number; readonly heightMm: number },
  shot: Shot,
): boolean {
  const corners: readonly Point[] = [
    { x: box.x, y: box.y },
    { x: box.x + box.width, y: box.y },
    { x: box.x, y: box.y + box.height },
    { x: box.x + box.width, y: box.y + box.height },
  ];
  return corners.every((corner) => {
    const at = { x: corner.x - sheet.widthMm / 2, y: corner.y - sheet.heightMm / 2 };
    const { x, y } = pointInPicture(shot, at);
    return x >= 0 && y >= 0 && x < shot.width && y < shot.height;
  });
}

function stay(isIn: readonly boolean[]): { readonly from: number; readonly to: number } {
  const from = isIn.indexOf(true);
  if (from < 0) return { from: -1, to: -1 };
  const gone = isIn.indexOf(false, from);
  return { from, to: (gone < 0 ? isIn.length : gone) - 1 };
}
