// What the plant's labels say: of a package, what is known of it now; of anything else its name. Pure: the floor and the moment in, texts out.

import { compareNatural, placeKey, sortByWalk } from '../../../shared/floor/address.ts';
import { placeOf } from '../../../shared/floor/fold-places.ts';
import { timesPrinted } from '../../../shared/floor/fold-print.ts';
import type { PayloadOf } from '../../../shared/floor/kinds.ts';
import { isMixed } from '../../../shared/floor/packs.ts';
import { comparePlaces } from '../../../shared/floor/place-order.ts';
import { slotEstimate } from '../../../shared/floor/remaining.ts';
import { slotsInUse, toldSlots } from '../../../shared/floor/slot-ranges.ts';
import { type FloorState, type Reel, slotKey, THE_PLANT } from '../../../shared/floor/state.ts';
import type { LabelSubject } from '../../../shared/floor/vocabulary.ts';
import type { FaceLine } from '../../../shared/labels/label-face.ts';
import { packageMessage } from '../../../shared/labels/package-label.ts';
import { labelMsls } from '../../../shared/labels/reading.ts';
import { moistureOfParts } from '../../../shared/moisture/reel-life.ts';
import { leftOn } from '../left-on.ts';
import { reelLifeText } from '../words/life-text.ts';
import { printWords } from '../words/print.ts';
import { formatCount, formatDay, say } from '../words/words.ts';

/** One label to print. */
export interface PlantLabel {
  readonly what: LabelSubject;
  /** By what its prints are counted: what the code says, but for a badge the person. */
  readonly name: string;
  /** What the code says. */
  readonly code: string;
  readonly lines: readonly FaceLine[];
}

/** From where and when labels are printed. */
export interface Printing {
  readonly floor: FloorState;
  readonly line: string | null;
  readonly nowMs: number;
  readonly zone: string;
  readonly isPractice: boolean;
}

/** What a label says of its print: that it is a reprint, or of the practice floor. */
function marksOf(what: LabelSubject, name: string, from: Printing): readonly string[] {
  const words = say(printWords).onLabel;
  const before = timesPrinted(from.floor, what, name);
  return [...(from.isPractice ? [words.practice] : []), ...(before > 0 ? [words.again(before + 1)] : [])];
}

/** A line of a label; none where there is nothing to say. */
function line(name: string, text: string | null, size: FaceLine['size'], keep = false): readonly FaceLine[] {
  return text === null || text === '' ? [] : [{ name, text, size, keep }];
}

/** The last line of a label; none where it has nothing to say. It is never left out. */
function lastLine(said: readonly string[]): readonly FaceLine[] {
  return line('printed', said.join(' · '), 'small', true);
}

/** A deviation as it is shown: never 0 where there is one. */
const spread = (sd: number) => formatCount(sd > 0 ? Math.max(1, Math.round(sd)) : 0);

/** The label of a package, under the id it has or is about to get. */
export function packageLabel(reel: Reel, id: string, from: Printing): PlantLabel {
  const { floor, nowMs, zone } = from;
  const words = say(printWords).onLabel;
  const { part, supplierPart, dateCode } = reel;
  const lots = lotsOn(floor, reel);
  // A code names one lot or none: what lies loose over another is of either.
  const lot = lots.length === 1 ? (lots[0] ?? null) : null;
  const { parts, sd } = leftOn(floor, reel);
  const quantity = parts === null ? null : Math.max(0, Math.round(parts));
  const moist = moistureOfParts(floor).get(part ?? '') ?? null;
  const life = reelLifeText(floor, reel.reel, { line: reel.at?.line ?? from.line, part: moist, nowMs, zone });
  const msl = labelMsls.find((level) => level === floor.exposures.get(reel.reel)?.msl) ?? null;
  const expires = floor.expiries.get(reel.reel) ?? null;
  const place = placeOf(reel);
  const left =
    quantity === null ? words.leftUnknown : words.left(formatCount(quantity), sd > 0 ? spread(sd) : null);
  return {
    what: 'reel',
    name: id,
    code: packageMessage({ reel: id, part, supplierPart, quantity, lot, dateCode, msl, expires }),
    lines: [
      ...line('id', id, 'id', true),
      ...line('part', part ?? supplierPart, 'large', true),
      ...line('left', left, 'plain', true),
      ...line('life', life?.text ?? null, 'plain', life?.tone === 'stop'),
      ...line('lot', lots.length === 0 ? null : words.lot(lots.join(' / ')), 'plain', lots.length > 1),
      ...line('dateCode', dateCode === null ? null : words.dateCode(dateCode), 'plain'),
      ...line('supplierPart', part === null ? null : supplierPart, 'plain'),
      ...line('expires', expires === null ? null : words.expires(expires), 'plain'),
      ...line('place', place === null ? null : words.place(place), 'plain'),
      ...lastLine([...marksOf('reel', id, from), words.printed(formatDay(nowMs, zone))]),
    ],
  };
}

/** The label of a jar of paste that gets its id by it. */
export function jarLabel(jar: PayloadOf<'jar.known'>, from: Printing): PlantLabel {
  const { jar: id, paste, lot, expires } = jar;
  const words = say(printWords).onLabel;
  const none = { supplierPart: null, quantity: null, dateCode: null, msl: null } as const;
  return {
    what: 'reel',
    name: id,
    code: packageMessage({ reel: id, part: paste, lot, expires, ...none }),
    lines: [
      ...line('id', id, 'id', true),
      ...line('part', paste, 'large', true),
      ...line('lot', lot === null ? null : words.lot(lot), 'plain'),
      ...line('expires', expires === null ? null : words.expires(expires), 'plain', true),
      ...lastLine([...marksOf('reel', id, from), words.printed(formatDay(from.nowMs, from.zone))]),
    ],
  };
}

/** The lots of a package; of one that was poured over others all that may be in the feeder, of one that was joined to others what still feeds too. */
function lotsOn(floor: FloorState, reel: Reel): readonly string[] {
  const slot = reel.at && floor.slots.get(slotKey(reel.at.line, reel.at.slot));
  const isLast = slot?.tapes.at(-1)?.reel === reel.reel;
  const first = !slot || isMixed(slot) ? 0 : slotEstimate(floor, slot).runningIndex;
  const tapes = slot && isLast ? slot.tapes.slice(first) : [reel];
  return [...new Set(tapes.flatMap(({ lot }) => lot ?? []))];
}

/** The label of a name: a slot, a feeder, a cart, a place, a station, or a person's badge. */
export function nameLabel(
  what: Exclude<LabelSubject, 'reel'>,
  named: { readonly name: string; readonly code: string; readonly about: string },
  from: Printing,
): PlantLabel {
  const { name, code, about } = named;
  const shown = what === 'badge' ? about : code;
  return {
    what,
    name,
    code,
    lines: [
      { name: 'name', text: shown, size: 'large', keep: true },
      {
        name: 'what',
        text: [
          say(printWords).subjects[what].one,
          what === 'badge' ? (from.floor.plant.get(THE_PLANT)?.name ?? '') : about,
        ]
          .filter((each) => each !== '')
          .join(' · '),
        size: 'plain',
        keep: false,
      },
      ...lastLine(marksOf(what, name, from)),
    ],
  };
}

/** A thing that a label can name. */
export interface Named {
  readonly name: string;
  readonly code: string;
  /** What stands under the name: the line of a slot, the person of a badge. */
  readonly about: string;
}

/** All that the plant knows of one kind: slots in walking order, places in the order of the store, the rest by name. */
export function namesOf(
  floor: FloorState,
  what: Exclude<LabelSubject, 'reel'>,
  line: string | null,
): readonly Named[] {
  const plain = (texts: Iterable<string>, compare = compareNatural): Named[] =>
    [...new Set(texts)].sort(compare).map((name) => ({ name, code: name, about: '' }));
  switch (what) {
    case 'slot':
      return slotsOf(floor, line);
    case 'feeder':
      return plain([
        ...floor.feeders.keys(),
        ...[...floor.slots.values()].flatMap(({ feeder }) => (feeder === null ? [] : [feeder])),
      ]);
    case 'cart':
      return plain(floor.carts.keys());
    case 'place':
      return plain(
        [...floor.reels.values()].flatMap(({ place }) => place ?? []),
        comparePlaces,
      );
    case 'badge':
      return (
        [...floor.people.values()]
          // What it says is drawn as it is printed: the log does not hold it.
          .map(({ person, name }) => ({ name: person, code: '', about: name }))
          .sort((a, b) => compareNatural(a.about, b.about))
      );
    case 'station':
      return plain(floor.stations.keys());
  }
}

/** Every slot that the line's record tells, that a setup of the line names or that stands loaded, in walking order. */
function slotsOf(floor: FloorState, line: string | null): readonly Named[] {
  const about = floor.lines.get(line ?? '')?.name ?? '';
  const told = toldSlots(floor.lines.get(line ?? '') ?? { machines: [] });
  // A place is one label, in the words of what asks for it first.
  const byPlace = new Map(
    [...slotsInUse(floor, line), ...told].reverse().map((slot) => [placeKey(slot), slot]),
  );
  const slots = [...byPlace.values()];
  return sortByWalk(slots, (slot) => slot).map((slot) => ({ name: slot, code: slot, about }));
}
