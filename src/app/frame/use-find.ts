// The camera's pass over many labels as the view draws it: what was read, what each label is, what it says of the list or of the sweep.
// A label is judged once, and anew when the floor has changed; in a sweep what is surely seen is written down as it is seen.

import { useRef, useState } from 'preact/hooks';
import { lifeOnShelf } from '../../../shared/desk/floor-life.ts';
import type { Draft } from '../../../shared/floor/draft.ts';
import { type App, useApp, useFloor } from '../app.ts';
import type { Size } from '../scan/camera-fit.ts';
import type { Look } from '../scan/camera-session.ts';
import { EMPTY_PAN, type PanState, panFrame, panSettings, SETTLE_LOOKS } from '../scan/pan.ts';
import { framesToWait } from './camera-task.ts';
import { sightedDraft } from './find-drafts.ts';
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
export type FindTask = { readonly do: 'find'; readonly list: FindList } | { readonly do: 'sweep' };

/** A slot that needs a person: more than one reel near it, another reel, or one that should not be there. */
export type SlotAsked =
  | Extract<SlotSeen, { is: 'several' }>
  | { readonly is: 'seen'; readonly slot: string; readonly key: string; readonly swept: Swept };

/** The pass so far. */
export interface Find {
  readonly pan: PanState;
  readonly picture: Size;
  readonly thingOf: (key: string) => FoundThing | null;
  /** Slots of a sweep that cannot be ticked without a person. */
  readonly asked: readonly SlotAsked[];
  readonly onLook: (look: Look) => boolean;
}

const nothingWanted: FindList = { setup: null, reels: new Map(), parts: new Map() };

/** What is known of each label and slot while the floor stays as it is. */
interface Judged {
  readonly tick: number;
  readonly view: FindView;
  readonly alone: Map<string, boolean>;
  readonly things: Map<string, FoundThing | null>;
  readonly swept: Map<string, Swept>;
}

function judgedNow(app: App, task: FindTask): Judged {
  const [floor, line, nowMs] = [app.store.floor(), app.line.peek() ?? '', app.clock.nowMs()];
  const list = task.do === 'find' ? task.list : nothingWanted;
  const view = { floor, line, list, nowMs, lifeOf: lifeOnShelf(floor, line, nowMs) };
  return { tick: app.tick.peek(), view, alone: new Map(), things: new Map(), swept: new Map() };
}

/** Made once for the map, asked for from then on. */
function kept<V>(map: Map<string, V>, key: string, make: () => V): V {
  const known = map.get(key);
  if (known !== undefined || map.has(key)) return known as V; // there by `has`
  const made = make();
  map.set(key, made);
  return made;
}

export function useFind(task: FindTask): Find {
  const app = useApp();
  useFloor();
  const judged = useRef<Judged | null>(null);
  const votes = useRef<Votes>(new Map());
  const pan = useRef<PanState>(EMPTY_PAN);
  const isWriting = useRef(false);
  const [drawn, setDrawn] = useState<{ readonly pan: PanState; readonly picture: Size }>({
    pan: EMPTY_PAN,
    picture: { width: 0, height: 0 },
  });
  const now = (): Judged => {
    if (judged.current === null || judged.current.tick !== app.tick.peek())
      judged.current = judgedNow(app, task);
    return judged.current;
  };
  const thingOf = (key: string) => {
    const { things, view } = now();
    return kept(things, key, () => foundThing(pan.current.found.get(key)?.codes ?? [], view));
  };
  const settings = panSettings({
    claim: panClaim,
    isAlone: (code) => kept(now().alone, code.text, () => isAloneFor(code, now().view)),
    settleFor: (codes) => framesToWait(codes, now().view, SETTLE_LOOKS),
  });
  const seen = (): readonly { readonly of: SlotSeen; readonly swept: Swept | null }[] =>
    slotsSeen(votes.current).map((of) => {
      if (of.is === 'several') return { of, swept: null };
      const { swept, view } = now();
      const codes = pan.current.found.get(of.reel)?.codes ?? [];
      const answer = () => sweptSlot(view, { slot: of.slot, codes }, app.clock.nowMs());
      return { of, swept: kept(swept, `${of.slot}\n${of.reel}`, answer) };
    });
  const isDone = (slot: string) => {
    const sweep = now().view.floor.sweeps.get(now().view.line);
    return sweep?.seen.includes(slot) ?? false;
  };
  async function tick(): Promise<void> {
    if (isWriting.current) return;
    const drafts: Draft[] = [];
    for (const { of, swept } of seen()) {
      if (of.is !== 'one' || swept?.is !== 'ticked' || isDone(of.slot)) continue;
      const found = pan.current.found.get(of.reel);
      if (found === undefined) continue;
      const at = drafts.length;
      const { line } = now().view;
      const hung = { slot: of.slot, vote: of.vote };
      drafts.push(...swept.drafts, (before) =>
        sightedDraft(found, { line, reel: swept.reel, why: null, hung, of: before[at] ?? null }),
      );
    }
    if (drafts.length === 0) return;
    isWriting.current = true;
    await app.write(drafts).catch(() => []); // the fault screen has told
    isWriting.current = false;
  }
  return {
    ...drawn,
    thingOf,
    asked: task.do === 'find' ? [] : seen().flatMap((each) => askedOf(each, isDone)),
    onLook: ({ codes, picture }) => {
      const before = pan.current;
      pan.current = panFrame(before, codes, { settings, nowMs: app.clock.nowMs() });
      if (task.do === 'sweep') {
        votes.current = voteOn(votes.current, pan.current.inView, { view: now().view, thingOf });
        void tick();
      }
      setDrawn({ pan: pan.current, picture });
      return codes.length > 0;
    },
  };
}

function askedOf(
  { of, swept }: { readonly of: SlotSeen; readonly swept: Swept | null },
  isDone: (slot: string) => boolean,
): readonly SlotAsked[] {
  if (isDone(of.slot)) return [];
  if (of.is === 'several') return [of];
  if (swept === null || swept.is === 'ticked' || swept.is === 'not-read') return [];
  return [{ is: 'seen', slot: of.slot, key: of.reel, swept }];
}
