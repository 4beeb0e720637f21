// Docks a whole cart: its code scanned anywhere in Change, its address, or its button, asks once what will happen; one confirmation
// writes what goes off and what goes on. Refused: docking at the scan itself, since a hand then stands at the machine and reads nothing.

import { useLayoutEffect, useState } from 'preact/hooks';
import { type Docking, dockingOf } from '../../../../shared/changeover/docking.ts';
import { lastGoodPanelMs } from '../../../../shared/changeover/times.ts';
import { holdsBadge } from '../../../../shared/floor/recognise.ts';
import { ownIdOf } from '../../../../shared/floor/reel-id.ts';
import type { Changeover, SlotState } from '../../../../shared/floor/state.ts';
import type { Scan } from '../../../../shared/labels/scan.ts';
import { useApp, useFloor } from '../../app.ts';
import { useRefusal } from '../../may.ts';
import { goTo, place } from '../../router.ts';
import { AskFeet } from '../../ui/Ask.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { Icon } from '../../ui/Icon.tsx';
import { kitWords } from '../../words/kit.ts';
import { say } from '../../words/words.ts';
import { cartIn, dockingEntries, sayUnfit } from './cart-model.ts';

/** Takes the code of a cart that the log knows, below every other task of the screen, or the one in the address, and asks. */
export function DockByScan({ line }: { readonly line: string }) {
  const app = useApp();
  const [scanned, setCart] = useState<string | null>(null);
  const [page, addressed] = place.value.rest;
  const cart = scanned ?? (page === 'dock' ? (addressed ?? null) : null);
  const close = () => {
    setCart(null);
    if (page === 'dock') goTo('change');
  };
  useLayoutEffect(
    () =>
      app.scans.take((scan) => {
        const named = cartIn(app.store.floor(), line, scan);
        if (named === null) return false;
        setCart(named);
        return true;
      }),
    [line],
  );
  return cart === null ? null : <DockDialog cart={cart} line={line} onClose={close} />;
}

interface DockDialogProps {
  readonly cart: string;
  readonly line: string;
  readonly onClose: () => void;
}

/** The question before a cart docks, and the docking. */
export function DockDialog({ cart, line, onClose }: DockDialogProps) {
  const app = useApp();
  const floor = useFloor();
  const words = say(kitWords);
  const refusal = useRefusal('verify-reel');
  const [isWriting, setWriting] = useState(false);
  // A badge may still sign somebody in; nothing else may reach the desk behind the question.
  useLayoutEffect(
    () =>
      app.scans.take(
        ({ codes }: Scan) =>
          !holdsBadge(
            app.store.floor(),
            line,
            codes.map(({ text }) => text),
          ),
      ),
    [line],
  );
  const changeover = floor.changeovers.get(floor.changing.get(line) ?? '');
  const docking = dockingOf(floor, cart, { line, setup: changeover?.setup ?? '' });
  const isStanding = changeover !== undefined && lastGoodPanelMs(floor, changeover) !== null;

  async function dock(standing: Changeover): Promise<void> {
    const now = app.store.floor();
    const seen = dockingOf(now, cart, { line, setup: standing.setup });
    setWriting(true);
    await app.write(dockingEntries(now, cart, { line, setup: standing.setup, docking: seen }));
    app.notice.value = { tone: 'go', text: words.docked(cart, seen.ready.length) };
    onClose();
  }

  const why = !changeover
    ? words.noChangeover
    : !isStanding
      ? words.notStanding
      : docking.ready.length === 0
        ? words.nothingFits
        : refusal;
  return (
    <Dialog title={words.dockTitle(cart)} onClose={onClose} tone="care">
      <div class="stack" data-testid="dock-question">
        {changeover && <WhatHappens docking={docking} product={changeover.product} />}
        {why !== null && <p class="chip care">? {why}</p>}
        <p class="caution">
          <Icon name="warn" />
          {words.dockCaution}
        </p>
        <AskFeet
          testId="dock-yes"
          disabledReason={why ?? (isWriting ? words.dock : null)}
          onYes={() => {
            if (changeover) dock(changeover).catch(() => setWriting(false)); // shown by the fault screen
          }}
          onNo={onClose}
        >
          {words.dock} · {words.dockable(docking.ready.length)}
        </AskFeet>
      </div>
    </Dialog>
  );
}

function WhatHappens({ docking, product }: { readonly docking: Docking; readonly product: string }) {
  const words = say(kitWords);
  const floor = useFloor();
  const { ready, off, unfit, others } = docking;
  return (
    <>
      {ready.length > 0 && (
        <p>
          <b>{words.willLoad(ready.length, product)}</b>{' '}
          <span class="code" translate={false}>
            {ready.map((place) => place.slot).join(' · ')}
          </span>
        </p>
      )}
      {off.length > 0 && (
        <section data-testid="dock-off">
          <h3>{words.goesOff(off.length)}</h3>
          <ul class="plainlist">
            {off.map((slot) => (
              <li key={slot.slot}>
                <b class="code" translate={false}>
                  {slot.slot}
                </b>{' '}
                <span class="code" translate={false}>
                  {standing(slot)}
                </span>
              </li>
            ))}
          </ul>
        </section>
      )}
      {unfit.length > 0 && (
        <section data-testid="dock-unfit">
          <h3>{words.doesNotFit(unfit.length)}</h3>
          <ul class="plainlist">
            {unfit.map((one) => (
              <li key={one.place.slot}>
                <b class="code" translate={false}>
                  {one.place.slot}
                </b>{' '}
                {sayUnfit(floor, one)}
              </li>
            ))}
          </ul>
        </section>
      )}
      {others > 0 && <p class="soft">{words.others(others)}</p>}
    </>
  );
}

/** What stands on a slot, as its codes: feeder and reel; the part where the reel has no id. */
function standing({ feeder, tapes }: SlotState): string {
  const tape = tapes.at(-1);
  return [feeder, ownIdOf(tape?.reel), tape?.part].filter(Boolean).join(' · ');
}
