import { area } from './words.ts';

/** The way from an empty plant to the first accepted reel. */
export const beginWords = area('begin');
