// How far each person is in each guide, on this tablet: outside the log and outside the practice floor, which is thrown away. Which
// guide this window follows is kept by the window alone, as practising is.

import { signal } from '@preact/signals';
import { type Guide, guideSteps } from './guide-model.ts';

const farKey = 'reelward-guides';
const nowKey = 'reelward-guide';

type Far = Readonly<Record<string, number>>;

function readFar(): Far {
  try {
    const read: unknown = JSON.parse(localStorage.getItem(farKey) ?? '{}');
    return typeof read === 'object' && read !== null ? (read as Far) : {};
  } catch {
    return {}; // unreadable: each guide begins at its first step
  }
}

/** How many steps of a guide a person has done; '' where nobody is signed in. All of them: the guide is over. */
export function stepsDone(person: string, guide: Guide): number {
  const done = readFar()[`${person} ${guide}`];
  return Number.isInteger(done) ? Math.min(Math.max(0, Number(done)), guideSteps[guide].length) : 0;
}

/** Keeps it. */
export function keepStepsDone(person: string, guide: Guide, done: number): void {
  localStorage.setItem(farKey, JSON.stringify({ ...readFar(), [`${person} ${guide}`]: done }));
}

function readGuide(): Guide | null {
  const kept = globalThis.sessionStorage?.getItem(nowKey) ?? '';
  return kept in guideSteps ? (kept as Guide) : null;
}

/** The guide that this window follows; null where it follows none. */
export const guideNow = signal<Guide | null>(readGuide());

/** Follows a guide, or none. */
export function followGuide(guide: Guide | null): void {
  if (guide === null) sessionStorage.removeItem(nowKey);
  else sessionStorage.setItem(nowKey, guide);
  guideNow.value = guide;
}
