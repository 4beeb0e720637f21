// One line at one glance: what is built, how it stands, the next hour of walks, what waits, who counts. Who acted last is named only where
// whoever reads it works here: a wall shows no person.

import type { LineGlance } from '../../../../shared/outlook/glance.ts';
import { sayNext, stateLooks } from '../../frame/glance-text.ts';
import { Icon } from '../../ui/Icon.tsx';
import { linesWords } from '../../words/all-lines.ts';
import { lineWords } from '../../words/line.ts';
import { shellWords } from '../../words/shell.ts';
import { formatCount, formatSpan, formatTime, say } from '../../words/words.ts';
import type { SeenLine } from './use-lines.ts';

/** What the axis shows, ms. */
const HOUR_MS = 3_600_000;

interface LineRowProps {
  readonly seen: SeenLine;
  readonly nowMs: number;
  /** True for a line of this tablet. */
  readonly isHere: boolean;
  /** True where people may be named. */
  readonly namesPeople: boolean;
}

export function LineRow({ seen, nowMs, isHere, namesPeople }: LineRowProps) {
  const { glance } = seen;
  return (
    <>
      <span class="nm">
        <b>
          {glance.name}
          {isHere && <small class="chip act">{say(linesWords).here}</small>}
        </b>
        <span>{sayProduct(glance)}</span>
      </span>
      <State glance={glance} nowMs={nowMs} />
      <Progress glance={glance} />
      <NextHour seen={seen} nowMs={nowMs} />
      <Waits glance={glance} />
      <CountedBy seen={seen} nowMs={nowMs} lastAct={namesPeople ? seen.lastAct : null} />
    </>
  );
}

function sayProduct({ setup }: LineGlance): string {
  const words = say(shellWords);
  return setup
    ? `${setup.product} · ${words.side[setup.side]} · ${words.revision(setup.revision)}`
    : words.noSetup;
}

const spanOf = (ms: number) => formatSpan(Math.max(0, ms) / 1000);

function State({ glance, nowMs }: { readonly glance: LineGlance; readonly nowMs: number }) {
  const words = say(linesWords);
  const { icon, tone } = stateLooks[glance.state];
  const reason = glance.stopReason === null ? null : say(lineWords).stopReasons[glance.stopReason];
  const since = glance.sinceMs === null ? null : words.since(spanOf(nowMs - glance.sinceMs));
  return (
    <span class={`st ${tone}`}>
      <Icon name={icon} />
      <b>{words.states[glance.state]}</b>
      <span>{[reason, since].filter((text) => text !== null).join(', ')}</span>
    </span>
  );
}

function Progress({ glance: { run, loaded, zone } }: { readonly glance: LineGlance }) {
  const words = say(linesWords);
  const [done, of] = run ? [run.done, run.wanted] : loaded ? [loaded.right, loaded.of] : [0, 0];
  if (of === 0) return <span class="rn" />;
  return (
    <span class="rn">
      <b>
        {formatCount(done)} / {formatCount(of)}
      </b>
      <span class="share" aria-hidden="true">
        <i style={{ width: `${Math.min(100, (100 * done) / of)}%` }} />
      </span>
      <span>
        {run === null && words.loaded}
        {run?.endMs != null && words.ends(formatTime(run.endMs, zone))}
      </span>
    </span>
  );
}

/** Marks nearer than this to the one before are one with it, per cent of the axis. */
const APART = 16;

interface HourMark {
  readonly startMs: number;
  /** Its place on the axis, per cent from the left in every language, as time runs. */
  readonly left: number;
  readonly slots: number;
}

/** The walks of the next hour as marks on its axis; walks too near to be told apart share one. Of walks in the order of their start. */
function marksOfHour(walks: LineGlance['walks'], nowMs: number): readonly HourMark[] {
  const marks: HourMark[] = [];
  for (const { startMs, slots } of walks) {
    if (startMs >= nowMs + HOUR_MS) continue;
    const left = Math.min(96, Math.max(4, (100 * (startMs - nowMs)) / HOUR_MS));
    const last = marks.at(-1);
    if (last && left - last.left < APART)
      marks[marks.length - 1] = { ...last, slots: last.slots + slots.length };
    else marks.push({ startMs, left, slots: slots.length });
  }
  return marks;
}

/** The walks of the next hour as marks on its axis, the next one as a sentence. */
function NextHour({ seen, nowMs }: { readonly seen: SeenLine; readonly nowMs: number }) {
  const { glance, isLooking } = seen;
  return (
    <span class="hour">
      {glance.run && (
        <span class="axis" aria-hidden="true">
          {marksOfHour(glance.walks, nowMs).map(({ startMs, left, slots }) => (
            <i key={startMs} class={startMs - nowMs < 60_000 ? 'now' : ''} style={{ left: `${left}%` }}>
              {slots}
            </i>
          ))}
        </span>
      )}
      <span class="say">{sayNext(glance, { nowMs, isLooking })}</span>
    </span>
  );
}

/** What waits for somebody, each with its sign and word. */
function Waits({ glance: { holds, blocked, warnings } }: { readonly glance: LineGlance }) {
  const words = say(linesWords);
  return (
    <span class="waits">
      {warnings.count > 0 && (
        <span class={`chip ${warnings.level === 'late' ? 'stop' : 'care'}`}>
          <Icon name="bell" size={18} /> {words.warnings(warnings.count)}
        </span>
      )}
      {holds > 0 && <span class="chip care">? {words.holds(holds)}</span>}
      {blocked > 0 && <span class="chip stop">✕ {words.blocked(blocked)}</span>}
    </span>
  );
}

/** Who counts, the last panel, and how old all that is: of the last act of somebody where one is given, else of the newest entry. */
function CountedBy({
  seen,
  nowMs,
  lastAct,
}: Pick<LineRowProps, 'seen' | 'nowMs'> & Pick<SeenLine, 'lastAct'>) {
  const words = say(linesWords);
  const { counted, run } = seen.glance;
  const name = counted.name ?? '';
  return (
    <span class={`by ${counted.by === 'silent' ? 'care' : ''}`}>
      <b>
        {counted.by === 'hand'
          ? words.byHand
          : counted.by === 'station'
            ? words.byStation(name)
            : words.silentStation(name)}
      </b>
      <span>{run && counted.lastMs !== null && words.lastPanel(spanOf(nowMs - counted.lastMs))}</span>
      <span>
        {lastAct
          ? words.lastAct(lastAct.name, spanOf(lastAct.agoMs))
          : seen.ageMs === null
            ? words.notHeard
            : words.heard(spanOf(seen.ageMs))}
      </span>
    </span>
  );
}
