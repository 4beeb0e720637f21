// The station that counts this line is silent: said above every screen, on every tablet of the line, until it is back.

import type { CountedBy } from '../../../shared/floor/counters.ts';
import { useApp, useFloor } from '../app.ts';
import { address } from '../router.ts';
import { stationName } from '../station-name.ts';
import { Banner } from '../ui/Banner.tsx';
import { Icon } from '../ui/Icon.tsx';
import { lineWords } from '../words/line.ts';
import { plantWords } from '../words/plant.ts';
import { formatTime, say } from '../words/words.ts';

export function StationBanner({ silent }: { readonly silent: CountedBy & { readonly by: 'silent' } }) {
  const app = useApp();
  const floor = useFloor();
  const zone = floor.lines.get(app.line.value ?? '')?.zone ?? 'UTC';
  const words = say(lineWords);
  return (
    <Banner
      tone="care"
      testId="station-silent"
      picture={<Icon name="warn" />}
      slot={null}
      about={`${silent.name} ${silent.sinceMs}`}
      short={words.silentShort}
      act={null}
      rest={
        <a class="button" href={address('plant', 'stations')}>
          {say(plantWords).tiles.stations.title}
        </a>
      }
    >
      {words.silent(stationName(floor, silent.name), formatTime(silent.sinceMs, zone))}
    </Banner>
  );
}
