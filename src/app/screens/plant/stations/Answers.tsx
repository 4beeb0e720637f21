// Whether a station's link answers its machine when it asks about materials: an engineer's choice, and what was answered last.

import type { Interlock, Station } from '../../../../../shared/floor/station-state.ts';
import type { UnsureResult } from '../../../../../shared/floor/vocabulary.ts';
import { useApp, useFloor } from '../../../app.ts';
import { recordOwn } from '../../../frame/signed.ts';
import { useRefusal } from '../../../may.ts';
import { Button } from '../../../ui/Button.tsx';
import { Icon } from '../../../ui/Icon.tsx';
import { visible } from '../../../ui/visible.ts';
import { stationWords } from '../../../words/stations.ts';
import { formatCount, formatDay, say } from '../../../words/words.ts';

/** Places of an answer that are named: what was not right comes first. */
const NAMED = 4;

export function Answers({ station, zone }: { readonly station: Station; readonly zone: string }) {
  const app = useApp();
  const words = say(stationWords).answers;
  const refusal = useRefusal('rule-interlock');
  const ruled = useFloor().interlocks.get(station.station);
  const rule = (on: boolean, unsure: UnsureResult) => {
    const payload = { station: station.station, line: station.line, on, unsure };
    recordOwn(app, [{ kind: 'station.interlock-ruled', payload }], {
      notice: { tone: on ? 'care' : 'go', text: on ? words.onNow[unsure] : words.offNow },
    });
  };
  const choice = (isChosen: boolean, name: string, id: string, press: () => void) => (
    <Button testId={`answers-${id}`} large pressed={isChosen} disabledReason={refusal} onPress={press}>
      {isChosen ? `✓ ${name}` : name}
    </Button>
  );
  const isOn = ruled?.on === true;
  return (
    <div data-testid="answers">
      <h3>{words.title}</h3>
      <p class="caution">
        <Icon name="warn" />
        {words.caution}
      </p>
      <p class="soft">{words.help}</p>
      <div class="row">
        {choice(!isOn, words.off, 'off', () => rule(false, ruled?.unsure ?? 'Warning'))}
        {choice(isOn && ruled.unsure === 'Warning', words.on.Warning, 'warning', () => rule(true, 'Warning'))}
        {choice(isOn && ruled.unsure === 'Failed', words.on.Failed, 'failed', () => rule(true, 'Failed'))}
      </div>
      {ruled?.last && <Last last={ruled.last} zone={zone} />}
    </div>
  );
}

/** What was answered last. */
function Last({ last, zone }: { readonly last: NonNullable<Interlock['last']>; readonly zone: string }) {
  const words = say(stationWords).answers;
  const wrong = last.results.filter(({ result }) => result !== 'Success');
  const many = (result: string) => formatCount(last.results.filter((each) => each.result === result).length);
  return (
    <>
      <p data-testid="answers-last">
        {words.last(formatDay(last.atMs, zone), many('Success'), many('Warning'), many('Failed'))}
      </p>
      <ul>
        {wrong.slice(0, NAMED).map(({ slot, reel, result, why }, at) => (
          <li key={at}>
            {words.one(visible(slot ?? '?'), visible(reel ?? '–'), words.results[result], words.whys[why])}
          </li>
        ))}
      </ul>
    </>
  );
}
