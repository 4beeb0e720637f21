// The feeder of one slot: what it placed, whether it is due for care, a second one made ready for it, moved, set aside.

import { useState } from 'preact/hooks';
import { careAfter, isCareDue, placedBy } from '../../../shared/floor/fold-feeders.ts';
import { slotEstimate } from '../../../shared/floor/remaining.ts';
import { type SlotState, slotKey } from '../../../shared/floor/state.ts';
import { type App, useApp, useFloor } from '../app.ts';
import { offerBack } from '../desk/offer-back.ts';
import { useRefusal } from '../may.ts';
import { Button } from '../ui/Button.tsx';
import { Dialog } from '../ui/Dialog.tsx';
import { Field } from '../ui/Field.tsx';
import { loadWords } from '../words/load.ts';
import { packWords } from '../words/packs.ts';
import { shellWords } from '../words/shell.ts';
import { formatCount, formatDay, formatShare, say } from '../words/words.ts';
import { type MoveTo, movedDrafts, movesOf } from './feeder-lanes.ts';
import { MakeReady } from './MakeReady.tsx';

interface FeederDialogProps {
  readonly line: string;
  readonly slot: string;
  readonly onClose: () => void;
}

export function FeederDialog(props: FeederDialogProps) {
  const { line, slot, onClose } = props;
  const floor = useFloor();
  const words = say(packWords).feeder;
  const refusal = useRefusal('verify-reel');
  const [doing, setDoing] = useState<'ready' | 'move' | 'aside' | null>(null);
  const loaded = floor.slots.get(slotKey(line, slot)) ?? null;
  const feeder = loaded?.feeder ?? null;
  if (doing === 'ready') return <MakeReady {...props} onDone={() => setDoing(null)} />;
  if (doing === 'move' && loaded) return <Move line={line} loaded={loaded} onClose={onClose} />;
  if (doing === 'aside' && feeder !== null) return <SetAside feeder={feeder} onClose={onClose} />;
  return (
    <Dialog title={feeder === null ? `${words.code} · ${slot}` : words.title(feeder)} onClose={onClose}>
      <div class="stack" data-testid="feeder-dialog">
        {loaded === null ? null : feeder === null ? (
          <p class="soft">{words.none}</p>
        ) : (
          <FeederFacts feeder={feeder} loaded={loaded} />
        )}
        <ReadyList line={line} slot={slot} />
        <div class="row">
          <Button
            tone="act"
            large
            testId="feeder-ready"
            disabledReason={refusal}
            onPress={() => setDoing('ready')}
          >
            {words.ready}
          </Button>
          {loaded !== null && (
            <Button large testId="feeder-move" disabledReason={refusal} onPress={() => setDoing('move')}>
              {words.move}
            </Button>
          )}
          {feeder !== null && !floor.setAside.has(feeder) && (
            <Button
              large
              tone="stop"
              testId="feeder-aside"
              disabledReason={refusal}
              onPress={() => setDoing('aside')}
            >
              {words.setAside}
            </Button>
          )}
          {feeder !== null && <Cared feeder={feeder} />}
          <Button large tone="quiet" onPress={onClose}>
            {say(shellWords).close}
          </Button>
        </div>
      </div>
    </Dialog>
  );
}

/** What a feeder placed and lost, and whether it is due for care. */
export function FeederFacts(props: { readonly feeder: string; readonly loaded: SlotState | null }) {
  const { feeder, loaded } = props;
  const app = useApp();
  const floor = useFloor();
  const words = say(packWords).feeder;
  const zone = floor.lines.get(app.line.value ?? '')?.zone ?? 'UTC';
  const caredMs = floor.work.get(feeder)?.caredMs ?? null;
  const after = careAfter(floor, feeder);
  const aside = floor.setAside.get(feeder);
  const loss = loaded === null ? null : slotEstimate(floor, loaded).loss;
  return (
    <>
      <p data-testid="feeder-placed">
        {[
          words.placed(formatCount(placedBy(floor, feeder))),
          caredMs === null ? words.ever : words.since(formatDay(caredMs, zone)),
          loss === null || loss.reels === 0
            ? ''
            : words.lost(formatShare(loss.alpha / (loss.alpha + loss.beta))),
        ]
          .filter((text) => text !== '')
          .join(' · ')}
      </p>
      {aside && <p class="chip stop">✕ {words.aside(aside.reason)}</p>}
      {after !== null && (
        <p class={isCareDue(floor, feeder) ? 'chip care' : 'soft'} data-testid="feeder-care">
          {isCareDue(floor, feeder) ? words.due(formatCount(after)) : words.notDue(formatCount(after))}
        </p>
      )}
    </>
  );
}

/** Says that a feeder was seen to. */
export function Cared({ feeder }: { readonly feeder: string }) {
  const app = useApp();
  const words = say(packWords).feeder;
  const refusal = useRefusal('verify-reel');
  return (
    <Button
      large
      testId={`feeder-cared-${feeder}`}
      disabledReason={refusal}
      onPress={() =>
        app.record([{ kind: 'feeder.cared', payload: { feeder, note: '' } }], {
          notice: { tone: 'plain', text: words.caredDone(feeder) },
        })
      }
    >
      {words.cared}
    </Button>
  );
}

/** Feeders that are ready for the slot, each with the way to take its reel off again. */
function ReadyList({ line, slot }: { readonly line: string; readonly slot: string }) {
  const app = useApp();
  const floor = useFloor();
  const words = say(packWords).feeder;
  const refusal = useRefusal('verify-reel');
  const ready = [...floor.ready.values()].filter((each) => each.line === line && each.slot === slot);
  return (
    <>
      {ready.map(({ feeder, part, reel, lot }) => (
        <div class="row" key={feeder} data-testid={`ready-${feeder}`}>
          <p class="grow">
            <b>✓ {words.readyNow(feeder)}</b>
            <br />
            <span class="code soft">{[part, reel, lot].filter((text) => text !== null).join(' · ')}</span>
          </p>
          <Button
            disabledReason={refusal}
            onPress={() =>
              app.record([{ kind: 'feeder.stripped', payload: { feeder, reason: words.strip } }], {
                notice: { tone: 'plain', text: words.stripped(feeder) },
              })
            }
          >
            {words.strip}
          </Button>
        </div>
      ))}
    </>
  );
}

/** Chooses the slot to which a feeder goes with what is on it. `line`: the one in hand, which may be a lane of the slot's line. */
function Move(props: { readonly line: string; readonly loaded: SlotState; readonly onClose: () => void }) {
  const { line, loaded, onClose } = props;
  const app = useApp();
  const floor = useFloor();
  const words = say(packWords).feeder;
  const refusal = useRefusal('verify-reel');
  const moves = movesOf(floor, loaded, line);
  return (
    <Dialog title={words.moveTitle(loaded.slot)} onClose={onClose}>
      <div class="stack" data-testid="move-dialog">
        <p class="soft">{moves.length === 0 ? words.moveNone : words.moveHelp}</p>
        <div class="row">
          {moves.map(({ to, all }) => (
            <Button
              key={to}
              large
              testId={`move-to-${to}`}
              disabledReason={refusal}
              onPress={() => {
                move(app, line, all).catch(() => undefined); // shown by the fault screen
                onClose();
              }}
            >
              {words.moveTo(all.map((each) => each.to).join(' · '))}
            </Button>
          ))}
        </div>
        <p class="caution">{say(loadWords).caution}</p>
        <Button large onPress={onClose}>
          {say(shellWords).cancel}
        </Button>
      </div>
    </Dialog>
  );
}

/** Writes a move down, every reel of the feeder with it, and offers to take it back. */
async function move(app: App, line: string, all: MoveTo['all']): Promise<void> {
  const floor = app.store.floor();
  const words = say(packWords).feeder;
  const entries = await app.write(movedDrafts(floor, line, all));
  const text = (of: (each: MoveTo['all'][number]) => string) => all.map(of).join(' · ');
  const told = words.moved(
    text(({ loaded }) => loaded.slot),
    text(({ to }) => to),
  );
  offerBack(
    app,
    { tone: 'plain', text: told },
    {
      label: words.undo,
      reason: 'taken back after moving',
      slots: all.map(({ loaded: { slot } }) => ({ line, slot })),
      entries,
    },
  );
}

/** Says why a feeder must not be used until it was seen to. */
export function SetAside({ feeder, onClose }: { readonly feeder: string; readonly onClose: () => void }) {
  const app = useApp();
  const words = say(packWords).feeder;
  const refusal = useRefusal('verify-reel');
  const [reason, setReason] = useState('');
  return (
    <Dialog title={words.setAsideTitle(feeder)} onClose={onClose}>
      <div class="stack" data-testid="aside-dialog">
        <div class="choice">
          {words.whys.map((why) => (
            <button type="button" key={why} aria-pressed={reason === why} onClick={() => setReason(why)}>
              {why}
            </button>
          ))}
        </div>
        <Field
          label={words.why}
          testId="aside-why"
          maxLength={200}
          autocomplete="off"
          value={reason}
          onInput={setReason}
        />
        <div class="acts">
          <Button
            tone="stop"
            large
            testId="aside-save"
            disabledReason={refusal ?? (reason.trim() === '' ? words.why : null)}
            onPress={() => {
              app.record([{ kind: 'feeder.set-aside', payload: { feeder, reason: reason.trim() } }], {
                notice: { tone: 'plain', text: words.setAsideDone(feeder) },
              });
              onClose();
            }}
          >
            {words.setAside}
          </Button>
          <Button large onPress={onClose}>
            {say(shellWords).cancel}
          </Button>
        </div>
      </div>
    </Dialog>
  );
}
