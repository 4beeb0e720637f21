// What is asked of the trace, and how names are compared.

/** Which stretches are asked for; every field given must fit. */
export interface TraceQuestion {
  readonly lot?: string;
  readonly reel?: string;
  readonly part?: string;
  readonly feeder?: string;
  readonly slot?: string;
  readonly who?: string;
  readonly run?: string;
  /** Moments, ISO 8601 with offset: stretches that began within them. */
  readonly from?: string;
  readonly to?: string;
}

/**
 * A lot, reel, part, feeder or slot as it is looked for: a person types it in any letter case, and labels of one maker differ in it too.
 * Marks and blanks within stay: they may tell two lots apart.
 */
export function asAsked(text: string): string {
  return text.normalize('NFC').trim().toLowerCase();
}

/** Facts of a stretch that are looked for in any letter case. */
export const askedInAnyCase = ['lot', 'reel', 'part', 'feeder', 'slot'] as const;
