// Who somebody is on the floor: the one closed list that entries and messages share, so it stands beneath both.

/** What a person may do grows from left to right. */
export const roles = ['operator', 'lead', 'engineer'] as const;
export type Role = (typeof roles)[number];
