// The words that the floor's entries use, as closed lists: their types, loops and checks come from here.

import { type Role, roles } from '../kit/roles.ts';

export { type Role, roles };

/** Where a scan or an act came from. `practice` marks labels on the screen, and what a practice floor was told at its start. */
export const sources = ['camera', 'wedge', 'typed', 'practice', 'machine'] as const;
export type Source = (typeof sources)[number];

/**
 * What was asked of a reel. `exchange`: what stands there comes off and this comes on (tray, tube, a whole feeder); `refill`: poured over what
 * is in the feeder.
 */
export const verifyActs = ['load', 'splice', 'sweep', 'exchange', 'refill'] as const;
export type VerifyAct = (typeof verifyActs)[number];

/** True for an act that adds what comes to what stands on the slot, which is used up as well: nothing comes off. */
export function joins(act: VerifyAct): boolean {
  return act === 'splice' || act === 'refill';
}

/** The answer: `held` means that a lead must decide. */
export const verdicts = ['accepted', 'refused', 'held'] as const;
export type Verdict = (typeof verdicts)[number];

/** What parts come in. What nobody said is tape. */
export const packageKinds = ['tape', 'cut-tape', 'tray', 'tube', 'bulk'] as const;
export type PackageKind = (typeof packageKinds)[number];

/** Corners of a tray as it lies in the feeder, seen from above. */
export const corners = ['top-left', 'top-right', 'bottom-left', 'bottom-right'] as const;
export type Corner = (typeof corners)[number];

/** How a count is known. `one-by-one`: pockets of a tray or whole tubes and what is in the open one, each of them counted. */
export const countBases = [
  'label',
  'typed',
  'machine',
  'weighed',
  'measured',
  'counted-down',
  'combined',
  'one-by-one',
] as const;
export type CountBasis = (typeof countBases)[number];

/** Where a moisture-sensitive reel is, as its floor life counts: open on the floor, in dry storage (cabinet or sealed bag), in the oven. */
export const airs = ['floor', 'dry', 'bake'] as const;
export type Air = (typeof airs)[number];

/** What a machine or a dry cabinet says of moisture-sensitive reels. */
export const airedSays = ['opened', 'put-dry', 'taken-out', 'expired', 'restored'] as const;
export type AiredSays = (typeof airedSays)[number];

/** Package families that the floor-life and bake tables tell apart, and the other common ones; `other` = known to be none of them. */
export const packageFamilies = [
  'bga',
  'lga',
  'pqfp',
  'mqfp',
  'qfp',
  'tqfp',
  'lqfp',
  'plcc',
  'qfn',
  'sop',
  'tsop',
  'soic',
  'sot',
  'chip',
  'other',
] as const;
export type PackageFamily = (typeof packageFamilies)[number];

/** Body rows of the bake table: up to 1.4, up to 2.0, up to 4.5 mm; large ball grid arrays and stacked dies. */
export const bakeBodies = ['thin', 'middle', 'thick', 'large'] as const;
export type BakeBody = (typeof bakeBodies)[number];

/** Why a line stands. */
export const stopReasons = [
  'run-out',
  'splice',
  'jam',
  'pick-errors',
  'paste-or-print',
  'quality',
  'no-boards',
  'break',
  'maintenance',
  'other',
] as const;
export type StopReason = (typeof stopReasons)[number];

/** What the plant prints labels for. */
export const labelSubjects = ['reel', 'slot', 'feeder', 'cart', 'place', 'badge', 'station'] as const;
export type LabelSubject = (typeof labelSubjects)[number];

/** Which side of the panel a setup builds. */
export const sides = ['top', 'bottom'] as const;
export type Side = (typeof sides)[number];

/** How loud a warning is; each level includes the ones before it. */
export const warningLevels = ['quiet', 'soon', 'due', 'late'] as const;
export type WarningLevel = (typeof warningLevels)[number];

/** Above 0 where `one` is louder than `other`, 0 where they are alike, else below: a sort by it ends with the loudest. */
export function compareLevels(one: WarningLevel, other: WarningLevel): number {
  return warningLevels.indexOf(one) - warningLevels.indexOf(other);
}

/** True where `role` may do what `needed` may do. */
export function isAtLeast(role: Role, needed: Role): boolean {
  return roles.indexOf(role) >= roles.indexOf(needed);
}

/** Two entries that cannot both be true. */
export const conflictKinds = [
  'slot-loaded-twice',
  'reel-on-two-slots',
  'cleared-though-blocked',
  'spliced-though-unloaded',
  'released-though-dropped',
] as const;
export type ConflictKind = (typeof conflictKinds)[number];

/** What stands on a bank's places instead of feeders. */
export const bankHolds = ['trays'] as const;

/** Which reel off the line is taken first for a slot. */
export const pickOrders = ['oldest-first', 'fullest-first'] as const;
export type PickOrder = (typeof pickOrders)[number];

/** Why panels are held: a reel that did not belong there was found, a hold was cleared in error, material was blocked, or lay open too long. */
export const containCauses = ['wrong-reel', 'cleared', 'blocked', 'floor-life'] as const;
export type ContainCause = (typeof containCauses)[number];

/** Where on a line a station looks: before its first machine, at one of its machines, behind the last. */
export const stationPlaces = ['in', 'work', 'out'] as const;
export type StationPlace = (typeof stationPlaces)[number];

/** What a machine is answered where nobody can know: the plant's choice, in the standard's own words. */
export const unsureResults = ['Warning', 'Failed'] as const;
export type UnsureResult = (typeof unsureResults)[number];

/** What a machine is answered, in the standard's own words. */
export const interlockResults = ['Success', 'Warning', 'Failed'] as const;
export type InterlockResult = (typeof interlockResults)[number];

/** Why: right; then what is surely wrong; then what nobody can know. */
export const interlockWhys = [
  'verified',
  'refused',
  'held',
  'other-reel',
  'other-part',
  'wrong-feeder',
  'blocked',
  'no-setup',
  'unknown-slot',
  'not-in-setup',
  'not-verified',
  'unknown-reel',
  'no-reel-told',
  'out-of-date',
  'in-conflict',
  'unproven',
] as const;
export type InterlockWhy = (typeof interlockWhys)[number];
