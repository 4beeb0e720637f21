// Taking a reel off: what is left on it is asked once, and what that says of the feeder's losses is told at once.

import { useState } from 'preact/hooks';
import { unloadedFacts } from '../../../shared/desk/unloaded.ts';
import { kindOnSlot } from '../../../shared/floor/packs.ts';
import { hasOwnId } from '../../../shared/floor/reel-id.ts';
import { slotEstimate, toEvidence, UNLIKELY_LOSS, unlikelyLoss } from '../../../shared/floor/remaining.ts';
import type { SlotState } from '../../../shared/floor/state.ts';
import { wantedByLanes } from '../../../shared/floor/wanted.ts';
import { entryId } from '../../../shared/log/entry.ts';
import { type App, useApp, useFloor } from '../app.ts';
import { offerBack } from '../desk/offer-back.ts';
import { Button } from '../ui/Button.tsx';
import { Dialog } from '../ui/Dialog.tsx';
import { ChoiceField } from '../ui/Field.tsx';
import { countWords } from '../words/count.ts';
import { loadWords } from '../words/load.ts';
import { packWords } from '../words/packs.ts';
import { shellWords } from '../words/shell.ts';
import { formatCount, formatShare, say } from '../words/words.ts';
import { CountDialog, spread, type TakenCount } from './CountDialog.tsx';
import { lanesBeside } from './feeder-lanes.ts';

interface Left {
  readonly quantity: number | null;
  readonly sd: number;
  readonly basis: TakenCount['basis'] | null;
  readonly calibration: TakenCount['calibration'];
  /** True where what lay loose in the feeder was emptied out. */
  readonly purged?: boolean;
}

/** Writes an unload and tells what the finished reel shows; offers to take it back. */
async function unload(app: App, loaded: SlotState, left: Left, others: readonly SlotState[]): Promise<void> {
  const floor = app.store.floor();
  const tape = loaded.tapes.at(-1);
  const off = await app.write([
    {
      kind: 'reel.unloaded',
      payload: {
        ...unloadedFacts(floor, loaded),
        via: 'typed' as const,
        quantity: left.quantity,
        ...(left.quantity !== null && left.sd > 0 ? { sd: left.sd } : {}),
        basis: left.basis,
        ...(left.purged ? { purged: true as const } : {}),
      },
    },
    ...others.map((other) => ({
      kind: 'reel.unloaded' as const,
      payload: { ...unloadedFacts(floor, other), via: 'typed' as const, quantity: null, basis: null },
    })),
    ...(left.calibration ? [{ kind: 'reel.calibrated' as const, payload: left.calibration }] : []),
  ]);
  const [entry] = off;
  offerLabel(app, tape?.reel ?? null);
  const words = say(loadWords);
  const shown = entry ? lossSentence(app, entryId(entry)) : null;
  const text = words.unloaded([loaded, ...others].map((each) => each.slot).join(' · '));
  offerBack(
    app,
    { tone: shown?.isWrong ? 'care' : 'plain', text: [text, shown?.text ?? ''].join(' ').trim() },
    {
      label: words.undo,
      reason: 'taken back after unloading',
      slots: [loaded, ...others],
      entries: off,
    },
  );
}

/** A reel without an id that comes off with parts on it is offered a label: it would begin anew at its next load. */
function offerLabel(app: App, was: string | null): void {
  const reel = was === null ? undefined : app.store.floor().reels.get(was);
  if (reel && !hasOwnId(reel.reel) && reel.at === null && reel.count !== 0)
    app.labelWanted.value = { reel: reel.reel };
}

/** What an entry showed of losses, as a sentence; null where it showed nothing. */
function lossSentence(app: App, entry: string): { readonly text: string; readonly isWrong: boolean } | null {
  const words = say(countWords);
  for (const reels of app.store.floor().finished.values()) {
    const reel = reels.find((each) => each.entry === entry);
    if (!reel) continue;
    const shown = toEvidence(reel);
    if (!shown) {
      const unlikelyShare = unlikelyLoss(reel);
      if (unlikelyShare === null) return { text: words.moreThanGone, isWrong: true };
      const facts = {
        feeder: reel.feeder === '' ? reel.slot : reel.feeder,
        share: formatShare(unlikelyShare),
      };
      return { text: words.unlikely(facts.feeder, facts.share, formatShare(UNLIKELY_LOSS)), isWrong: true };
    }
    const share = formatShare(shown.lost / shown.picks);
    const feeder = reel.feeder === '' ? reel.slot : reel.feeder;
    return {
      text: words.lost(feeder, formatCount(shown.lost), formatCount(shown.picks), share),
      isWrong: false,
    };
  }
  return null;
}

export function UnloadDialog({
  loaded,
  onClose,
}: {
  readonly loaded: SlotState;
  readonly onClose: () => void;
}) {
  const app = useApp();
  const floor = useFloor();
  const words = say(countWords);
  const [counting, setCounting] = useState(false);
  const estimate = slotEstimate(floor, loaded);
  const part = loaded.tapes.at(-1)?.part ?? null;
  // Out of the machine a feeder takes the reels on its other lanes along.
  const beside = lanesBeside(floor, loaded);
  const [isWhole, setWhole] = useState(false);
  const finish = (left: Left) => {
    unload(app, loaded, left, isWhole ? beside : []).catch(() => undefined); // shown by the fault screen
    onClose();
  };
  if (counting) {
    return (
      <CountDialog
        what={loaded.slot}
        part={part}
        kind={kindOnSlot(loaded)}
        pitchMm={wantedByLanes(floor, loaded)?.pitchMm ?? null}
        before={
          estimate.parts === null ? null : { parts: estimate.parts, sd: estimate.sd, basis: 'counted-down' }
        }
        fullReel={floor.fullReels.get(part ?? '') ?? null}
        fullParts={null}
        onClose={() => setCounting(false)}
        onCount={finish}
      />
    );
  }
  const isLoose = kindOnSlot(loaded) === 'bulk';
  const nothing = { sd: 0, calibration: null };
  return (
    <Dialog title={words.leftTitle(loaded.slot)} onClose={onClose}>
      <div class="stack">
        <p class="soft">{words.leftHelp}</p>
        {isLoose && <p class="caution">{say(packWords).keptIn}</p>}
        {beside.length > 0 && (
          <ChoiceField
            label={words.offLanes.ask}
            value={isWhole}
            choices={[
              { value: false, text: words.offLanes.one(loaded.slot), testId: 'unload-lane' },
              {
                value: true,
                text: words.offLanes.all(beside.map(({ slot }) => slot).join(' · ')),
                testId: 'unload-whole',
              },
            ]}
            onChoose={setWhole}
          />
        )}
        <div class="row">
          <Button tone="act" large testId="unload-count" onPress={() => setCounting(true)}>
            {words.leftCount}
          </Button>
          {isLoose && (
            <Button
              large
              testId="unload-purged"
              onPress={() => finish({ ...nothing, quantity: 0, basis: 'typed', purged: true })}
            >
              {say(packWords).emptied}
            </Button>
          )}
          <Button
            large
            testId="unload-empty"
            onPress={() => finish({ ...nothing, quantity: 0, basis: 'typed' })}
          >
            {words.leftEmpty}
          </Button>
          <Button
            large
            testId="unload-uncounted"
            onPress={() => finish({ ...nothing, quantity: null, basis: null })}
          >
            {estimate.parts === null
              ? words.leftUnknownPlain
              : words.leftUnknown(`${formatCount(estimate.parts)} ± ${spread(estimate.sd)}`)}
          </Button>
        </div>
        <p class="soft">{say(loadWords).caution}</p>
        <Button tone="quiet" onPress={onClose}>
          {say(shellWords).cancel}
        </Button>
      </div>
    </Dialog>
  );
}
