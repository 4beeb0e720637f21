// Codes as the session carries them: in pixels of the whole picture, told apart by what they are and say.

import type { ScannedCode } from '../../../shared/labels/scan.ts';
import type { FoundCode, Point, Quad } from '../../worker/decode-protocol.ts';
import type { SeenCode } from './gather.ts';

/** The same for the same text in the same symbology. */
export function keyOf(code: ScannedCode): string {
  return `${code.format ?? ''}\n${code.text}`;
}

/** A code that was read in a part of the picture, whose corner lies at `offset`. */
export function toSeen(code: FoundCode, offset: Point): SeenCode {
  const [a, b, c, d] = code.quad;
  const move = ({ x, y }: Point) => ({ x: x + offset.x, y: y + offset.y });
  const symbologyId = code.symbologyId === '' ? null : code.symbologyId;
  const quad: Quad = [move(a), move(b), move(c), move(d)];
  const { text, format, portion } = code;
  return portion === undefined
    ? { text, format, symbologyId, quad }
    : { text, format, symbologyId, quad, portion };
}
