// Setups that machines of this line ask for, each a sheet to be read like any other.

import { sheetOfOffer } from '../../../../../shared/floor/offered.ts';
import { useApp, useFloor } from '../../../app.ts';
import { stationName } from '../../../station-name.ts';
import { Button } from '../../../ui/Button.tsx';
import { visible } from '../../../ui/visible.ts';
import { sheetWords } from '../../../words/sheet.ts';
import { formatDay, say } from '../../../words/words.ts';
import type { SheetSession } from './session.ts';

export function Offers({ session }: { readonly session: SheetSession }) {
  const line = useApp().line.value ?? '';
  const floor = useFloor();
  const words = say(sheetWords);
  const offers = [...floor.offers].filter(([, offer]) => offer.line === line);
  if (offers.length === 0) return null;
  const zone = floor.lines.get(line)?.zone ?? 'UTC';
  return (
    <section class="card stack" data-testid="offers">
      <h2>{words.offersTitle}</h2>
      <p class="soft">{words.offersHelp}</p>
      {offers.map(([station, offer]) => {
        const name = [offer.recipe ?? station, offer.revision].filter((each) => each !== null).join(' ');
        return (
          <div class="row" key={station}>
            <span class="grow">
              {words.offer(stationName(floor, station), visible(name), offer.rows.length)}{' '}
              {formatDay(offer.atMs, zone)}
            </span>
            <Button
              testId={`offer-${station}`}
              onPress={() => void session.open('sheet', name, sheetOfOffer(offer))}
            >
              {words.offerRead}
            </Button>
          </div>
        );
      })}
    </section>
  );
}
