// Which act does each kind of entry write down, and so which right does it take? One row a kind, beside the registry: a kind without a row
// does not compile. What screens ask before the act (`may.ts`) is what is asked of its entry afterwards, so that both say the same.

import { type Entry, entryId } from '../log/entry.ts';
import { type EntryKind, type EntryOf, type FloorEntry, isEntryKind } from './kinds.ts';
import type { PasskeyUse } from './kinds-passkeys.ts';
import type { Act } from './may.ts';
import { isBeforeTickets, provenRole, type RightStand, type Trust } from './rights.ts';
import type { FloorState } from './state.ts';

/** An act, or which one where a kind tells of several: asked of the state before the entry. */
type ActOf<K extends EntryKind> = Act | ((state: FloorState, entry: EntryOf<K>) => Act);

/** Choosing a setup takes a lead; saying that the last panel is through, in the changeover that a lead began, does not. */
function ofChosen(state: FloorState, { payload }: EntryOf<'setup.chosen'>): Act {
  const began = state.changeovers.get(state.changing.get(payload.line) ?? '');
  return began?.setup === payload.setup ? 'verify-reel' : 'choose-setup';
}

/** A lead keeps the own passkeys, an engineer anybody's. */
function ofPasskey(_: FloorState, { payload }: EntryOf<'passkey.added' | 'passkey.removed'>): Act {
  const { by, person, role } = payload;
  return by === person && role === 'lead' ? 'keep-own-passkey' : 'keep-passkeys';
}

/** Every kind of entry. */
export const actsOfKinds: { readonly [K in EntryKind]: ActOf<K> } = {
  'tablet.opened': 'look',
  'tablet.named': 'look',
  'person.added': 'manage-people',
  'person.removed': 'manage-people',
  'badges.keyed': 'look',
  'person.signed-in': 'look',
  'person.signed-out': 'look',
  'person.language-chosen': 'look',
  'plant.named': 'define-line',
  'line.defined': 'define-line',
  'lane.withdrawn': 'define-line',
  'line.ruled': 'rule-line',
  'feeder.known': 'define-line',
  'feeder.withdrawn': 'define-line',
  'feeder-type.known': 'define-line',
  'feeder-type.withdrawn': 'define-line',
  'feeder.typed': 'define-line',
  'line.tape-ruled': 'rule-line',
  'supplier.approved': 'approve-supplier',
  'supplier.withdrawn': 'approve-supplier',
  'setup.taken': 'take-setup',
  'setup.chosen': ofChosen,
  'run.started': 'start-run',
  'run.began-short': 'start-run',
  'run.stopped': 'stop-run',
  'run.resumed': 'stop-run',
  'run.ended': 'end-run',
  'panels.counted': 'count-panels',
  'panel.seen': 'count-panels',
  'panels.corrected': 'count-panels',
  'station.known': 'look',
  'station.counted': 'look',
  'station.silent': 'look',
  'station.state': 'look',
  'station.recipe': 'look',
  'recipe.known': 'take-setup',
  'station.doubled': 'look',
  'station.noticed': 'look',
  'tape.changed': 'look',
  'tape.empty': 'look',
  'parts.used': 'look',
  'parts.missed': 'look',
  'parts.aired': 'look',
  'machine.loaded': 'look',
  'station.finding-cleared': 'keep-stations',
  'station.named': 'keep-stations',
  'setup.offered': 'look',
  'station.interlock-ruled': 'rule-interlock',
  'station.answered': 'look',
  'station.answered-again': 'look',
  'line.counted-by': 'choose-counter',
  'panels.scrapped': 'count-panels',
  'panels.contained': 'verify-reel',
  'containment.signed': 'clear-hold',
  'reel.verified': 'verify-reel',
  'hold.cleared': 'clear-hold',
  'hold.declined': 'clear-hold',
  'reel.unloaded': 'verify-reel',
  'reel.counted': 'verify-reel',
  'reel.put': 'verify-reel',
  'reel.dated': 'verify-reel',
  'reel.measured': 'verify-reel',
  'paste.ruled': 'describe-part',
  'jar.known': 'verify-reel',
  'jar.told': 'verify-reel',
  'jar.held': 'verify-reel',
  'jar.let': 'clear-hold',
  'place.described': 'describe-part',
  'reel.split': 'verify-reel',
  'reel.merged': 'verify-reel',
  'reel.sighted': 'verify-reel',
  'picture.kept': 'look',
  'reel.aired': 'verify-reel',
  'bake.approved': 'clear-hold',
  'reel.calibrated': 'verify-reel',
  'material.blocked': 'block-material',
  'material.released': 'block-material',
  'blocked.let-run': 'clear-hold',
  'line.climate-ruled': 'rule-line',
  'line.panels-ruled': 'rule-line',
  'line.idle-ruled': 'rule-line',
  'line.age-ruled': 'rule-line',
  'line.values-ruled': 'rule-line',
  'line.pictures-ruled': 'rule-line',
  'line.calendar-ruled': 'rule-line',
  'line.crewed': 'acknowledge-warning',
  'line.splices-ruled': 'rule-line',
  'sweep.started': 'verify-reel',
  'sweep.ended': 'verify-reel',
  'warning.acknowledged': 'acknowledge-warning',
  'warning.raised': 'look',
  'entry.corrected': 'correct-own-entry',
  'conflict.settled': 'settle-conflict',
  'label.taught': 'teach-label',
  'label.withdrawn': 'teach-label',
  'reel.packed': 'verify-reel',
  'bulk.purged': 'verify-reel',
  'feeder.readied': 'verify-reel',
  'feeder.stripped': 'verify-reel',
  'feeder.moved': 'verify-reel',
  'feeder.set-aside': 'verify-reel',
  'feeder.cared': 'verify-reel',
  'feeder.care-ruled': 'define-line',
  'tablet.let-in': 'look',
  'tablet.shut-out': 'look',
  'log.fetched': 'look',
  'log.restored': 'look',
  'log.exported': 'export-log',
  'state.differed': 'look',
  'checklist.template': 'edit-checklist',
  'checklist.opened': 'tick-checklist',
  'step.answered': 'tick-checklist',
  'step.skipped': 'skip-step',
  'step.signed': 'tick-checklist',
  'step.unsigned': 'tick-checklist',
  'step.reopened': 'tick-checklist',
  'checklist.handed': 'tick-checklist',
  'checklist.closed': 'tick-checklist',
  'changeover.began': 'choose-setup',
  'changeover.released': 'choose-setup',
  'changeover.left-open': 'choose-setup',
  'changeover.dropped': 'choose-setup',
  'cart.filled': 'verify-reel',
  'cart.emptied': 'verify-reel',
  'cart.docked': 'verify-reel',
  'plan.kept': 'keep-plan',
  'panel.measured': 'tick-checklist',
  'panel.looked': 'tick-checklist',
  'part.described': 'describe-part',
  'parts.listed': 'describe-part',
  'parts.priced': 'describe-part',
  'part.unlisted': 'describe-part',
  'part.pictured': 'describe-part',
  'moisture.ruled': 'rule-moisture',
  'reel.timed': 'verify-reel',
  'reel.life-judged': 'look',
  'reel.named': 'verify-reel',
  'labels.printed': (_, { payload }) => (payload.what === 'badge' ? 'manage-people' : 'verify-reel'),
  'labels.sized': 'rule-line',
  'labels.size-withdrawn': 'rule-line',
  'ticket.taken': 'look',
  'unproven.settled': 'settle-unproven',
  'passkey.added': ofPasskey,
  'passkey.removed': ofPasskey,
  'shift.handed': 'hand-over',
  'shift.taken': 'hand-over',
};

/** The act that an entry writes down, asked of the state before it. */
export function actOf(state: FloorState, entry: FloorEntry): Act {
  const act = actsOfKinds[entry.kind] as ActOf<FloorEntry['kind']>; // the row of its own kind
  return typeof act === 'string' ? act : (act as (state: FloorState, entry: FloorEntry) => Act)(state, entry);
}

/** Kinds of entries that take a lead or an engineer, or may. */
export const kindsWithRight: readonly EntryKind[] = (
  Object.entries(actsOfKinds) as [EntryKind, Act | object][]
) // the keys of the table above
  .filter(([, act]) => typeof act !== 'string' || provenRole(act as Act) !== null)
  .map(([kind]) => kind);

/**
 * What is known of the right that an entry took; null where none is asked for, or where that hung on the state before it and nothing is
 * marked. `trust` null: the plant gives no tickets yet.
 */
export function standOfKind(
  { unproven, passkeys }: Pick<FloorState, 'unproven' | 'passkeys'>,
  entry: Entry,
  trust: Pick<Trust, 'before'> | null,
): RightStand | null {
  const mark = unproven.get(entryId(entry));
  if (mark) return mark.settled?.as ?? 'unproven';
  const act = isEntryKind(entry.kind) ? actsOfKinds[entry.kind] : null;
  if (typeof act !== 'string' || provenRole(act) === null) return null;
  if (trust === null || isBeforeTickets(trust, entry)) return 'before-tickets';
  // A signature that proves nothing would have left a mark.
  const use = entry.payload['passkey'] as Partial<PasskeyUse> | undefined; // as it came: it only names one
  return passkeys.get(use?.credential ?? '')?.isProven ? 'passkey' : 'proven';
}
