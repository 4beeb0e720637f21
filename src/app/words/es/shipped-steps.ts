// The checklists that ship have their Spanish themselves, but for the answers to choose from.

export const words: Readonly<Record<string, string>> = { yes: 'sí', no: 'no' };
