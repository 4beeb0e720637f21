// The whole line in small: a bank is one target for a finger, each slot in it a drawing. What needs hands stands taller and has a mark.

import { loadWords } from '../../words/load.ts';
import { formatCount, say } from '../../words/words.ts';
import {
  cellsOf,
  columnsOf,
  counted,
  countStandings,
  keyOfBank,
  type MapBank,
  progressOfBank,
  standingOn,
} from './model.ts';
import './overview.css';

interface OverviewProps {
  readonly banks: readonly MapBank[];
  readonly next: string | null;
  /** Key of the bank shown large. */
  readonly open: string;
  readonly onOpen: (bank: string) => void;
}

/** Banks of one machine stand below each other, machines side by side where there is room; those that the setup does not use are left out. */
export function Overview({ banks, next, open, onOpen }: OverviewProps) {
  const words = say(loadWords);
  const inUse = banks.filter(({ places }) => places.length > 0);
  const shown = inUse.length > 0 ? inUse : banks;
  const machines = [...new Set(shown.map(({ machine }) => machine))];
  return (
    <section class="plan" aria-label={words.overview} data-testid="overview">
      {machines.map((machine) => {
        const these = shown.filter((bank) => bank.machine === machine);
        return (
          <div class="machine" key={machine}>
            {these.map((bank) => (
              <BankCard
                key={keyOfBank(bank)}
                bank={bank}
                next={next}
                columns={columnsOf(these)}
                isOpen={keyOfBank(bank) === open}
                onOpen={onOpen}
              />
            ))}
          </div>
        );
      })}
    </section>
  );
}

interface BankCardProps extends Pick<OverviewProps, 'next' | 'onOpen'> {
  readonly bank: MapBank;
  readonly columns: number;
  readonly isOpen: boolean;
}

function BankCard({ bank, next, columns, isOpen, onOpen }: BankCardProps) {
  const words = say(loadWords);
  const { verified, wanted } = progressOfBank(bank);
  const counts = countStandings([bank]);
  const left = counted.flatMap((is) => {
    const count = counts.get(is) ?? 0;
    return count === 0 ? [] : [{ is, count: formatCount(count) }];
  });
  return (
    <button
      type="button"
      class={`bankcard${isOpen ? ' open' : ''}`}
      aria-pressed={isOpen}
      data-testid={`bank-${bank.machine}-${bank.bank}`}
      onClick={() => onOpen(keyOfBank(bank))}
    >
      <span class="title">
        <b translate={false}>{words.banks(bank.machineName, bank.bankName)}</b>
        <span>{words.loadedOf(formatCount(verified), formatCount(wanted))}</span>
        {left.map(({ is, count }) => (
          <span class="todo" key={is}>
            <i class={`cell ${is}`} aria-hidden="true" /> {words.counts[is](count)}
          </span>
        ))}
      </span>
      <span class="cells" style={{ gridTemplateColumns: `repeat(${columns}, minmax(0, 1fr))` }}>
        {cellsOf(bank).map(({ place, column, span, lane }) => (
          <i
            key={place.slot}
            data-cell={place.slot}
            class={`cell ${standingOn(place)}${place.slot === next ? ' next' : ''}`}
            style={{
              gridColumn: `${column} / span ${span}`,
              gridRow: 1,
              ...(lane === null
                ? {}
                : { width: `${100 / lane.of}%`, marginLeft: `${(100 * lane.at) / lane.of}%` }),
            }}
          />
        ))}
      </span>
    </button>
  );
}
