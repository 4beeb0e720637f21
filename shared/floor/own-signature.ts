// Which entries say something by the tablet's key, and are signed by themselves. Apart from what a head cannot vouch for, since every
// writer of entries asks this and the page's start carries no more than that.

/** True for a kind whose entries say something by the tablet's key: a ticket counts for the key that it names, and for no other. */
export function isSignedItself(kind: string): boolean {
  return kind === 'ticket.taken';
}
