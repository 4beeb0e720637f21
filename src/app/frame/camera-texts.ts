// Lists of things in words, for the camera's view.

import { cameraWords } from '../words/camera.ts';
import { say } from '../words/words.ts';
import type { LabelTold, wantedThings } from './camera-task.ts';

/** What a label still has to say, in words. */
export function missingText(missing: LabelTold['missing']): string {
  const { facts } = say(cameraWords);
  return missing.map((piece) => facts[piece].toLocaleLowerCase()).join(', ');
}

/** What the task still wants, in words. */
export function wantedText(things: ReturnType<typeof wantedThings>): string {
  const words = say(cameraWords);
  return things.length === 0
    ? words.wantedAny
    : words.wanted(things.map((thing) => words.things[thing]).join(', '));
}
