import type { TeachProblem } from '../../../shared/labels/teach.ts';
import { area } from './words.ts';

export type Problems = Readonly<Record<TeachProblem['code'], string>>;

/** Teaching labels that follow no standard. */
export const teachWords = area('teach');
