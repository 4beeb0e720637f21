// Which acts a passkey may sign. Apart from their shapes, which every start reads.

/** Kinds of acts that a passkey may sign: those whose payloads have that field. */
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
] as const;
