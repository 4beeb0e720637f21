// What may lie loose in a slot's feeder: the lots that were poured over each other, or what an empty slot's feeder was not emptied of.

import { isMixed, looseIn } from '../../../../shared/floor/packs.ts';
import { type SlotState, slotKey } from '../../../../shared/floor/state.ts';
import { useApp, useFloor } from '../../app.ts';
import { Button } from '../../ui/Button.tsx';
import { packWords } from '../../words/packs.ts';
import { say } from '../../words/words.ts';

interface LooseProps {
  readonly line: string;
  readonly slot: string;
  readonly loaded: SlotState | null;
}

export function Loose({ line, slot, loaded }: LooseProps) {
  const app = useApp();
  const floor = useFloor();
  const words = say(packWords);
  const lots = (tapes: SlotState['tapes']) =>
    [...new Set(tapes.map(({ lot }) => lot ?? words.noLot))].join(', ');
  if (loaded !== null)
    return isMixed(loaded) ? (
      <p class="caution" data-testid="slot-mixed">
        {words.looseOn(lots(loaded.tapes))}
      </p>
    ) : null;
  // Nothing stands here: it is the feeder that came off last.
  const feeder = floor.takenOff.get(slotKey(line, slot))?.was.feeder ?? null;
  const loose = looseIn(floor, { line, slot, feeder });
  if (loose.length === 0) return null;
  const run = floor.current.get(line) ?? null;
  const panels = run === null ? 0 : (floor.runs.get(run)?.done ?? 0);
  return (
    <>
      <p class="caution" data-testid="slot-loose">
        {words.looseIn(lots(loose))}
      </p>
      <div>
        <Button
          large
          testId="slot-purge"
          onPress={() =>
            app.record(
              [{ kind: 'bulk.purged', payload: { line, slot, feeder, run, panels, via: 'typed' } }],
              { notice: { tone: 'plain', text: words.purged(slot) } },
            )
          }
        >
          {words.purge}
        </Button>
      </div>
    </>
  );
}
