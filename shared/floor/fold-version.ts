// Which fold this is. Whatever is kept of a folded state names it, and is folded anew where it is another.

/** Bump when the fold or the state's shape changes. */
export const FOLD_VERSION = 36;
