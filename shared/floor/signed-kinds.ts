// Which acts a passkey may sign. Apart from their shapes, which every start reads.

/** Kinds that are decided by badge and PIN, or by passkey in their stead. */
export const signedKinds = [
  'hold.cleared',
  'hold.declined',
  'blocked.let-run',
  'bake.approved',
  'containment.signed',
  'step.signed',
  'step.skipped',
  'changeover.left-open',
  'changeover.released',
  'shift.handed',
  'shift.taken',
] as const;

/**
 * Kinds that whoever is signed in writes, and that a passkey of that person signs where there is one: who belongs to the plant, by what
 * rules its lines run, and what was blocked and is not any more. A block itself is asked for none, as it can only stop something.
 */
export const signedInKinds = [
  'person.added',
  'person.removed',
  'line.ruled',
  'line.climate-ruled',
  'line.idle-ruled',
  'line.splices-ruled',
  'line.age-ruled',
  'line.values-ruled',
  'line.tape-ruled',
  'line.calendar-ruled',
  'line.panels-ruled',
  'moisture.ruled',
  'station.interlock-ruled',
  'supplier.approved',
  'material.released',
] as const;

/** Every kind that a passkey may sign: those whose payloads have that field. */
export const passkeyKinds = [...signedKinds, ...signedInKinds] as const;
