// The line on one screen: every bank in small, and one bank large. A tap on a bank in small opens it; arrow keys go on from bank to
// bank. Status by mark, border and word; colour only repeats it.

import { type ReadonlySignal, useComputed } from '@preact/signals';
import type { ComponentChildren } from 'preact';
import { useLayoutEffect, useRef, useState } from 'preact/hooks';
import { feederTypeWords } from '../../words/feeder-types.ts';
import { loadWords } from '../../words/load.ts';
import { say } from '../../words/words.ts';
import {
  bankWith,
  keyOfBank,
  lanesOf,
  type MapBank,
  type MapPlace,
  nameInBank,
  needsHands,
  type Standing,
  standingOn,
} from './model.ts';
import { Overview } from './Overview.tsx';
import './slotmap.css';

interface SlotMapProps {
  readonly banks: readonly MapBank[];
  readonly next: string | null;
  /** Slot on the desk. */
  readonly chosen: ReadonlySignal<string | null>;
  readonly onChoose: (slot: string) => void;
  /** What stands between the line in small and the open bank. */
  readonly children?: ComponentChildren;
}

/** The mark of each standing, the same in small and large. */
export const marks: Readonly<Record<Standing | 'next', string>> = {
  verified: '✓',
  missing: '',
  held: '?',
  other: '↥',
  kept: '=',
  spare: '–',
  seen: '◉',
  next: '▸',
};

/** Trays that stand above each other before the next column begins. */
const MOST_LEVELS = 6;
/** Lanes that stand side by side before the next row begins. */
const MOST_BESIDE = 4;

/** Keys that move within the map; one Tab goes past it. */
const steps: Readonly<Record<string, number>> = { ArrowRight: 1, ArrowLeft: -1 };

/** The bank to show where nobody chose one: the slot on the desk, the next, else one that still needs hands. */
function bankToFollow(banks: readonly MapBank[], slot: string | null, next: string | null): string | null {
  const needs = banks.find(({ places }) => places.some(needsHands));
  const bank = bankWith(banks, slot) ?? bankWith(banks, next) ?? needs ?? banks[0];
  return bank ? keyOfBank(bank) : null;
}

export function SlotMap({ banks, children, ...props }: SlotMapProps) {
  const { next, chosen } = props;
  const map = useRef<HTMLDivElement>(null);
  const [at, setAt] = useState<string | null>(null);
  const [asked, setAsked] = useState<{ readonly bank: string; readonly over: string | null } | null>(null);
  const follow = useComputed(() => bankToFollow(banks, chosen.value, next)).value;
  // Who looked elsewhere is brought back once the work goes on in another bank.
  const key = asked !== null && asked.over === follow ? asked.bank : follow;
  const open = banks.find((bank) => keyOfBank(bank) === key) ?? banks[0];
  const going = useRef<string | null>(null);
  useLayoutEffect(() => {
    const slot = going.current;
    going.current = null;
    if (slot !== null) map.current?.querySelector<HTMLElement>(`[data-slot="${CSS.escape(slot)}"]`)?.focus();
  });
  if (!open) return null;
  const slots = open.places.map(({ slot }) => slot);
  const stop = [at, next].find((slot) => slot !== null && slots.includes(slot)) ?? slots[0] ?? null;
  return (
    <div
      ref={map}
      class="stack"
      onFocusIn={(event) => {
        const { slot } = (event.target as HTMLElement).dataset; // only elements get the focus
        if (slot !== undefined) setAt(slot);
      }}
    >
      <Overview
        banks={banks}
        next={next}
        open={keyOfBank(open)}
        onOpen={(bank) => setAsked({ bank, over: follow })}
      />
      {children}
      <OpenBank
        {...props}
        bank={open}
        stop={stop}
        onMove={(pressed) => {
          const moved = moveIn(banks, stop, pressed);
          const bank = bankWith(banks, moved);
          if (moved === null || !bank) return false;
          setAt(moved);
          setAsked({ bank: keyOfBank(bank), over: follow });
          going.current = moved;
          return true;
        }}
      />
    </div>
  );
}

/**
 * Where a key leads from a slot: along the walk, to the same place of the bank above or below, or to an end; null for other keys. Trays of a lift
 * lie above each other: up and down lead from one to the next.
 */
export function moveIn(banks: readonly MapBank[], from: string | null, key: string): string | null {
  const rows = banks.map((bank) => bank.places.map(({ slot }) => slot)).filter((row) => row.length > 0);
  const all = rows.flat();
  const row = rows.findIndex((slots) => slots.includes(from ?? ''));
  const step = steps[key];
  if (step !== undefined) return all[all.indexOf(from ?? '') + step] ?? from;
  if (key === 'Home') return all[0] ?? null;
  if (key === 'End') return all.at(-1) ?? null;
  if (key !== 'ArrowDown' && key !== 'ArrowUp') return null;
  const along = key === 'ArrowDown' ? 1 : -1;
  const within = bankWith(banks, from)?.hasTrays
    ? rows[row]?.[(rows[row]?.indexOf(from ?? '') ?? 0) + along]
    : undefined;
  if (within !== undefined) return within;
  const other = rows[row + along];
  const column = rows[row]?.indexOf(from ?? '') ?? 0;
  return other?.[Math.min(column, other.length - 1)] ?? from;
}

interface OpenBankProps extends Omit<SlotMapProps, 'banks' | 'children'> {
  readonly bank: MapBank;
  /** The slot that Tab comes to. */
  readonly stop: string | null;
  /** A key was pressed; true where it led to a slot. */
  readonly onMove: (key: string) => boolean;
}

/** The bank that is looked at, large enough for a finger; a scan of a slot draws it anew and nothing else. */
function OpenBank({ bank, stop, next, chosen, onChoose, onMove }: OpenBankProps) {
  const words = say(loadWords);
  const chosenHere = useComputed(() =>
    bank.places.some(({ slot }) => slot === chosen.value) ? chosen.value : null,
  ).value;
  return (
    <section class="bank" data-testid="open-bank">
      <h2 translate={false}>{words.banks(bank.machineName, bank.bankName)}</h2>
      <p class="reach">⚠ {words.caution}</p>
      {bank.hasTrays && <p class="soft of-trays">{words.trays}</p>}
      <fieldset
        class={`slotmap places${bank.hasTrays ? ' lift' : ''}`}
        style={bank.hasTrays ? { '--levels': Math.min(bank.places.length, MOST_LEVELS) } : {}}
        aria-label={words.mapName}
        onKeyDown={(event) => {
          if (onMove(event.key)) event.preventDefault();
        }}
      >
        {lanesOf(bank.places).map((lanes) => {
          const tiles = lanes.map((place) => (
            <Tile
              key={place.slot}
              place={lanes.length === 1 ? place : { ...place, positions: 1 }}
              isNext={place.slot === next}
              isChosen={place.slot === chosenHere}
              isStop={place.slot === stop}
              onChoose={onChoose}
            />
          ));
          return lanes.length === 1 ? tiles : <Lanes lanes={lanes}>{tiles}</Lanes>;
        })}
      </fieldset>
    </section>
  );
}

/** Lanes of one feeder: its positions in one frame, so that they are seen to come and go together. */
function Lanes(props: { readonly lanes: readonly MapPlace[]; readonly children: ComponentChildren }) {
  const { lanes, children } = props;
  const position = lanes[0]?.position ?? '';
  const feeder = lanes.find(({ loaded }) => loaded?.feeder != null)?.loaded?.feeder ?? null;
  const name = `${position} · ${say(feederTypeWords).lanesAre(lanes.length)}`;
  return (
    // biome-ignore lint/a11y/useSemanticElements: a fieldset would bring a border and a legend of its own
    <div
      class="lanes"
      role="group"
      aria-label={name}
      data-testid={`lanes-${position}`}
      style={{ '--lanes': Math.min(lanes.length, MOST_BESIDE) }}
    >
      <small>
        {name}
        {feeder !== null && (
          <span class="code" translate={false}>
            {' '}
            {feeder}
          </span>
        )}
      </small>
      {children}
    </div>
  );
}

interface TileProps {
  readonly place: MapPlace;
  readonly isNext: boolean;
  readonly isChosen: boolean;
  readonly isStop: boolean;
  readonly onChoose: (slot: string) => void;
}

/** One slot of the open bank: its number, its mark, the part that it wants. */
function Tile({ place, isNext, isChosen, isStop, onChoose }: TileProps) {
  const { legend, inTurn, keptFor } = say(loadWords);
  const standing = standingOn(place);
  const stands = place.phase === 'kept' && place.keptFor ? keptFor(place.keptFor) : legend[standing];
  const turn = place.progress?.wanted.turn;
  const part = place.progress?.wanted.part ?? place.loaded?.tapes.at(-1)?.part ?? null;
  return (
    <button
      type="button"
      data-slot={place.slot}
      tabIndex={isStop ? 0 : -1}
      class={`place ${place.phase}${isNext ? ' next' : ''}${isChosen ? ' chosen' : ''}${place.seen ? ' seen' : ''}`}
      style={{ gridColumn: `span ${Math.min(place.positions, 2)}` }}
      aria-label={nameOf(place, isNext ? `${stands}, ${legend.next}` : stands, part)}
      onClick={() => onChoose(place.slot)}
    >
      <span class="head">
        <span>{nameInBank(place)}</span>
        <b aria-hidden="true">{isNext ? marks.next : marks[standing]}</b>
      </span>{' '}
      {part !== null && <span class="code part">{part}</span>}{' '}
      {turn !== undefined && <small class="turn">{inTurn(turn)}</small>}
      {place.phase === 'kept' && <small class="turn">{stands}</small>}
    </button>
  );
}

/** The slot and how it stands, and what is read on it: who speaks to the tablet says what they see. */
function nameOf(place: MapPlace, standing: string, part: string | null): string {
  const turn = place.progress?.wanted.turn;
  const shown = [
    place.position === null ? '' : nameInBank(place),
    part ?? '',
    turn === undefined ? '' : say(loadWords).inTurn(turn),
  ].filter((each) => each !== '');
  // For which lane it is kept stands on it.
  if (place.phase === 'kept') return `${place.slot}: ${[...shown, standing].join(' ')}`;
  return shown.length === 0
    ? `${place.slot}: ${standing}`
    : `${place.slot}: ${standing} · ${shown.join(' ')}`;
}
