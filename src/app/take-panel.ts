// What the scan of a panel's code says: one more panel, one that was counted before, or one that goes into a machine.

import { countedBefore, countedBy } from '../../shared/floor/counters.ts';
import type { Scan } from '../../shared/labels/scan.ts';
import type { App } from './app.ts';
import { silenceFirst } from './counting.ts';
import { machineAt } from './panels-at.ts';
import { takeSkipped } from './skipped.ts';
import { lineWords } from './words/line.ts';
import { say } from './words/words.ts';

/** Counted; counted before, so that nothing was added; or seen before a machine. */
export type PanelTaken = 'counted' | 'before' | 'seen';

/** A panel's code was scanned: writes what it says, with a notice where that is not one more panel; tells which it was. */
export function takePanel(
  app: App,
  run: string,
  { serial, scan }: { readonly serial: string; readonly scan: Pick<Scan, 'via'> },
): PanelTaken | null {
  const floor = app.store.floor();
  const line = floor.runs.get(run)?.line ?? app.line.value;
  if (line === null) return null;
  const machine = machineAt(app, line);
  if (machine !== null) {
    const payload = { line, machine: machine.machine, serial, via: scan.via };
    app.record([{ kind: 'panel.seen', payload }], {
      notice: { tone: 'plain', text: say(lineWords).seenBefore(serial, machine.name) },
    });
    return 'seen';
  }
  if (countedBefore(floor, { run, serial })) {
    app.notice.value = { tone: 'care', text: say(lineWords).countedBefore(serial) };
    return 'before';
  }
  if ([...floor.contained.values()].some((each) => each.held.get(serial) === null))
    app.notice.value = { tone: 'care', text: say(lineWords).isHeld(serial) };
  const now = floor.runs.get(run);
  const counted = { run, line, add: 1, panels: (now?.done ?? 0) + 1, serial, via: scan.via };
  const skipped = takeSkipped(app, now, 'scan');
  if (countedBy(floor, line, app.clock.nowMs()).by === 'station')
    app.notice.value = { tone: 'care', text: say(lineWords).keptBeside(serial) };
  const silence = silenceFirst(floor, line, app.clock.nowMs());
  app.record([...silence, { kind: 'panels.counted', payload: { ...counted, ...skipped } }]);
  return 'counted';
}
