import { area } from './words.ts';

/** Lot to panels, panel to lots. */
export const traceWords = area('trace');
