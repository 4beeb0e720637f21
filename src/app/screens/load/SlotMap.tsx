// The line as places in a row. Status by mark, border and word of the legend; colour only repeats it.

import { type ReadonlySignal, useComputed } from '@preact/signals';
import { parseSlot } from '../../../../shared/setup/address.ts';
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

export function SlotMap({ banks, ...props }: SlotMapProps) {
  return (
    <div class="slotmap">
      {banks.map((bank) => (
        <Bank key={`${bank.machine}${bank.bank}`} bank={bank} {...props} />
      ))}
    </div>
  );
}

/** One bank; a scan of a slot draws its own bank anew and no other. */
function Bank({ bank, next, chosen, onChoose }: Omit<SlotMapProps, 'banks'> & { readonly bank: MapBank }) {
  const words = say(loadWords);
  const chosenHere = useComputed(() => {
    const address = chosen.value === null ? null : parseSlot(chosen.value);
    return address?.machine === bank.machine && address.bank === bank.bank ? chosen.value : null;
  }).value;
  return (
    <section class="bank">
      <h3>{words.banks(bank.machineName, bank.bankName)}</h3>
      <div class="places">
        {bank.places.map((place) => (
          <button
            type="button"
            key={place.slot}
            class={`place ${place.phase}${place.slot === next ? ' next' : ''}${place.slot === chosenHere ? ' chosen' : ''}${place.seen ? ' seen' : ''}`}
            style={{ gridColumn: `span ${Math.min(place.positions, 4)}` }}
            aria-label={`${place.slot}: ${place.seen ? words.legend.seen : words.legend[place.phase]}, ${place.position}`}
            onClick={() => onChoose(place.slot)}
          >
            <span>{place.position}</span>
            <b aria-hidden="true">{place.seen ? '◉' : marks[place.phase]}</b>
          </button>
        ))}
      </div>
    </section>
  );
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
