// Material that must not be used: what is blocked, and blocking a reel or its whole lot.

import { useState } from 'preact/hooks';
import { isUnderBlock } from '../../../../shared/floor/blocks.ts';
import type { Reel } from '../../../../shared/floor/state.ts';
import { useApp, useFloor } from '../../app.ts';
import { newId } from '../../device/ids.ts';
import { recordOwn } from '../../frame/signed.ts';
import { useRefusal } from '../../may.ts';
import { ActGroup } from '../../ui/ActGroup.tsx';
import { AskFeet } from '../../ui/Ask.tsx';
import { Button } from '../../ui/Button.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { Field } from '../../ui/Field.tsx';
import { whichPanels } from '../../which-panels.ts';
import { heldWords } from '../../words/held.ts';
import { stockWords } from '../../words/stock.ts';
import { say } from '../../words/words.ts';

export function Blocks() {
  const app = useApp();
  const floor = useFloor();
  const words = say(stockWords);
  const refusal = useRefusal('block-material');
  if (floor.blocks.size === 0) return <p class="empty">{words.blocksNone}</p>;
  return (
    <section data-testid="blocks">
      <ActGroup reason={refusal}>
        {[...floor.blocks.values()].map((block) => {
          const there = [...floor.slots.values()].filter((slot) =>
            slot.tapes.some((tape) => isUnderBlock(floor, block, tape)),
          );
          return (
            <div class="block-row" key={block.block}>
              <div>
                <b class="code">
                  {[block.reel, block.lot, block.part].filter((each) => each !== null).join(' · ')}
                </b>
                <p>{block.reason}</p>
                {there.length > 0 && (
                  <p class="chip stop">{words.blockOnLine(there.map((slot) => slot.slot).join(', '))}</p>
                )}
              </div>
              <a
                class="button"
                href={whichPanels({ ...block, cause: 'blocked', of: block.block })}
                data-testid="block-panels"
              >
                {say(heldWords).which}
              </a>
              <Button
                disabledReason={refusal}
                onPress={() => {
                  const by = app.person.value?.person ?? '';
                  const payload = { block: block.block, reason: words.liftReason, by };
                  recordOwn(app, [{ kind: 'material.released', payload }], {
                    notice: { tone: 'plain', text: words.lifted },
                  });
                }}
              >
                {words.lift}
              </Button>
            </div>
          );
        })}
      </ActGroup>
    </section>
  );
}

export function BlockDialog({ reel, onClose }: { readonly reel: Reel; readonly onClose: () => void }) {
  const app = useApp();
  const words = say(stockWords);
  const [wholeLot, setWholeLot] = useState(reel.lot !== null);
  const [reason, setReason] = useState('');
  const { lot } = reel;
  const refusal = useRefusal('block-material');
  const block = () => {
    const what = wholeLot && lot !== null ? { reel: null, lot } : { reel: reel.reel, lot: null };
    app.record(
      [
        {
          kind: 'material.blocked',
          payload: { block: newId(), ...what, part: wholeLot ? reel.part : null, reason: reason.trim() },
        },
      ],
      { notice: { tone: 'care', text: words.blockedNow(what.lot ?? what.reel ?? '') } },
    );
    onClose();
  };
  return (
    <Dialog title={words.blockTitle} onClose={onClose} tone="stop">
      <div class="stack">
        <p class="soft">{words.blockHelp}</p>
        <h3>{words.blockWhat}</h3>
        <div class="choice">
          {lot !== null && (
            <button type="button" aria-pressed={wholeLot} onClick={() => setWholeLot(true)}>
              {words.blockLot(lot)}
            </button>
          )}
          <button type="button" aria-pressed={!wholeLot} onClick={() => setWholeLot(false)}>
            {words.blockReel(reel.reel)}
          </button>
        </div>
        <h3>{words.blockReason}</h3>
        <div class="choice">
          {words.blockReasons.map((each) => (
            <button type="button" key={each} aria-pressed={reason === each} onClick={() => setReason(each)}>
              {each}
            </button>
          ))}
        </div>
        <Field label={words.blockOther} maxLength={200} value={reason} onInput={setReason} />
        <AskFeet
          tone="stop"
          testId="block-yes"
          disabledReason={refusal ?? (reason.trim() === '' ? words.blockReason : null)}
          onYes={block}
          onNo={onClose}
        >
          {words.blockYes}
        </AskFeet>
      </div>
    </Dialog>
  );
}
