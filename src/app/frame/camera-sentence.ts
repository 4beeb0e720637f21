// The one sentence over the camera's picture: what to do now. Short, and steady while nothing changes, since it is read out too.

import { useEffect, useState } from 'preact/hooks';
import type { Desk, DeskView } from '../../../shared/desk/model.ts';
import type { CameraState } from '../scan/camera-session.ts';
import type { Words } from '../words/areas.ts';
import { cameraWords } from '../words/camera.ts';
import { say } from '../words/words.ts';
import { toldByCodes, wantedThings } from './camera-task.ts';
import { missingText } from './camera-texts.ts';

type CameraWords = Words<'camera'>;

/** Without any code in view for this long, a hint how to hold the tablet stands there. */
const HINT_AFTER_MS = 5_000;

/** What a picture that is not there says in its place; null while the camera watches. */
export function blindTitle(state: CameraState, words: CameraWords): string | null {
  switch (state.kind) {
    case 'off':
      return state.why === 'not-started' ? words.opening : words.off[state.why];
    case 'opening':
      return words.opening;
    case 'problem':
      return words.problem[state.problem.code].title;
    case 'watching':
      return null;
  }
}

/** The sentence for what the camera sees and the desk wants. */
export function useSentence(
  state: CameraState,
  desk: Desk,
  view: DeskView | null,
  isElsewhere: boolean,
): string {
  const words = say(cameraWords);
  const isWatching = state.kind === 'watching';
  const isBlank = isWatching && state.answer.kind === 'nothing' && state.outlines.length === 0;
  const isLate = useLate(isBlank);
  if (!isWatching) return '';
  if (state.answer.kind === 'several') return words.several(state.answer.labels.length);
  if (state.answer.kind === 'gathering') {
    const { codes } = state.answer.label;
    const told = view === null ? null : toldByCodes(codes, view);
    return state.answer.isHalf && told !== null
      ? words.half(missingText(told.missing))
      : words.gathering(codes.length);
  }
  if (isElsewhere) return words.elsewhere;
  const next = words.show[wantedThings(desk, view)[0] ?? 'any'];
  const hasRead = state.outlines.some((outline) => outline.state === 'done');
  if (hasRead && desk.told?.tell === 'unknown-code') return words.unknown;
  if (hasRead) return words.readThen(next);
  if (isLate) return state.camera.hasTorch && !state.isTorchOn ? words.noCodeLight : words.noCode;
  return next;
}

/** True once something has lasted for a while. */
function useLate(lasts: boolean): boolean {
  const [isLate, setLate] = useState(false);
  useEffect(() => {
    if (!lasts) return;
    const timer = setTimeout(() => setLate(true), HINT_AFTER_MS);
    return () => {
      clearTimeout(timer);
      setLate(false);
    };
  }, [lasts]);
  return isLate && lasts;
}
