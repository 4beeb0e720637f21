// The name of the chain that the server itself writes, beside those of the tablets.

/** Its name where an entry names its tablet; no tablet is let in under it. */
export const serverChain = 'server';
