// Which screen is shown, and what stands above all screens: faults, updates, warnings.

import { type ReadonlySignal, signal } from '@preact/signals';
import type { ComponentType } from 'preact';
import { useEffect } from 'preact/hooks';
import { blockedOn } from '../../../shared/floor/blocked-on.ts';
import { countedBy } from '../../../shared/floor/counters.ts';
import { type App, useApp, useFloor } from '../app.ts';
import type { Alarm } from '../device/alarm.ts';
import { later, screenStands } from '../device/later.ts';
import type { OfflineState } from '../device/offline.ts';
import { reserveBytes, roomLeft, type StorageFollowed } from '../device/storage.ts';
import { linesServed } from '../lines-served.ts';
import { openOn } from '../outlook/open-warnings.ts';
import { place } from '../router.ts';
import type { StoreFault } from '../store/database.ts';
import { Button } from '../ui/Button.tsx';
import { Icon } from '../ui/Icon.tsx';
import { withWords } from '../words/fetch.ts';
import { shellWords } from '../words/shell.ts';
import { say } from '../words/words.ts';
import type { Work } from '../work.ts';
import { FaultCurtain } from './FaultCurtain.tsx';
import { lazy, lazyTask } from './lazy.tsx';
import { Shell } from './Shell.tsx';

interface RootProps {
  /** The working parts; null for the moment until their chunk is there. */
  readonly work: ReadonlySignal<Work | null>;
  readonly fault: ReadonlySignal<StoreFault | null>;
  readonly storage: ReadonlySignal<StorageFollowed>;
}

const notYet = signal<OfflineState>('getting-ready');

export function Root({ work, fault, storage }: RootProps) {
  const floor = useFloor();
  const app = useApp();
  const words = say(shellWords);
  const ready = work.value;
  useEffect(() => {
    if (ready) later(() => speakLater(app, ready));
  }, [ready]);
  if (fault.value) return <FaultCurtain fault={fault.value} />;
  const holds = [...floor.holds.values()].filter((hold) => hold.facts.line === app.line.value).length;
  const blocked = blockedOn(floor, linesServed(app)).length;
  const room = roomLeft(storage.value);
  const watches = ready ? [ready.watch, ...ready.beside.value.map(({ watch }) => watch)] : [];
  const warnings = openOn(watches);
  // The line in hand and those beside it have bands of their own there.
  const isOnLine = place.value.screen === 'line';
  if (app.isScreen) return ready && <WallScreen {...ready} />;
  if (app.preferences.value.exit)
    return ready && <Exit alarm={ready.alarm} open={warnings} acknowledge={ready.watch.acknowledge} />;
  if (place.value.screen === 'wall' || app.preferences.value.wall)
    return ready && <Wall watch={ready.watch} />;
  return (
    <Shell
      desk={ready?.desk ?? null}
      counts={{ load: holds + floor.conflicts.size, line: warnings.length + blocked }}
      status={
        app.practice ? null : ready && isMuted(app, ready.alarm) ? (
          // In its place until the first touch: there is no room for both beside a warning.
          <SoundChip alarm={ready.alarm} />
        ) : (
          <SyncChip offline={ready?.offline.state ?? notYet} />
        )
      }
      warned={(onLeave) =>
        warnings.length > 0 && !isOnLine ? <WarningChip open={warnings} onLeave={onLeave} /> : null
      }
      banner={
        <>
          {room !== null && room < reserveBytes && (
            <p class="banner stop" role="alert">
              <Icon name="warn" /> {words.storageLow(String(Math.floor(room / 1_048_576)))}
            </p>
          )}
          {storage.value.endsSoon && (room ?? 0) >= reserveBytes && (
            <p class="banner care" role="status">
              <Icon name="warn" /> {words.storageEnds}
            </p>
          )}
          {blocked > 0 && <BlockedBanner />}
          {ready && !isOnLine && warnings.some(({ slot }) => slot.warning.level === 'late') && (
            <LateBanner open={warnings} acknowledge={ready.watch.acknowledge} />
          )}
          {ready && ready.unanswered.value.length > 0 && <UnansweredBanner open={ready.unanswered.value} />}
          {floor.handovers.has(app.line.value ?? '') && <HandoverBanner key={app.line.value} />}
          {floor.counters.has(app.line.value ?? '') && <SilentStation />}
          {app.clockSlip.value && <ClockBanner slip={app.clockSlip.value} />}
          {ready?.offline.updateWaits.value && <UpdateBanner {...ready} />}
        </>
      }
    >
      {ready && <Screen {...ready} />}
      {app.labelWanted.value && (
        <LabelDialog
          wanted={app.labelWanted.value}
          onClose={() => {
            app.labelWanted.value = null;
          }}
        />
      )}
    </Shell>
  );
}

/** A screen that was let in to show the lines; once it is shut out, all that it shows is how it is let in again. */
function WallScreen({ watch, offline }: Work) {
  const app = useApp();
  const waits = offline.updateWaits.value;
  // Nobody is there to be asked, and nothing is in hand.
  useEffect(() => {
    if (waits) void offline.update();
  }, [waits]);
  if (app.sync.value?.phase !== 'refused') return <Wall watch={watch} />;
  return (
    <main class="shut-out" data-testid="screen-shut">
      <h1 class="hidden">{say(shellWords).nav.lines}</h1>
      <Server />
    </main>
  );
}

/** Apart from the frame: it looks at the clock. */
function SilentStation() {
  const app = useApp();
  const counted = countedBy(useFloor(), app.line.value ?? '', app.nowMs.value);
  return counted.by === 'silent' ? <StationBanner silent={counted} /> : null;
}

/** Verdicts are said aloud once the words for them are here; until then, and without, the screen carries them. */
function speakLater(app: App, { desk }: Work): void {
  withWords(import('./spoken-verdict.ts')).then(
    ({ speakVerdicts }) => speakVerdicts(app, desk),
    () => undefined,
  );
}

/** True where warnings are to be heard on this tablet and its browser plays nothing yet. */
function isMuted(app: App, alarm: Alarm): boolean {
  return (
    app.practice === null && app.person.value !== null && app.preferences.value.sound && !alarm.unlocked.value
  );
}

/** Offers the new version while no task is open. Apart from the frame, which must not be drawn anew with each scan. */
function UpdateBanner({ desk, offline }: Work) {
  const app = useApp();
  const words = say(shellWords);
  const { slot, reel } = desk.desk.value;
  if (app.openTasks.value > 0 || slot !== null || reel !== null) return null;
  const update = async () => {
    if (!(await offline.update())) app.notice.value = { tone: 'care', text: words.updateLater };
  };
  return (
    <p class="banner act" data-testid="update">
      {words.newVersion}
      <Button onPress={() => void update()}>{words.update}</Button>
    </p>
  );
}

const BlockedBanner = lazy(() => import('./BlockedBanner.tsx').then((module) => module.BlockedBanner));
const ClockBanner = lazy(() => import('./ClockBanner.tsx').then((module) => module.ClockBanner));
const HandoverBanner = lazy(() => import('./HandoverBanner.tsx').then((module) => module.HandoverBanner));
const StationBanner = lazy(() => import('./StationBanner.tsx').then((module) => module.StationBanner));
const LateBanner = lazy(() => import('./LateBanner.tsx').then((module) => module.LateBanner));
const SoundChip = lazy(() => import('./SoundChip.tsx').then((module) => module.SoundChip));
const UnansweredBanner = lazy(() =>
  import('./UnansweredBanner.tsx').then((module) => module.UnansweredBanner),
);
const SyncChip = lazy(() => import('./SyncChip.tsx').then((module) => module.SyncChip));
const LabelDialog = lazyTask(() => import('../print/LabelDialog.tsx').then((module) => module.LabelDialog));
const WarningChip = lazy(() => import('./WarningChip.tsx').then((module) => module.WarningChip));
/** A screen whose code arrives with its first use; the first one that is drawn lets the rest of the app be fetched. */
function screen<P extends object>(load: () => Promise<ComponentType<P>>) {
  return lazyTask<P>(() =>
    load().then(
      (Shown) =>
        function Standing(props: P) {
          useEffect(screenStands, []);
          return <Shown {...props} />;
        },
    ),
  );
}

// The line tells by itself, as it is drawn before its first look is done.
const Line = lazy(() => import('../screens/line/Line.tsx').then((module) => module.Line));
const Load = screen(() => import('../screens/load/Load.tsx').then((module) => module.Load));
const Plant = screen(() => import('../screens/plant/Plant.tsx').then((module) => module.Plant));
const Stock = screen(() => import('../screens/stock/Stock.tsx').then((module) => module.Stock));
const Change = screen(() => import('../screens/change/Change.tsx').then((module) => module.Change));
const Search = screen(() => import('../screens/search/Search.tsx').then((module) => module.Search));
const Lines = screen(() => import('../screens/lines/Lines.tsx').then((module) => module.Lines));
const Wall = screen(() => import('../screens/lines/Wall.tsx').then((module) => module.Wall));
const Server = screen(() => import('../screens/plant/server/Server.tsx').then((module) => module.Server));
const Exit = screen(() => import('../screens/line/Exit.tsx').then((module) => module.Exit));
const Log = screen(() => import('../screens/log/Log.tsx').then((module) => module.Log));

function Screen({ desk, watch, beside, ...device }: Work) {
  switch (place.value.screen) {
    case 'load':
      return <Load desk={desk} />;
    case 'change':
      return <Change desk={desk} />;
    case 'stock':
      return <Stock watch={watch} />;
    case 'log':
      return <Log watch={watch} />;
    case 'lines':
      return <Lines watch={watch} />;
    case 'search':
      return <Search />;
    case 'plant':
      return <Plant {...device} />;
    default:
      return <Line desk={desk} watch={watch} beside={beside.value} />;
  }
}
