// A line in small: its machines side by side, under each its banks with their slots, the first and the last by name.

import type { EntryOf } from '../../../../../shared/floor/kinds.ts';
import { NAMELESS } from '../../../../../shared/floor/place.ts';
import { firstSlot, slotLike } from '../../../../../shared/floor/slot-ranges.ts';
import { lineListWords } from '../../../words/lines.ts';
import { say } from '../../../words/words.ts';

export function LinePicture({
  machines,
}: {
  readonly machines: EntryOf<'line.defined'>['payload']['machines'];
}) {
  const words = say(lineListWords);
  return (
    <div class="line-picture" data-testid="line-picture">
      {machines.map((machine) => (
        <div class="machine" key={machine.machine}>
          {machine.machine !== NAMELESS && <b>{machine.name}</b>}
          {machine.banks.map((bank) => {
            const first = firstSlot(machine, bank);
            return (
              <div key={bank.bank}>
                <div class="row ends">
                  <span class="code" translate={false}>
                    {first}
                  </span>
                  <span class="soft">
                    {bank.name === NAMELESS ? '' : `${bank.name} · `}
                    {words.slots(bank.positions)}
                    {bank.holds === 'trays' && ` · ${words.trays}`}
                  </span>
                  {bank.positions > 1 && (
                    <span class="code" translate={false}>
                      {slotLike(first, bank.positions)}
                    </span>
                  )}
                </div>
                <div class="ticks" style={{ '--slots': Math.max(1, bank.positions) }} aria-hidden="true" />
              </div>
            );
          })}
        </div>
      ))}
    </div>
  );
}
