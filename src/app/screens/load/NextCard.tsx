// What is next on the way: the slot, the part large enough to be read from an arm away, the feeder and tape for it.

import type { SlotProgress } from '../../../../shared/floor/progress.ts';
import { useFloor } from '../../app.ts';
import { loadWords } from '../../words/load.ts';
import { say } from '../../words/words.ts';
import { feederReady } from './model.ts';

export function NextCard({ next, line }: { readonly next: SlotProgress; readonly line: string }) {
  const floor = useFloor();
  const words = say(loadWords);
  const { wanted, slot } = next;
  const ready = feederReady(floor, { line, setup: floor.chosen.get(line) ?? '', slot });
  return (
    <div class="next-card" data-testid="next-slot">
      <div class="slot">
        <small>{words.next}</small>
        <b class="code">{slot}</b>
      </div>
      <b class="part code">{wanted.part}</b>
      <small class="more">
        {[
          ready === null ? '' : words.ready(ready.feeder, ready.cart),
          wanted.tapeWidthMm === null ? '' : words.feederFor(String(wanted.tapeWidthMm)),
          wanted.pitchMm === null ? '' : words.pitch(String(wanted.pitchMm)),
          words.perPanel(String(wanted.perPanel)),
          wanted.turn === undefined ? '' : words.inTurn(wanted.turn),
          wanted.alternates.length === 0 ? '' : words.alternates(wanted.alternates.join(', ')),
        ]
          .filter((text) => text !== '')
          .join(' · ')}
      </small>
    </div>
  );
}
