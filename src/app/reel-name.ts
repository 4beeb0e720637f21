import { hasOwnId } from '../../shared/floor/reel-id.ts';
import { stockWords } from './words/stock.ts';
import { say } from './words/words.ts';

/** A reel's id as people know it; the app's own name for one without an id says nothing to anybody. */
export function reelName(reel: string): string {
  return hasOwnId(reel) ? reel : say(stockWords).noId;
}
