// Groups of practice labels in the order in which they are shown, and the one lot that the plant has blocked.

/** Groups, in order. */
export const practiceGroups = [
  'Reels to splice next',
  'Reels to load',
  'Reels taken by a rule',
  'Reels for a lead to decide',
  'Reels that are refused',
  'Slots',
  'Feeders',
  'Badges',
  'Panels',
] as const;

/** Every reel of this lot is refused. */
export const blockedLot = 'LT-7781-Q';
