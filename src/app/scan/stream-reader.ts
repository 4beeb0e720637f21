// The camera where WebAssembly is barred: @zxing/browser shows the lens's stream, takes its pictures and reads them, in plain script.
// Loaded only there. Method: the library's own loop over the video; a picture is read only when somebody waits for it, so that a held
// camera reads nothing while its lens stays open, and after each the page has as long to itself as the reading took.
// Refused: the library's own choice of a lens, which knows neither focus nor the camera chosen before; a worker that is handed each
// picture, which is a second camera path beside the library's.

import { NotFoundException, type Result as ReadResult } from '@zxing/library';
import type { CodeFormat, Crop } from '../../worker/decode-protocol.ts';
import type { DecodeAnswer, OpenStream, StreamParts, StreamReader } from './decoder.ts';
import { foundIn, ScriptReader } from './script-codes.ts';

/** From one picture that the library takes to its next. */
const PAUSE_MS = 60;

/** The reader of streams by plain script. */
export const streamReader: StreamReader = { path: 'script', open, close() {} };

async function open({ stream, video, crop, formats }: StreamParts): Promise<OpenStream> {
  const reader = new PartReader(formats, video, crop);
  const controls = await reader.decodeFromStream(stream, video, (result, fault) =>
    reader.tell(result, fault),
  );
  return {
    look: () => reader.look(),
    stop() {
      reader.end(new Error('the camera was closed'));
      // With a torch the library also switches it off, which a lens that is closed already refuses.
      void Promise.resolve(controls.stop()).catch(() => undefined);
    },
  };
}

/** Reads the part of each picture that a person is shown, when it is asked for. */
class PartReader extends ScriptReader {
  readonly #video: HTMLVideoElement;
  readonly #crop: () => Crop;
  readonly #part = document.createElement('canvas');
  #waiting: { resolve(answer: DecodeAnswer): void; reject(reason: unknown): void } | null = null;
  #hasLooked = false;
  #spentMs = 0;
  #nextMs = 0;
  #ended: unknown = null;

  constructor(formats: readonly CodeFormat[], video: HTMLVideoElement, crop: () => Crop) {
    super(formats, PAUSE_MS);
    this.#video = video;
    this.#crop = crop;
  }

  /** What is in the next picture. One may wait at a time. */
  look(): Promise<DecodeAnswer> {
    if (this.#ended !== null) return Promise.reject(this.#ended);
    return new Promise((resolve, reject) => {
      this.#waiting = { resolve, reject };
    });
  }

  /** The library's word after each of its pictures. */
  tell(result: ReadResult | undefined, fault: unknown): void {
    // Any other fault ends the library's loop, and with it the lens.
    if (result === undefined && !(fault instanceof NotFoundException)) this.end(fault);
    if (!this.#hasLooked) return;
    this.#hasLooked = false;
    const code = result === undefined ? null : foundIn(result);
    const { width, height } = this.#part;
    const answer = { codes: code === null ? [] : [code], width, height, spentMs: this.#spentMs };
    this.#waiting?.resolve(answer);
    this.#waiting = null;
  }

  end(reason: unknown): void {
    this.#ended = reason;
    this.#waiting?.reject(reason);
    this.#waiting = null;
  }

  override decodeFromCanvas(whole: HTMLCanvasElement): ReadResult {
    const { videoWidth, videoHeight } = this.#video;
    if (whole.width !== videoWidth || whole.height !== videoHeight) {
      // A tablet that is turned gives a picture of another shape, and the library keeps the canvas of its first.
      whole.width = videoWidth;
      whole.height = videoHeight;
      throw new NotFoundException();
    }
    const startMs = performance.now();
    if (this.#waiting === null || videoWidth === 0 || startMs < this.#nextMs) throw new NotFoundException();
    const { x, y, width, height } = this.#crop();
    this.#part.width = width;
    this.#part.height = height;
    const context = this.#part.getContext('2d', { willReadFrequently: true });
    if (context === null)
      throw new TypeError('Cannot read frame as a 2D canvas must be there: current value is null');
    context.drawImage(whole, x, y, width, height, 0, 0, width, height);
    this.#hasLooked = true;
    try {
      return super.decodeFromCanvas(this.#part);
    } finally {
      const endMs = performance.now();
      this.#spentMs = endMs - startMs;
      this.#nextMs = endMs + this.#spentMs;
    }
  }
}
