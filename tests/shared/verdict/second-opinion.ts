// The verdict a second time, written from what the trade and the plant want and not from the product's own rules: facts in plain words in, what
// is said out. It knows no state, no entries and no comparison of texts; the table beside it builds a floor for each row of facts.

/** One row of facts; every field's first value is the plain one. */
export interface Facts {
  readonly act: 'load' | 'splice' | 'sweep';
  readonly slot: 'empty' | 'loaded' | 'not-in-setup' | 'no-such-place';
  /** The site's own number on the label. */
  readonly own: 'wanted' | 'alternate' | 'alternate-of-another-product' | 'other' | 'none';
  /** The maker's number on the label. `own-number`: the wanted site part's number in the maker's field. */
  readonly maker:
    | 'none'
    | 'listed-here'
    | 'by-hand'
    | 'listed-on-another-product'
    | 'of-another-part'
    | 'of-nobody'
    | 'own-number';
  /** Whether the running setup has a list of makers for the part. */
  readonly list: 'some' | 'none';
  readonly blocked: boolean;
  readonly life: 'unlimited' | 'enough' | 'short' | 'over' | 'baked-too-short';
  /** `passed-before`: before the reel was put on its slot; `passed-since`: after that, before today. */
  readonly expiry: 'none' | 'later' | 'passed-before' | 'passed-since';
  /** By the date code, where the line limits it; `no-rule`: it does not. */
  readonly age: 'no-rule' | 'young' | 'too-old-before' | 'too-old-since' | 'unreadable' | 'none';
  readonly feeder:
    | 'not-scanned'
    | 'fits'
    | 'too-wide'
    | 'wrong-step'
    | 'wrong-type'
    | 'on-another-slot'
    | 'on-the-lane-beside'
    | 'on-the-only-lane'
    | 'on-a-cart'
    | 'not-on-the-list';
  readonly quantity: 'told' | 'unknown';
  /** The reel's own id. `here`: the one that stands on this slot (where one does). */
  readonly id: 'new' | 'none' | 'here' | 'on-another-slot' | 'on-a-cart';
}

/** What is said of a row: every code, in order of the alphabet, and what becomes of the reel. */
export interface Opinion {
  readonly verdict: 'accepted' | 'held' | 'refused';
  readonly codes: readonly string[];
}

/** A refusal is a fact; a hold is a doubt that a lead decides; the rest are notes. */
const notes = ['by-alternate', 'by-supplier-part', 'mixed-lots'];
const doubts = [
  'part-contradicts',
  'alternate-not-approved',
  'supplier-part-not-approved',
  'maker-not-listed',
  'expired',
  'date-code-old',
  'date-code-unknown',
  'floor-life-short',
  'bake-short',
  'no-quantity',
  'feeder-unknown',
];

/** Whose part is on the reel, and what is said of its numbers. Null: nobody knows the part. */
function material({ own, maker, list }: Facts): { readonly part: string | null; readonly codes: string[] } {
  const isApproved = maker === 'listed-here' || (maker === 'by-hand' && list === 'none');
  const isForWanted = ['listed-here', 'by-hand', 'listed-on-another-product'].includes(maker);
  switch (own) {
    case 'wanted':
      if (maker === 'of-another-part') return { part: 'wanted', codes: ['part-contradicts'] };
      if (maker === 'none' || maker === 'own-number' || isApproved) return { part: 'wanted', codes: [] };
      // A product with a list takes makers of that list; one without takes the site's own number as it is.
      return { part: 'wanted', codes: list === 'some' ? ['maker-not-listed'] : [] };
    case 'alternate': {
      // No list is about the alternate; a number that stands for another part, the wanted one included, contradicts the label.
      const contradicts = isForWanted || maker === 'of-another-part' || maker === 'own-number';
      return { part: 'alternate', codes: ['by-alternate', ...(contradicts ? ['part-contradicts'] : [])] };
    }
    case 'alternate-of-another-product':
      return { part: 'stranger', codes: ['alternate-not-approved'] };
    case 'other':
      return { part: 'other', codes: ['wrong-part'] };
    case 'none':
      if (maker === 'none') return { part: null, codes: ['no-part'] };
      if (maker === 'own-number') return { part: 'wanted', codes: [] };
      if (maker === 'of-another-part') return { part: 'other', codes: ['wrong-part'] };
      if (maker === 'of-nobody') return { part: null, codes: ['supplier-part-not-approved'] };
      return { part: 'wanted', codes: [isApproved ? 'by-supplier-part' : 'maker-not-listed'] };
  }
}

/** What is said of the feeder: at a load and at a sweep; a splice leaves it where it is. */
function feeding({ feeder, act }: Facts): readonly string[] {
  if (act === 'splice') return [];
  const said: Readonly<Record<Facts['feeder'], readonly string[]>> = {
    'not-scanned': [],
    fits: [],
    'too-wide': ['feeder-width'],
    'wrong-step': ['feeder-pitch'],
    'wrong-type': ['feeder-type'],
    'on-another-slot': ['feeder-elsewhere'],
    'on-the-lane-beside': [],
    'on-the-only-lane': ['feeder-lanes'],
    'on-a-cart': act === 'load' ? ['feeder-on-cart'] : [],
    'not-on-the-list': ['feeder-unknown'],
  };
  return said[feeder];
}

/** Is the reel in hand the one that the log has on the slot? Only a loaded slot has one; without an id, part and lot say so. */
function isTheLoadedOne({ slot, id, own }: Facts): boolean {
  return slot === 'loaded' && (id === 'here' || (id === 'none' && own === 'wanted'));
}

function reelItself(facts: Facts): readonly string[] {
  const { act, slot, id, quantity } = facts;
  if (act === 'sweep') return slot === 'loaded' && !isTheLoadedOne(facts) ? ['not-the-loaded-reel'] : [];
  const said: string[] = [];
  const isHere = id === 'here' && slot === 'loaded';
  if (isHere) said.push('reel-here');
  if (id === 'on-another-slot') said.push('reel-elsewhere');
  if (id === 'on-a-cart' && act === 'load') said.push('reel-on-cart');
  // The log has counted what stands on a slot.
  if (quantity === 'unknown' && !isHere && id !== 'on-another-slot') said.push('no-quantity');
  // A reel without an id is taken with a label of the running lot, any other comes from another lot.
  if (act === 'splice' && slot === 'loaded' && id !== 'none' && id !== 'here') said.push('mixed-lots');
  return said;
}

function wear(facts: Facts, part: string | null): readonly string[] {
  const { act, life, expiry, age, slot } = facts;
  const isComing = act !== 'sweep';
  // What passed before the reel was put there was seen then, by whoever let it.
  const wasSeen = act === 'sweep' && isTheLoadedOne(facts);
  const said: string[] = [];
  if (life === 'over') said.push('floor-life-over');
  if (life === 'short' && isComing) said.push('floor-life-short');
  if (life === 'baked-too-short' && isComing) said.push('bake-short');
  if (expiry === 'passed-since' || (expiry === 'passed-before' && !wasSeen)) said.push('expired');
  const isJudged = part !== null && (slot === 'empty' || slot === 'loaded');
  if (isJudged && (age === 'too-old-since' || (age === 'too-old-before' && !wasSeen)))
    said.push('date-code-old');
  if (isJudged && isComing && (age === 'unreadable' || age === 'none')) said.push('date-code-unknown');
  return said;
}

/** The second opinion on a row of facts. */
export function secondOpinion(facts: Facts): Opinion {
  const { act, slot, blocked } = facts;
  const codes: string[] = [];
  const isWanted = slot === 'empty' || slot === 'loaded';
  const found = isWanted ? material(facts) : { part: null, codes: [] };
  if (slot === 'no-such-place') codes.push('unknown-slot');
  if (slot === 'not-in-setup') codes.push('slot-not-in-setup');
  if (act === 'load' && slot === 'loaded') codes.push('slot-loaded');
  if (act !== 'load' && slot === 'empty') codes.push('slot-empty');
  codes.push(...found.codes);
  if (isWanted) codes.push(...feeding(facts));
  if (blocked) codes.push('reel-blocked');
  codes.push(...reelItself(facts), ...wear(facts, found.part));
  const isDoubt = codes.some((code) => doubts.includes(code));
  const isRefused = codes.some((code) => !notes.includes(code) && !doubts.includes(code));
  return { verdict: isRefused ? 'refused' : isDoubt ? 'held' : 'accepted', codes: codes.sort() };
}
