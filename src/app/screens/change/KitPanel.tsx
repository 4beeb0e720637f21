// Making ready off the line: what to fetch for the next setup, and the carts on which feeders stand verified.

import { useMemo, useState } from 'preact/hooks';
import { dockingOf } from '../../../../shared/changeover/docking.ts';
import { jobsToCome } from '../../../../shared/changeover/kept-order.ts';
import { type KitRow, kitList, type ReelHere } from '../../../../shared/changeover/kit.ts';
import { lifeOnShelf } from '../../../../shared/desk/floor-life.ts';
import { placeOf } from '../../../../shared/floor/fold-places.ts';
import { shelfSteps } from '../../../../shared/floor/shelf.ts';
import type { Changeover, Reel } from '../../../../shared/floor/state.ts';
import { moistureOfParts, type PartMoistureKnown } from '../../../../shared/moisture/reel-life.ts';
import { useApp, useFloor } from '../../app.ts';
import { FindButton } from '../../frame/FindButton.tsx';
import { listOfKit } from '../../frame/find-lists.ts';
import { useRefusal } from '../../may.ts';
import { reelName } from '../../reel-name.ts';
import { Button } from '../../ui/Button.tsx';
import { Field } from '../../ui/Field.tsx';
import { Icon } from '../../ui/Icon.tsx';
import { useSlices } from '../../use-slices.ts';
import { kitWords } from '../../words/kit.ts';
import { reelLifeText } from '../../words/life-text.ts';
import { moistureWords } from '../../words/moisture.ts';
import { stockWords } from '../../words/stock.ts';
import { formatCount, formatShare, say } from '../../words/words.ts';
import { CartFill } from './CartFill.tsx';
import { checklistOf, standingOf, templateOf } from './checklist-desk.ts';
import { DockDialog } from './DockCart.tsx';
import { readFigure } from './model.ts';

interface KitPanelProps {
  readonly changeover: Changeover;
  readonly isStanding: boolean;
  readonly onChecklist: () => void;
}

export function KitPanel({ changeover, isStanding, onChecklist }: KitPanelProps) {
  const floor = useFloor();
  const words = say(kitWords);
  const { line } = changeover;
  const setup = floor.setups.get(changeover.setup);
  const job = jobsToCome(floor, line).find((each) => each.setup === changeover.setup);
  const last = [...floor.runs.values()].filter((run) => run.line === line).at(-1);
  const [panels, setPanels] = useState(String(job?.panels ?? last?.panelsWanted ?? 500));
  const wanted = readFigure(panels);
  const moist = useMemo(() => moistureOfParts(floor), [floor.setups.size, floor.parts.size]);
  const app = useApp();
  const nowMs = app.clock.nowMs();
  const lifeOf = lifeOnShelf(floor, line, nowMs);
  const shelf = { line, setup: changeover.setup, nowMs };
  const isShelved =
    useSlices(() => shelfSteps(floor, shelf, lifeOf), [floor.reels, changeover.setup]) !== null;
  if (!setup) return null;
  if (!isShelved) return <p class="empty">{say(stockWords).looking}</p>;
  const loss = floor.rules.get(line)?.loss ?? 0;
  const rows =
    wanted === null || wanted <= 0 ? [] : kitList(floor, setup, { panels: wanted, loss, nowMs, lifeOf });
  const short = rows.filter((row) => row.enough === 'no' && row.uncounted === 0).length;
  const unsure = rows.filter((row) => row.enough !== 'sure' && row.uncounted > 0).length;
  const toFetch = rows.filter((row) => row.reels.length > 0 || row.enough === 'no').length;
  const onLine = rows.filter((row) => !isForHands(row));
  const rowOf = (row: KitRow) => (
    <PickRow key={row.part} row={row} moist={moist.get(row.part) ?? null} isStanding={isStanding} />
  );
  return (
    <section class="stack" data-testid="kit">
      {!isStanding && <ReadyNow changeover={changeover} toFetch={toFetch} onChecklist={onChecklist} />}
      <h2>{words.carts}</h2>
      <CartFill changeover={changeover} />
      {[...floor.carts.keys()].map((cart) => (
        <CartCard key={cart} cart={cart} changeover={changeover} isStanding={isStanding} />
      ))}
      <h2>{words.list}</h2>
      <Field
        more="other-part"
        label={words.panels}
        testId="kit-panels"
        inputMode="numeric"
        value={panels}
        onInput={setPanels}
      />
      {short > 0 && (
        <p class="chip care" data-testid="kit-short">
          ? {words.shortfalls(short)}
        </p>
      )}
      {unsure > 0 && (
        <p class="chip care" data-testid="kit-unsure">
          ? {words.unsure(unsure)}
        </p>
      )}
      <div>
        <FindButton
          testId="kit-find"
          task={{ do: 'find', list: () => listOfKit(setup.setup, rows) }}
          desk={null}
        />
      </div>
      <div>{rows.filter(isForHands).map(rowOf)}</div>
      {onLine.length > 0 && (
        <details class="more-rows">
          <summary>{words.onLine(onLine.length)}</summary>
          {onLine.map(rowOf)}
        </details>
      )}
    </section>
  );
}

/** True where something is to be fetched, counted, baked or asked for; else the line has what it takes. */
function isForHands(row: KitRow): boolean {
  return row.reels.length > 0 || row.enough !== 'sure' || row.spent.length > 0 || !row.isOnLine;
}

interface ReadyNowProps {
  readonly changeover: Changeover;
  /** Parts of which reels are to be fetched. */
  readonly toFetch: number;
  readonly onChecklist: () => void;
}

/** What can be done beside the running line, with how far each is. */
function ReadyNow({ changeover, toFetch, onChecklist }: ReadyNowProps) {
  const floor = useFloor();
  const words = say(kitWords);
  const { line, setup } = changeover;
  const places = [...floor.carts.keys()].reduce(
    (sum, cart) => sum + dockingOf(floor, cart, { line, setup }).places.length,
    0,
  );
  const list = checklistOf(floor, changeover);
  const template = list ? templateOf(floor, list) : null;
  const view = list && template ? standingOf(floor, list, template) : null;
  const openNow = view?.steps.filter(({ state }) => state === 'open' || state === 'short').length ?? null;
  return (
    <section class="card stack" data-testid="ready-now">
      <h2>{words.readyNow}</h2>
      <ul class="ready">
        <li>{words.readyFetch(toFetch)}</li>
        <li>{words.readyCarts(places)}</li>
        <li>
          <span class="grow">{openNow === null ? words.readyOpenList : words.readyList(openNow)}</span>
          <Button onPress={onChecklist} testId="ready-checklist">
            {words.toChecklist}
          </Button>
        </li>
      </ul>
    </section>
  );
}

interface PickRowProps {
  readonly row: KitRow;
  readonly moist: PartMoistureKnown | null;
  readonly isStanding: boolean;
}

function PickRow({ row, moist, isStanding }: PickRowProps) {
  const app = useApp();
  const floor = useFloor();
  const words = say(kitWords);
  const zone = floor.lines.get(app.line.value ?? '')?.zone ?? 'UTC';
  const nowMs = app.clock.nowMs();
  const lives = row.reels.flatMap((reel) => {
    const life = reelLifeText(floor, reel.reel, { line: app.line.value, part: moist, nowMs, zone });
    return life ? [{ reel, ...life }] : [];
  });
  return (
    <div class="listed" data-testid={`pick-${row.part}`}>
      <span class="grow checked-part">
        <span>
          <b class="code" translate={false}>
            {row.part}
          </b>{' '}
          {words.needed(formatCount(row.needed))}
        </span>
        <span class="code soft" translate={false}>
          {row.slots.join(' · ')}
        </span>
        <span>
          {row.reels.length > 0
            ? words.fetch(row.reels.map(reelText).join(', '))
            : row.here.length === 0
              ? words.none
              : ''}
        </span>
        {row.here.length > 0 && (
          <span data-testid="pick-here">
            {row.here.map((reel) => hereText(reel, isStanding)).join(' · ')}
          </span>
        )}
        {row.uncounted > 0 && <span>{words.uncounted(row.uncounted)}</span>}
        {lives.map(({ reel, text, tone }) => (
          <span key={reel.reel} class={tone === null ? 'soft' : `chip ${tone}`} data-testid="pick-life">
            {reel.reel}: {text}
          </span>
        ))}
        {lives.length === 0 && row.msl !== null && row.msl !== '1' && (
          <span class="soft">{words.msl(row.msl)}</span>
        )}
        {row.spent.length > 0 && (
          <span class="chip stop" data-testid="pick-spent">
            {say(moistureWords).toBake(row.spent.map((reel) => reel.reel).join(', '))}
          </span>
        )}
      </span>
      <Enough row={row} />
    </div>
  );
}

/** Enough only where it is so with 95 %; else how likely, and what is missing to be sure. */
function Enough({ row }: { readonly row: KitRow }) {
  const words = say(kitWords);
  if (row.enough === 'sure') return <span class="chip go">✓ {words.enough}</span>;
  const missing = formatCount(row.missing);
  const text = row.enough === 'no' ? words.short(missing) : words.probably(formatShare(row.chance), missing);
  return (
    <span class="chip care" data-testid={`enough-${row.enough}`}>
      ? {row.uncounted > 0 ? words.maybeShort : text}
    </span>
  );
}

function reelText(reel: Reel): string {
  const place = placeOf(reel);
  const text = `${reelName(reel.reel)} (${formatCount(reel.count ?? 0)})`;
  return place === null ? text : `${place}: ${text}`;
}

/** A reel on the line in words: where it stays or goes, and what the running job will leave of it. */
function hereText({ slot, to, left }: ReelHere, isStanding: boolean): string {
  const words = say(kitWords);
  const leftOn = isStanding ? words.leftNow : words.leftThen;
  const count = left === null ? words.leftUnknown : leftOn(formatCount(left));
  if (to === slot) return words.stays(slot, count);
  return to === null ? words.comesOff(slot, count) : words.goesTo(slot, to, count);
}

interface CartCardProps {
  readonly cart: string;
  readonly changeover: Changeover;
  readonly isStanding: boolean;
}

function CartCard({ cart, changeover, isStanding }: CartCardProps) {
  const app = useApp();
  const floor = useFloor();
  const words = say(kitWords);
  const refusal = useRefusal('verify-reel');
  const { line, setup } = changeover;
  const [isAsking, setAsking] = useState(false);
  const { places, ready, unfit } = dockingOf(floor, cart, { line, setup });
  if (places.length === 0) return null;
  return (
    <div class="card stack" data-testid={`cart-${cart}`}>
      <div class="row">
        <h3 class="grow">
          <span class="code" translate={false}>
            {cart}
          </span>{' '}
          · {words.places(places.length)}
        </h3>
        <Button
          large
          testId={`dock-${cart}`}
          disabledReason={isStanding ? refusal : words.notStanding}
          onPress={() => setAsking(true)}
        >
          <Icon name="right" /> {words.dock} · {words.dockable(ready.length)}
        </Button>
      </div>
      {places.map((place) => (
        <div class="listed" key={place.slot}>
          <b class="code" translate={false}>
            {place.slot}
          </b>
          <span class="grow code" translate={false}>
            {place.part || place.supplierPart} · {place.feeder ?? '–'} · {place.reel ?? place.lot ?? '–'}
          </span>
          <Button
            tone="quiet"
            disabledReason={refusal}
            onPress={() => {
              const payload = { cart, line, slot: place.slot };
              app.record([{ kind: 'cart.emptied', payload }]);
            }}
          >
            {words.empty}
          </Button>
        </div>
      ))}
      {unfit.length > 0 && (
        <p class="chip care">
          ? {words.doesNotFit(unfit.length)} {unfit.map(({ place }) => place.slot).join(' · ')}
        </p>
      )}
      {isAsking && <DockDialog cart={cart} line={line} onClose={() => setAsking(false)} />}
    </div>
  );
}
