// One slot from near: what it wants, what is on it, and what can be done there.

import { useState } from 'preact/hooks';
import { blockedTapes } from '../../../../shared/floor/blocks.ts';
import type { DraftEntry, SetupSlot } from '../../../../shared/floor/kinds.ts';
import { kindOnSlot, moreBy } from '../../../../shared/floor/packs.ts';
import { hasOwnId, ownIdOf } from '../../../../shared/floor/reel-id.ts';
import { type SlotEstimate, slotEstimate } from '../../../../shared/floor/remaining.ts';
import { slotKeptFor } from '../../../../shared/floor/slot-right.ts';
import { type FloorState, type SlotState, slotKey } from '../../../../shared/floor/state.ts';
import { wantedOn } from '../../../../shared/floor/wanted.ts';
import { moistureOfSlot } from '../../../../shared/moisture/reel-life.ts';
import { useApp, useFloor } from '../../app.ts';
import type { DeskRun } from '../../desk/desk.ts';
import { AirDialog } from '../../frame/AirDialog.tsx';
import { CountDialog, spread, type TakenCount } from '../../frame/CountDialog.tsx';
import { ForLanes } from '../../frame/ForLanes.tsx';
import { FeederDialog, PackDialog } from '../../frame/packs-later.tsx';
import { UnloadDialog } from '../../frame/UnloadDialog.tsx';
import { useRefusal } from '../../may.ts';
import { ActGroup } from '../../ui/ActGroup.tsx';
import { Button } from '../../ui/Button.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { countWords } from '../../words/count.ts';
import { reelLifeText } from '../../words/life-text.ts';
import { loadWords } from '../../words/load.ts';
import { moistureWords } from '../../words/moisture.ts';
import { packWords } from '../../words/packs.ts';
import { shellWords } from '../../words/shell.ts';
import { verdictWords } from '../../words/verdict.ts';
import { warningWords } from '../../words/warning.ts';
import { formatCount, formatShare, formatTime, say } from '../../words/words.ts';
import { Loose } from './Loose.tsx';

interface SlotDialogProps {
  readonly slot: string;
  readonly desk: DeskRun;
  readonly onClose: () => void;
}

export function SlotDialog({ slot, desk, onClose }: SlotDialogProps) {
  const app = useApp();
  const floor = useFloor();
  const words = say(loadWords);
  const refusal = useRefusal('verify-reel');
  const [doing, setDoing] = useState<'count' | 'unload' | 'air' | 'pack' | 'feeder' | null>(null);
  const line = app.line.value ?? '';
  const zone = floor.lines.get(line)?.zone ?? 'UTC';
  const wanted = wantedOn(floor, floor.chosen.get(line) ?? '', slot);
  const loaded = floor.slots.get(slotKey(line, slot));
  const left = loaded ? slotEstimate(floor, loaded) : null;
  const tape = loaded?.tapes.at(-1);
  const life = tape
    ? reelLifeText(floor, tape.reel, {
        line,
        part: moistureOfSlot(floor, wanted, tape.part),
        openedMs: tape.atMs,
        nowMs: app.clock.nowMs(),
        zone,
      })
    : null;

  const standing = tape ? floor.reels.get(tape.reel) : undefined;
  if (doing === 'pack' && standing)
    return <PackDialog reel={standing} wanted={wanted?.comesIn ?? null} onClose={onClose} />;
  if (doing === 'feeder') return <FeederDialog line={line} slot={slot} onClose={onClose} />;
  if (doing === 'unload' && loaded) return <UnloadDialog loaded={loaded} onClose={onClose} />;
  if (doing === 'air' && tape) {
    const part = moistureOfSlot(floor, wanted, tape.part);
    return (
      <AirDialog reel={tape} line={line} before={life} part={part} openedMs={tape.atMs} onClose={onClose} />
    );
  }
  if (doing === 'count' && loaded)
    return <SlotCount loaded={loaded} wanted={wanted} onClose={() => setDoing(null)} onDone={onClose} />;
  return (
    <Dialog title={slot} onClose={onClose}>
      <div class="stack">
        {wanted && <Wanted wanted={wanted} />}
        <ForLanes line={line} slot={slot} />
        <KeptFor line={line} slot={slot} />
        {loaded ? <Tapes loaded={loaded} zone={zone} /> : <p class="soft">{words.emptySlot}</p>}
        {left && <Left left={left} />}
        <Loose line={line} slot={slot} loaded={loaded ?? null} />
        {life && (
          <p data-testid="slot-life">
            <span class={life.tone === null ? 'soft' : `chip ${life.tone}`}>{life.text}</span>
          </p>
        )}
        <ActGroup reason={refusal}>
          <div class="row">
            {wanted && (
              <Button
                tone="act"
                large
                testId="slot-use"
                onPress={() => {
                  desk.chooseSlot(slot);
                  onClose();
                }}
              >
                {loaded ? say(packWords).doHere[moreBy(kindOnSlot(loaded))] : words.loadThis}
              </Button>
            )}
            {loaded && (
              <Button large testId="slot-count" onPress={() => setDoing('count')} disabledReason={refusal}>
                {words.correctCount}
              </Button>
            )}
            {standing && (
              <Button large testId="slot-pack" onPress={() => setDoing('pack')} disabledReason={refusal}>
                {say(packWords).open}
              </Button>
            )}
            {wanted && (
              <Button large testId="slot-feeder" onPress={() => setDoing('feeder')} disabledReason={refusal}>
                {say(packWords).feeder.open}
              </Button>
            )}
            {life && tape && hasOwnId(tape.reel) && (
              <Button large testId="slot-air" onPress={() => setDoing('air')} disabledReason={refusal}>
                {say(moistureWords).open}
              </Button>
            )}
            {loaded && (
              <Button
                large
                tone="stop"
                testId="slot-unload"
                onPress={() => setDoing('unload')}
                disabledReason={refusal}
              >
                {words.takeOut}
              </Button>
            )}
            <Button large tone="quiet" onPress={onClose}>
              {say(shellWords).close}
            </Button>
          </div>
        </ActGroup>
        {loaded && <p class="soft">{words.caution}</p>}
      </div>
    </Dialog>
  );
}

/** Counts what is left on the slot. */
function SlotCount(props: {
  readonly loaded: SlotState;
  readonly wanted: SetupSlot | null;
  readonly onClose: () => void;
  readonly onDone: () => void;
}) {
  const app = useApp();
  const floor = useFloor();
  const { loaded, wanted, onClose, onDone } = props;
  const left = slotEstimate(floor, loaded);
  const tape = loaded.tapes.at(-1);
  return (
    <CountDialog
      what={loaded.slot}
      part={tape?.part ?? null}
      kind={kindOnSlot(loaded)}
      pitchMm={wanted?.pitchMm ?? null}
      before={left.parts === null ? null : { parts: left.parts, sd: left.sd, basis: 'counted-down' }}
      fullReel={floor.fullReels.get(tape?.part ?? '') ?? null}
      fullParts={tape?.basis === 'label' ? tape.count : null}
      onClose={onClose}
      onCount={(taken) => {
        const text = say(countWords).saved(loaded.slot, formatCount(taken.quantity), spread(taken.sd));
        app.record([...recountDrafts(floor, loaded, taken)], { notice: { tone: 'plain', text } });
        onDone();
      }}
    />
  );
}

/** The count is of all that the slot still has, joined tapes included: it stands on the newest reel. */
function recountDrafts(floor: FloorState, loaded: SlotState, taken: TakenCount): readonly DraftEntry[] {
  const { line, slot } = loaded;
  const { quantity, sd, basis, calibration } = taken;
  const run = floor.current.get(line) ?? null;
  const panels = run === null ? 0 : (floor.runs.get(run)?.done ?? 0);
  const tape = loaded.tapes.at(-1);
  const reel = ownIdOf(tape?.reel);
  const facts = { line, slot, reel, part: tape?.part ?? null, lot: tape?.lot ?? null, panels };
  return [
    { kind: 'reel.counted', payload: { ...facts, quantity, sd, basis } },
    ...(calibration ? [{ kind: 'reel.calibrated' as const, payload: calibration }] : []),
  ];
}

/** The part that the slot wants, and how it is to be fed. */
function Wanted({ wanted }: { readonly wanted: SetupSlot }) {
  const words = say(loadWords);
  const floor = useFloor();
  const picture = floor.pictures.get(wanted.part);
  const orientation = wanted.polarity ?? floor.listed.get(wanted.part)?.orientation ?? null;
  return (
    <p>
      {picture !== undefined && <img class="part-picture" src={picture} alt={wanted.part} />}
      <span class="code">{wanted.part}</span>
      {wanted.alternates.length > 0 && (
        <span class="soft"> {words.alternates(wanted.alternates.join(', '))}</span>
      )}
      <br />
      <span class="soft">
        {words.perPanel(String(wanted.perPanel))}
        {wanted.turn !== undefined && ` · ${words.inTurn(wanted.turn)}`}
        {wanted.tapeWidthMm !== null && ` · ${words.tape(String(wanted.tapeWidthMm))}`}
        {wanted.pitchMm !== null && ` · ${words.pitch(String(wanted.pitchMm))}`}
        {orientation !== null && ` · ${orientation}`}
        {wanted.note !== undefined && ` · ${wanted.note}`}
      </span>
    </p>
  );
}

/** That what stands there is another lane's, and stays. */
function KeptFor({ line, slot }: { readonly line: string; readonly slot: string }) {
  const floor = useFloor();
  const lane = slotKeptFor(floor, line, floor.chosen.get(line) ?? '', slot);
  if (lane === null) return null;
  return (
    <p>
      <span class="chip care" data-testid="slot-kept">
        = {say(loadWords).keptFor(floor.lines.get(lane)?.name ?? lane)}
      </span>
    </p>
  );
}

/** The tapes on the slot, oldest first, each with what blocks it. */
function Tapes({ loaded, zone }: { readonly loaded: SlotState; readonly zone: string }) {
  const floor = useFloor();
  const words = say(loadWords);
  const blocks = blockedTapes(floor, loaded.line);
  return (
    <>
      {loaded.tapes.map((each) => (
        <p key={each.entry} class="card">
          <span class="code">{each.part || each.supplierPart}</span>
          <br />
          <span class="soft">
            {[
              !hasOwnId(each.reel) ? '' : say(verdictWords).reel(each.reel),
              each.lot === null ? '' : say(verdictWords).lot(each.lot),
              words.since(formatTime(each.atMs, zone), ''),
            ]
              .filter((text) => text !== '')
              .join(' · ')}
          </span>
          {blocks
            .filter(({ tape: under }) => under.entry === each.entry)
            .map(({ block }) => (
              <span class="chip stop" key={block.block} data-testid="slot-blocked">
                ✕ {say(warningWords).blockedTape(block.reason)}
              </span>
            ))}
        </p>
      ))}
    </>
  );
}

/** How many parts are left, and what the figure rests on. */
function Left({ left }: { readonly left: SlotEstimate }) {
  const words = say(loadWords);
  return (
    <p>
      <b>
        {left.parts === null
          ? words.unknownCount
          : words.left(`${formatCount(left.parts)} ± ${spread(left.sd)}`)}
      </b>
      <br />
      <span class="soft">
        {words.lossIs(formatShare(left.loss.alpha / (left.loss.alpha + left.loss.beta)), left.loss.reels)}
      </span>
      {left.contradicts && (
        <>
          <br />
          <span class="chip care">{say(countWords).spliceDiffers}</span>
        </>
      )}
    </p>
  );
}
