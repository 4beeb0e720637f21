import { plural } from '../words.ts';

/** What of a cart does not fit, and the slot that keeps it out. */
interface UnfitFacts {
  readonly thing: string;
  /** The line and the slot; `line`, `slot`: each by itself; all empty where no slot keeps it out. */
  readonly at: string;
  readonly line: string;
  readonly slot: string;
}

export const words = {
  open: 'Pick list and carts',
  list: 'Pick list',
  panels: 'Panels of the next job',
  needed: (count: string) => plural(count, '1 part', `${count} parts`),
  short: (count: string) => `${count} more needed`,
  enough: 'enough',
  probably: (chance: string, missing: string) => `probably enough (${chance}): ${missing} more to be sure`,
  readyNow: 'Do this while the line runs',
  readyFetch: (count: number) =>
    count === 0
      ? 'No reels to fetch.'
      : plural(
          count,
          'Fetch reels of 1 part: pick list below.',
          `Fetch reels of ${count} parts: pick list below.`,
        ),
  readyCarts: (count: number) =>
    count === 0
      ? 'Put the next feeders on a cart.'
      : plural(
          count,
          'Put feeders on a cart: 1 place is ready.',
          `Put feeders on a cart: ${count} places are ready.`,
        ),
  readyOpenList: 'Open the checklist: some steps need no stop.',
  readyList: (count: number) =>
    plural(count, 'Checklist: 1 step can be done now.', `Checklist: ${count} steps can be done now.`),
  toChecklist: 'Go to checklist',
  fetch: (reels: string) => `Fetch ${reels}`,
  stays: (slot: string, count: string) => `stays on ${slot}, ${count}`,
  goesTo: (from: string, to: string, count: string) => `moves from ${from} to ${to}, ${count}`,
  comesOff: (slot: string, count: string) => `spare on ${slot}, ${count}`,
  leftThen: (count: string) => `about ${count} left when this job is done`,
  leftNow: (count: string) => `about ${count} left`,
  onLine: (count: number) =>
    plural(
      count,
      '1 part is on the line: nothing to fetch',
      `${count} parts are on the line: nothing to fetch`,
    ),
  cartFirst: 'Scan or type its code first.',
  leftUnknown: 'not counted',
  maybeShort: 'count it first',
  unsure: (count: number) =>
    plural(
      count,
      '1 part may need more: count its reels.',
      `${count} parts may need more: count their reels.`,
    ),
  uncounted: (count: number) => plural(count, '1 reel not counted', `${count} reels not counted`),
  none: 'no reel found',
  msl: (level: string) => `MSL ${level}: watch the floor life`,
  shortfalls: (count: number) =>
    plural(
      count,
      '1 part needs more than the known reels hold. Fetch more, or tell a lead.',
      `${count} parts need more than the known reels hold. Fetch more, or tell a lead.`,
    ),
  carts: 'Carts',
  cart: 'Cart',
  cartHelp: 'Scan or type the cart’s code. Then scan slot, feeder and reel.',
  use: 'Use this cart',
  filling: (cart: string) => `Filling ${cart}`,
  leave: 'Leave the cart',
  wanted: {
    slot: 'Scan the slot it is for',
    feeder: 'Scan the feeder',
    'old-reel': '',
    reel: 'Scan the reel',
  },
  accepted: (slot: string) => `Right: ready for ${slot}.`,
  refused: (why: string) => `Do not put it on: ${why}`,
  held: (why: string) => `Held: ${why}. Set it aside. A lead decides on the Load screen.`,
  places: (count: number) => plural(count, '1 place ready', `${count} places ready`),
  empty: 'Take off',
  dock: 'Dock',
  dockTitle: (cart: string) => `Dock ${cart}?`,
  dockCaution:
    'Stop the machine first and wait until nothing moves. Keep hands clear of clamp, head and cutter.',
  willLoad: (count: number, product: string) =>
    plural(count, `1 slot is loaded for ${product}:`, `${count} slots are loaded for ${product}:`),
  goesOff: (count: number) => plural(count, '1 feeder comes off:', `${count} feeders come off:`),
  doesNotFit: (count: number) =>
    plural(count, '1 place does not fit and is left out:', `${count} places do not fit and are left out:`),
  unfit: {
    'feeder-loaded': (f: UnfitFacts) => `Feeder ${f.thing} is now on ${f.at}.`,
    'reel-loaded': (f: UnfitFacts) => `Reel ${f.thing} is now on ${f.at}.`,
    'lane-beside': (f: UnfitFacts) =>
      `Its feeder stays on the cart: the reel for ${f.at} cannot be loaded now.`,
    neighbour: (f: UnfitFacts) => `Feeder ${f.thing} overlaps ${f.at}. Take one of the two off first.`,
    'other-lane': (f: UnfitFacts) => `${f.line} needs ${f.slot}. Leave this one on the cart.`,
    blocked: (f: UnfitFacts) => `${f.thing} is blocked now. Take it off the cart.`,
  },
  others: (count: number) =>
    plural(
      count,
      '1 place is for another setup and stays.',
      `${count} places are for another setup and stay.`,
    ),
  nothingFits: 'Nothing on this cart can be loaded for this changeover.',
  noChangeover: 'No changeover is open on this line. Plan one first.',
  knownCart: (cart: string) => `${cart} is selected.`,
  dockable: (count: number) => plural(count, 'loads 1 slot', `loads ${count} slots`),
  notStanding: 'Dock once the last panel is built.',
  docked: (cart: string, count: number) =>
    plural(count, `${cart} docked: 1 slot loaded.`, `${cart} docked: ${count} slots loaded.`),
  signIn: 'Scan your badge first.',
  unknown: (text: string) => `${text.slice(0, 40)} is unknown. To fill a new cart, leave this one first.`,
} as const;
