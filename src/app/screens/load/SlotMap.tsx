// The line as places in a row. Status by mark, border and word of the legend; colour only repeats it.

import { loadWords } from '../../words/load.ts';
import { say } from '../../words/words.ts';
import type { MapBank, MapPlace } from './model.ts';
import './slotmap.css';

interface SlotMapProps {
  readonly banks: readonly MapBank[];
  readonly next: string | null;
  readonly chosen: string | null;
  readonly onChoose: (slot: string) => void;
}

const marks: Readonly<Record<MapPlace['phase'], string>> = {
  verified: '✓',
  missing: '',
  held: '?',
  other: '↥',
  unused: '',
};

export function SlotMap({ banks, next, chosen, onChoose }: SlotMapProps) {
  const words = say(loadWords);
  return (
    <div class="slotmap">
      {banks.map((bank) => (
        <section key={`${bank.machine}${bank.bank}`} class="bank">
          <h3>{words.banks(bank.machineName, bank.bankName)}</h3>
          <div class="places">
            {bank.places.map((place) => (
              <button
                type="button"
                key={place.slot}
                class={`place ${place.phase}${place.slot === next ? ' next' : ''}${place.slot === chosen ? ' chosen' : ''}${place.seen ? ' seen' : ''}`}
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
      ))}
    </div>
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
    </p>
  );
}
