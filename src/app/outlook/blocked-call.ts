// Makes a blocked reel on a line of this tablet heard: at once, and again until somebody says that they go. The banner stays longer than the sound.

import { effect } from '@preact/signals';
import { type Block, type BlockedTape, blockedTapes } from '../../../shared/floor/blocks.ts';
import { type FloorState, needKey } from '../../../shared/floor/state.ts';
import type { App } from '../app.ts';
import type { Alarm } from '../device/alarm.ts';
import { linesServed } from '../lines-served.ts';

/** It calls again after this long. */
const CALL_EVERY_MS = 15_000;

/** What somebody takes note of, as warnings are named in the log. */
export const blockedNeed = (block: Pick<Block, 'block'>): string => `blocked ${block.block}`;

/** True where somebody has said that they go to a blocked reel. */
export function isHeard(
  floor: Pick<FloorState, 'acknowledged'>,
  { line, slot, block }: Pick<BlockedTape, 'line' | 'slot' | 'block'>,
): boolean {
  return floor.acknowledged.has(needKey(line, slot, blockedNeed(block)));
}

/** Blocked reels on the slots of a line of which nobody has said that they go. */
function unheardBlocked(floor: FloorState, line: string): readonly BlockedTape[] {
  return blockedTapes(floor, line).filter((each) => !isHeard(floor, each));
}

/** Starts calling. `App.tick` counts entries: whoever wrote the block, this tablet hears of it with its entry. */
export function callForBlocked(app: App, alarm: Pick<Alarm, 'call'>): void {
  const called = new Set<string>();
  function look(again: boolean): void {
    const floor = app.store.floor();
    const unheard = linesServed(app).flatMap((line) => unheardBlocked(floor, line));
    const isNew = unheard.some(({ tape, block }) => !called.has(`${tape.entry} ${block.block}`));
    for (const { tape, block } of unheard) called.add(`${tape.entry} ${block.block}`);
    if (isNew || (again && unheard.length > 0)) alarm.call('late');
  }
  effect(() => {
    app.tick.value;
    app.line.value;
    app.beside.value;
    look(false);
  });
  setInterval(() => look(true), CALL_EVERY_MS);
}
