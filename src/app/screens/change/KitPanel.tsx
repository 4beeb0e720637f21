// Making ready off the line: what to fetch for the next setup, and the carts on which feeders stand verified.

import { useMemo, useState } from 'preact/hooks';
import { dockingOf } from '../../../../shared/changeover/docking.ts';
import { type KitRow, kitList } from '../../../../shared/changeover/kit.ts';
import { lastGoodPanelMs } from '../../../../shared/changeover/times.ts';
import { moistureOfParts, type PartMoistureKnown, reelLife } from '../../../../shared/moisture/reel-life.ts';
import { placeOf } from '../../../../shared/setup/fold-places.ts';
import type { Changeover, Reel } from '../../../../shared/setup/state.ts';
import { useApp, useFloor } from '../../app.ts';
import { reelLifeText } from '../../frame/life-text.ts';
import { useRefusal } from '../../may.ts';
import { Button } from '../../ui/Button.tsx';
import { Icon } from '../../ui/Icon.tsx';
import { kitWords } from '../../words/kit.ts';
import { moistureWords } from '../../words/moisture.ts';
import { formatCount, say } from '../../words/words.ts';
import { CartFill } from './CartFill.tsx';
import { DockDialog } from './DockCart.tsx';
import { readFigure } from './model.ts';

export function KitPanel({ changeover }: { readonly changeover: Changeover }) {
  const floor = useFloor();
  const words = say(kitWords);
  const { line } = changeover;
  const setup = floor.setups.get(changeover.setup);
  const last = [...floor.runs.values()].filter((run) => run.line === line).at(-1);
  const [panels, setPanels] = useState(String(last?.panelsWanted ?? 500));
  const wanted = readFigure(panels);
  const moist = useMemo(() => moistureOfParts(floor), [floor.setups.size]);
  const app = useApp();
  const nowMs = app.clock.nowMs();
  if (!setup) return null;
  const loss = floor.rules.get(line)?.loss ?? 0;
  const isSpent = (reel: Reel, part: string) =>
    reelLife(floor, reel.reel, { line, part: moist.get(part) ?? null, nowMs })?.leftSeconds === 0;
  const rows = wanted === null || wanted <= 0 ? [] : kitList(floor, setup, { panels: wanted, loss, isSpent });
  const short = rows.filter((row) => row.short > 0).length;
  return (
    <section class="stack" data-testid="kit">
      <h2>{words.carts}</h2>
      <CartFill changeover={changeover} />
      {[...floor.carts.keys()].map((cart) => (
        <CartCard key={cart} cart={cart} changeover={changeover} />
      ))}
      <h2>{words.list}</h2>
      <label class="field other-part">
        <span>{words.panels}</span>
        <input
          data-typing
          data-testid="kit-panels"
          inputMode="numeric"
          value={panels}
          onInput={(event) => setPanels(event.currentTarget.value)}
        />
      </label>
      {short > 0 && <p class="chip care">? {words.shortfalls(short)}</p>}
      <div>
        {rows.map((row) => (
          <PickRow key={row.part} row={row} moist={moist.get(row.part) ?? null} />
        ))}
      </div>
    </section>
  );
}

function PickRow({ row, moist }: { readonly row: KitRow; readonly moist: PartMoistureKnown | null }) {
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
          {row.reels.map(reelText).join(', ') || (row.isOnLine ? words.onLine : words.none)}
          {row.uncounted > 0 && ` · ${words.uncounted(row.uncounted)}`}
        </span>
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
      {row.short > 0 ? (
        <span class="chip care">? {words.short(formatCount(row.short))}</span>
      ) : (
        <span class="chip go">✓ {words.enough}</span>
      )}
    </div>
  );
}

function reelText(reel: Reel): string {
  const place = placeOf(reel);
  const text = `${reel.reel} (${formatCount(reel.count ?? 0)})`;
  return place === null ? text : `${place}: ${text}`;
}

interface CartCardProps {
  readonly cart: string;
  readonly changeover: Changeover;
}

function CartCard({ cart, changeover }: CartCardProps) {
  const app = useApp();
  const floor = useFloor();
  const words = say(kitWords);
  const refusal = useRefusal('verify-reel');
  const { line, setup } = changeover;
  const [isAsking, setAsking] = useState(false);
  const { places, ready, unfit } = dockingOf(floor, cart, { line, setup });
  if (places.length === 0) return null;
  const isStanding = lastGoodPanelMs(floor, changeover) !== null;
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
          tone="act"
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
              app.write([{ kind: 'cart.emptied', payload }]).catch(() => undefined); // shown by the fault screen
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
