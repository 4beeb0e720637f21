// The camera's pass over many labels as the view draws it: what was read, what each label is, what it says of the list or of the sweep.
// Labels are judged once, and anew when the floor has changed, as many at each look as a few milliseconds allow; what was known of the
// others stands until then. In a sweep what is surely seen is written down as it is seen.

import { useRef, useState } from 'preact/hooks';
import { lifeOnShelf } from '../../../shared/desk/floor-life.ts';
import { openSweep } from '../../../shared/floor/progress.ts';
import { type App, useApp, useFloor } from '../app.ts';
import type { Size } from '../scan/camera-fit.ts';
import type { Look } from '../scan/camera-session.ts';
import { EMPTY_PAN, type PanState, panFrame, panSettings, SETTLE_LOOKS } from '../scan/pan.ts';
import { framesToWait } from './camera-task.ts';
import { sweepDrafts } from './find-drafts.ts';
import {
  type FindList,
  type FindView,
  type FoundThing,
  foundThing,
  isAloneFor,
  panClaim,
} from './find-model.ts';
import { type SlotSeen, type Swept, slotsSeen, sweptSlot, type Votes, voteOn } from './find-sweep.ts';

/** What the camera is moved about for. */
export type FindTask =
  /** `list`: what is to be found; worked out once for a pass, as it may be long. */
  { readonly do: 'find'; readonly list: () => FindList } | { readonly do: 'sweep' };

/** A slot that needs a person: more than one reel near it, another reel, or one that should not be there. */
export type SlotAsked =
  | Extract<SlotSeen, { is: 'several' }>
  | { readonly is: 'seen'; readonly slot: string; readonly key: string; readonly swept: Swept };

/** The pass so far. */
export interface Find {
  readonly pan: PanState;
  readonly picture: Size;
  /** What a label is; null where it is nobody's business, or not judged yet. */
  readonly thingOf: (key: string) => FoundThing | null;
  /** Slots of a sweep that cannot be ticked without a person. */
  readonly asked: readonly SlotAsked[];
  readonly onLook: (look: Look) => boolean;
  /** Judges what was not judged yet, before the pass ends. */
  readonly finish: () => void;
}

const nothingWanted: FindList = { setup: null, reels: new Map(), parts: new Map() };
/** What judging may take of one look, ms: the page answers taps between two looks. */
const JUDGING_MS = 5;

/** An answer, and the floor that it was given for. */
interface Judged<V> {
  readonly tick: number;
  readonly answer: V;
}

/** The pass as it goes on from look to look. */
interface Pass {
  pan: PanState;
  votes: Votes;
  view: FindView | null;
  list: FindList | null;
  tick: number;
  isWriting: boolean;
  readonly alone: Map<string, Judged<boolean>>;
  readonly things: Map<string, Judged<FoundThing | null>>;
  readonly swept: Map<string, Judged<Swept>>;
}

const begun = (): Pass => ({
  pan: EMPTY_PAN,
  votes: new Map(),
  view: null,
  list: null,
  tick: -1,
  isWriting: false,
  alone: new Map(),
  things: new Map(),
  swept: new Map(),
});

/** `mayWrite`: whether a sweep may tick slots, asked when it would. */
export function useFind(task: FindTask, mayWrite: () => boolean): Find {
  const app = useApp();
  useFloor();
  const state = useRef<Pass | null>(null);
  state.current ??= begun();
  const pass = state.current;
  const [drawn, setDrawn] = useState<{ readonly pan: PanState; readonly picture: Size }>({
    pan: EMPTY_PAN,
    picture: { width: 0, height: 0 },
  });
  const thingOf = (key: string) => pass.things.get(key)?.answer ?? null;
  return {
    ...drawn,
    thingOf,
    asked: task.do === 'find' ? [] : slotsAsked(pass),
    finish: () => judgeSome(viewNow(app, pass, task), pass, Number.POSITIVE_INFINITY),
    onLook: ({ codes, picture }) => {
      const view = viewNow(app, pass, task);
      const settings = panSettings({
        claim: panClaim,
        isAlone: (code) => judged(pass.alone, pass.tick, code.text, () => isAloneFor(code, view)),
        settleFor: (read) => framesToWait(read, view, SETTLE_LOOKS),
      });
      pass.pan = panFrame(pass.pan, codes, { settings, nowMs: app.clock.nowMs() });
      judgeSome(view, pass, JUDGING_MS);
      if (task.do === 'sweep') {
        pass.votes = voteOn(pass.votes, pass.pan.inView, { view, thingOf });
        sweepSome(app, view, pass);
        if (mayWrite()) void tick(app, pass);
      }
      setDrawn({ pan: pass.pan, picture });
      return codes.length > 0;
    },
  };
}

/** The floor as it is now, with what is asked of it. */
function viewNow(app: App, pass: Pass, task: FindTask): FindView {
  const tick = app.tick.peek();
  if (pass.view === null || pass.tick !== tick) {
    const [floor, line, nowMs] = [app.store.floor(), app.line.peek() ?? '', app.clock.nowMs()];
    pass.list ??= task.do === 'find' ? task.list() : nothingWanted;
    pass.view = { floor, line, list: pass.list, nowMs, lifeOf: lifeOnShelf(floor, line, nowMs) };
    pass.tick = tick;
  }
  return pass.view;
}

/** The answer for the floor as it is; made where there is none. */
function judged<V>(answers: Map<string, Judged<V>>, tick: number, key: string, make: () => V): V {
  const known = answers.get(key);
  if (known?.tick === tick) return known.answer;
  const answer = make();
  answers.set(key, { tick, answer });
  return answer;
}

/** Judges labels, those in view first, until the time is over; one at least. */
function judgeSome(view: FindView, { pan, things, tick }: Pass, mostMs: number): void {
  const startMs = performance.now();
  const keys = [...pan.inView.flatMap(({ key }) => key ?? []), ...pan.found.keys()];
  for (const key of new Set(keys)) {
    if (things.get(key)?.tick === tick) continue;
    judged(things, tick, key, () => foundThing(pan.found.get(key)?.codes ?? [], view));
    if (performance.now() - startMs > mostMs) return;
  }
}

/** Asks what slots come to that were seen with a reel, until the time is over; one at least. */
function sweepSome(app: App, view: FindView, { pan, votes, swept, tick }: Pass): void {
  const startMs = performance.now();
  for (const of of slotsSeen(votes)) {
    if (of.is === 'several' || swept.get(`${of.slot}\n${of.reel}`)?.tick === tick) continue;
    const codes = pan.found.get(of.reel)?.codes ?? [];
    judged(swept, tick, `${of.slot}\n${of.reel}`, () =>
      sweptSlot(view, { slot: of.slot, codes }, app.clock.nowMs()),
    );
    if (performance.now() - startMs > JUDGING_MS) return;
  }
}

function isSwept({ view }: Pass, slot: string): boolean {
  return view !== null && (openSweep(view.floor, view.line)?.seen.includes(slot) ?? false);
}

function slotsAsked(pass: Pass): readonly SlotAsked[] {
  return slotsSeen(pass.votes).flatMap((of): readonly SlotAsked[] => {
    if (isSwept(pass, of.slot)) return [];
    if (of.is === 'several') return [of];
    const swept = pass.swept.get(`${of.slot}\n${of.reel}`)?.answer;
    if (swept === undefined || swept.is === 'ticked' || swept.is === 'not-read') return [];
    return [{ is: 'seen', slot: of.slot, key: of.reel, swept }];
  });
}

/** Writes down the slots that are surely seen, in one append; what is seen meanwhile goes with the next. */
async function tick(app: App, pass: Pass): Promise<void> {
  const { view, pan } = pass;
  if (pass.isWriting || view === null) return;
  const drafts = sweepDrafts(view, slotsSeen(pass.votes), ({ slot, reel }) => {
    const known = pass.swept.get(`${slot}\n${reel}`);
    const label = pan.found.get(reel);
    // By the floor as it is: what was judged before it changed is judged anew first.
    return known?.tick === pass.tick && label !== undefined ? { swept: known.answer, label } : null;
  });
  if (drafts.length === 0) return;
  pass.isWriting = true;
  await app.write(drafts).catch(() => []); // the fault screen has told
  pass.isWriting = false;
}
