// Who counts the run's panels, where it is not a person alone.

import type { CountedBy } from '../../../../shared/floor/counters.ts';
import { useFloor } from '../../app.ts';
import { stationName } from '../../station-name.ts';
import { Icon } from '../../ui/Icon.tsx';
import { lineWords } from '../../words/line.ts';
import { formatTime, say } from '../../words/words.ts';

/** The line says who counts: the machine, or people in its place. Nothing where people count by the line's rules. */
export function ByStation({ counted, zone }: { readonly counted: CountedBy; readonly zone: string }) {
  const floor = useFloor();
  const words = say(lineWords);
  if (counted.by === 'hand') return null;
  const { beside } = counted.counter;
  if (counted.by === 'silent') {
    return (
      <span class="chip care" data-testid="counted-by" data-by="silent">
        <Icon name="warn" size={18} /> {words.countedByHand},{' '}
        {words.machineUntil(formatTime(counted.sinceMs, zone))}
      </span>
    );
  }
  return (
    <>
      <span class="chip go" data-testid="counted-by" data-by="station">
        <Icon name="check" size={18} /> {words.countedByStation(stationName(floor, counted.station.station))}
      </span>
      {beside > 0 && (
        <span class="chip plain" data-testid="counted-beside">
          {words.besideHand(beside)}
        </span>
      )}
    </>
  );
}
