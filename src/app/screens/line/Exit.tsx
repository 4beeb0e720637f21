// Where panels leave the line: one number, one sound. Each code that is scanned is a panel, but for those that name something else here; one
// that was counted before adds nothing and says so. A keyboard scanner types to the page that has the keyboard: where this one has lost it, that is said, and heard. What warns on the line is seen and answered here too.

import { useEffect, useLayoutEffect, useState } from 'preact/hooks';
import { buildingOn } from '../../../../shared/floor/building.ts';
import { holdsBadge, recognise } from '../../../../shared/floor/recognise.ts';
import type { Scan } from '../../../../shared/labels/scan.ts';
import type { OpenWarning } from '../../../../shared/outlook/loudest-open.ts';
import { useApp, useFloor } from '../../app.ts';
import type { Alarm } from '../../device/alarm.ts';
import type { Watch } from '../../outlook/watch.ts';
import { goTo } from '../../router.ts';
import { type PanelTaken, takePanel } from '../../take-panel.ts';
import { Button } from '../../ui/Button.tsx';
import { Icon } from '../../ui/Icon.tsx';
import { VerdictShape } from '../../ui/Shape.tsx';
import { inLineWords } from '../../words/in-line.ts';
import { shellWords } from '../../words/shell.ts';
import { formatCount, say } from '../../words/words.ts';
import { ExitWarning } from './ExitWarning.tsx';
import { isPanel } from './exit-model.ts';
import './exit.css';

/** The last scan and what it was; `no-run`: nothing is being built that it could be of; `other`: the code of a slot, a reel, or the like. */
interface Last {
  readonly serial: string;
  readonly was: PanelTaken | 'no-run' | 'other';
}

interface ExitProps {
  readonly alarm: Pick<Alarm, 'call'>;
  /** What warns on the lines that the tablet serves. */
  readonly open: readonly OpenWarning[];
  readonly acknowledge: Watch['acknowledge'];
}

export function Exit({ alarm, open, acknowledge }: ExitProps) {
  const app = useApp();
  const floor = useFloor();
  const words = say(inLineWords);
  const [last, setLast] = useState<Last | null>(null);
  const hasKeyboard = useKeyboard(alarm);
  const line = app.line.value;
  const run = buildingOn(floor, line);
  const leave = () => {
    app.preferences.value = { ...app.preferences.peek(), exit: false };
    goTo('line');
  };
  const counted = (serial: string, scan: Scan): Last['was'] => {
    const current = buildingOn(app.store.floor(), app.line.peek());
    return (current && takePanel(app, current.run, { serial, scan })) ?? 'no-run';
  };
  useLayoutEffect(
    () =>
      app.scans.take((scan) => {
        const serial = scan.codes[0]?.text.trim() ?? '';
        const now = app.store.floor();
        const at = app.line.peek();
        // A badge signs its person in, here as everywhere.
        const texts = scan.codes.map(({ text }) => text);
        if (serial === '' || holdsBadge(now, at, texts)) return false;
        const was = isPanel(recognise(now, at, serial)) ? counted(serial, scan) : 'other';
        setLast({ serial, was });
        alarm.call(was === 'counted' ? 'counted' : 'not-counted');
        return true;
      }),
    [],
  );
  return (
    <main class="exit" data-testid="screen-exit" data-last={last?.was}>
      <header>
        <h1>{words.exitTitle}</h1>
        <span>{floor.lines.get(line ?? '')?.name ?? say(shellWords).noLine}</span>
        <ExitWarning open={open} acknowledge={acknowledge} onLeave={leave} />
      </header>
      <p class="built" data-testid="exit-panels">
        {run === null ? '–' : formatCount(run.done)}
      </p>
      {run !== null && (
        <p class="of">{say(shellWords).run(formatCount(run.done), formatCount(run.panelsWanted))}</p>
      )}
      {hasKeyboard ? (
        <LastScan last={last} />
      ) : (
        <p class="told stop" role="alert" data-testid="exit-lost">
          <Icon name="keyboard" size={44} /> {words.exitLost}
        </p>
      )}
      <Button testId="exit-leave" onPress={leave}>
        {words.exitLeave}
      </Button>
    </main>
  );
}

/** What came of the last scan: shape, word and colour. */
function LastScan({ last }: { readonly last: Last | null }) {
  const words = say(inLineWords);
  if (last === null) return <p class="told">{words.exitHelp}</p>;
  const isCounted = last.was === 'counted';
  const said = {
    counted: words.exitCounted,
    before: words.exitBefore,
    seen: words.exitBefore,
    'no-run': words.exitNoRun,
    other: words.exitOther,
  }[last.was];
  return (
    <p class={`told ${isCounted ? 'go' : 'care'}`} role="alert" data-testid="exit-told">
      <VerdictShape verdict={isCounted ? 'accepted' : 'held'} size={44} />
      <span>
        {said} <b class="code">{last.serial}</b>
      </span>
    </p>
  );
}

/** Does this page have the keyboard? Looked at once a second too: not every browser tells when it goes. */
function useKeyboard(alarm: Pick<Alarm, 'call'>): boolean {
  const [has, setHas] = useState(() => document.hasFocus());
  useEffect(() => {
    const look = () => setHas(document.hasFocus());
    const timer = setInterval(look, 1000);
    addEventListener('focus', look);
    addEventListener('blur', look);
    return () => {
      clearInterval(timer);
      removeEventListener('focus', look);
      removeEventListener('blur', look);
    };
  }, []);
  useEffect(() => {
    if (!has) alarm.call('not-counted');
  }, [has]);
  return has;
}
