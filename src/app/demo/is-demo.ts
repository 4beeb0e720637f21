// Is this page the demo's? Asked at every start, so it stands apart from what only the demo needs.

/** The demo keeps a log of its own: what is practised must never reach a real plant's server from the same address. */
export const demoStoreName = 'reelward-demo';

/** True where this page was served by the demo. */
export function isDemo(): boolean {
  return document.querySelector('meta[name="reelward-demo"]') !== null;
}
