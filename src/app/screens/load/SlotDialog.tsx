// One slot from near: what it wants, what is on it, and what can be done there.

import { useState } from 'preact/hooks';
import { slotLeft, wantedOn } from '../../../../shared/setup/left.ts';
import { slotKey } from '../../../../shared/setup/state.ts';
import { useApp, useFloor } from '../../app.ts';
import type { DeskRun } from '../../desk/desk.ts';
import { takeOut } from '../../desk/take-out.ts';
import { QuantityDialog } from '../../frame/PeopleDialogs.tsx';
import { useRefusal } from '../../may.ts';
import { Button } from '../../ui/Button.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { loadWords } from '../../words/load.ts';
import { shellWords } from '../../words/shell.ts';
import { verdictWords } from '../../words/verdict.ts';
import { formatCount, formatTime, say } from '../../words/words.ts';

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
  const [counting, setCounting] = useState(false);
  const line = app.line.value ?? '';
  const zone = floor.lines.get(line)?.zone ?? 'UTC';
  const wanted = wantedOn(floor, floor.chosen.get(line) ?? '', slot);
  const loaded = floor.slots.get(slotKey(line, slot));
  const run = floor.current.get(line) ?? null;
  const panels = run === null ? 0 : (floor.runs.get(run)?.done ?? 0);
  const left = loaded ? slotLeft(floor, loaded, floor.rules.get(line)?.loss ?? 0) : null;
  const tape = loaded?.tapes.at(-1);

  async function unload(): Promise<void> {
    await takeOut(app, slot, 'typed');
    onClose();
  }

  if (counting && loaded) {
    return (
      <QuantityDialog
        onClose={() => setCounting(false)}
        onQuantity={(quantity) => {
          app
            .write([
              {
                kind: 'reel.counted',
                payload: {
                  line,
                  slot,
                  reel: null,
                  part: tape?.part ?? null,
                  lot: tape?.lot ?? null,
                  quantity,
                  sd: 0,
                  basis: 'typed',
                  panels,
                },
              },
            ])
            .then(
              () => {
                app.notice.value = { tone: 'plain', text: words.counted(slot, formatCount(quantity)) };
              },
              () => undefined, // shown by the fault screen
            );
          onClose();
        }}
      />
    );
  }
  return (
    <Dialog title={slot} onClose={onClose}>
      <div class="stack">
        {wanted && (
          <p>
            <span class="code">{wanted.part}</span>
            {wanted.alternates.length > 0 && (
              <span class="soft"> {words.alternates(wanted.alternates.join(', '))}</span>
            )}
            <br />
            <span class="soft">
              {words.perPanel(String(wanted.perPanel))}
              {wanted.tapeWidthMm !== null && ` · ${words.tape(String(wanted.tapeWidthMm))}`}
              {wanted.pitchMm !== null && ` · ${words.pitch(String(wanted.pitchMm))}`}
              {wanted.polarity !== undefined && ` · ${wanted.polarity}`}
              {wanted.note !== undefined && ` · ${wanted.note}`}
            </span>
          </p>
        )}
        {!loaded && <p class="soft">{words.emptySlot}</p>}
        {loaded?.tapes.map((each) => (
          <p key={each.entry} class="card">
            <span class="code">{each.part || each.supplierPart}</span>
            <br />
            <span class="soft">
              {[
                each.reel.startsWith('~') ? '' : say(verdictWords).reel(each.reel),
                each.lot === null ? '' : say(verdictWords).lot(each.lot),
                words.since(formatTime(each.atMs, zone), ''),
              ]
                .filter((text) => text !== '')
                .join(' · ')}
            </span>
          </p>
        ))}
        {left && (
          <p>
            <b>{left.parts === null ? words.unknownCount : words.left(formatCount(left.parts))}</b>
          </p>
        )}
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
              {loaded ? words.spliceThis : words.loadThis}
            </Button>
          )}
          {loaded && (
            <Button large onPress={() => setCounting(true)} disabledReason={refusal}>
              {words.correctCount}
            </Button>
          )}
          {loaded && (
            <Button
              large
              tone="stop"
              testId="slot-unload"
              onPress={() => void unload()}
              disabledReason={refusal}
            >
              {words.takeOut}
            </Button>
          )}
          <Button large tone="quiet" onPress={onClose}>
            {say(shellWords).close}
          </Button>
        </div>
        {loaded && <p class="soft">{words.caution}</p>}
      </div>
    </Dialog>
  );
}
