// Which reels of a running line outlast their floor life: pure.

import type { FloorState } from '../../../shared/floor/state.ts';
import { moistureOfSlot, reelLife } from '../../../shared/moisture/reel-life.ts';
import type { Outlook } from '../../../shared/outlook/line.ts';

/** A slot whose reel's floor life does not last. Moments in ms since 1970. */
export interface LifeEnd {
  readonly slot: string;
  readonly reel: string;
  readonly lot: string | null;
  readonly part: string;
  /** The entry that put it on the slot. */
  readonly entry: string;
  readonly isOver: boolean;
  /** Of one that was used up long ago: when it was over at the latest. */
  readonly endsMs: number;
  /** When the reel would be used up, or the run over. */
  readonly lastsMs: number;
}

/** The slots of a line whose reels outlast their floor life, soonest first. */
export function lifeEnds(floor: FloorState, outlook: Outlook): readonly LifeEnd[] {
  const { nowMs } = outlook.pace;
  return outlook.slots
    .flatMap(({ slot, wanted, loaded, forecast }): LifeEnd[] => {
      const lastsMs = Math.min(forecast.runOutMs.expected, outlook.runEndMs);
      return loaded.tapes.flatMap((tape, at) => {
        const part = moistureOfSlot(floor, wanted, tape.part);
        const life = reelLife(floor, tape.reel, { line: outlook.line, part, openedMs: tape.atMs, nowMs });
        if (life === null || life.endsByMs === null) return [];
        const isOver = life.leftSeconds === 0;
        // Tapes joined before the last one end earlier than the slot does.
        if (!isOver && (at < loaded.tapes.length - 1 || life.endsByMs >= lastsMs)) return [];
        const { reel, lot, part: named, entry } = tape;
        return [{ slot, reel, lot, part: named, entry, isOver, endsMs: life.endsByMs, lastsMs }];
      });
    })
    .sort((a, b) => a.endsMs - b.endsMs);
}
