// What the other lanes of the conveyor take from a slot: one sentence a lane, nothing on a line of one lane.

import { lanesTaking } from '../../../shared/floor/lanes.ts';
import { wantedOn } from '../../../shared/floor/wanted.ts';
import { useFloor } from '../app.ts';
import { feedWords } from '../words/feeds.ts';
import { formatCount, say } from '../words/words.ts';

export function ForLanes({ line, slot }: { readonly line: string; readonly slot: string }) {
  const floor = useFloor();
  const lanes = lanesTaking(floor, line).flatMap((lane) => {
    const wanted = wantedOn(floor, lane.setup, slot);
    return wanted ? [{ line: lane.line, name: floor.lines.get(lane.line)?.name ?? lane.line, wanted }] : [];
  });
  if (lanes.length === 0) return null;
  return (
    <div data-testid="for-lanes">
      {lanes.map(({ line: lane, name, wanted }) => (
        <p key={lane}>{say(feedWords).forLane(name, wanted.part, formatCount(wanted.perPanel))}</p>
      ))}
    </div>
  );
}
