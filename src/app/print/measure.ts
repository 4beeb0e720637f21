// How wide a text is in the face that labels are printed in, as this browser draws it.

import { usualWidth, type WidthOf } from '../../../shared/labels/label-face.ts';

/** The faces of a label's text. */
export const LABEL_FACES = "system-ui, 'Liberation Sans', Arial, sans-serif";

let canvas: CanvasRenderingContext2D | null | undefined;

/** Width of a text against the size of its letters; the usual one where the browser cannot tell. */
export const measuredWidth: WidthOf = (text, isBold) => {
  canvas ??= document.createElement('canvas').getContext('2d');
  if (!canvas) return usualWidth(text, isBold);
  canvas.font = `${isBold ? 700 : 400} 100px ${LABEL_FACES}`;
  return canvas.measureText(text).width / 100;
};
