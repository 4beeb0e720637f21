// Checklists, changeovers and carts: what is ticked, what is being changed, what stands ready off the line. Records are
// replaced, never changed, as everywhere in the state. Docking a cart loads what it carries with the verdicts it had.

import { entryId } from '../log/entry.ts';
import { tellDropped } from './dropped-change.ts';
import { dropReady } from './fold-feeders.ts';
import { place } from './fold-material.ts';
import type { EntryOf } from './kinds.ts';
import { forgetAnswers, isSignedForGood } from './over-change.ts';
import { type CartPlace, type Changeover, type Checklist, type FloorState, slotKey } from './state.ts';

type ChecklistEntry = EntryOf<
  | 'checklist.template'
  | 'checklist.opened'
  | 'checklist.handed'
  | 'checklist.closed'
  | 'step.answered'
  | 'step.skipped'
  | 'step.reopened'
  | 'step.signed'
  | 'step.unsigned'
>;

type ChangeoverEntry = EntryOf<
  'changeover.began' | 'changeover.released' | 'changeover.dropped' | 'panel.measured' | 'panel.looked'
>;

type CartEntry = EntryOf<'cart.filled' | 'cart.emptied' | 'cart.docked'>;

/** Kinds that this fold handles. */
type ChangeEntry = ChecklistEntry | ChangeoverEntry | CartEntry | EntryOf<'plan.kept'>;

/** Applies one entry to checklists, changeovers, carts and kept orders of jobs. */
export function foldChange(state: FloorState, entry: ChangeEntry): void {
  switch (entry.kind) {
    case 'checklist.template':
    case 'checklist.opened':
    case 'checklist.handed':
    case 'checklist.closed':
    case 'step.answered':
    case 'step.skipped':
    case 'step.reopened':
    case 'step.signed':
    case 'step.unsigned':
      foldChecklist(state, entry);
      return;
    case 'changeover.began':
    case 'changeover.released':
    case 'changeover.dropped':
    case 'panel.measured':
    case 'panel.looked':
      foldChangeover(state, entry);
      return;
    case 'cart.filled':
    case 'cart.emptied':
    case 'cart.docked':
      foldCart(state, entry);
      return;
    case 'plan.kept':
      state.plans.set(entry.payload.line, { ...entry.payload, by: entry.who, atMs: entry.hlc.ms });
      return;
    default:
      entry satisfies never;
  }
}

function foldChecklist(state: FloorState, entry: ChecklistEntry): void {
  switch (entry.kind) {
    case 'checklist.template': {
      const { template, version, purpose, title, steps } = entry.payload;
      const there = state.templates.get(template) ?? [];
      if (there.some((known) => known.version === version)) return;
      const versions = [...there, { template, version, purpose, title, steps }];
      state.templates.set(
        template,
        versions.sort((a, b) => a.version - b.version),
      );
      return;
    }
    case 'checklist.opened':
      if (state.checklists.has(entry.payload.checklist)) return;
      forgetAnswers(state, entry.hlc.ms);
      state.checklists.set(entry.payload.checklist, {
        ...entry.payload,
        openedMs: entry.hlc.ms,
        openedBy: entry.who,
        tablet: entry.tablet,
        answers: new Map(),
        closedMs: null,
      });
      return;
    case 'checklist.handed':
      changeList(state, entry.payload.checklist, (list) => ({ ...list, tablet: entry.payload.to }));
      return;
    case 'checklist.closed':
      changeList(state, entry.payload.checklist, (list) => ({ ...list, closedMs: entry.hlc.ms }));
      return;
    case 'step.answered':
    case 'step.skipped':
    case 'step.reopened':
      changeList(state, entry.payload.checklist, (list) => answerStep(list, entry));
      return;
    case 'step.signed':
      changeList(state, entry.payload.checklist, (list) => signStep(list, entry));
      return;
    case 'step.unsigned':
      unsignStep(state, entry);
      return;
    default:
      entry satisfies never;
  }
}

function foldChangeover(state: FloorState, entry: ChangeoverEntry): void {
  if (entry.kind === 'changeover.began') {
    if (state.changeovers.has(entry.payload.changeover)) return;
    forgetAnswers(state, entry.hlc.ms);
    state.changeovers.set(entry.payload.changeover, {
      ...entry.payload,
      beganMs: entry.payload.lastPanel === null ? entry.hlc.ms : Date.parse(entry.payload.lastPanel),
      releasedMs: null,
      releasedBy: null,
      released: null,
      dropped: null,
      measured: [],
      looked: [],
    });
    state.changing.set(entry.payload.line, entry.payload.changeover);
    return;
  }
  const changeover = state.changeovers.get(entry.payload.changeover);
  if (!changeover) return;
  const change = (fields: Partial<Changeover>) =>
    state.changeovers.set(changeover.changeover, { ...changeover, ...fields });
  const mark = { entry: entryId(entry), atMs: entry.hlc.ms };
  switch (entry.kind) {
    // A release counts, whichever of the two was told first: who signed it stood at the line, and what was measured for it was measured.
    case 'changeover.released':
      if (changeover.releasedMs !== null) {
        change({ releasedAgain: [...(changeover.releasedAgain ?? []), mark.entry] });
        return;
      }
      change({ releasedMs: mark.atMs, releasedBy: entry.payload.by, released: mark.entry });
      tellDropped(state, changeover.changeover, mark);
      endChange(state, entry.payload.line, changeover.changeover);
      return;
    case 'changeover.dropped':
      if (changeover.dropped !== null) return;
      change({ dropped: mark });
      tellDropped(state, changeover.changeover, mark);
      endChange(state, entry.payload.line, changeover.changeover);
      return;
    case 'panel.measured': {
      const others = changeover.measured.filter((known) => known.slot !== entry.payload.slot);
      change({ measured: [...others, { ...entry.payload, atMs: entry.hlc.ms, by: entry.who }] });
      return;
    }
    case 'panel.looked': {
      const others = changeover.looked.filter((known) => known.slot !== entry.payload.slot);
      change({ looked: [...others, { ...entry.payload, atMs: entry.hlc.ms, by: entry.who }] });
      return;
    }
    default:
      entry satisfies never;
  }
}

function foldCart(state: FloorState, entry: CartEntry): void {
  if (entry.kind === 'cart.docked') {
    dock(state, entry);
    return;
  }
  const places = new Map(state.carts.get(entry.payload.cart));
  if (entry.kind === 'cart.filled') {
    dropReady(state, entry.payload);
    places.set(entry.payload.slot, { ...entry.payload, atMs: entry.hlc.ms });
    state.carts.set(entry.payload.cart, places);
  } else {
    places.delete(entry.payload.slot);
    setCart(state, entry.payload.cart, places);
  }
}

function changeList(state: FloorState, id: string, change: (list: Checklist) => Checklist): void {
  const list = state.checklists.get(id);
  if (list && list.closedMs === null) state.checklists.set(id, change(list));
}

function answerStep(
  list: Checklist,
  entry: EntryOf<'step.answered' | 'step.skipped' | 'step.reopened'>,
): Checklist {
  const answers = new Map(list.answers);
  const { step } = entry.payload;
  const there = answers.get(step);
  const signed = there?.signed === undefined ? {} : { signed: there.signed };
  if (entry.kind === 'step.reopened') {
    // A signature is taken back by who gave it, and by nobody else.
    if (there?.signed === undefined) answers.delete(step);
    else answers.set(step, { ...there, skipped: null });
    return { ...list, answers };
  }
  const signer = entry.who ?? '';
  if (entry.kind === 'step.skipped') {
    const { by, reason } = entry.payload;
    answers.set(step, {
      value: null,
      by: [signer],
      atMs: entry.hlc.ms,
      skipped: { by, reason },
      ...signed,
    });
    return { ...list, answers };
  }
  const by =
    there && there.skipped === null && !there.by.includes(signer)
      ? [...there.by, signer]
      : (there?.by ?? [signer]);
  answers.set(step, { value: entry.payload.value, by, atMs: entry.hlc.ms, skipped: null, ...signed });
  return { ...list, answers };
}

/** A second signature of one person under one step does not count. */
function signStep(list: Checklist, entry: EntryOf<'step.signed'>): Checklist {
  const { step, by: person, role, how, checked } = entry.payload;
  const there = list.answers.get(step);
  const before = there?.signed ?? [];
  if (before.some((each) => each.person === person)) return list;
  const atMs = entry.hlc.ms;
  const answers = new Map(list.answers).set(step, {
    value: there?.value ?? null,
    by: there?.skipped === null ? [...there.by, person] : [person],
    atMs,
    skipped: null,
    signed: [...before, { person, role, how, checked, atMs }],
  });
  return { ...list, answers };
}

/** Takes a person's own signature away; a list that was closed with it is open again. After the release it stays. */
function unsignStep(state: FloorState, entry: EntryOf<'step.unsigned'>): void {
  const { checklist, step, by } = entry.payload;
  const list = state.checklists.get(checklist);
  const there = list?.answers.get(step);
  if (!list || !there?.signed?.some((each) => each.person === by)) return;
  if (isSignedForGood(state, list)) return;
  const { signed, ...rest } = there;
  const left = signed.filter((each) => each.person !== by);
  const answers = new Map(list.answers);
  const answer = { ...rest, by: rest.by.filter((each) => each !== by) };
  if (left.length > 0) answers.set(step, { ...answer, signed: left });
  else if (answer.by.length > 0 || answer.skipped !== null) answers.set(step, answer);
  else answers.delete(step);
  state.checklists.set(checklist, { ...list, answers, closedMs: null });
}

function endChange(state: FloorState, line: string, changeover: string): void {
  if (state.changing.get(line) === changeover) state.changing.delete(line);
}

function setCart(state: FloorState, cart: string, places: ReadonlyMap<string, CartPlace>): void {
  if (places.size === 0) state.carts.delete(cart);
  else state.carts.set(cart, places);
}

/** Loads what the cart carries onto the slots named; a slot that still carries something keeps it. */
function dock(state: FloorState, entry: EntryOf<'cart.docked'>): void {
  const { cart, line, setup, slots } = entry.payload;
  const places = new Map(state.carts.get(cart));
  const run = state.current.get(line) ?? null;
  const done = run === null ? 0 : (state.runs.get(run)?.done ?? 0);
  const mark = { entry: entryId(entry), atMs: entry.hlc.ms };
  for (const slot of slots) {
    const ready = places.get(slot);
    // A place filled anew for another setup in the meantime has another verdict.
    if (!ready || ready.line !== line || ready.setup !== setup) continue;
    if (state.slots.has(slotKey(line, slot))) continue;
    const { feeder, reel, part, supplierPart, lot, dateCode, quantity } = ready;
    const facts = {
      act: 'load' as const,
      line,
      setup,
      run,
      slot,
      feeder,
      reel,
      part,
      supplierPart,
      lot,
      dateCode,
      quantity,
      codes: [],
      verdict: 'accepted' as const,
      reasons: [],
      panels: done,
      via: 'machine' as const,
      basis: quantity === null ? null : ('label' as const),
    };
    place(state, facts, mark);
    places.delete(slot);
  }
  setCart(state, cart, places);
}
