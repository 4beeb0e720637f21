import type { NotWanted } from '../../../shared/floor/step-scan.ts';
import { area } from './words.ts';

export type Scanned = Readonly<Record<NotWanted, (name: string) => string>>;

/** Checklists on screen. */
export const checklistWords = area('checklist');
