// What the store must bring for the run, and how long each slot's reels last.

import { placeOf } from '../../../../shared/floor/fold-places.ts';
import type { PickLine } from '../../../../shared/forecast/outlook.ts';
import type { ReelOnHand, Supply } from '../../../../shared/outlook/supply.ts';
import { useApp } from '../../app.ts';
import { LongRows } from '../../long-rows.tsx';
import { reelName } from '../../reel-name.ts';
import { feedWords } from '../../words/feeds.ts';
import { stockWords } from '../../words/stock.ts';
import { formatCount, formatSpan, formatTime, say } from '../../words/words.ts';

interface SupplyProps {
  /** Null where nothing is being built. */
  readonly supply: Supply | 'asked' | null;
  readonly zone: string;
  /** What every moment hangs on, such as a pace that nobody counted; null where on nothing. */
  readonly hold: string | null;
}

/** What to bring, in walking order, and what lies at the line already. */
export function Bring({ supply, zone, hold }: SupplyProps) {
  const words = say(stockWords);
  if (!supply) return <p class="empty">{words.noRun}</p>;
  if (supply === 'asked') return <p class="empty">{words.computing}</p>;
  const { onHand, picks } = supply;
  if (picks.length === 0 && onHand.length === 0) return <p class="empty">{words.noPick}</p>;
  return (
    <section class="stack" data-testid="pick-list">
      <div class="pick-head">
        <h2>{words.pickTitle}</h2>
        <p class="soft">{words.pickHelp}</p>
      </div>
      <div class="picks">
        <LongRows
          items={[...onHand, ...picks]}
          keyOf={(row) => ('reel' in row ? row.reel.reel : `${row.place}\u0000${row.part}`)}
          draw={(row) =>
            'reel' in row ? (
              <OnHandRow key={row.reel.reel} of={row} />
            ) : (
              <PickRow key={`${row.place}\u0000${row.part}`} pick={row} zone={zone} hold={hold} />
            )
          }
        />
      </div>
    </section>
  );
}

/** A reel that lies at the line or in the store already. */
function OnHandRow({ of: { reel, slot } }: { readonly of: ReelOnHand }) {
  return (
    <div class="pick onhand">
      <span class="tick" aria-hidden="true" />
      <b class="code part">{reel.part}</b>
      <b class="code">
        {reelName(reel.reel)}
        {placeOf(reel) !== null && (
          <span class="chip plain" translate={false}>
            {placeOf(reel)}
          </span>
        )}
      </b>
      <span>
        {say(stockWords).onHand} {formatCount(reel.count ?? 0)}
      </span>
      <span class="code slots">{slot}</span>
    </div>
  );
}

interface PickRowProps extends Pick<SupplyProps, 'zone' | 'hold'> {
  readonly pick: PickLine;
}

function PickRow({ pick, zone, hold }: PickRowProps) {
  return (
    <div class="pick" data-testid={`pick-${pick.part}`}>
      <span class="tick" aria-hidden="true" />
      <b class="code part">{pick.part}</b>
      <b>
        {reelsOf(pick)}
        {pick.place !== '' && (
          <span class="chip plain code" translate={false}>
            {pick.place}
          </span>
        )}
      </b>
      <PickBy byMs={pick.byMs} zone={zone} hold={hold} />
      <span class="code slots">{pick.slots.join(' ')}</span>
    </div>
  );
}

/** By when, which moves on with the clock. */
function PickBy({ byMs, zone, hold }: Pick<SupplyProps, 'zone' | 'hold'> & { readonly byMs: number }) {
  const words = say(stockWords);
  const inSeconds = (byMs - useApp().nowMs.value) / 1000;
  return (
    <span class={inSeconds < 1800 ? 'soon' : ''}>
      {inSeconds <= 60 ? words.bySoon : words.by(formatTime(byMs, zone), formatSpan(inSeconds))}
      {hold !== null && <small class="hold">{hold}</small>}
    </span>
  );
}

/** How many to bring, in the words of what it comes in. */
function reelsOf({ reels, comesIn = 'tape' }: PickLine): string {
  return comesIn === 'tape' ? say(stockWords).reels(reels) : say(feedWords).picks[comesIn](reels);
}

/** Slot by slot, when each of its reels ends. */
export function ReelByReel({ supply, zone, hold }: SupplyProps) {
  const words = say(stockWords);
  if (!supply) return <p class="empty">{words.noRun}</p>;
  if (supply === 'asked') return <p class="empty">{words.computing}</p>;
  if (supply.slots.length === 0) return <p class="empty">{words.noPick}</p>;
  return (
    <section class="stack" data-testid="reel-outlook">
      <p class="soft">{words.outlookHelp}</p>
      {supply.slots.some(({ slot }) => slot.estimate.splice.from === 'none') && (
        <p class="soft" data-testid="splices-cost-none">
          {words.splicesCostNone}
        </p>
      )}
      <div class="picks">
        <LongRows
          items={supply.slots}
          keyOf={({ slot }) => slot.slot}
          draw={(of) => <ChainRow key={of.slot.slot} of={of} zone={zone} hold={hold} />}
        />
      </div>
    </section>
  );
}

interface ChainRowProps extends Pick<SupplyProps, 'zone' | 'hold'> {
  readonly of: Supply['slots'][number];
}

/** The reels of one slot, one after the other, and what is to be brought behind them. */
function ChainRow({ of, zone, hold }: ChainRowProps) {
  const words = say(stockWords);
  const { slot, ends, lasts, bring } = of;
  return (
    <div class="chain">
      <div>
        <b class="code">{slot.slot}</b>
        <span class="code soft">{slot.wanted.part}</span>
      </div>
      <ol>
        {ends.map((end) => (
          <li key={end.reel ?? ''}>
            <span class={end.reel === null ? 'soft' : 'code'}>
              {end.reel === null ? words.now : reelName(end.reel)}
            </span>{' '}
            {end.outlasts
              ? words.lasts
              : words.runsOut(
                  formatTime(end.runOutMs.expected, zone),
                  formatTime(end.runOutMs.early, zone),
                  formatTime(end.runOutMs.late, zone),
                )}
            {!end.outlasts && hold !== null && ` · ${hold}`}
          </li>
        ))}
        {!lasts && bring && (
          <li class="needs">
            {words.needs(formatCount(bring.parts), formatTime(bring.byMs, zone))}
            {hold !== null && ` · ${hold}`}
          </li>
        )}
      </ol>
    </div>
  );
}
