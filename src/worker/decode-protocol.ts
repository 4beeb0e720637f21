// What page and decoder worker say to each other. Only plain data and transferable objects; corners are in pixels of the
// frame that was sent.

import type { Portion } from '../../shared/labels/scan.ts';

export interface Point {
  readonly x: number;
  readonly y: number;
}

/** Corners of a code as printed: top left, top right, bottom right, bottom left. */
export type Quad = readonly [Point, Point, Point, Point];

/** One channel, 0 black to 255 white, row by row. */
export interface GrayImage {
  readonly data: Uint8Array;
  readonly width: number;
  readonly height: number;
}

/** Symbologies by family name. The allow-list keeps a box's shop code or a stray stripe pattern from being read. */
export const codeFormats = [
  'DataMatrix',
  'QRCode',
  'PDF417',
  'Code128',
  'Code39',
  'Code93',
  'ITF',
  'EANUPC',
  'Aztec',
] as const;
export type CodeFormat = (typeof codeFormats)[number];

/** What reels, feeders and slots carry. Interleaved 2 of 5 and shop codes only where a site asks for them. */
export const DEFAULT_FORMATS: readonly CodeFormat[] = ['DataMatrix', 'QRCode', 'PDF417', 'Code128', 'Code39'];

/**
 * Symbologies that need two agreeing frames. Code 39 and Interleaved 2 of 5 have no check character; the one of Code 128
 * lets 1 blur in 103 through, and PDF417's error correction makes one valid text of another. Measured by the frame bench:
 * 1 and 2 such reads in 2,500 frames, none in Data Matrix and QR.
 */
export const doubtfulFormats: readonly CodeFormat[] = [
  'Code128',
  'Code39',
  'Code93',
  'ITF',
  'EANUPC',
  'PDF417',
];

export interface FoundCode {
  readonly text: string;
  readonly format: CodeFormat;
  /** Symbology identifier of ISO/IEC 15424, such as `]d2`. */
  readonly symbologyId: string;
  readonly quad: Quad;
  /** Which part of a message over several symbols it carries; absent where it is a message of its own. */
  readonly portion?: Portion;
  /** Which pass read it; `quick` or the name of a thorough one. */
  readonly pass: string;
}

/** The part of a picture that is read, in its pixels. */
export interface Crop {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

export interface DecodeRequest {
  readonly id: number;
  readonly frame: ImageBitmap | VideoFrame;
  /** What is read of the frame; corners are told from its top left. */
  readonly crop: Crop;
  readonly formats: readonly CodeFormat[];
  /** Whether passes after the quick one are worth their time on this frame. */
  readonly isThorough: boolean;
}

export type DecodeReply =
  | { readonly kind: 'ready' }
  /** The decoder cannot run here at all, for instance as WebAssembly is barred. */
  | { readonly kind: 'unable'; readonly message: string }
  | {
      readonly kind: 'read';
      readonly id: number;
      readonly codes: readonly FoundCode[];
      readonly width: number;
      readonly height: number;
      readonly spentMs: number;
    }
  | { readonly kind: 'failed'; readonly id: number; readonly message: string };
