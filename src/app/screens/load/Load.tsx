// The line being made ready: where to go next, how far it is, every slot of the line in small and a bank of it large, what waits for a
// lead, the sweep.

import { useComputed } from '@preact/signals';
import { useEffect, useRef, useState } from 'preact/hooks';
import { openSweep, setupProgress } from '../../../../shared/floor/progress.ts';
import { useApp, useFloor } from '../../app.ts';
import type { DeskRun } from '../../desk/desk.ts';
import { newId } from '../../device/ids.ts';
import { FindButton } from '../../frame/FindButton.tsx';
import { listOfMissing } from '../../frame/find-lists.ts';
import { lazy } from '../../frame/lazy.tsx';
import { OfLine } from '../../frame/OfLine.tsx';
import { useRefusal } from '../../may.ts';
import { address, place } from '../../router.ts';
import { Button } from '../../ui/Button.tsx';
import { Icon } from '../../ui/Icon.tsx';
import { changeWords } from '../../words/change.ts';
import { loadWords } from '../../words/load.ts';
import { say } from '../../words/words.ts';
import { Holds } from './Holds.tsx';
import { mapBanks } from './model.ts';
import { NextCard } from './NextCard.tsx';
import { SlotDialog } from './SlotDialog.tsx';
import { SlotMap } from './SlotMap.tsx';
import { Strip } from './Strip.tsx';
import { SweepBar } from './SweepBar.tsx';

const NoSetup = lazy(() => import('../../frame/NoSetup.tsx').then((module) => module.NoSetup));

export function Load({ desk }: { readonly desk: DeskRun }) {
  // A link from elsewhere may name the slot to open, on the line that is in hand then.
  const linked = useRef<string | null>(place.value.rest[0] ?? null);
  return (
    <OfLine>
      <LineToLoad desk={desk} linked={linked} />
    </OfLine>
  );
}

function LineToLoad(props: { readonly desk: DeskRun; readonly linked: { current: string | null } }) {
  const { desk, linked } = props;
  const app = useApp();
  const floor = useFloor();
  const words = say(loadWords);
  const [shown, setShown] = useState<string | null>(linked.current);
  useEffect(() => {
    linked.current = null; // another line has no part in it
  }, []);
  const refusal = useRefusal('verify-reel');
  const chosen = useComputed(() => desk.desk.value.slot);
  const line = floor.lines.get(app.line.value ?? '');
  if (!line) return <NoSetup icon="load" />;
  const progress = setupProgress(floor, line.line);
  if (progress.setup === null) return <NoSetup icon="load" />;
  const sweep = openSweep(floor, line.line);
  const holds = [...floor.holds.values()].filter((hold) => hold.facts.line === line.line);
  const banks = mapBanks(line, progress, sweep, floor.lines);
  const beginSweep = () => {
    if (sweep === null) app.record([{ kind: 'sweep.started', payload: { line: line.line, sweep: newId() } }]);
    desk.desk.value = { ...desk.desk.peek(), mode: 'sweep' };
  };
  return (
    <div class="stack load">
      {progress.next && <NextCard next={progress.next} line={line.line} />}
      {progress.verified === progress.slots.length && <p class="chip go">✓ {words.allDone}</p>}
      <Strip progress={progress} banks={banks} />
      {sweep !== null && <SweepBar line={line.line} sweep={sweep} desk={desk} />}
      <SlotMap banks={banks} next={progress.next?.slot ?? null} chosen={chosen} onChoose={setShown}>
        {holds.length > 0 && <Holds holds={holds} />}
      </SlotMap>
      <div class="row">
        {sweep === null && (
          <Button testId="sweep-start" disabledReason={refusal} onPress={beginSweep}>
            <Icon name="search" /> {words.sweep}
          </Button>
        )}
        <FindButton
          testId="sweep-camera"
          task={{ do: 'sweep' }}
          desk={desk}
          disabledReason={refusal}
          onOpen={beginSweep}
        />
        <FindButton
          testId="find-camera"
          task={{ do: 'find', list: () => listOfMissing(progress) }}
          desk={null}
          isOffered={progress.next !== null}
        />
        <a class="button" href={address('plant', 'setups')}>
          {words.choose}
        </a>
        <a class="button" href={address('change', 'list', 'shift-start')}>
          {say(changeWords).shiftStart}
        </a>
      </div>
      {shown !== null && <SlotDialog slot={shown} desk={desk} onClose={() => setShown(null)} />}
    </div>
  );
}
