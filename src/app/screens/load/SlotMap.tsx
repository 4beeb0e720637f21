// The line as places in a row. Status by mark, border and word of the legend; colour only repeats it.

import { type ReadonlySignal, useComputed } from '@preact/signals';
import { useRef, useState } from 'preact/hooks';
import { loadWords } from '../../words/load.ts';
import { say } from '../../words/words.ts';
import type { MapBank, MapPlace } from './model.ts';
import './slotmap.css';

interface SlotMapProps {
  readonly banks: readonly MapBank[];
  readonly next: string | null;
  /** Slot on the desk. */
  readonly chosen: ReadonlySignal<string | null>;
  readonly onChoose: (slot: string) => void;
}

const marks: Readonly<Record<MapPlace['phase'], string>> = {
  verified: '✓',
  missing: '',
  held: '?',
  other: '↥',
  spare: '–',
};

/** Keys that move within the map; one Tab goes past it. */
const steps: Readonly<Record<string, number>> = { ArrowRight: 1, ArrowLeft: -1 };

export function SlotMap({ banks, ...props }: SlotMapProps) {
  const words = say(loadWords);
  const map = useRef<HTMLFieldSetElement>(null);
  const [at, setAt] = useState<string | null>(null);
  const slots = banks.flatMap((bank) => bank.places.map(({ slot }) => slot));
  const stop = [at, props.next].find((slot) => slot !== null && slots.includes(slot)) ?? slots[0] ?? null;
  const go = (slot: string | undefined) => {
    if (slot === undefined) return;
    setAt(slot);
    map.current?.querySelector<HTMLElement>(`[data-slot="${CSS.escape(slot)}"]`)?.focus();
  };
  return (
    <fieldset
      ref={map}
      class="slotmap"
      aria-label={words.mapName}
      onFocusIn={(event) => {
        const { slot } = (event.target as HTMLElement).dataset; // only elements get the focus
        if (slot !== undefined) setAt(slot);
      }}
      onKeyDown={(event) => {
        const moved = moveIn(banks, stop, event.key);
        if (moved === null) return;
        event.preventDefault();
        go(moved);
      }}
    >
      {banks.map((bank) => (
        <Bank key={`${bank.machine}${bank.bank}`} bank={bank} stop={stop} {...props} />
      ))}
    </fieldset>
  );
}

/** Where a key leads from a slot: along the walk, to the same place of the bank above or below, or to an end; null for other keys. */
export function moveIn(banks: readonly MapBank[], from: string | null, key: string): string | null {
  const rows = banks.map((bank) => bank.places.map(({ slot }) => slot)).filter((row) => row.length > 0);
  const all = rows.flat();
  const row = rows.findIndex((slots) => slots.includes(from ?? ''));
  const step = steps[key];
  if (step !== undefined) return all[all.indexOf(from ?? '') + step] ?? from;
  if (key === 'Home') return all[0] ?? null;
  if (key === 'End') return all.at(-1) ?? null;
  if (key !== 'ArrowDown' && key !== 'ArrowUp') return null;
  const other = rows[row + (key === 'ArrowDown' ? 1 : -1)];
  const column = rows[row]?.indexOf(from ?? '') ?? 0;
  return other?.[Math.min(column, other.length - 1)] ?? from;
}

/** One bank; a scan of a slot draws its own bank anew and no other. */
function Bank({
  bank,
  stop,
  next,
  chosen,
  onChoose,
}: Omit<SlotMapProps, 'banks'> & { readonly bank: MapBank; readonly stop: string | null }) {
  const words = say(loadWords);
  const chosenHere = useComputed(() =>
    bank.places.some(({ slot }) => slot === chosen.value) ? chosen.value : null,
  ).value;
  return (
    <section class="bank">
      <h2>{words.banks(bank.machineName, bank.bankName)}</h2>
      <div class="places">
        {bank.places.map((place) => (
          <button
            type="button"
            key={place.slot}
            data-slot={place.slot}
            tabIndex={place.slot === stop ? 0 : -1}
            class={`place ${place.phase}${place.slot === next ? ' next' : ''}${place.slot === chosenHere ? ' chosen' : ''}${place.seen ? ' seen' : ''}`}
            style={{ gridColumn: `span ${Math.min(place.positions, 4)}` }}
            aria-label={nameOf(place, place.seen ? words.legend.seen : words.legend[place.phase])}
            onClick={() => onChoose(place.slot)}
          >
            <span>{place.position ?? place.slot}</span>
            <b aria-hidden="true">{place.seen ? '◉' : marks[place.phase]}</b>
          </button>
        ))}
      </div>
    </section>
  );
}

/** The slot and how it stands, and the number that is read on it: who speaks to the tablet says what they see. */
function nameOf({ slot, position }: MapBank['places'][number], standing: string): string {
  return position === null ? `${slot}: ${standing}` : `${slot}: ${standing} · ${position}`;
}

/** What the marks mean. */
export function Legend() {
  const { legend } = say(loadWords);
  return (
    <p class="legend">
      <span>
        <i class="place verified">✓</i> {legend.verified}
      </span>
      <span>
        <i class="place missing" /> {legend.missing}
      </span>
      <span>
        <i class="place missing next" /> {legend.next}
      </span>
      <span>
        <i class="place held">?</i> {legend.held}
      </span>
      <span>
        <i class="place other">↥</i> {legend.other}
      </span>
      <span>
        <i class="place spare">–</i> {legend.spare}
      </span>
    </p>
  );
}
