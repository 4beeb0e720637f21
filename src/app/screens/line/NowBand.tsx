// The one thing to do now, with its act: which walk, when, along which slots, by when, and who goes. A warning is said here and nowhere
// else on this screen.

import { useState } from 'preact/hooks';
import { needKey } from '../../../../shared/floor/state.ts';
import type { Outlook } from '../../../../shared/outlook/line.ts';
import type { PlannedWalk } from '../../../../shared/outlook/walks.ts';
import { useApp, useFloor } from '../../app.ts';
import { lazy } from '../../frame/lazy.tsx';
import { sayWarning, toSayOf, warningsTold, warningTone } from '../../frame/warning-text.ts';
import { useRefusal } from '../../may.ts';
import type { Watch } from '../../outlook/watch.ts';
import { Button } from '../../ui/Button.tsx';
import { Icon } from '../../ui/Icon.tsx';
import { lineWords } from '../../words/line.ts';
import { warningWords } from '../../words/warning.ts';
import { formatCount, formatSpan, formatTime, say } from '../../words/words.ts';
import { dueBy, type Now, nowOf } from './now.ts';
import './now-band.css';

const SaidOnce = lazy(() => import('../../ui/SaidOnce.tsx').then((module) => module.SaidOnce));
const WalksDialog = lazy(() => import('./Walks.tsx').then((module) => module.WalksDialog));

/** Slots of the walk named in the band; the rest is a number. */
const NAMED = 6;
/** A walk that begins within this many seconds begins now. */
const NOW_SECONDS = 30;

interface NowBandProps {
  readonly outlook: Outlook;
  readonly watch: Watch;
  /** What every moment hangs on; null where on nothing. */
  readonly hold: string | null;
}

export function NowBand({ outlook, watch, hold }: NowBandProps) {
  const app = useApp();
  const [isOpen, setOpen] = useState(false);
  const words = say(lineWords);
  const refusal = useRefusal('acknowledge-warning');
  const plan = watch.walks.value;
  const now = nowOf(watch.warnings.value, plan);
  const { loudest, waiting, elsewhere } = now;
  const tone = loudest === null ? '' : warningTone(loudest);
  const missed = plan?.missed.length ?? 0;
  const all = watch.warnings.value.map((each) =>
    toSayOf(each, each.slot, () => {
      const zone = app.store.floor().lines.get(outlook.line)?.zone ?? 'UTC';
      return { outlook, nowMs: app.nowMs.peek(), zone };
    }),
  );
  return (
    <section
      class={`nowband ${tone}`}
      aria-label={words.nowTitle}
      {...(loudest === null
        ? { 'data-testid': 'now' }
        : { 'data-testid': 'warning', 'data-level': loudest.warning.level })}
    >
      <SaidOnce all={all} told={warningsTold} />
      <Icon name={loudest === null ? 'walk' : tone === 'stop' ? 'warn' : 'bell'} />
      <p class="what">
        <What now={now} outlook={outlook} isPlanned={plan !== null} />
        {hold !== null && now.walk !== null && <span class="also">{hold}</span>}
        {elsewhere > 0 && <span class="also">{say(warningWords).more(elsewhere)}</span>}
      </p>
      <div class="acts">
        <button
          type="button"
          class={`button ${missed > 0 ? 'stop' : 'quiet'}`}
          aria-haspopup="dialog"
          data-testid="walks-open"
          onClick={() => setOpen(true)}
        >
          {missed > 0 ? `▲ ${words.misses(missed)}` : words.allWalks(plan?.walks.length ?? 0)}
        </button>
        {waiting.length > 0 && (
          <Button
            tone="act"
            testId="warning-ack"
            disabledReason={refusal}
            onPress={() => void watch.acknowledge(waiting.map((slot) => ({ slot, outlook })))}
          >
            {words.acknowledge}
          </Button>
        )}
      </div>
      {isOpen && <WalksDialog outlook={outlook} walks={plan} hold={hold} onClose={() => setOpen(false)} />}
    </section>
  );
}

/** The walk, or where no walk serves it the slot that warns; else that nothing is due. */
function What(props: { readonly now: Now; readonly outlook: Outlook; readonly isPlanned: boolean }) {
  const app = useApp();
  const floor = useFloor();
  const words = say(lineWords);
  const { outlook, isPlanned, now } = props;
  const { walk: at, loudest } = now;
  const zone = floor.lines.get(outlook.line)?.zone ?? 'UTC';
  const nowMs = app.nowMs.value;
  if (at !== null) return <TheWalk {...at} now={now} nowMs={nowMs} zone={zone} line={outlook.line} />;
  if (loudest !== null)
    return (
      <>
        <b class="code">{loudest.slot}</b> <span>{sayWarning(loudest, { outlook, nowMs, zone }).long}</span>
      </>
    );
  return <span>{isPlanned ? words.walkNone : ''}</span>;
}

function TheWalk(props: {
  readonly walk: PlannedWalk;
  readonly number: number;
  readonly now: Now;
  readonly nowMs: number;
  readonly zone: string;
  readonly line: string;
}) {
  const floor = useFloor();
  const words = say(lineWords);
  const { walk, number, now, nowMs, zone, line } = props;
  const waits = new Set(now.waiting.map(({ slot }) => slot));
  const inSeconds = (walk.startMs - nowMs) / 1000;
  const slots = walk.splices.map((splice) => splice.slot);
  const closesMs = dueBy(walk);
  const going = new Set(
    slots.flatMap(({ slot, need }) => {
      const by = floor.acknowledged.get(needKey(line, slot, need))?.by ?? '';
      const name = waits.has(slot) ? undefined : floor.people.get(by)?.name;
      return name === undefined ? [] : [name];
    }),
  );
  return (
    <>
      <span class="number">{number}</span>
      <span class="go">
        {inSeconds <= NOW_SECONDS
          ? words.walkNow
          : words.walkAt(formatTime(walk.startMs, zone), formatSpan(inSeconds))}
      </span>
      <span class="stops code" translate={false}>
        {slots.slice(0, NAMED).map(({ slot }) => (
          <span key={slot}>{slot === now.loudest?.slot ? <b>{slot}</b> : slot} </span>
        ))}
        {slots.length > NAMED && `+ ${formatCount(slots.length - NAMED)}`}
      </span>
      {closesMs > nowMs && <span class="also">{words.walkBy(formatTime(closesMs, zone))}</span>}
      {(floor.crews.get(line) ?? 1) > 1 && <span class="also">{words.walkOf(walk.operator + 1)}</span>}
      {[...going].map((name) => (
        <span class="also" key={name}>
          <Icon name="person" size={18} /> {words.goes(name)}
        </span>
      ))}
    </>
  );
}
