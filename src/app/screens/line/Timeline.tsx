// Each slot's tape lies along the time axis and ends where it runs out, fading between the early and the late bound; the
// bracket is the splice window. One look tells where to go next; a tap on a row opens its slot.

import type { ComponentChildren } from 'preact';
import { useEffect, useRef, useState } from 'preact/hooks';
import type { Outlook, SlotOutlook } from '../../../../shared/outlook/line.ts';
import type { WalkPlan } from '../../../../shared/outlook/walks.ts';
import { useApp } from '../../app.ts';
import { lineWords } from '../../words/line.ts';
import { say } from '../../words/words.ts';
import { Axis } from './Axis.tsx';
import { geometryOf, HORIZONS } from './axis.ts';
import { type Band, SlotRow } from './SlotRow.tsx';
import './timeline.css';

interface TimelineProps {
  readonly outlook: Outlook;
  readonly slots: readonly SlotOutlook[];
  /** Slots with a blocked reel that no lead has let run on. */
  readonly blocked: ReadonlySet<string>;
  readonly walks: WalkPlan | null;
  /** What every moment hangs on, such as a pace that nobody counted; null where on nothing. */
  readonly hold: string | null;
  readonly onOpen: (slot: string) => void;
  readonly onSplice: (slot: string) => void;
  /** What stands at the end of the axis. */
  readonly children: ComponentChildren;
}

/** The root's letters where nobody asked for larger ones, px. */
const ROOT_PX = 17;

/** As wide as it is drawn, px, and the size of its letters; and where to hang what is measured. */
export function useRoom() {
  const [room, setRoom] = useState({ width: 600, scale: 1 });
  const measured = useRef<HTMLDivElement>(null);
  useEffect(() => {
    const element = measured.current;
    if (!element) return;
    // Its height is in letters: it is told of those too.
    const watcher = new ResizeObserver(() => {
      const letters = Number.parseFloat(getComputedStyle(document.documentElement).fontSize);
      setRoom({ width: Math.max(120, Math.floor(element.clientWidth)), scale: letters / ROOT_PX });
    });
    watcher.observe(element);
    return () => watcher.disconnect();
  }, []);
  return { ...room, measured };
}

export function Timeline(props: TimelineProps) {
  const app = useApp();
  const words = say(lineWords);
  const { outlook, slots, blocked, walks, hold, onOpen, onSplice } = props;
  const [hours, setHours] = useState<number>(2);
  const { width, scale, measured } = useRoom();
  // Rows move with each look, not each second: they say the same, and a slow tablet has better things to do.
  const { nowMs } = outlook.pace;
  const zone = app.store.floor().lines.get(outlook.line)?.zone ?? 'UTC';
  const geometry = geometryOf({ nowMs, zone, width, hours, scale });
  return (
    <section
      class={`timeline${hold === null ? '' : ' held'}`}
      aria-label={words.dueTitle}
      data-testid="timeline"
    >
      <div class="axisrow">
        <select
          aria-label={words.horizonOf}
          value={hours}
          data-testid="horizon"
          onChange={(event) => setHours(Number(event.currentTarget.value))}
        >
          {HORIZONS.map((each) => (
            <option key={each} value={each}>
              {words.horizon(each)}
            </option>
          ))}
        </select>
        <div class="axis" ref={measured}>
          <Axis geometry={geometry} calendar={outlook.calendar} walks={walks?.walks ?? []} />
        </div>
        {props.children}
      </div>
      {slots.map((slot) => (
        <SlotRow
          key={slot.slot}
          slot={slot}
          isBlocked={blocked.has(slot.slot)}
          geometry={geometry}
          band={bandOf(walks, slot.slot)}
          hold={hold}
          onOpen={onOpen}
          onSplice={onSplice}
        />
      ))}
    </section>
  );
}

/** The walk that serves a slot: its number in the list, and when; null where none does. */
export function bandOf(walks: WalkPlan | null, slot: string): Band | null {
  const at = walks?.walks.findIndex((walk) => walk.splices.some((splice) => splice.slot.slot === slot));
  const walk = at === undefined || at < 0 ? undefined : walks?.walks[at];
  return at === undefined || !walk ? null : { number: at + 1, startMs: walk.startMs, endMs: walk.endMs };
}
