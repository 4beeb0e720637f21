// Reels: what the store must bring for the run, how long each slot's reels last, every reel that the log knows, goods-in, what lies where,
// what is blocked.

import type { VNode } from 'preact';
import { useEffect, useLayoutEffect, useMemo, useRef, useState } from 'preact/hooks';
import { isPlaceInUse } from '../../../../shared/floor/fold-places.ts';
import { isReelKnown } from '../../../../shared/floor/gone-reels.ts';
import type { LabelReading } from '../../../../shared/labels/reading.ts';
import type { Scan } from '../../../../shared/labels/scan.ts';
import type { Supply } from '../../../../shared/outlook/supply.ts';
import { useApp, useFloor } from '../../app.ts';
import { afterPaint } from '../../device/after-paint.ts';
import { FindButton } from '../../frame/FindButton.tsx';
import { listOfSupply } from '../../frame/find-lists.ts';
import { holdText } from '../../frame/hold-text.ts';
import type { Watch } from '../../outlook/watch.ts';
import { place } from '../../router.ts';
import { Button } from '../../ui/Button.tsx';
import { Icon } from '../../ui/Icon.tsx';
import { stockWords } from '../../words/stock.ts';
import { formatDay, say } from '../../words/words.ts';
import { Blocks } from './Blocks.tsx';
import { Bring, ReelByReel } from './Bring.tsx';
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
    const isKnown = isReelKnown(app.store.floor(), only) || isPlaceInUse(app.store.floor(), only);
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
  const bring = useLetGo(
    tab === 'bring',
    useMemo(() => <Bring supply={known} zone={zone} hold={hold} />, [known, zone, hold]),
  );
  return (
    <div class="stack stock">
      <TakeScans onScan={lookUp} />
      <PrintHead line={line?.name ?? ''} zone={zone} />
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
            list: () =>
              listOfSupply(
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
      {bring}
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
 * A part of a screen while it is shown, and hidden until the frame after: to take hundreds of rows out of the page takes as long as to draw what
 * comes in their place, and a finger waits for the latter alone.
 */
function useLetGo(isShown: boolean, part: VNode): VNode | null {
  const isGone = useRef(true);
  const [, drawAnew] = useState(0);
  if (isShown) isGone.current = false;
  useLayoutEffect(() => {
    if (isShown || isGone.current) return undefined;
    return afterPaint(() => {
      isGone.current = true;
      drawAnew((times) => times + 1);
    });
  }, [isShown]);
  return isGone.current ? null : (
    <div class="let-go" hidden={!isShown}>
      {part}
    </div>
  );
}

/** What stands on paper above the list. Apart, as it looks at the clock: the lists below need not be drawn with each second. */
function PrintHead({ line, zone }: { readonly line: string; readonly zone: string }) {
  return <p class="print-head">{say(stockWords).printed(line, formatDay(useApp().nowMs.value, zone))}</p>;
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
