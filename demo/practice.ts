// Labels to practise with, made for the line as it is: each promises a verdict, so that every answer of the app can be tried
// with a tap or a scan of the printed sheet. A promise is checked by test against the app's own reader and verdict.

import { formatEnvelope } from '../shared/labels/envelope.ts';
import type { SetupSlot } from '../shared/setup/kinds.ts';
import { setupProgress } from '../shared/setup/progress.ts';
import type { FloorState } from '../shared/setup/state.ts';
import type { Verdict, VerifyAct } from '../shared/setup/vocabulary.ts';
import type { ReasonCode } from '../shared/verdict/reasons.ts';
import { type DueSlot, dueSlots } from './due.ts';
import { familyOf, partRows, supplierPartsOf } from './parts.ts';
import { blockedLot, type practiceGroups } from './practice-groups.ts';
import {
  type Dialect,
  dateCodeBefore,
  dialects,
  type LabelSymbol,
  labelReel,
  type ReelFacts,
} from './reels.ts';

/** A label on the screen or on the sheet. */
export interface PracticeLabel {
  readonly id: string;
  readonly group: (typeof practiceGroups)[number];
  readonly title: string;
  readonly hint: string;
  readonly codes: readonly LabelSymbol[];
}

/** What a reel's label promises: what it says, and the verdict where the hint tells to put it. */
export interface PracticePromise {
  readonly act: VerifyAct;
  readonly slot: string;
  readonly feeder: string | null;
  readonly facts: ReelFacts;
  readonly verdict: Verdict;
  /** The reason that must be among those given; null = accepted whatever the notes. */
  readonly reason: ReasonCode | null;
}

/** A label with its promise; null for labels that are no reel. */
export interface Practice {
  readonly label: PracticeLabel;
  readonly promise: PracticePromise | null;
}

/** The floor for which labels are made. */
export interface PracticeScene {
  readonly state: FloorState;
  readonly line: string;
  readonly nowMs: number;
}

/** Reels for slots that run out soon: as many as this. */
const DUE_REELS = 6;

/** All practice labels for the line as it is. What the line's setup offers no case for is left out. */
export function practiceLabels(scene: PracticeScene): readonly Practice[] {
  const due = dueSlots(scene.state, scene.line);
  const missing = setupProgress(scene.state, scene.line).slots.filter((slot) => slot.phase === 'missing');
  const splices = due.slice(0, DUE_REELS);
  const feeders = loadFeeders(
    scene.state,
    missing.map((slot) => slot.wanted),
  );
  const reels = createMaker(scene);
  return [
    ...splices.map((slot, index) =>
      reels.right(slot.wanted, { act: 'splice', dialect: dialects[index % 3] ?? 'envelope' }),
    ),
    ...missing.map(({ wanted }, index) =>
      reels.right(wanted, {
        act: 'load',
        dialect: dialects[(index + 1) % 3] ?? 'words',
        feeder: feeders[index] ?? null,
      }),
    ),
    ...noted(reels, due),
    ...held(reels, scene, due),
    ...refused(reels, scene, due),
    ...placeLabels([...splices.map((slot) => slot.wanted), ...missing.map((slot) => slot.wanted)], due),
    ...feederLabels(scene.state, feeders),
    ...peopleLabels(scene.state),
    ...panelLabels(scene),
  ];
}

/** Makes reel labels with ids of their own. */
function createMaker(scene: PracticeScene) {
  let last = 0;
  const nextReel = () => {
    last += 1;
    return `R-${880_000 + last}`;
  };
  const factsOf = (part: string): ReelFacts => ({
    reel: nextReel(),
    part,
    supplierPart: supplierPartsOf(part)[0],
    quantity: familyOf(part).full,
    lot: `LT-${7000 + last}-P`,
    dateCode: dateCodeBefore(scene.nowMs, 9),
    expires: null,
  });
  const make = (
    wanted: SetupSlot,
    facts: ReelFacts,
    how: {
      readonly group: PracticeLabel['group'];
      readonly title: string;
      readonly act?: VerifyAct;
      readonly dialect?: Dialect;
      readonly feeder?: string | null;
      readonly verdict: Verdict;
      readonly reason: ReasonCode | null;
      readonly codes?: readonly LabelSymbol[];
    },
  ): Practice => {
    const { act = 'splice', dialect = 'envelope', feeder = null, verdict, reason } = how;
    const where = feeder === null ? `slot ${wanted.slot}` : `slot ${wanted.slot} and feeder ${feeder}`;
    return {
      label: {
        id: `reel-${last}`,
        group: how.group,
        title: how.title,
        hint: `${act === 'splice' ? 'Splice' : 'Load'}: with ${where}`,
        codes: how.codes ?? labelReel(facts, dialect),
      },
      promise: { act, slot: wanted.slot, feeder, facts, verdict, reason },
    };
  };
  return {
    factsOf,
    make,
    right: (
      wanted: SetupSlot,
      how: { readonly act: VerifyAct; readonly dialect: Dialect; readonly feeder?: string | null },
    ) => {
      const group = how.act === 'splice' ? 'Reels to splice next' : 'Reels to load';
      const title = `${wanted.part} for ${wanted.slot}`;
      return make(wanted, factsOf(wanted.part), { ...how, group, title, verdict: 'accepted', reason: null });
    },
  };
}

type Maker = ReturnType<typeof createMaker>;

/** Reels that are taken by a rule, which the verdict names. */
function noted(reels: Maker, due: readonly DueSlot[]): Practice[] {
  const found: Practice[] = [];
  const how = { group: 'Reels taken by a rule', verdict: 'accepted' } as const;
  const withAlternate = due.find((slot) => slot.wanted.alternates.length > 0)?.wanted;
  const alternate = withAlternate?.alternates[0];
  if (withAlternate && alternate !== undefined) {
    const title = `${alternate}, approved instead of ${withAlternate.part}`;
    found.push(
      reels.make(withAlternate, reels.factsOf(alternate), { ...how, title, reason: 'by-alternate' }),
    );
  }
  const [first, second, third] = due.map((slot) => slot.wanted);
  if (first) {
    const facts = { ...reels.factsOf(first.part), part: null, supplierPart: supplierPartsOf(first.part)[1] };
    const title = `${facts.supplierPart}, the supplier's number only`;
    found.push(reels.make(first, facts, { ...how, title, dialect: 'words', reason: 'by-supplier-part' }));
  }
  if (second) {
    const facts = { ...reels.factsOf(second.part), part: `${second.part}-TR` };
    const title = `${facts.part}, a packing suffix behind the number`;
    found.push(reels.make(second, facts, { ...how, title, dialect: 'loose', reason: 'by-comparison' }));
  }
  if (third) {
    const facts = reels.factsOf(third.part);
    const codes = [{ format: 'DataMatrix', text: withoutControl(facts) }] as const;
    const title = `${third.part}, separators replaced by the scanner`;
    found.push(reels.make(third, facts, { ...how, title, codes, reason: null }));
  }
  return found;
}

/** The same envelope as a scanner sends it that cannot type control characters. */
function withoutControl(facts: ReelFacts): string {
  const fields = [
    { id: 'P', value: facts.part ?? '' },
    { id: '1P', value: facts.supplierPart ?? '' },
    { id: 'Q', value: String(facts.quantity) },
    { id: '1T', value: facts.lot ?? '' },
    { id: '10D', value: facts.dateCode ?? '' },
    { id: '3S', value: facts.reel ?? '' },
  ];
  return formatEnvelope({ format: '06', fields })
    .replaceAll('\x1d', '<GS>')
    .replaceAll('\x1e', '<RS>')
    .replaceAll('\x04', '<EOT>');
}

/** Reels that a lead must decide on. */
function held(reels: Maker, scene: PracticeScene, due: readonly DueSlot[]): Practice[] {
  const found: Practice[] = [];
  const how = { group: 'Reels for a lead to decide', verdict: 'held' } as const;
  const [first, second, third, fourth] = due.map((slot) => slot.wanted);
  if (first) {
    const facts = {
      ...reels.factsOf(first.part),
      expires: new Date(scene.nowMs - 3 * 86_400_000).toISOString().slice(0, 10),
    };
    found.push(reels.make(first, facts, { ...how, title: `${first.part}, expired`, reason: 'expired' }));
  }
  if (second) {
    const facts = { ...reels.factsOf(second.part), quantity: null };
    const title = `${second.part}, no quantity on the label`;
    found.push(reels.make(second, facts, { ...how, title, dialect: 'words', reason: 'no-quantity' }));
  }
  if (third) {
    const facts = { ...reels.factsOf(third.part), part: null, supplierPart: 'QX-UNLISTED-77' };
    const title = 'QX-UNLISTED-77, a supplier part nobody approved';
    found.push(reels.make(third, facts, { ...how, title, reason: 'supplier-part-not-approved' }));
  }
  const other = due.find((slot) => slot.wanted.part !== fourth?.part)?.wanted;
  if (fourth && other) {
    const facts = { ...reels.factsOf(fourth.part), supplierPart: supplierPartsOf(other.part)[0] };
    const title = `${fourth.part}, but the supplier's number says ${other.part}`;
    found.push(reels.make(fourth, facts, { ...how, title, dialect: 'loose', reason: 'part-contradicts' }));
  }
  const elsewhere = alternateOfAnother(scene, due);
  if (elsewhere) {
    const { wanted, alternate } = elsewhere;
    const title = `${alternate}, approved instead of ${wanted.part} on another product only`;
    const facts = reels.factsOf(alternate);
    found.push(reels.make(wanted, facts, { ...how, title, reason: 'alternate-not-approved' }));
  }
  return found;
}

/** A slot for whose part another product allows an alternate that this one does not. */
function alternateOfAnother(
  scene: PracticeScene,
  due: readonly DueSlot[],
): { wanted: SetupSlot; alternate: string } | null {
  const chosen = scene.state.chosen.get(scene.line);
  for (const setup of scene.state.setups.values()) {
    if (setup.setup === chosen) continue;
    for (const slot of setup.slots) {
      const wanted = due.find((one) => one.wanted.part === slot.part)?.wanted;
      const alternate = slot.alternates.find((part) => wanted && !wanted.alternates.includes(part));
      if (wanted && alternate !== undefined) return { wanted, alternate };
    }
  }
  return null;
}

/** Reels that must not go on. */
function refused(reels: Maker, scene: PracticeScene, due: readonly DueSlot[]): Practice[] {
  const found: Practice[] = [];
  const how = { group: 'Reels that are refused', verdict: 'refused' } as const;
  const [first, second, third] = due.map((slot) => slot.wanted);
  const wrong = due.find(
    (slot) => slot.wanted.part !== first?.part && slot.wanted.tapeWidthMm === first?.tapeWidthMm,
  )?.wanted;
  if (first && wrong) {
    const title = `${wrong.part}, which belongs on ${wrong.slot}`;
    found.push(
      reels.make(first, reels.factsOf(wrong.part), { ...how, title, dialect: 'loose', reason: 'wrong-part' }),
    );
  }
  const foreign = partRows.find(
    (row) => !due.some((slot) => slot.wanted.part === row[0] || slot.wanted.alternates.includes(row[0])),
  );
  if (third && foreign && !isAlternateSomewhere(scene, foreign[0])) {
    const title = `${foreign[0]}, on no slot of this setup`;
    found.push(
      reels.make(third, reels.factsOf(foreign[0]), { ...how, title, dialect: 'words', reason: 'wrong-part' }),
    );
  }
  if (second) {
    const facts = { ...reels.factsOf(second.part), lot: blockedLot };
    found.push(
      reels.make(second, facts, {
        ...how,
        title: `${second.part}, lot ${blockedLot} is blocked`,
        reason: 'reel-blocked',
      }),
    );
    const bare = { ...reels.factsOf(second.part), part: null, supplierPart: null };
    found.push(
      reels.make(second, bare, {
        ...how,
        title: 'A label without any part number',
        dialect: 'loose',
        reason: 'no-part',
      }),
    );
  }
  const running = due.find(
    (slot) => slot.loaded.tapes.some((tape) => !tape.reel.startsWith('~')) && slot.wanted !== first,
  );
  const tape = running?.loaded.tapes.at(-1);
  if (first && running && tape) {
    const facts = { ...reels.factsOf(tape.part), reel: tape.reel, lot: tape.lot };
    const title = `Reel ${tape.reel}, which is running on ${running.wanted.slot}`;
    found.push(reels.make(first, facts, { ...how, title, reason: 'reel-elsewhere' }));
  }
  return found;
}

function isAlternateSomewhere(scene: PracticeScene, part: string): boolean {
  return [...scene.state.setups.values()].some((setup) =>
    setup.slots.some((slot) => slot.alternates.includes(part)),
  );
}

function plain(
  id: string,
  group: PracticeLabel['group'],
  shown: { title: string; hint: string; text: string },
): Practice {
  const { title, hint, text } = shown;
  return { label: { id, group, title, hint, codes: [{ text, format: 'Code128' }] }, promise: null };
}

function placeLabels(wanted: readonly SetupSlot[], due: readonly DueSlot[]): Practice[] {
  const all = new Map([...wanted, ...due.map((slot) => slot.wanted)].map((slot) => [slot.slot, slot]));
  return [...all.values()].map((slot) =>
    plain(`slot-${slot.slot}`, 'Slots', { title: slot.slot, hint: `Wants ${slot.part}`, text: slot.slot }),
  );
}

/** A free feeder for each slot that is to be loaded. */
function loadFeeders(state: FloorState, wanted: readonly SetupSlot[]): readonly string[] {
  const used = new Set([...state.slots.values()].map((slot) => slot.feeder));
  return wanted.flatMap((slot) => {
    for (const feeder of state.feeders.values()) {
      const fits = feeder.tapeWidthMm === slot.tapeWidthMm && feeder.pitchesMm.includes(slot.pitchMm ?? 0);
      if (used.has(feeder.feeder) || !fits) continue;
      used.add(feeder.feeder);
      return [feeder.feeder];
    }
    return [];
  });
}

function feederLabels(state: FloorState, fitting: readonly string[]): Practice[] {
  const used = new Set([...fitting, ...[...state.slots.values()].map((slot) => slot.feeder ?? '')]);
  const free = [...state.feeders.values()].filter((feeder) => !used.has(feeder.feeder));
  const old = free.find((feeder) => feeder.pitchesMm.length === 1);
  const wide = free.find((feeder) => feeder.tapeWidthMm === 24);
  const loaded = [...state.slots.values()].find((slot) => slot.feeder !== null);
  const shown = fitting.map((feeder) => ({ feeder, hint: 'Free, 8 mm' }));
  if (old) shown.push({ feeder: old.feeder, hint: `Free, 8 mm, steps ${old.pitchesMm.join(' / ')} mm only` });
  if (wide) shown.push({ feeder: wide.feeder, hint: 'Free, 24 mm: too wide for small parts' });
  if (loaded?.feeder) shown.push({ feeder: loaded.feeder, hint: `Stands on ${loaded.slot}` });
  shown.push({ feeder: 'F-9999', hint: 'Nobody knows this feeder: a lead must decide' });
  return shown.map(({ feeder, hint }) =>
    plain(`feeder-${feeder}`, 'Feeders', { title: feeder, hint, text: feeder }),
  );
}

function peopleLabels(state: FloorState): Practice[] {
  return [...state.people.values()].map(({ person, name, role, badge }) =>
    plain(`badge-${person}`, 'Badges', {
      title: name,
      hint: `${role}, PIN ${badge.replace(/\D/g, '')}`,
      text: badge,
    }),
  );
}

function panelLabels(scene: PracticeScene): Practice[] {
  const run = scene.state.runs.get(scene.state.current.get(scene.line) ?? '');
  if (!run?.panelPrefix) return [];
  return [1, 2, 3].map((step) => {
    const serial = `${run.panelPrefix}${String(run.done + step).padStart(4, '0')}`;
    return plain(`panel-${step}`, 'Panels', { title: serial, hint: 'Counts one panel', text: serial });
  });
}
