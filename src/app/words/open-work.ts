import type { OpenKind } from '../../../shared/floor/checklist.ts';
import { area } from './words.ts';

export type Said = Readonly<Record<OpenKind, (count: number) => string>>;

/** What is open or wrong before a run is released. */
export const openWorkWords = area('open-work');
