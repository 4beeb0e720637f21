// Tells the server what leads have to know whose app is closed: it sends them messages where they asked for some. Every tablet that is open
// tells what it sees; the server says each thing once.

import { effect } from '@preact/signals';
import { blockedOn } from '../../../shared/floor/blocked-on.ts';
import { buildingOn } from '../../../shared/floor/building.ts';
import { feedersOf } from '../../../shared/floor/lanes.ts';
import type { FloorState } from '../../../shared/floor/state.ts';
import type { Result } from '../../../shared/kit/result.ts';
import { lastCountMs } from '../../../shared/outlook/run-pace.ts';
import { unanswered } from '../../../shared/outlook/unanswered.ts';
import {
  type PushNotice,
  type PushTold,
  pushKeyMost,
  pushLineNameMost,
  pushNoticesMost,
  pushSlotMost,
  pushToldSchema,
} from '../../../shared/wire/messages-push.ts';
import type { App } from '../app.ts';
import { isHeard } from './blocked-call.ts';
import { stoodOffer } from './stood.ts';

/** It looks again after this long. */
const LOOK_EVERY_MS = 30_000;
/** A line that stands for so long without a word is told. Common practice; no standard has a figure. */
const STOOD_MS = 10 * 60_000;
/** A server that knows no messages is asked again after this long: it may be brought up to date. */
const UNKNOWN_MS = 10 * 60_000;

/** A text as long as the wire takes it: one notice that is refused would keep back all of its request. */
const cut = (text: string, most: number) => (text.length <= most ? text : `${text.slice(0, most - 1)}…`);

/** All that waits on the plant's lines, each with a key that is the same on every tablet. */
export function openNotices(floor: FloorState, nowMs: number): readonly PushNotice[] {
  const notice = (kind: PushNotice['kind'], line: string, slot: string | null, of: string): PushNotice => ({
    // The same whichever of its lanes a conveyor's slot is told of: that changes as lanes start and end.
    key: [kind, feedersOf(line), slot ?? '', of].join(' ').slice(0, pushKeyMost),
    kind,
    line,
    lineName: cut(floor.lines.get(line)?.name || line, pushLineNameMost),
    slot: slot ? cut(slot, pushSlotMost) : null,
  });
  const warnings = unanswered(floor, nowMs).map(({ line, slot, need, level }) =>
    notice('warning', line, slot, `${level} ${need}`),
  );
  const running = [...floor.lines.keys()].flatMap((line) => {
    const run = buildingOn(floor, line);
    return run?.phase === 'running' ? [run] : [];
  });
  // Once of each reel, by the lane that takes from its slot.
  const blocked = blockedOn(
    floor,
    running.map(({ line }) => line),
  )
    .filter((each) => !isHeard(floor, each))
    .map(({ line, slot, tape, block }) => notice('blocked', line, slot, `${block.block} ${tape.entry}`));
  const stood = running.flatMap((run) => {
    // Named by the last count: when it stood is reckoned by the pace, which a count that comes late moves.
    const { line } = run;
    const stoodMs = stoodOffer(floor, line, nowMs);
    return stoodMs !== null && nowMs - stoodMs >= STOOD_MS
      ? [notice('stood', line, null, `${run.run} ${lastCountMs(run)}`)]
      : [];
  });
  return [...warnings, ...blocked, ...stood];
}

/**
 * What is told, and told again until it was taken: in quiet hours, with nobody who asked for messages or with the push service out of reach it
 * reached nobody. `post` hands notices to the server; null where it is not there.
 */
export function createTelling(
  post: (notices: readonly PushNotice[]) => Promise<Result<PushTold, { readonly code: string }> | null>,
  nowMs: () => number,
): (open: readonly PushNotice[]) => Promise<void> {
  const told = new Set<string>();
  let restsUntilMs = Number.NEGATIVE_INFINITY;
  return async (open) => {
    const notices = open.filter(({ key }) => !told.has(key)).slice(0, pushNoticesMost);
    if (notices.length === 0 || nowMs() < restsUntilMs) return;
    const answer = await post(notices);
    if (answer?.ok) for (const key of answer.value.taken ?? notices.map((each) => each.key)) told.add(key);
    else if (answer?.error.code === 'not-found') restsUntilMs = nowMs() + UNKNOWN_MS;
  };
}

/** Starts telling, while the server is heard. */
export function callByPush(app: App): void {
  const caller = async () => (await app.connection.peek()?.caller()) ?? null;
  const tell = createTelling(
    async (notices) =>
      (await caller())?.call('/api/push/tell', pushToldSchema, { json: { notices } }) ?? null,
    app.clock.nowMs,
  );
  async function look(): Promise<void> {
    if (app.practice !== null || app.isScreen || app.sync.peek()?.phase !== 'live') return;
    await tell(openNotices(app.store.floor(), app.clock.nowMs()));
  }
  setInterval(() => void look(), LOOK_EVERY_MS);
  let quietBefore = JSON.stringify(app.preferences.peek().quiet);
  effect(() => {
    const { quiet } = app.preferences.value;
    if (JSON.stringify(quiet) === quietBefore) return;
    quietBefore = JSON.stringify(quiet);
    const { timeZone } = Intl.DateTimeFormat().resolvedOptions();
    const json = { zone: timeZone, quiet };
    void caller().then((found) => found?.open('/api/push/quiet', { method: 'POST', json }));
  });
}
