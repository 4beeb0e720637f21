// Which side's placements count for a sheet?

/** Which placements count. */
export const placementScopes = ['both', 'top', 'bottom'] as const;

/** One scope. */
export type PlacementScope = (typeof placementScopes)[number];
