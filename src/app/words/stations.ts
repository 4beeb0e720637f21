import { area } from './words.ts';

/** Stations that count panels, and who counts on a line. */
export const stationWords = area('stations');
