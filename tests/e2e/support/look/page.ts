// Runs inside the page that is looked at: all checks in one go, so that nothing changes between them.

import { wrongControls } from './controls.ts';
import { wrongPictures } from './pictures.ts';
import { wrongSentences } from './sentences.ts';
import { inFront } from './shown.ts';
import { wrongTexts } from './texts.ts';

/** Which checks are made. */
export interface Checks {
  readonly controls: boolean;
  readonly texts: boolean;
  readonly pictures: boolean;
  readonly sentences: boolean;
}

/** What the page offers once this is in it. */
export interface LookScope {
  lookInPage?: (checks: Checks) => Promise<readonly string[]>;
}

(globalThis as LookScope).lookInPage = async (checks) => {
  await stand();
  const root = inFront();
  return [
    ...(checks.controls ? wrongControls(root) : []),
    ...(checks.texts ? wrongTexts(root) : []),
    ...(checks.pictures ? wrongPictures(root) : []),
    ...(checks.sentences ? wrongSentences(root) : []),
  ];
};

/** Waits until what was asked for is drawn: two frames, and the end of every movement that has one. */
async function stand(): Promise<void> {
  if (document.visibilityState !== 'visible') return; // a window behind others draws no frames
  const frame = () => new Promise((resolve) => requestAnimationFrame(resolve));
  await frame();
  await frame();
  const moving = document
    .getAnimations()
    .filter(
      ({ playState, effect }) => playState === 'running' && effect?.getTiming().iterations !== Infinity,
    );
  await Promise.allSettled(moving.map(({ finished }) => finished));
}
