// Where machine and log said different things of a tape: both, what to do, and a lead's word that it is done.

import { useState } from 'preact/hooks';
import type { Found, Station } from '../../../../../shared/floor/station-state.ts';
import { useApp } from '../../../app.ts';
import type { Sure } from '../../../frame/confirmed.ts';
import { LeadDecides } from '../../../frame/LeadDecides.tsx';
import { Button } from '../../../ui/Button.tsx';
import { Icon } from '../../../ui/Icon.tsx';
import { visible } from '../../../ui/visible.ts';
import { stationWords } from '../../../words/stations.ts';
import { formatCount, formatDay, say } from '../../../words/words.ts';

export function Differing({ station, zone }: { readonly station: Station; readonly zone: string }) {
  const words = say(stationWords);
  const [clearing, setClearing] = useState<Found | null>(null);
  if (station.found.length === 0) return null;
  return (
    <div data-testid="machine-differs">
      <h3>
        <Icon name="warn" /> {words.foundTitle}
      </h3>
      <ul class="loads">
        {station.found.map((found) => (
          <li key={found.entry}>
            <span>{sayFound(found, zone)}</span>
            <Button
              testId="finding-clear"
              label={`${words.clear} ${visible(found.slot)}`}
              onPress={() => setClearing(found)}
            >
              {words.clear}
            </Button>
          </li>
        ))}
      </ul>
      {clearing && <Clear station={station} found={clearing} zone={zone} onClose={() => setClearing(null)} />}
    </div>
  );
}

function sayFound({ what, slot, atMs, machine, here, parts, sd }: Found, zone: string): string {
  const words = say(stationWords);
  return words.found[what](
    visible(slot),
    formatDay(atMs, zone),
    machine === null ? words.noReel : visible(machine),
    here === null ? words.noScan : visible(here),
    `${formatCount(parts ?? 0)} ± ${formatCount(sd ?? 0)}`,
  );
}

function Clear(props: {
  readonly station: Station;
  readonly found: Found;
  readonly zone: string;
  readonly onClose: () => void;
}) {
  const app = useApp();
  const words = say(stationWords);
  const { station, found, zone, onClose } = props;
  const clear = ({ person, checked }: Sure, reason: string) => {
    const facts = { station: station.station, line: station.line, finding: found.entry, reason };
    app.record([{ kind: 'station.finding-cleared', payload: { ...facts, by: person.person, checked } }], {
      notice: { tone: 'go', text: words.cleared },
    });
    onClose();
  };
  return (
    <LeadDecides
      title={words.clearTitle}
      tone="plain"
      why={words.clearWhy}
      act={words.clearYes}
      testId="clear-finding"
      onDecide={clear}
      onClose={onClose}
    >
      <p>{sayFound(found, zone)}</p>
      <p class="soft">{words.clearHelp}</p>
    </LeadDecides>
  );
}
