// The part of the state that is about material: the plant's list of its parts, places with an air of their own, what is measured, jars of paste. Shapes only.

import type { Jar, PasteRule, PasteStretch } from './fold-paste.ts';
import type { PlaceAir } from './fold-store.ts';
import type { PayloadOf } from './kinds.ts';
import type { PartPrice } from './kinds-parts.ts';
import type { Made } from './made-of.ts';

/** What the plant's list says of a part, but for its package and makers: those stand in `parts` and in the approvals. */
export type ListedFacts = Readonly<
  Omit<
    PayloadOf<'parts.listed'>['parts'][number],
    'family' | 'pins' | 'bodyMm' | 'bodyXMm' | 'bodyYMm' | 'msl' | 'makers'
  >
> & { readonly source: string };

/** Whose value a line has measured before a reel feeds, by which meter and with which guard band, as it was last entered. */
export type ValueRule = Readonly<Omit<PayloadOf<'line.values-ruled'>, 'line' | 'passkey'>>;

/** A measurement of one part off a reel. */
export type ReelValue = Readonly<PayloadOf<'reel.measured'>>;

/** Material as the log says. */
export interface StoreState {
  /** Part -> what else the plant's list says of it. */
  readonly listed: Map<string, ListedFacts>;
  /** Part -> what one costs, and where that stands. */
  readonly prices: Map<string, PartPrice & { readonly source: string }>;
  /** Part -> a small picture of it, as a data URL. */
  readonly pictures: Map<string, string>;
  /** `makerKey` -> makers' numbers that the plant's list approves for a part in one product. */
  readonly productMakers: Map<string, readonly string[]>;
  /** Place of the store -> the air there, where somebody said: dry cabinets, ovens. */
  readonly placeAirs: Map<string, PlaceAir>;
  /** Line -> whose value is measured before a reel feeds, where somebody said. */
  readonly valueRules: Map<string, ValueRule>;
  /** Package -> what it was cut off from, and what was joined with it. */
  readonly madeOf: Map<string, Made>;
  /** Reel -> what its label said, of one that a station link has forgotten and that a block may yet name by that; none elsewhere. */
  readonly forgotten: Map<string, { readonly lot: string | null; readonly part: string | null }>;
  /** Reel -> since when it is seen to be used up, ms since 1970. */
  readonly usedUp: Map<string, number>;
  /** Marks of reels that were used up long ago, by the beginning of their hash (gone-reels.ts). */
  readonly goneReels: Map<string, string>;
  /** Reel -> what was measured of it last. */
  readonly values: Map<string, ReelValue>;
  /** Jar -> what was told of it. */
  readonly jars: Map<string, Jar>;
  /** Paste -> the plant's sheet of it. */
  readonly pasteRules: Map<string, PasteRule>;
  /** Line -> jars whose paste may be on its stencil, in the order in which they came. */
  readonly stencils: Map<string, readonly string[]>;
  /** Line -> jars that were on its stencil, run by run, oldest first. */
  readonly pasted: Map<string, readonly PasteStretch[]>;
}

/** The material before any entry. */
export function emptyStore(): StoreState {
  return {
    listed: new Map(),
    prices: new Map(),
    pictures: new Map(),
    productMakers: new Map(),
    placeAirs: new Map(),
    valueRules: new Map(),
    madeOf: new Map(),
    forgotten: new Map(),
    usedUp: new Map(),
    goneReels: new Map(),
    values: new Map(),
    jars: new Map(),
    pasteRules: new Map(),
    stencils: new Map(),
    pasted: new Map(),
  };
}
