// The frame of every screen: navigation, top bar, main area, dock, and what lies over them.

import type { ComponentChildren, RefObject } from 'preact';
import { useEffect, useLayoutEffect, useRef, useState } from 'preact/hooks';
import { buildingOn } from '../../../shared/floor/building.ts';
import { useApp, useFloor } from '../app.ts';
import type { DeskRun } from '../desk/desk.ts';
import { afterPaint } from '../device/after-paint.ts';
import { later } from '../device/later.ts';
import { away } from '../person/away.ts';
import { address, type NavScreen, place, screens } from '../router.ts';
import { Icon, type IconName } from '../ui/Icon.tsx';
import { shellWords } from '../words/shell.ts';
import { formatCount, say } from '../words/words.ts';
import { lazy, lazyTask } from './lazy.tsx';
import { Notices } from './Notices.tsx';
import '../ui/shell.css';
import '../ui/banner.css';
import '../ui/phone.css';

// None of these is needed to draw the first screen.
const Dock = lazy(() => import('./Dock.tsx').then((module) => module.Dock), <section class="dock" />);
const VerdictBand = lazy(() => import('./VerdictBand.tsx').then((module) => module.VerdictBand));
const PracticeBand = lazy(() => import('./PracticeBand.tsx').then((module) => module.PracticeBand));
const CameraOverlay = lazy(() => import('./CameraOverlay.tsx').then((module) => module.CameraOverlay));
const TypeDialog = lazy(() => import('./TypeDialog.tsx').then((module) => module.TypeDialog));
const QuestionDialog = lazy(() => import('./QuestionDialog.tsx').then((module) => module.QuestionDialog));
const SignInDialog = lazyTask(() => import('./PeopleDialogs.tsx').then((module) => module.SignInDialog));
const ClearDialog = lazyTask(() => import('./PeopleDialogs.tsx').then((module) => module.ClearDialog));
const AwayDialog = lazyTask(() => import('./AwayDialog.tsx').then((module) => module.AwayDialog));
const QuantityDialog = lazyTask(() => import('./PeopleDialogs.tsx').then((module) => module.QuantityDialog));
const HelpDialog = lazy(() => import('./HelpDialog.tsx').then((module) => module.HelpDialog));

const icons: Readonly<Record<NavScreen, IconName>> = {
  line: 'line',
  load: 'load',
  change: 'change',
  stock: 'reel',
  log: 'log',
  plant: 'plant',
};

/** What lies over the screen, one at a time. */
type Over =
  | { readonly over: 'type' }
  | { readonly over: 'help' }
  | { readonly over: 'sign-in' }
  | { readonly over: 'clear'; readonly entry: string }
  | { readonly over: 'quantity' };

interface ShellProps {
  /** Null for the moment until its chunk is there. */
  readonly desk: DeskRun | null;
  /** Number shown beside a screen's name, e.g. warnings that wait. */
  readonly counts: Readonly<Partial<Record<NavScreen, number>>>;
  readonly banner: ComponentChildren;
  readonly status: ComponentChildren;
  /** What warns, in the top bar; `onLeave` is called on the way to it. */
  readonly warned: (onLeave: () => void) => ComponentChildren;
  readonly children: ComponentChildren;
}

/** Fetched once the first screen stands: a dialog that opens late would miss the badge that is scanned into it. */
const preloaded = [
  AwayDialog,
  VerdictBand,
  SignInDialog,
  ClearDialog,
  QuantityDialog,
  TypeDialog,
  QuestionDialog,
];

/** Past all that stands on the screen, to what a scan is typed into. A link would change the address, which names the screen. */
function skipToDock(): void {
  const button = document.querySelector<HTMLElement>('[data-testid=dock-type], .dock button');
  button?.focus();
}

export function Shell({ desk, counts, banner, status, warned, children }: ShellProps) {
  const app = useApp();
  const words = say(shellWords);
  const [over, setOver] = useState<Over | null>(null);
  const close = () => setOver(null);
  // Apart from the dialogs: it goes on behind them, and after a verdict.
  const [hasCamera, setCamera] = useState(false);
  const closeCamera = () => setCamera(false);
  const leave = () => {
    close();
    closeCamera();
    if (desk?.shown.peek()) desk.goOn();
  };
  useEffect(() => {
    later(() => {
      for (const part of preloaded) part.preload();
    });
  }, []);
  const main = useRef<HTMLElement>(null);
  const under = useRef<HTMLDivElement>(null);
  // Another screen begins at its top, however far down the last one was read.
  useLayoutEffect(() => {
    if (main.current) main.current.scrollTop = 0;
    setCamera(false); // what was asked for would open behind it
  }, [place.value]);
  return (
    <div class={`shell${hasCamera ? ' has-camera' : ''}`}>
      <button type="button" class="skip" onClick={skipToDock} data-testid="skip-to-dock">
        {words.skipToDock}
      </button>
      {app.practice && <PracticeBand practice={app.practice} />}
      <nav aria-label="Reelward">
        {screens.map((name) => (
          <a
            key={name}
            href={address(name)}
            {...(place.value.screen === name ? { 'aria-current': 'page' as const } : {})}
            data-testid={`nav-${name}`}
            onClick={leave}
          >
            <Icon name={icons[name]} />
            {words.nav[name]}
            {(counts[name] ?? 0) > 0 && (
              <span class={`count${name === 'line' ? '' : ' care'}`}>{counts[name]}</span>
            )}
          </a>
        ))}
      </nav>
      <TopBar
        status={status}
        warned={warned(leave)}
        onAway={leave}
        onHelp={() => setOver({ over: 'help' })}
        onSignIn={() => setOver({ over: 'sign-in' })}
      />
      <main ref={main} data-testid={`screen-${place.value.screen}`}>
        <div class="under" ref={under}>
          {banner}
          {children}
        </div>
      </main>
      {hasCamera && desk && (
        <CameraOverlay
          desk={desk}
          isCovered={over !== null}
          onClose={closeCamera}
          onType={() => setOver({ over: 'type' })}
        />
      )}
      {desk && (
        <ShownVerdictBand
          desk={desk}
          under={under}
          onClear={(entry) => setOver({ over: 'clear', entry })}
          onQuantity={() => setOver({ over: 'quantity' })}
        />
      )}
      {desk ? (
        <Dock
          desk={desk}
          isCameraOpen={hasCamera}
          onCamera={() => setCamera(!hasCamera)}
          onType={() => setOver({ over: 'type' })}
        />
      ) : (
        <section class="dock" />
      )}
      <Notices />
      {over?.over === 'type' && <TypeDialog onClose={close} />}
      {over?.over === 'help' && <HelpDialog onClose={close} />}
      {over?.over === 'sign-in' && <SignInDialog onClose={close} />}
      {over?.over === 'clear' && (
        <ClearDialog
          entry={over.entry}
          onClose={(cleared) => {
            close();
            if (cleared) desk?.clear();
          }}
        />
      )}
      {over?.over === 'quantity' && (
        <QuantityDialog
          onClose={close}
          onQuantity={(quantity) => {
            close();
            desk?.setQuantity(quantity);
          }}
        />
      )}
      {desk && <OpenQuestion desk={desk} />}
      <Away />
    </div>
  );
}

// The two below read the desk in the frame's stead: a scan draws them anew, and neither the navigation nor the screen.

function ShownVerdictBand({
  under,
  ...props
}: {
  readonly desk: DeskRun;
  readonly under: RefObject<HTMLElement | null>;
  readonly onClear: (entry: string) => void;
  readonly onQuantity: () => void;
}) {
  const shown = props.desk.shown.value;
  const isShown = shown !== null;
  // What lies under the verdict is out of reach of the keyboard and of readers of the screen too. Shutting a whole screen off makes its
  // styles anew, so the verdict is drawn first; it is let go of at once.
  useLayoutEffect(() => {
    let isOver = false;
    const shut = () => {
      if (!isOver && under.current) under.current.inert = true;
    };
    if (isShown) afterPaint(shut);
    else if (under.current) under.current.inert = false;
    return () => {
      isOver = true;
    };
  }, [isShown]);
  return shown && <VerdictBand {...props} shown={shown} />;
}

function OpenQuestion({ desk }: { readonly desk: DeskRun }) {
  const { question } = desk.desk.value;
  return question && <QuestionDialog desk={desk} question={question} />;
}

/** Last, so that it lies over whatever was left open. */
function Away() {
  return away.value && <AwayDialog person={away.value} />;
}

function TopBar(props: {
  readonly status: ComponentChildren;
  readonly warned: ComponentChildren;
  readonly onAway: () => void;
  readonly onHelp: () => void;
  readonly onSignIn: () => void;
}) {
  const { status, warned, onAway, onHelp, onSignIn } = props;
  const app = useApp();
  const floor = useFloor();
  const words = say(shellWords);
  const line = floor.lines.get(app.line.value ?? '');
  const setup = floor.setups.get(floor.chosen.get(app.line.value ?? '') ?? '');
  const run = buildingOn(floor, app.line.value);
  const person = app.person.value;
  const product = setup
    ? `${setup.product} · ${words.side[setup.side]} · ${words.revision(setup.revision)}`
    : line
      ? words.noSetup
      : '';
  return (
    <header class="topbar">
      <h1 class="hidden">{words.nav[place.value.screen]}</h1>
      {floor.lines.size > 1 && line ? (
        <a class="whereabouts" href={address('lines')} onClick={onAway}>
          <Whereabouts line={line.name} product={product} />
        </a>
      ) : (
        <div class="whereabouts">
          <Whereabouts line={line?.name ?? words.noLine} product={product} />
        </div>
      )}
      {warned}
      {/* The line's own strip says it at length. */}
      {run && place.value.screen !== 'line' && (
        <span class={`chip wide ${run.phase === 'running' ? 'go' : 'care'}`} data-testid="run-chip">
          <Icon name={run.phase === 'running' ? 'play' : 'pause'} size={18} />
          {words.run(formatCount(run.done), formatCount(run.panelsWanted))}
        </span>
      )}
      {status}
      <a
        class="chip find"
        href={address('search')}
        aria-label={words.nav.search}
        onClick={onAway}
        data-testid="open-search"
      >
        <Icon name="search" size={20} />
      </a>
      <button
        type="button"
        class="chip help"
        aria-label={words.help}
        aria-haspopup="dialog"
        onClick={onHelp}
        data-testid="open-help"
      >
        <Icon name="question" size={20} />
      </button>
      <button type="button" class="chip" onClick={onSignIn} data-testid="sign-in">
        <Icon name="person" size={20} />
        {person?.name ?? words.signIn}
      </button>
    </header>
  );
}

/** The line of this tablet and what it builds. */
function Whereabouts({ line, product }: { readonly line: string; readonly product: string }) {
  return (
    <>
      <b>{line}</b>
      <span>{product}</span>
    </>
  );
}
