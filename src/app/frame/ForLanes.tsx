// What the other lanes of the conveyor take from a slot: one sentence a lane, nothing on a line of one lane.

import { lanesWanting } from '../../../shared/floor/wanted.ts';
import { useFloor } from '../app.ts';
import { feedWords } from '../words/feeds.ts';
import { formatCount, say } from '../words/words.ts';

export function ForLanes({ line, slot }: { readonly line: string; readonly slot: string }) {
  const floor = useFloor();
  const lanes = lanesWanting(floor, line, slot);
  if (lanes.length === 0) return null;
  return (
    <div data-testid="for-lanes">
      {lanes.map(({ line: lane, wanted: { part, perPanel } }) => (
        <p key={lane}>
          {say(feedWords).forLane(floor.lines.get(lane)?.name ?? lane, part, formatCount(perPanel))}
        </p>
      ))}
    </div>
  );
}
