import { area } from './words.ts';

/** The camera's view. */
export const cameraWords = area('camera');
