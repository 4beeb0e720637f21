// Which labels did the camera pass over, each once, and where do those in view stand?
// Method: codes are carried from look to look as for one label (`gather.ts`). A code that says all alone (an envelope, the id of a
// known reel, a slot, a feeder) is a label by itself; the others are joined by place, and count once they are enough and have stayed
// the same for some looks. A label is known again by its texts, wherever it comes back.
// Refused: joining a code that says all with its neighbours, which in a full picture are other labels'; and following a label by its
// place alone, as a hand that pans moves on by more than a label between two looks.

import type { ScannedCode } from '../../../shared/labels/scan.ts';
import type { Quad } from '../../worker/decode-protocol.ts';
import {
  DEFAULT_GATHER_SETTINGS,
  EMPTY_GATHER,
  type GatherSettings,
  type GatherState,
  gatherAnswer,
  gatherFrame,
  type SeenCode,
  type Track,
} from './gather.ts';
import { boxOf } from './pan-place.ts';

export interface PanSettings {
  readonly gather: GatherSettings;
  /** Whether a code alone is a label: nothing beside it is taken for a part of it. */
  readonly isAlone: (code: ScannedCode) => boolean;
  /** Looks for which codes that stand together must have stayed the same to be one label; null where they are half of one. */
  readonly settleFor: (codes: readonly ScannedCode[]) => number | null;
}

/** Codes of one label need not lie as near as in the hand: in a full picture the neighbour's may lie nearer. */
const NEAR = 0.6;

/** What is not told. `claim`: two codes with one claim are of two labels. */
export function panSettings(
  parts: Pick<PanSettings, 'isAlone' | 'settleFor'> & Pick<GatherSettings, 'claim'>,
): PanSettings {
  const { claim, ...rest } = parts;
  return { ...rest, gather: { ...DEFAULT_GATHER_SETTINGS, linkFactor: NEAR, claim } };
}

/** Looks for which joined codes that say all must have stayed the same. */
export const SETTLE_LOOKS = 3;

/** A label that was read. */
export interface PannedLabel {
  /** The same for the same label each time it comes into view. */
  readonly key: string;
  readonly codes: readonly ScannedCode[];
  /** Looks in which it was read. */
  readonly looks: number;
  /** As many of it as were in view at once: two reels may carry one label where it has no id. */
  readonly copies: number;
  readonly firstMs: number;
}

/** A label in the picture. */
export interface LabelInView {
  /** Null while it is not read as a whole. */
  readonly key: string | null;
  readonly codes: readonly SeenCode[];
  readonly quad: Quad;
}

export interface PanState {
  readonly gathered: GatherState;
  /** Every label read so far, the first first. */
  readonly found: ReadonlyMap<string, PannedLabel>;
  readonly inView: readonly LabelInView[];
  /** Looks in a row in which joined codes stood together as they do now, by their texts. */
  readonly settling: ReadonlyMap<string, number>;
}

export const EMPTY_PAN: PanState = {
  gathered: EMPTY_GATHER,
  found: new Map(),
  inView: [],
  settling: new Map(),
};

/** A label that was not read for more looks than this is taken out of the picture. */
const STAY_LOOKS = 3;

/** One look further. `codes`: what was read in it, corners in its pixels. */
export function panFrame(
  state: PanState,
  codes: readonly SeenCode[],
  at: { readonly settings: PanSettings; readonly nowMs: number },
): PanState {
  const { settings, nowMs } = at;
  const gathered = gatherFrame(state.gathered, codes, settings.gather);
  const tracks = gathered.tracks.filter(
    ({ view, missed, frames, code }) =>
      view === gathered.view &&
      missed <= STAY_LOOKS &&
      (frames >= 2 || !settings.gather.doubtful.includes(code.format ?? '')),
  );
  const read = new Set(tracks.filter(({ missed }) => missed === 0).map(({ code }) => code));
  const settling = new Map<string, number>();
  const inView = labelsOf(gathered, tracks, settings).map((label): LabelInView => {
    const [only] = label;
    const key = keyOf(label);
    const quad = boxOf(label.map((code) => code.quad));
    if (only !== undefined && label.length === 1 && settings.isAlone(only))
      return { key, codes: label, quad };
    const looks = (state.settling.get(key) ?? 0) + 1;
    settling.set(key, looks);
    const wanted = settings.settleFor(label);
    return { key: wanted !== null && looks >= wanted ? key : null, codes: label, quad };
  });
  const named = inView.map((label) => ({ ...label, key: knownKey(label, state.found) }));
  return { gathered, found: foundIn(state.found, named, { read, nowMs }), inView: named, settling };
}

/** Its own key, or that of the label of which only a part was read this time; null where it may be of several. */
function knownKey({ key, codes }: LabelInView, found: PanState['found']): string | null {
  if (key === null || found.has(key)) return key;
  const texts = codes.map(({ text }) => text);
  const larger = [...found.values()].filter((label) =>
    texts.every((text) => label.codes.some((code) => code.text === text)),
  );
  return larger.length > 1 ? null : (larger[0]?.key ?? key);
}

/** What was found before, with what stands in view: each once. */
function foundIn(
  before: PanState['found'],
  inView: readonly LabelInView[],
  { read, nowMs }: { readonly read: ReadonlySet<SeenCode>; readonly nowMs: number },
): PanState['found'] {
  const found = new Map(before);
  const counted = new Set<string>();
  for (const { key, codes } of inView) {
    if (key === null || counted.has(key) || !codes.some((code) => read.has(code))) continue;
    counted.add(key);
    const copies = inView.filter((each) => each.key === key).length;
    // Read further, it is the label that was counted before with fewer of its codes.
    const smaller = [...found.values()].filter(
      (label) =>
        label.key !== key &&
        label.codes.length < codes.length &&
        label.codes.every((each) => codes.some(({ text }) => text === each.text)),
    );
    for (const each of smaller) found.delete(each.key);
    const known = [before.get(key), ...smaller].filter((each) => each !== undefined);
    found.set(key, {
      key,
      codes: before.get(key)?.codes ?? codes.map(plain),
      looks: 1 + known.reduce((sum, { looks }) => sum + looks, 0),
      copies: Math.max(copies, ...known.map((each) => each.copies)),
      firstMs: Math.min(nowMs, ...known.map(({ firstMs }) => firstMs)),
    });
  }
  return found;
}

/** The code without its place: a symbol that carries a part of a message still says which. */
function plain({ quad: _, ...code }: SeenCode): ScannedCode {
  return code;
}

function labelsOf(
  state: GatherState,
  tracks: readonly Track[],
  { gather, isAlone }: PanSettings,
): readonly (readonly SeenCode[])[] {
  const alone = tracks.filter(({ code }) => isAlone(code));
  const others = tracks.filter((track) => !alone.includes(track));
  const said = gatherAnswer({ ...state, tracks: others }, gather, true);
  const joined = said.kind === 'nothing' ? [] : said.kind === 'several' ? said.labels : [said.label];
  // The same facts often stand beside the code that says all, each as a code of its own.
  const isRepeated = (codes: readonly SeenCode[]) =>
    alone.some(
      ({ code: whole }) => codes.filter(({ text }) => whole.text.includes(text)).length * 2 > codes.length,
    );
  return [
    ...alone.map(({ code }) => [code]),
    ...joined.flatMap(({ codes }) => (isRepeated(codes) ? [] : [codes])),
  ];
}

function keyOf(codes: readonly ScannedCode[]): string {
  return codes
    .map(({ text }) => text)
    .sort()
    .join('\n');
}
