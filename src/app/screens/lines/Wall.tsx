// The wall screen: all lines in letters for across the hall, without a person and without an act. It stays awake, says how old what it shows
// is, and takes no scan. One that was let in to read knows no way out.

import { useEffect, useLayoutEffect, useState } from 'preact/hooks';
import { useApp, useFloor } from '../../app.ts';
import type { Watch } from '../../outlook/watch.ts';
import { signOut } from '../../person/sign-in.ts';
import { goTo } from '../../router.ts';
import { Button } from '../../ui/Button.tsx';
import { Icon } from '../../ui/Icon.tsx';
import { linesWords } from '../../words/all-lines.ts';
import { shellWords } from '../../words/shell.ts';
import { syncWords } from '../../words/sync.ts';
import { formatSpan, formatTime, say } from '../../words/words.ts';
import { LineRow } from './LineRow.tsx';
import { Quiet, Summary } from './Summary.tsx';
import { useHeard } from './use-heard.ts';
import { useLines } from './use-lines.ts';
import './lines.css';
import './wall.css';

/** The way out shows for this long after a touch. */
const WAY_OUT_MS = 10_000;

export function Wall({ watch }: { readonly watch: Watch }) {
  const app = useApp();
  const floor = useFloor();
  const { nowMs, lines, quiet } = useLines(watch);
  const zone = floor.lines.get(app.line.value ?? '')?.zone ?? 'UTC';
  const [isTouched, setTouched] = useState(false);
  useNobody();
  useEffect(() => {
    if (!isTouched) return undefined;
    const timer = setTimeout(() => setTouched(false), WAY_OUT_MS);
    return () => clearTimeout(timer);
  }, [isTouched]);
  // Before it is drawn: who touches what stands there is answered.
  useLayoutEffect(() => {
    const touch = () => setTouched(true);
    addEventListener('pointerdown', touch);
    addEventListener('keydown', touch);
    return () => {
      removeEventListener('pointerdown', touch);
      removeEventListener('keydown', touch);
    };
  }, []);
  return (
    <main class="wall" data-testid="screen-wall" style={{ '--rows': String(Math.max(4, lines.length)) }}>
      <header>
        <h1>{say(shellWords).nav.lines}</h1>
        <Summary lines={lines} />
        {!app.isScreen && <Link nowMs={nowMs} />}
        <b class="clock">{formatTime(nowMs, zone)}</b>
      </header>
      {app.isScreen && <Heard nowMs={nowMs} zone={zone} />}
      {lines.length === 0 && <p class="empty">{say(shellWords).noLine}</p>}
      <div class="all-lines">
        {lines.map((seen) => (
          <div
            key={seen.glance.line}
            class={`line-row ${seen.glance.state}`}
            data-testid={`wall-${seen.glance.line}`}
            data-state={seen.glance.state}
          >
            <LineRow seen={seen} nowMs={nowMs} isHere={false} namesPeople={false} />
          </div>
        ))}
      </div>
      <Quiet tablets={quiet} />
      {isTouched && (app.isScreen ? <NoWayOut /> : <WayOut />)}
    </main>
  );
}

/** Whether the server is heard: what other tablets do comes from there. */
function Link({ nowMs }: { readonly nowMs: number }) {
  const words = say(syncWords);
  const status = useApp().sync.value;
  if (status === null || status.phase === 'alone') return null;
  const { lastAnswerMs } = status;
  const isHeard = status.phase === 'live' || status.phase === 'follower' || status.phase === 'syncing';
  const span = lastAnswerMs === null ? null : formatSpan(Math.max(0, nowMs - lastAnswerMs) / 1000);
  return (
    <span class={`chip ${isHeard ? 'go' : 'stop'}`}>
      {isHeard ? `✓ ${words.live}` : `✕ ${words.unreached(span)}`}
    </span>
  );
}

/** On a screen that only reads: since when it has heard nothing, over a restart too; nothing while it hears. */
function Heard({ nowMs, zone }: { readonly nowMs: number; readonly zone: string }) {
  const words = say(linesWords);
  const heard = useHeard(nowMs);
  if (heard === 'now' || heard === 'not-read') return null;
  return (
    <p class="banner stop" role="alert" data-testid="wall-unheard">
      <Icon name="warn" />
      <span>
        {heard === 'never' ? (
          <b>{words.unheardEver}</b>
        ) : (
          <>
            <b>{words.unheard(formatTime(heard, zone), formatSpan(Math.max(0, nowMs - heard) / 1000))}</b>{' '}
            {words.unheardHelp}
          </>
        )}
      </span>
    </p>
  );
}

function NoWayOut() {
  return (
    <div class="way-out" data-testid="wall-reads">
      <p>{say(linesWords).readsOnly}</p>
    </div>
  );
}

/** What may be done here: leave it, or let the tablet come back to it by itself. */
function WayOut() {
  const { preferences } = useApp();
  const words = say(linesWords);
  const { wall } = preferences.value;
  return (
    <div class="way-out" data-testid="wall-way-out">
      <p>{words.wallHelp}</p>
      <Button
        large
        onPress={() => (preferences.value = { ...preferences.peek(), wall: !wall })}
        testId="wall-stay"
      >
        {wall ? words.stayNoMore : words.stay}
      </Button>
      <Button
        large
        tone="act"
        testId="wall-leave"
        onPress={() => {
          preferences.value = { ...preferences.peek(), wall: false };
          goTo('lines');
        }}
      >
        {words.leave}
      </Button>
    </div>
  );
}

/** Nobody is signed in on a wall, and a scan that is made there does nothing. */
function useNobody(): void {
  const app = useApp();
  useLayoutEffect(() => {
    const person = app.person.peek();
    if (person) signOut(app, person);
    return app.scans.take(() => true);
  }, [app]);
}
