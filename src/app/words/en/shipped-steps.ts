// The checklists that ship have their English themselves.

export const words: Readonly<Record<string, string>> = {};
