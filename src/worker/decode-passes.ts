// Which looks to take at one frame, in which order, and when to stop.
// Method: one quick look each frame; where it leaves something to be found, thorough looks take turns within a time
// budget, so that a run of frames goes through all of them. Refused: every look on every frame, which halves the frame
// rate and empties the battery exactly when nothing is in view.

import { enlargeGray, evenLightGray, quadToFrame, sharpenGray, shrinkGray } from './decode-image.ts';
import type { CodeFormat, FoundCode, GrayImage } from './decode-protocol.ts';
import type { CodeReader, ReadEffort } from './decode-reader.ts';

interface Look {
  readonly name: string;
  readonly prepare: (image: GrayImage) => GrayImage;
  /** Size of the prepared picture over the size of the frame. */
  readonly factor: number;
  readonly effort: ReadEffort;
}

const QUICK: ReadEffort = {
  tryHarder: false,
  tryRotate: true,
  tryInvert: true,
  tryDownscale: true,
  tryDenoise: false,
  binarizer: 'LocalAverage',
};
const HARD: ReadEffort = { ...QUICK, tryHarder: true };

/** Taken in turn, most rewarding first. */
const THOROUGH: readonly Look[] = [
  { name: 'hard', prepare: (image) => image, factor: 1, effort: HARD },
  { name: 'even-light', prepare: (image) => evenLightGray(image, 20), factor: 1, effort: HARD },
  {
    name: 'enlarged',
    prepare: (image) => sharpenGray(enlargeGray(image, 2), 3, 1.5),
    factor: 2,
    effort: HARD,
  },
  { name: 'halved', prepare: (image) => shrinkGray(image, 2), factor: 0.5, effort: HARD },
];

export interface FramePasses {
  /** Reads one frame; `isThorough` allows looks after the quick one. */
  read(image: GrayImage, formats: readonly CodeFormat[], isThorough: boolean): readonly FoundCode[];
}

/** Makes the reader of a run of frames; it remembers whose turn it is. `nowMs` bounds the thorough looks. */
export function createFramePasses(reader: CodeReader, nowMs: () => number, budgetMs = 90): FramePasses {
  let turn = 0;
  return {
    read(image, formats, isThorough) {
      const startMs = nowMs();
      const quick = reader(image, formats, QUICK).map((code) => ({ ...code, pass: 'quick' }));
      if (!isThorough || quick.length > 0) return quick;
      let found: readonly FoundCode[] = quick;
      for (
        let taken = 0;
        taken < THOROUGH.length && nowMs() - startMs < budgetMs && found.length === 0;
        taken++
      ) {
        const look = THOROUGH[turn % THOROUGH.length]!; // never empty
        turn += 1;
        found = takeLook(reader, { image, formats, look });
      }
      return found;
    },
  };
}

function takeLook(
  reader: CodeReader,
  at: { readonly image: GrayImage; readonly formats: readonly CodeFormat[]; readonly look: Look },
): readonly FoundCode[] {
  const { image, formats, look } = at;
  return reader(look.prepare(image), formats, look.effort).map((code) => ({
    ...code,
    quad: quadToFrame(code.quad, look.factor, { x: 0, y: 0 }),
    pass: look.name,
  }));
}
