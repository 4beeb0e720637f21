// What does each kind of entry do? One row a kind: the shape of its payload, what it does to the state, and which slots and reels it
// touches; which right it takes stands in acts.ts. A kind without a row does not compile, nor does a row whose fold does not know its kind. Stands above the folds; the shapes
// stand below them in kinds.ts, since folds read payloads.
// Method: a kind names its folds, in the order in which they must see the entry. Refused: every entry through every fold; a kind that
// none of them knew went by unseen.

import { foldBlocks } from './blocks.ts';
import { foldFeeders } from './feeder-types.ts';
import { foldBelieved } from './fold-believed.ts';
import { foldChange } from './fold-change.ts';
import { foldContain } from './fold-contain.ts';
import { foldExposures } from './fold-exposures.ts';
import { foldRunFeeders } from './fold-feeders.ts';
import { foldHandover } from './fold-handover.ts';
import { foldInterlock } from './fold-interlock.ts';
import { foldLabels } from './fold-labels.ts';
import { foldLoss } from './fold-loss.ts';
import { foldMaterial } from './fold-material.ts';
import { foldMoisture } from './fold-moisture.ts';
import { foldOffered } from './fold-offered.ts';
import { foldPanels } from './fold-panels.ts';
import { foldParts } from './fold-parts.ts';
import { foldPasskeys } from './fold-passkeys.ts';
import { foldPaste } from './fold-paste.ts';
import { foldPlaces } from './fold-places.ts';
import { foldPlant } from './fold-plant.ts';
import { asNamed, foldPrint } from './fold-print.ts';
import { foldRun } from './fold-run.ts';
import { foldSeen } from './fold-seen.ts';
import { foldStations } from './fold-stations.ts';
import { foldStore } from './fold-store.ts';
import { foldTapes } from './fold-tapes.ts';
import { type EntryKind, type EntryOf, type FloorEntry, payloadSchemas as schemas } from './kinds.ts';
import { foldPacks } from './packs.ts';
import { foldPeople } from './people.ts';
import type { FloorState } from './state.ts';
import {
  everywhere,
  nowhere,
  ofCount,
  ofDocking,
  ofHold,
  ofLine,
  ofMove,
  ofNamed,
  ofPacked,
  ofPanels,
  ofReel,
  ofSlot,
  ofStation,
  ofTape,
  ofTwoReels,
  ofVerdict,
  type Touched,
} from './touches.ts';

type Fold<E> = (state: FloorState, entry: E) => void;

/** All that a kind of entry is. */
export interface KindRow<K extends EntryKind> {
  /** Makes the checked shape of its payload. */
  readonly schema: (typeof schemas)[K];
  /** What it does to the state. */
  readonly fold: Fold<EntryOf<K>>;
  /** Which slots and reels it touches, asked of the state before it. */
  readonly touches: (state: FloorState, entry: EntryOf<K>) => Touched;
}

/** The fold of a kind that only stands in the log and changes no state. */
export const nothing = (): void => undefined;

/** Several folds, one after the other. */
function inOrder<E>(...folds: readonly Fold<NoInfer<E>>[]): Fold<E> {
  return (state, entry) => {
    for (const fold of folds) fold(state, entry);
  };
}

const people: Fold<EntryOf<'badges.keyed' | 'person.added' | 'person.removed' | 'person.language-chosen'>> = (
  state,
  entry,
) => foldPeople(state, entry);

// Where order matters: floor lives before the material, since clearing a hold takes away what says where the reel goes; and a count off
// the line shows a loss before the material takes the reel's new count.
/** Every kind of entry. */
export const registry: { readonly [K in EntryKind]: KindRow<K> } = {
  'tablet.opened': { schema: schemas['tablet.opened'], fold: foldPlant, touches: nowhere },
  'plant.named': { schema: schemas['plant.named'], fold: foldPlant, touches: nowhere },
  'tablet.named': { schema: schemas['tablet.named'], fold: foldPlant, touches: nowhere },
  'person.added': { schema: schemas['person.added'], fold: people, touches: nowhere },
  'badges.keyed': { schema: schemas['badges.keyed'], fold: people, touches: nowhere },
  'person.removed': { schema: schemas['person.removed'], fold: people, touches: nowhere },
  'person.signed-in': { schema: schemas['person.signed-in'], fold: nothing, touches: nowhere },
  'person.signed-out': { schema: schemas['person.signed-out'], fold: nothing, touches: nowhere },
  'person.language-chosen': {
    schema: schemas['person.language-chosen'],
    fold: people,
    touches: nowhere,
  },
  'line.defined': { schema: schemas['line.defined'], fold: foldPlant, touches: nowhere },
  'lane.withdrawn': { schema: schemas['lane.withdrawn'], fold: foldPlant, touches: nowhere },
  'line.ruled': { schema: schemas['line.ruled'], fold: foldPlant, touches: nowhere },
  'feeder.known': { schema: schemas['feeder.known'], fold: foldPlant, touches: nowhere },
  'feeder.withdrawn': { schema: schemas['feeder.withdrawn'], fold: foldPlant, touches: nowhere },
  'feeder-type.known': { schema: schemas['feeder-type.known'], fold: foldFeeders, touches: nowhere },
  'feeder-type.withdrawn': { schema: schemas['feeder-type.withdrawn'], fold: foldFeeders, touches: nowhere },
  'feeder.typed': { schema: schemas['feeder.typed'], fold: foldFeeders, touches: nowhere },
  'line.tape-ruled': { schema: schemas['line.tape-ruled'], fold: foldFeeders, touches: nowhere },
  'supplier.approved': { schema: schemas['supplier.approved'], fold: foldPlant, touches: nowhere },
  'supplier.withdrawn': { schema: schemas['supplier.withdrawn'], fold: foldPlant, touches: nowhere },
  'setup.taken': { schema: schemas['setup.taken'], fold: foldPlant, touches: nowhere },
  'setup.chosen': { schema: schemas['setup.chosen'], fold: foldPlant, touches: nowhere },
  'run.started': {
    schema: schemas['run.started'],
    fold: inOrder(foldRun, foldStations, foldPaste),
    touches: ofLine,
  },
  'run.began-short': { schema: schemas['run.began-short'], fold: nothing, touches: nowhere },
  'run.stopped': { schema: schemas['run.stopped'], fold: foldRun, touches: nowhere },
  'run.resumed': { schema: schemas['run.resumed'], fold: foldRun, touches: nowhere },
  'run.ended': { schema: schemas['run.ended'], fold: foldRun, touches: ofLine },
  'panels.counted': {
    schema: schemas['panels.counted'],
    fold: inOrder(foldRun, foldPanels, foldSeen, foldContain, foldStations),
    touches: ofPanels,
  },
  'panel.seen': { schema: schemas['panel.seen'], fold: foldSeen, touches: nowhere },
  'panels.corrected': {
    schema: schemas['panels.corrected'],
    fold: inOrder(foldRun, foldStations),
    touches: ofPanels,
  },
  'station.known': { schema: schemas['station.known'], fold: foldStations, touches: nowhere },
  'station.counted': {
    schema: schemas['station.counted'],
    fold: inOrder(foldRun, foldPanels, foldSeen, foldContain, foldStations),
    touches: ofStation,
  },
  'station.silent': { schema: schemas['station.silent'], fold: foldStations, touches: nowhere },
  'station.state': { schema: schemas['station.state'], fold: foldStations, touches: nowhere },
  'station.recipe': { schema: schemas['station.recipe'], fold: foldStations, touches: nowhere },
  'recipe.known': { schema: schemas['recipe.known'], fold: foldStations, touches: nowhere },
  'station.doubled': {
    schema: schemas['station.doubled'],
    fold: inOrder(foldRun, foldStations),
    touches: ofStation,
  },
  'station.noticed': { schema: schemas['station.noticed'], fold: foldStations, touches: nowhere },
  'station.finding-cleared': {
    schema: schemas['station.finding-cleared'],
    fold: foldStations,
    touches: nowhere,
  },
  'setup.offered': { schema: schemas['setup.offered'], fold: foldOffered, touches: nowhere },
  'station.named': { schema: schemas['station.named'], fold: foldStations, touches: nowhere },
  'station.interlock-ruled': {
    schema: schemas['station.interlock-ruled'],
    fold: foldInterlock,
    touches: nowhere,
  },
  'station.answered': { schema: schemas['station.answered'], fold: foldInterlock, touches: nowhere },
  'station.answered-again': {
    schema: schemas['station.answered-again'],
    fold: foldInterlock,
    touches: nowhere,
  },
  'tape.changed': { schema: schemas['tape.changed'], fold: foldTapes, touches: ofTape },
  'tape.empty': { schema: schemas['tape.empty'], fold: foldTapes, touches: nowhere },
  'parts.used': { schema: schemas['parts.used'], fold: foldTapes, touches: nowhere },
  'parts.missed': { schema: schemas['parts.missed'], fold: foldTapes, touches: nowhere },
  'parts.aired': {
    schema: schemas['parts.aired'],
    fold: inOrder(foldExposures, foldTapes),
    touches: nowhere,
  },
  'machine.loaded': { schema: schemas['machine.loaded'], fold: foldBelieved, touches: nowhere },
  'line.counted-by': { schema: schemas['line.counted-by'], fold: foldStations, touches: nowhere },
  'panels.scrapped': { schema: schemas['panels.scrapped'], fold: foldPanels, touches: nowhere },
  'panels.contained': { schema: schemas['panels.contained'], fold: foldContain, touches: nowhere },
  'containment.signed': { schema: schemas['containment.signed'], fold: foldContain, touches: nowhere },
  'reel.verified': {
    schema: schemas['reel.verified'],
    fold: inOrder(foldExposures, foldMaterial, foldContain, foldInterlock),
    touches: ofVerdict,
  },
  'hold.cleared': {
    schema: schemas['hold.cleared'],
    fold: inOrder(foldExposures, foldMaterial, foldContain),
    touches: ofHold,
  },
  'hold.declined': { schema: schemas['hold.declined'], fold: foldMaterial, touches: nowhere },
  'reel.unloaded': {
    schema: schemas['reel.unloaded'],
    fold: inOrder(foldMaterial, foldContain),
    touches: ofSlot,
  },
  'reel.counted': {
    schema: schemas['reel.counted'],
    fold: inOrder(foldLoss, foldMaterial),
    touches: ofCount,
  },
  'reel.put': { schema: schemas['reel.put'], fold: foldPlaces, touches: ofReel },
  'reel.measured': { schema: schemas['reel.measured'], fold: foldPlaces, touches: ofReel },
  'reel.dated': { schema: schemas['reel.dated'], fold: foldPlaces, touches: ofReel },
  'paste.ruled': { schema: schemas['paste.ruled'], fold: foldPaste, touches: nowhere },
  'jar.known': { schema: schemas['jar.known'], fold: foldPaste, touches: nowhere },
  'jar.told': { schema: schemas['jar.told'], fold: foldPaste, touches: nowhere },
  'jar.held': { schema: schemas['jar.held'], fold: nothing, touches: nowhere },
  'jar.let': { schema: schemas['jar.let'], fold: nothing, touches: nowhere },
  'place.described': { schema: schemas['place.described'], fold: foldStore, touches: nowhere },
  'reel.split': { schema: schemas['reel.split'], fold: foldStore, touches: ofTwoReels },
  'reel.merged': { schema: schemas['reel.merged'], fold: foldStore, touches: ofTwoReels },
  'reel.sighted': { schema: schemas['reel.sighted'], fold: nothing, touches: ofReel },
  'picture.kept': { schema: schemas['picture.kept'], fold: nothing, touches: nowhere },
  'reel.aired': { schema: schemas['reel.aired'], fold: foldExposures, touches: ofReel },
  'bake.approved': { schema: schemas['bake.approved'], fold: foldExposures, touches: ofReel },
  'reel.calibrated': { schema: schemas['reel.calibrated'], fold: foldLoss, touches: nowhere },
  'material.blocked': { schema: schemas['material.blocked'], fold: foldBlocks, touches: ofReel },
  'material.released': { schema: schemas['material.released'], fold: foldBlocks, touches: nowhere },
  'blocked.let-run': { schema: schemas['blocked.let-run'], fold: foldBlocks, touches: nowhere },
  'line.climate-ruled': { schema: schemas['line.climate-ruled'], fold: foldPlant, touches: nowhere },
  'line.panels-ruled': { schema: schemas['line.panels-ruled'], fold: foldPlant, touches: nowhere },
  'line.idle-ruled': { schema: schemas['line.idle-ruled'], fold: foldPlant, touches: nowhere },
  'line.age-ruled': { schema: schemas['line.age-ruled'], fold: foldPlant, touches: nowhere },
  'line.values-ruled': { schema: schemas['line.values-ruled'], fold: foldPlant, touches: nowhere },
  'line.pictures-ruled': { schema: schemas['line.pictures-ruled'], fold: foldPlant, touches: nowhere },
  'line.calendar-ruled': { schema: schemas['line.calendar-ruled'], fold: foldPlant, touches: nowhere },
  'line.crewed': { schema: schemas['line.crewed'], fold: foldPlant, touches: nowhere },
  'line.splices-ruled': { schema: schemas['line.splices-ruled'], fold: foldPlant, touches: nowhere },
  'sweep.started': { schema: schemas['sweep.started'], fold: foldPlant, touches: nowhere },
  'sweep.ended': { schema: schemas['sweep.ended'], fold: foldPlant, touches: nowhere },
  'warning.acknowledged': { schema: schemas['warning.acknowledged'], fold: foldPlant, touches: nowhere },
  'warning.raised': { schema: schemas['warning.raised'], fold: foldPlant, touches: nowhere },
  'entry.corrected': {
    schema: schemas['entry.corrected'],
    fold: inOrder(
      foldPlant,
      foldRun,
      foldPanels,
      foldSeen,
      foldStations,
      foldLoss,
      foldExposures,
      foldMaterial,
      foldMoisture,
      foldContain,
    ),
    touches: everywhere,
  },
  'conflict.settled': { schema: schemas['conflict.settled'], fold: foldMaterial, touches: everywhere },
  'label.taught': { schema: schemas['label.taught'], fold: foldLabels, touches: nowhere },
  'label.withdrawn': { schema: schemas['label.withdrawn'], fold: foldLabels, touches: nowhere },
  'reel.named': { schema: schemas['reel.named'], fold: foldPrint, touches: ofNamed },
  'labels.printed': { schema: schemas['labels.printed'], fold: foldPrint, touches: nowhere },
  'labels.sized': { schema: schemas['labels.sized'], fold: foldPrint, touches: nowhere },
  'labels.size-withdrawn': { schema: schemas['labels.size-withdrawn'], fold: foldPrint, touches: nowhere },
  'reel.packed': { schema: schemas['reel.packed'], fold: foldPacks, touches: ofPacked },
  'bulk.purged': { schema: schemas['bulk.purged'], fold: foldPacks, touches: nowhere },
  'feeder.readied': {
    schema: schemas['feeder.readied'],
    fold: inOrder(foldExposures, foldRunFeeders),
    touches: ofReel,
  },
  'feeder.stripped': { schema: schemas['feeder.stripped'], fold: foldRunFeeders, touches: nowhere },
  'feeder.moved': { schema: schemas['feeder.moved'], fold: foldRunFeeders, touches: ofMove },
  'feeder.set-aside': { schema: schemas['feeder.set-aside'], fold: foldRunFeeders, touches: nowhere },
  'feeder.cared': { schema: schemas['feeder.cared'], fold: foldRunFeeders, touches: nowhere },
  'feeder.care-ruled': { schema: schemas['feeder.care-ruled'], fold: foldRunFeeders, touches: nowhere },
  'tablet.let-in': { schema: schemas['tablet.let-in'], fold: nothing, touches: nowhere },
  'tablet.shut-out': { schema: schemas['tablet.shut-out'], fold: nothing, touches: nowhere },
  'log.fetched': { schema: schemas['log.fetched'], fold: nothing, touches: nowhere },
  'log.restored': { schema: schemas['log.restored'], fold: nothing, touches: nowhere },
  'log.exported': { schema: schemas['log.exported'], fold: nothing, touches: nowhere },
  'state.differed': { schema: schemas['state.differed'], fold: nothing, touches: nowhere },
  'checklist.template': { schema: schemas['checklist.template'], fold: foldChange, touches: nowhere },
  'checklist.opened': { schema: schemas['checklist.opened'], fold: foldChange, touches: nowhere },
  'step.answered': { schema: schemas['step.answered'], fold: foldChange, touches: nowhere },
  'step.skipped': { schema: schemas['step.skipped'], fold: foldChange, touches: nowhere },
  'step.signed': { schema: schemas['step.signed'], fold: foldChange, touches: nowhere },
  'step.unsigned': { schema: schemas['step.unsigned'], fold: foldChange, touches: nowhere },
  'step.reopened': { schema: schemas['step.reopened'], fold: foldChange, touches: nowhere },
  'checklist.handed': { schema: schemas['checklist.handed'], fold: foldChange, touches: nowhere },
  'checklist.closed': { schema: schemas['checklist.closed'], fold: foldChange, touches: nowhere },
  'changeover.began': { schema: schemas['changeover.began'], fold: foldChange, touches: nowhere },
  'changeover.released': { schema: schemas['changeover.released'], fold: foldChange, touches: nowhere },
  'changeover.left-open': { schema: schemas['changeover.left-open'], fold: nothing, touches: nowhere },
  'changeover.dropped': { schema: schemas['changeover.dropped'], fold: foldChange, touches: nowhere },
  'cart.filled': {
    schema: schemas['cart.filled'],
    fold: inOrder(foldExposures, foldChange),
    touches: ofReel,
  },
  'cart.emptied': { schema: schemas['cart.emptied'], fold: foldChange, touches: nowhere },
  'cart.docked': { schema: schemas['cart.docked'], fold: foldChange, touches: ofDocking },
  'plan.kept': { schema: schemas['plan.kept'], fold: foldChange, touches: nowhere },
  'panel.measured': { schema: schemas['panel.measured'], fold: foldChange, touches: nowhere },
  'panel.looked': { schema: schemas['panel.looked'], fold: foldChange, touches: nowhere },
  'part.described': { schema: schemas['part.described'], fold: foldMoisture, touches: nowhere },
  'parts.listed': { schema: schemas['parts.listed'], fold: foldParts, touches: nowhere },
  'parts.priced': { schema: schemas['parts.priced'], fold: foldParts, touches: nowhere },
  'part.unlisted': { schema: schemas['part.unlisted'], fold: foldParts, touches: nowhere },
  'part.pictured': { schema: schemas['part.pictured'], fold: foldParts, touches: nowhere },
  'moisture.ruled': { schema: schemas['moisture.ruled'], fold: foldMoisture, touches: nowhere },
  'reel.timed': { schema: schemas['reel.timed'], fold: foldMoisture, touches: ofReel },
  'ticket.taken': { schema: schemas['ticket.taken'], fold: nothing, touches: nowhere },
  'unproven.settled': { schema: schemas['unproven.settled'], fold: nothing, touches: nowhere },
  'passkey.added': { schema: schemas['passkey.added'], fold: foldPasskeys, touches: nowhere },
  'passkey.removed': { schema: schemas['passkey.removed'], fold: foldPasskeys, touches: nowhere },
  'shift.handed': { schema: schemas['shift.handed'], fold: foldHandover, touches: nowhere },
  'shift.taken': { schema: schemas['shift.taken'], fold: foldHandover, touches: nowhere },
  'reel.life-judged': { schema: schemas['reel.life-judged'], fold: nothing, touches: nowhere },
};

/** What an entry does to the state. */
export function foldOf(entry: FloorEntry): Fold<FloorEntry> {
  return registry[entry.kind].fold as Fold<FloorEntry>; // the row of its own kind
}

/** Which slots and reels an entry touches, asked of the state before it. */
export function touchesOf(state: FloorState, told: FloorEntry): Touched {
  const entry = asNamed(state, told);
  const touches = registry[entry.kind].touches as (state: FloorState, entry: FloorEntry) => Touched; // as above
  return touches(state, entry);
}
