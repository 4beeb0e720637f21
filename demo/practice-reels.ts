// Practice reels by the verdict that they promise: taken, taken by a rule, held for a lead, refused. Every case is looked for in
// the setup that the line is made ready for; what it offers no case for is left out.

import type { SetupSlot } from '../shared/floor/kinds.ts';
import { plantDay } from '../shared/floor/plant-day.ts';
import { hasOwnId } from '../shared/floor/reel-id.ts';
import type { Verdict, VerifyAct } from '../shared/floor/vocabulary.ts';
import { DAY_MS } from '../shared/kit/moment.ts';
import { hashText } from '../shared/log/seal.ts';
import type { ReasonCode } from '../shared/verdict/reasons.ts';
import type { DueSlot } from './due.ts';
import { familyOf, partRows, supplierPartsOf } from './parts.ts';
import { blockedLot, type Practice, type PracticeLabel, type PracticeScene } from './practice-label.ts';
import { type Dialect, dateCodeBefore, type LabelSymbol, labelReel, type ReelFacts } from './reels.ts';

/** What is asked of one practice reel. */
interface Case {
  readonly group: PracticeLabel['group'];
  readonly title: string;
  readonly act?: VerifyAct;
  readonly dialect?: Dialect;
  readonly feeder?: string | null;
  readonly verdict: Verdict;
  readonly reason: ReasonCode | null;
  /** Writes the label, where no dialect does. */
  readonly write?: (facts: ReelFacts) => readonly LabelSymbol[];
}

/** A reel's id made of all else on its label: two sheets printed at different hours never give one id to two reels. */
function reelId(facts: ReelFacts): string {
  return `R-8${String(Number.parseInt(hashText(JSON.stringify(facts)).slice(0, 12), 16) % 1_000_000).padStart(6, '0')}`;
}

/** Makes practice reels; facts without a reel id get one. */
export function createMaker(scene: PracticeScene) {
  /** A reel of a part; `batch` tells reels of one part apart that else would be the same. */
  const factsOf = (part: string, batch = 'P'): ReelFacts => ({
    reel: null,
    part,
    supplierPart: supplierPartsOf(part)[0],
    quantity: familyOf(part).full,
    lot: `LT-${7000 + partRows.findIndex((row) => row[0] === part)}-${batch}`,
    dateCode: dateCodeBefore(scene.nowMs, 9),
    expires: null,
  });
  const make = (wanted: SetupSlot, stated: ReelFacts, how: Case): Practice => {
    const { act = 'splice', dialect = 'envelope', feeder = null, verdict, reason } = how;
    const facts = { ...stated, reel: stated.reel ?? reelId(stated) };
    const where = feeder === null ? wanted.slot : `${wanted.slot} with feeder ${feeder}`;
    return {
      label: {
        id: `reel-${facts.reel}-${wanted.slot}`,
        group: how.group,
        title: how.title,
        hint: `${act === 'splice' ? 'Splice' : 'Load'} on ${where}`,
        codes: how.write ? how.write(facts) : labelReel(facts, dialect),
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

/** What makes the labels of one sheet. */
export type Maker = ReturnType<typeof createMaker>;

/** Reels that are taken by a rule, which the verdict names. */
export function noted(reels: Maker, due: readonly DueSlot[]): Practice[] {
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
    const facts = reels.factsOf(third.part, 'S');
    const title = `${third.part}, separators replaced by the scanner`;
    found.push(reels.make(third, facts, { ...how, title, write: withoutControl, reason: null }));
  }
  return found;
}

/** The same envelope as a scanner sends it that cannot type control characters. */
function withoutControl(facts: ReelFacts): readonly LabelSymbol[] {
  return labelReel(facts, 'envelope').map(({ text, format }) => ({
    format,
    text: text.replaceAll('\x1d', '<GS>').replaceAll('\x1e', '<RS>').replaceAll('\x04', '<EOT>'),
  }));
}

/** Reels that a lead must decide on. */
export function held(reels: Maker, scene: PracticeScene, due: readonly DueSlot[]): Practice[] {
  const found: Practice[] = [];
  const how = { group: 'Reels for a lead to decide', verdict: 'held' } as const;
  const [first, second, third, fourth] = due.map((slot) => slot.wanted);
  if (first) {
    const facts = {
      ...reels.factsOf(first.part),
      expires: plantDay(scene.state, scene.line, scene.nowMs - 3 * DAY_MS),
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
export function refused(reels: Maker, scene: PracticeScene, due: readonly DueSlot[]): Practice[] {
  const found: Practice[] = [];
  const how = { group: 'Reels that are refused', verdict: 'refused' } as const;
  const [first, second, third] = due.map((slot) => slot.wanted);
  const wrong = due.find(
    ({ wanted: { part, tapeWidthMm } }) =>
      part !== first?.part && tapeWidthMm === first?.tapeWidthMm && !isAlternateSomewhere(scene, part),
  )?.wanted;
  if (first && wrong) {
    const title = `${wrong.part}, which belongs on ${wrong.slot}`;
    found.push(
      reels.make(first, reels.factsOf(wrong.part, 'W'), {
        ...how,
        title,
        dialect: 'loose',
        reason: 'wrong-part',
      }),
    );
  }
  const foreign = partRows.find(
    (row) => !due.some((slot) => slot.wanted.part === row[0] || slot.wanted.alternates.includes(row[0])),
  );
  if (third && foreign && !isAlternateSomewhere(scene, foreign[0])) {
    const title = `${foreign[0]}, on no slot of this setup`;
    found.push(
      reels.make(third, reels.factsOf(foreign[0], 'W'), {
        ...how,
        title,
        dialect: 'words',
        reason: 'wrong-part',
      }),
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
    (slot) => slot.loaded.tapes.some((tape) => hasOwnId(tape.reel)) && slot.wanted !== first,
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
