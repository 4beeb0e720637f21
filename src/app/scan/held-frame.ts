// The picture that is read now, held where pictures of labels are wanted, so that what is kept is the very picture that was read.
// Method: a second handle on it, closed with the next. Where the browser gives none, the picture that the lens shows a moment later.
// What is cut out comes in a task of its own: whoever got the codes goes first.

import type { ScannedCode } from '../../../shared/labels/scan.ts';
import type { SeenCode } from './gather.ts';
import { labelPicture } from './label-picture.ts';

/** Who wants pictures of labels. */
export interface LabelPictures {
  readonly isWanted: () => boolean;
  readonly mostBytes: number;
  /** Null where the label could not be made small enough; rejects where it could not be drawn. */
  readonly take: (codes: readonly ScannedCode[], picture: Promise<Blob | null>) => void;
}

// A class, as it holds a picture of the lens that has to be closed.
export class HeldFrame {
  readonly #pictures: LabelPictures | undefined;
  readonly #video: HTMLVideoElement;
  #frame: VideoFrame | null = null;

  constructor(pictures: LabelPictures | undefined, video: HTMLVideoElement) {
    this.#pictures = pictures;
    this.#video = video;
  }

  /** Holds the picture that is about to be read, in place of the one before. */
  hold(frame: VideoFrame | ImageBitmap): void {
    this.drop();
    if (this.#pictures?.isWanted() && 'clone' in frame) this.#frame = frame.clone();
  }

  drop(): void {
    this.#frame?.close();
    this.#frame = null;
  }

  /** Hands on the picture of these codes. */
  take(codes: readonly SeenCode[]): void {
    const pictures = this.#pictures;
    if (!pictures?.isWanted()) return;
    const frame = this.#frame?.clone() ?? null;
    const quads = codes.map(({ quad }) => quad);
    const picture = new Promise<Blob | null>((resolve, reject) => {
      setTimeout(() => {
        try {
          labelPicture(frame ?? this.#video, quads, pictures.mostBytes).then(resolve, reject);
        } catch (reason) {
          reject(reason);
        } finally {
          frame?.close();
        }
      }, 0);
    });
    pictures.take(
      codes.map(({ text, format, symbologyId }) => ({ text, format, symbologyId })),
      picture,
    );
  }
}
