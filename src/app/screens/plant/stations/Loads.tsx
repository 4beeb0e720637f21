// What a machine believes to be loaded beside what the scans say, slot by slot, each with the act that cures it.

import { compareBelieved, type Differs, type SaidOfSlot } from '../../../../../shared/floor/believed.ts';
import type { Station } from '../../../../../shared/floor/station-state.ts';
import { useFloor } from '../../../app.ts';
import { address } from '../../../router.ts';
import { Icon } from '../../../ui/Icon.tsx';
import { visible } from '../../../ui/visible.ts';
import { stationWords } from '../../../words/stations.ts';
import { formatDay, say } from '../../../words/words.ts';

/** Slots of one list; who has cured them sees the next. */
const SHOWN = 20;
/** Names of one sentence. */
const NAMED = 6;

export function Loads({ station, zone }: { readonly station: Station; readonly zone: string }) {
  const words = say(stationWords).loads;
  const told = compareBelieved(useFloor(), station.station);
  if (!told) return null;
  const { differs, same, later, open, unknown } = told;
  return (
    <div data-testid="loads">
      <h3>
        {differs.length > 0 && <Icon name="warn" />} {words.title}
      </h3>
      <p class="soft">
        {words.said(formatDay(told.atMs, zone), same)} {words.never}
      </p>
      {differs.length > 0 && (
        <ul class="loads" data-testid="loads-differ">
          {differs.slice(0, SHOWN).map((each) => (
            <Row key={each.slot} differs={each} />
          ))}
        </ul>
      )}
      {differs.length > SHOWN && <p>{words.more(differs.length - SHOWN)}</p>}
      {later.length > 0 && <p class="soft">{words.later(names(later))}</p>}
      {open.length > 0 && <p class="soft">{words.untold(names(open))}</p>}
      {unknown.length > 0 && <p class="soft">{words.unknown(names(unknown))}</p>}
    </div>
  );
}

function Row({ differs }: { readonly differs: Differs }) {
  const words = say(stationWords).loads;
  const { slot, machine, here, cure } = differs;
  return (
    <li data-testid={`loads-${slot}`}>
      <span>
        {words.differs(visible(slot), sideOf(machine), sideOf(here))} {words[cure]}
      </span>
      <a class="button" href={address('load', slot)}>
        {words.open(visible(slot))}
      </a>
    </li>
  );
}

/** One side's word: reel and part, as far as it says them. */
function sideOf(side: SaidOfSlot | null): string {
  const words = say(stationWords);
  if (side === null) return words.loads.nothing;
  const { reel, part } = side;
  const name = reel === null ? words.noReel : visible(reel);
  return part === null ? name : `${name} (${visible(part)})`;
}

/** Some names of many. */
function names(of: readonly string[]): string {
  const shown = of.slice(0, NAMED).map(visible).join(', ');
  return of.length > NAMED ? `${shown} ${say(stationWords).loads.more(of.length - NAMED)}` : shown;
}
