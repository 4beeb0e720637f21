// Reels: what the store must bring for the run, how long each slot's reels last, every reel that the log knows, goods-in, what lies where,
// what is blocked.

import { useEffect, useLayoutEffect, useRef, useState } from 'preact/hooks';
import { isPlaceInUse, placeOf } from '../../../../shared/floor/fold-places.ts';
import { comparePlaces } from '../../../../shared/floor/place-order.ts';
import type { PickLine } from '../../../../shared/forecast/outlook.ts';
import type { LabelReading } from '../../../../shared/labels/reading.ts';
import type { Scan } from '../../../../shared/labels/scan.ts';
import type { Supply } from '../../../../shared/outlook/supply.ts';
import { useApp, useFloor } from '../../app.ts';
import { FindButton } from '../../frame/FindButton.tsx';
import { listOfSupply } from '../../frame/find-lists.ts';
import { holdText } from '../../frame/hold-text.ts';
import type { Watch } from '../../outlook/watch.ts';
import { reelName } from '../../reel-name.ts';
import { place } from '../../router.ts';
import { Button } from '../../ui/Button.tsx';
import { Icon } from '../../ui/Icon.tsx';
import { feedWords } from '../../words/feeds.ts';
import { stockWords } from '../../words/stock.ts';
import { formatCount, formatDay, formatSpan, formatTime, say } from '../../words/words.ts';
import { Blocks } from './Blocks.tsx';
import type { PutReel } from './PutAway.tsx';
import { Reels } from './Reels.tsx';
import { readLabel } from './read-label.ts';
import { Store } from './Store.tsx';
import './stock.css';

const tabs = ['bring', 'outlook', 'reels', 'store', 'blocks'] as const;
type Tab = (typeof tabs)[number];

export function Stock({ watch }: { readonly watch: Watch }) {
  const app = useApp();
  const floor = useFloor();
  const words = say(stockWords);
  // A link from elsewhere may name what to look for, or the reel to open.
  const [asked, text = ''] = place.value.rest;
  const isAsked = asked === 'reels' || asked === 'reel';
  const [tab, setTab] = useState<Tab>(isAsked ? 'reels' : asked === 'paste' ? 'store' : 'bring');
  const [query, setQuery] = useState(isAsked ? text : '');
  const [scanned, setScanned] = useState<PutReel | null>(null);
  const [fresh, setFresh] = useState<Omit<PutReel, 'reel'> | null>(null);
  const lookUp = (scan: Scan): boolean => {
    // A badge, a slot or a panel is not ours: whoever is next in line takes it.
    const reading = readLabel(app.store.floor(), scan);
    const only = scan.codes[0]?.text.trim() ?? '';
    const isKnown = app.store.floor().reels.has(only) || isPlaceInUse(app.store.floor(), only);
    const found = reading.reel ?? (isKnown ? only : (reading.lot ?? null));
    setScanned(reading.reel === null ? null : { ...putFacts(reading), reel: reading.reel });
    const names = reading.part ?? reading.supplierPart;
    setFresh(found === reading.lot && found !== null && names !== null ? putFacts(reading) : null);
    if (found === null) return false;
    setTab('reels');
    setQuery(found);
    return true;
  };
  const outlook = watch.outlook.value;
  const line = floor.lines.get(app.line.value ?? '');
  const zone = line?.zone ?? 'UTC';
  const [supply, setSupply] = useState<Supply | 'asked'>('asked');
  useEffect(() => {
    let isShown = true;
    if (outlook !== null) {
      watch.askSupply(outlook, (answer) => {
        if (isShown) setSupply(answer);
      });
    }
    return () => {
      isShown = false;
    };
  }, [outlook, watch]);
  const known = outlook === null ? null : supply;
  const hold = holdText(outlook);
  return (
    <div class="stack stock">
      <TakeScans onScan={lookUp} />
      <p class="print-head">{words.printed(line?.name ?? '', formatDay(app.nowMs.value, zone))}</p>
      <div class="row no-print">
        <div class="choice grow">
          {tabs.map((each) => (
            <button
              type="button"
              key={each}
              aria-pressed={tab === each}
              data-testid={`stock-${each}`}
              onClick={() => setTab(each)}
            >
              {words.tabs[each]}
            </button>
          ))}
        </div>
        <FindButton
          testId="stock-find"
          task={{
            do: 'find',
            list: listOfSupply(
              known === null || known === 'asked' ? null : (outlook?.run.setup ?? null),
              known === 'asked' ? null : known,
            ),
          }}
          desk={null}
        />
        <Button onPress={() => window.print()} testId="stock-print">
          <Icon name="print" /> {words.print}
        </Button>
      </div>
      {tab === 'bring' && <Bring supply={known} zone={zone} hold={hold} />}
      {tab === 'outlook' && <ReelByReel supply={known} zone={zone} hold={hold} />}
      {tab === 'reels' && (
        <Reels
          query={query}
          onQuery={setQuery}
          scanned={scanned}
          fresh={fresh}
          opened={asked === 'reel' ? text : null}
        />
      )}
      {tab === 'store' && (
        <Store
          onShow={(shown) => {
            setQuery(shown);
            setTab('reels');
          }}
        />
      )}
      {tab === 'blocks' && <Blocks />}
    </div>
  );
}

/**
 * Takes the scans that nothing of the screen wants. A part of its own, drawn before the others: where the screen opens with one of them already in it,
 * as by a link to the jars of paste, the parts come to the stream of scans before the screen itself does, and the screen would lie over them.
 */
function TakeScans({ onScan }: { readonly onScan: (scan: Scan) => boolean }) {
  const app = useApp();
  const newest = useRef(onScan);
  newest.current = onScan;
  useLayoutEffect(() => app.scans.take((scan) => newest.current(scan)), [app]);
  return null;
}

/** What a label says of a reel that is put away. */
function putFacts(read: LabelReading): Omit<PutReel, 'reel'> {
  const { part, supplierPart, quantity, lot, dateCode } = read;
  return { part, supplierPart, quantity, lot, dateCode };
}

interface SupplyProps {
  /** Null where nothing is being built. */
  readonly supply: Supply | 'asked' | null;
  readonly zone: string;
  /** What every moment hangs on, such as a pace that nobody counted; null where on nothing. */
  readonly hold: string | null;
}

function Bring({ supply, zone, hold }: SupplyProps) {
  const app = useApp();
  const words = say(stockWords);
  if (!supply) return <p class="empty">{words.noRun}</p>;
  if (supply === 'asked') return <p class="empty">{words.computing}</p>;
  const waiting = supply.slots
    .flatMap((each) => each.waiting.map((reel) => ({ reel, slot: each.slot.slot })))
    .sort((a, b) => comparePlaces(placeOf(a.reel) ?? '', placeOf(b.reel) ?? ''));
  if (supply.picks.length === 0 && waiting.length === 0) return <p class="empty">{words.noPick}</p>;
  return (
    <section class="stack" data-testid="pick-list">
      <div class="pick-head">
        <h2>{words.pickTitle}</h2>
        <p class="soft">{words.pickHelp}</p>
      </div>
      <div class="picks">
        {waiting.map(({ reel, slot }) => (
          <div class="pick onhand" key={reel.reel}>
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
              {words.onHand} {formatCount(reel.count ?? 0)}
            </span>
            <span class="code slots">{slot}</span>
          </div>
        ))}
        {supply.picks.map((pick) => {
          const inSeconds = (pick.byMs - app.nowMs.value) / 1000;
          return (
            <div class="pick" key={pick.part} data-testid={`pick-${pick.part}`}>
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
              <span class={inSeconds < 1800 ? 'soon' : ''}>
                {inSeconds <= 60
                  ? words.bySoon
                  : words.by(formatTime(pick.byMs, zone), formatSpan(inSeconds))}
                {hold !== null && <small class="hold">{hold}</small>}
              </span>
              <span class="code slots">{pick.slots.join(' ')}</span>
            </div>
          );
        })}
      </div>
    </section>
  );
}

/** How many to bring, in the words of what it comes in. */
function reelsOf({ reels, comesIn = 'tape' }: PickLine): string {
  return comesIn === 'tape' ? say(stockWords).reels(reels) : say(feedWords).picks[comesIn](reels);
}

function ReelByReel({ supply, zone, hold }: SupplyProps) {
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
        {supply.slots.map(({ slot, ends, lasts, bring }) => (
          <div class="chain" key={slot.slot}>
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
        ))}
      </div>
    </section>
  );
}
