// Which screen is shown, and what stands above all screens: faults, updates, warnings.

import type { ReadonlySignal } from '@preact/signals';
import { useApp, useFloor } from '../app.ts';
import type { DeskRun } from '../desk/desk.ts';
import type { Alarm } from '../device/alarm.ts';
import type { Offline } from '../device/offline.ts';
import { reserveBytes, roomLeft, type StorageHealth } from '../device/storage.ts';
import { openWarnings } from '../outlook/model.ts';
import type { Watch } from '../outlook/watch.ts';
import { place } from '../router.ts';
import type { StoreFault } from '../store/database.ts';
import { Button } from '../ui/Button.tsx';
import { Icon } from '../ui/Icon.tsx';
import { shellWords } from '../words/shell.ts';
import { say } from '../words/words.ts';
import { FaultCurtain } from './FaultCurtain.tsx';
import { lazy } from './lazy.tsx';
import { Shell } from './Shell.tsx';
import { SyncChip } from './SyncChip.tsx';
import { WarningBanner } from './WarningBanner.tsx';

interface RootProps {
  readonly desk: DeskRun;
  readonly offline: Offline;
  readonly fault: ReadonlySignal<StoreFault | null>;
  readonly storage: ReadonlySignal<StorageHealth>;
  readonly watch: Watch;
  readonly alarm: Alarm;
}

export function Root({ desk, offline, fault, storage, watch, alarm }: RootProps) {
  const floor = useFloor();
  const app = useApp();
  const words = say(shellWords);
  if (fault.value) return <FaultCurtain fault={fault.value} />;
  const holds = [...floor.holds.values()].filter((hold) => hold.facts.line === app.line.value).length;
  const room = roomLeft(storage.value);
  const warnings = watch.outlook.value ? openWarnings(watch.outlook.value) : [];
  const idle = app.openTasks.value === 0 && desk.desk.value.slot === null && desk.desk.value.reel === null;
  return (
    <Shell
      desk={desk}
      counts={{ load: holds + floor.conflicts.size, line: warnings.length }}
      status={<SyncChip offline={offline.state} />}
      banner={
        <>
          {room !== null && room < reserveBytes && (
            <p class="banner stop" role="alert">
              <Icon name="warn" /> {words.storageLow(String(Math.floor(room / 1_048_576)))}
            </p>
          )}
          <WarningBanner warnings={warnings} watch={watch} />
          {offline.updateWaits.value && idle && (
            <p class="banner act" data-testid="update">
              {words.newVersion}
              <Button onPress={() => void offline.update()}>{words.update}</Button>
            </p>
          )}
        </>
      }
    >
      <Screen desk={desk} watch={watch} offline={offline} alarm={alarm} />
    </Shell>
  );
}

const Line = lazy(() => import('../screens/line/Line.tsx').then((module) => module.Line));
const Load = lazy(() => import('../screens/load/Load.tsx').then((module) => module.Load));

const Plant = lazy(() => import('../screens/plant/Plant.tsx').then((module) => module.Plant));

const Stock = lazy(() => import('../screens/stock/Stock.tsx').then((module) => module.Stock));
const Change = lazy(() => import('../screens/change/Change.tsx').then((module) => module.Change));
const Log = lazy(() => import('../screens/log/Log.tsx').then((module) => module.Log));

function Screen({ desk, watch, offline, alarm }: Pick<RootProps, 'desk' | 'watch' | 'offline' | 'alarm'>) {
  switch (place.value.screen) {
    case 'load':
      return <Load desk={desk} />;
    case 'change':
      return <Change />;
    case 'stock':
      return <Stock watch={watch} />;
    case 'log':
      return <Log />;
    case 'plant':
      return <Plant offline={offline} alarm={alarm} />;
    default:
      return <Line desk={desk} watch={watch} />;
  }
}
