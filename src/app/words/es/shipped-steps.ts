// The checklists that ship have their Spanish themselves.

export const words: Readonly<Record<string, string>> = {};
