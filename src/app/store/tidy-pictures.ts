// Pictures of labels go when their days are over, whether or not a camera is opened again: looked at when the app has begun, and every hour since
// a tablet may stay on for months.

import { type Pictures, tabletPictures } from './pictures.ts';

/** Between two looks, ms. */
const LOOK_EVERY_MS = 3_600_000;

interface TidyOf {
  /** Whether any line ever kept pictures: where none did there is no database to open. */
  readonly isRuled: () => boolean;
  /** Ms since 1970. */
  readonly nowMs: () => number;
}

/** Throws away what is over, now and every hour. A look that fails is made up for by the next. */
export function keepTidy(of: TidyOf, pictures: () => Pick<Pictures, 'tidy'> = tabletPictures): void {
  const look = () => {
    if (!of.isRuled()) return;
    pictures()
      .tidy(of.nowMs())
      .catch(() => undefined);
  };
  look();
  setInterval(look, LOOK_EVERY_MS);
}
