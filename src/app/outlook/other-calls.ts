// What else is heard beside run-outs: a reel whose floor life is over or ends soon on a running line, and reels that would run short as soon as
// the next run begins. Each is called once at each level; the screen says it as long as it is so.

import { effect, type ReadonlySignal } from '@preact/signals';
import { buildingOn } from '../../../shared/floor/building.ts';
import { lineCalendar } from '../../../shared/forecast/line-calendar.ts';
import { beginsShort } from '../../../shared/outlook/begin.ts';
import type { Outlook } from '../../../shared/outlook/line.ts';
import type { App } from '../app.ts';
import type { Alarm } from '../device/alarm.ts';
import { later } from '../device/later.ts';
import { linesServed } from '../lines-served.ts';
import type { LifeEnd } from './life-ends.ts';
import type { Watch } from './watch.ts';

/** A floor life that ends within this time can still be helped by a change in time. */
const SOON_MS = 30 * 60_000;
/** A whole line is looked at for its beginning no more often than this. */
const BEGIN_EVERY_MS = 30_000;

type Seen = Pick<Watch, 'outlook'>;

/** Starts calling, for the line in hand and those beside it. */
export function callForOthers(
  app: App,
  {
    watch,
    beside,
  }: { readonly watch: Seen; readonly beside: ReadonlySignal<readonly { readonly watch: Seen }[]> },
  alarm: Pick<Alarm, 'call'>,
): void {
  const called = new Set<string>();
  const isNew = (key: string): boolean => {
    if (called.has(key)) return false;
    called.add(key);
    return true;
  };
  const callEnds = (ends: readonly LifeEnd[], nowMs: number) => {
    const over = ends.filter((end) => end.isOver && isNew(`over ${end.entry}`));
    const soon = ends.filter(
      (end) => !end.isOver && end.endsMs - nowMs < SOON_MS && isNew(`ends ${end.entry}`),
    );
    if (over.length > 0) alarm.call('late');
    else if (soon.length > 0) alarm.call('due');
  };
  /** Each outlook is judged once: a line gets another with whatever changes, and every few seconds. */
  const judged = new WeakSet<Outlook>();
  // What judges floor lives is fetched once the first screen stands; where it is out of reach, the next outlook asks again.
  const lookAtEnds = () => {
    import('./life-ends.ts').then(
      ({ lifeEnds }) => {
        for (const { outlook } of [watch, ...beside.peek().map((each) => each.watch)]) {
          const seen = outlook.peek();
          if (seen === null || judged.has(seen)) continue;
          judged.add(seen);
          callEnds(lifeEnds(app.store.floor(), seen), seen.pace.nowMs);
        }
      },
      () => undefined,
    );
  };
  effect(() => {
    const seen = [watch, ...beside.value.map((each) => each.watch)].map(({ outlook }) => outlook.value);
    if (seen.some((outlook) => outlook !== null)) later(lookAtEnds);
  });
  const lookedMs = new Map<string, number>();
  const lookAtBegin = (line: string) => {
    const nowMs = app.clock.nowMs();
    const floor = app.store.floor();
    const isSeen = Math.abs(nowMs - (lookedMs.get(line) ?? Number.NEGATIVE_INFINITY)) < BEGIN_EVERY_MS;
    if (buildingOn(floor, line) !== null || isSeen) return;
    lookedMs.set(line, nowMs);
    const short = beginsShort(floor, line, { nowMs, calendar: lineCalendar(floor, line, nowMs) });
    const fresh = short.filter(({ need }) => isNew(`short ${line} ${need}`));
    if (fresh.length > 0) alarm.call('soon');
  };
  effect(() => {
    app.tick.value;
    const lines = linesServed(app);
    later(() => lines.forEach(lookAtBegin));
  });
}
