// What a find says of itself: its name, the state that matters, and where a tap goes. Pure but for the words.

import { blockOn } from '../../../../shared/floor/blocks.ts';
import { blockReasons, slotsWanting } from '../../../../shared/floor/fits.ts';
import { placeOf } from '../../../../shared/floor/fold-places.ts';
import { reelOf } from '../../../../shared/floor/gone-reels.ts';
import { isEntryKind } from '../../../../shared/floor/kinds.ts';
import { lineEver } from '../../../../shared/floor/lanes.ts';
import { hasOwnId } from '../../../../shared/floor/reel-id.ts';
import { type SlotAnswer, slotLooker } from '../../../../shared/floor/slot-right.ts';
import { type FloorState, type Reel, type SlotState, slotKey } from '../../../../shared/floor/state.ts';
import { type Verdict, verdicts } from '../../../../shared/floor/vocabulary.ts';
import { wantedOn } from '../../../../shared/floor/wanted.ts';
import type { Entry } from '../../../../shared/log/entry.ts';
import { textsOfEntry } from '../../../../shared/search/entry-things.ts';
import type { Thing } from '../../../../shared/search/floor-things.ts';
import { leftOn } from '../../left-on.ts';
import { reelName } from '../../reel-name.ts';
import { address } from '../../router.ts';
import { verdictSigns, verdictTones } from '../../ui/Shape.tsx';
import { visible } from '../../ui/visible.ts';
import { loadWords } from '../../words/load.ts';
import { logWords } from '../../words/log.ts';
import { searchWords } from '../../words/search.ts';
import { shellWords } from '../../words/shell.ts';
import { stockWords } from '../../words/stock.ts';
import { formatCount, formatDay, say } from '../../words/words.ts';

/** A state as shape, word and colour. */
export interface Mark {
  readonly tone: 'go' | 'care' | 'stop' | 'plain';
  readonly sign: string;
  readonly text: string;
}

/** A find as it is drawn. */
export interface Told {
  readonly name: string;
  /** True where the name is a code rather than words. */
  readonly isCode: boolean;
  /** Codes and sentences beside it. */
  readonly facts: readonly string[];
  readonly marks: readonly Mark[];
  readonly href: string;
  /** The line that the tap changes to; null where the place is of no line. */
  readonly line: string | null;
}

/** What finds are told from. */
export interface Behind {
  readonly floor: FloorState;
  readonly entries: ReadonlyMap<string, Entry>;
  readonly zone: string;
}

const blockedMark = (): Mark => ({ tone: 'stop', sign: '✕', text: say(stockWords).blocked });
const verdictMark = (verdict: Verdict): Mark => ({
  tone: verdictTones[verdict],
  sign: verdictSigns[verdict],
  text: say(logWords).verdicts[verdict],
});
const facts = (...texts: readonly (string | null | undefined)[]): readonly string[] =>
  texts.filter((text): text is string => text != null && text !== '');

/** Tells a find; null where it is gone from the floor since it was made ready. */
export function tell(thing: Thing, behind: Behind): Told | null {
  const { floor } = behind;
  switch (thing.kind) {
    case 'reel':
      return tellReel(floor, thing.reel);
    case 'slot':
      return tellSlot(floor, thing);
    case 'part':
      return code(thing.part, reelsAndSlots(floor, thing.part), address('stock', 'reels', thing.part), [
        ...markIf(blockOn(floor, { reel: null, lot: null, part: thing.part }) !== null),
      ]);
    case 'supplier-part':
      return code(
        thing.supplierPart,
        [...(floor.approvals.get(thing.supplierPart) ?? [])],
        address('stock', 'reels', thing.supplierPart),
      );
    case 'lot': {
      const reels = [...floor.reels.values()].filter(({ lot }) => lot === thing.lot);
      const isBlocked = [...floor.blocks.values()].some(({ lot }) => lot === thing.lot);
      const parts = new Set(reels.flatMap(({ part }) => part ?? []));
      const href = address('log', 'trace', 'lot', thing.lot);
      return code(thing.lot, [...parts, say(stockWords).reels(reels.length)], href, markIf(isBlocked));
    }
    case 'panel':
      return code(
        thing.serial,
        panelFacts(floor, thing.serial),
        address('log', 'trace', 'panel', thing.serial),
      );
    case 'feeder':
      return tellFeeder(floor, thing.feeder);
    case 'person':
      return tellPerson(floor, thing.person);
    case 'setup':
      return tellSetup(floor, thing.setup);
    case 'entry':
      return tellEntry(behind, thing.entry);
    default:
      return thing satisfies never;
  }
}

function code(name: string, told: readonly string[], href: string, marks: readonly Mark[] = []): Told {
  return { name: visible(name), isCode: true, facts: told.map(visible), marks, href, line: null };
}

const markIf = (isBlocked: boolean): readonly Mark[] => (isBlocked ? [blockedMark()] : []);

function tellReel(floor: FloorState, id: string): Told | null {
  const reel = reelOf(floor, id);
  if (!reel) return null;
  const words = say(stockWords);
  const { parts } = leftOn(floor, reel);
  const isEmpty = parts !== null && Math.round(parts) === 0;
  const left =
    parts === null ? words.unknown : isEmpty ? words.empty : say(searchWords).left(formatCount(parts));
  return {
    name: visible(reelName(id)),
    isCode: hasOwnId(id),
    facts: facts(reel.part ?? reel.supplierPart, whereOf(floor, reel, isEmpty), left).map(visible),
    marks: markIf(blockReasons(floor, reel).length > 0),
    href: address('stock', 'reel', id),
    line: null,
  };
}

function whereOf(floor: FloorState, reel: Reel, isEmpty: boolean): string | null {
  const words = say(stockWords);
  if (reel.at) return [words.onSlot(reel.at.slot), otherLine(floor, reel.at.line)].filter(Boolean).join(', ');
  return isEmpty ? null : (placeOf(reel) ?? words.offLine);
}

/** A line's name, where there are several. */
function otherLine(floor: FloorState, line: string): string {
  return floor.lines.size > 1 ? (floor.lines.get(line)?.name ?? line) : '';
}

const slotMarks: Readonly<Record<SlotAnswer, Pick<Mark, 'tone' | 'sign'>>> = {
  right: { tone: 'go', sign: '✓' },
  empty: { tone: 'plain', sign: '–' },
  held: { tone: 'care', sign: '?' },
  'other-part': { tone: 'stop', sign: '✕' },
  'wrong-feeder': { tone: 'stop', sign: '✕' },
  blocked: { tone: 'stop', sign: '✕' },
};

/** How a slot stands for the setup of its line. */
function slotMark(floor: FloorState, line: string, slot: string): Mark {
  const words = say(searchWords);
  const setup = floor.chosen.get(line) ?? '';
  const wanted = wantedOn(floor, setup, slot);
  if (wanted === null) return { tone: 'plain', sign: '–', text: words.notWanted };
  const { is, keptFor } = slotLooker(floor, line, setup)(wanted);
  return keptFor === null
    ? { ...slotMarks[is], text: words.slotIs[is] }
    : { tone: 'care', sign: '=', text: say(loadWords).keptFor(floor.lines.get(keptFor)?.name ?? keptFor) };
}

function tellSlot(floor: FloorState, { line, slot }: { readonly line: string; readonly slot: string }): Told {
  const loaded = floor.slots.get(slotKey(line, slot));
  const tape = loaded?.tapes.at(-1);
  const wanted = wantedOn(floor, floor.chosen.get(line) ?? '', slot)?.part;
  const reel = tape && hasOwnId(tape.reel) ? tape.reel : null;
  return {
    name: visible(slot),
    isCode: true,
    facts: facts(otherLine(floor, line), tape?.part || wanted, reel, loaded?.feeder).map(visible),
    marks: [slotMark(floor, line, slot)],
    href: address('load', slot),
    line,
  };
}

function tellFeeder(floor: FloorState, feeder: string): Told {
  const at: SlotState | undefined = [...floor.slots.values()].find((slot) => slot.feeder === feeder);
  const words = say(stockWords);
  if (!at) return code(feeder, [words.offLine], address('plant', 'parts', 'feeders'));
  const told = facts(words.onSlot(at.slot), otherLine(floor, at.line), at.tapes.at(-1)?.part);
  return { ...code(feeder, told, address('load', at.slot)), line: at.line };
}

function tellPerson(floor: FloorState, id: string): Told | null {
  const person = floor.people.get(id);
  if (!person) return null;
  return {
    name: visible(person.name),
    isCode: false,
    facts: [say(shellWords).roles[person.role]],
    marks: [],
    href: address('log', 'who', id),
    line: null,
  };
}

function tellSetup(floor: FloorState, id: string): Told | null {
  const setup = floor.setups.get(id);
  if (!setup) return null;
  const words = say(shellWords);
  const isChosen = floor.chosen.get(setup.line) === id;
  return {
    name: visible(setup.product),
    isCode: false,
    facts: facts(words.side[setup.side], words.revision(setup.revision), otherLine(floor, setup.line)).map(
      visible,
    ),
    marks: isChosen ? [{ tone: 'go', sign: '✓', text: say(searchWords).chosen }] : [],
    href: address('plant', 'setups'),
    line: null,
  };
}

function tellEntry({ floor, entries, zone }: Behind, id: string): Told | null {
  const entry = entries.get(id);
  if (!entry) return null;
  const words = say(logWords);
  const verdict = verdicts.find((each) => each === entry.payload['verdict']);
  return {
    name: isEntryKind(entry.kind) ? words.kinds[entry.kind] : entry.kind,
    isCode: false,
    facts: facts(
      formatDay(Date.parse(entry.at), zone),
      floor.people.get(entry.who ?? '')?.name,
      ...textsOfEntry(entry).slice(0, 4),
    ).map(visible),
    marks: verdict === undefined ? [] : [verdictMark(verdict)],
    href: address('log', 'entry', ...id.split('/')),
    line: null,
  };
}

function reelsAndSlots(floor: FloorState, part: string): readonly string[] {
  const reels = [...floor.reels.values()].filter((reel) => reel.part === part).length;
  const slots = new Set<string>();
  for (const [line, setup] of floor.chosen)
    for (const slot of slotsWanting(floor, setup, part))
      slots.add([slot, otherLine(floor, line)].filter(Boolean).join(', '));
  return [say(stockWords).reels(reels), ...[...slots].slice(0, 3)];
}

function panelFacts(floor: FloorState, serial: string): readonly string[] {
  const counted = [...floor.codes].find(([key, { run }]) => key === `${run}#${serial}`)?.[1];
  const run = floor.runs.get(counted?.run ?? '');
  return run ? facts(run.product, lineEver(floor, run.line)?.name) : [];
}
