// What tablets that were apart disagree about: a lead looks at the machine and says what is true.

import { useState } from 'preact/hooks';
import { changeInConflict } from '../../../../shared/floor/dropped-change.ts';
import { lineEver } from '../../../../shared/floor/lanes.ts';
import type { Conflict, FloorState } from '../../../../shared/floor/state.ts';
import { useFloor } from '../../app.ts';
import { useRefusal } from '../../may.ts';
import { ActGroup } from '../../ui/ActGroup.tsx';
import { Button } from '../../ui/Button.tsx';
import { traceWords } from '../../words/trace.ts';
import { formatDay, say } from '../../words/words.ts';
import { SettleDialog } from './SettleDialog.tsx';

export function Conflicts() {
  const floor = useFloor();
  const words = say(traceWords);
  const refusal = useRefusal('settle-conflict');
  const [shown, setShown] = useState<Conflict | null>(null);
  const conflicts = [...floor.conflicts.values()].sort((a, b) => b.atMs - a.atMs);
  if (conflicts.length === 0) return <p class="empty">✓ {words.noConflicts}</p>;
  return (
    <div data-testid="conflicts">
      <ActGroup reason={refusal}>
        {conflicts.map((conflict) => (
          <div class="traced row" key={conflict.conflict}>
            <span class="grow">
              <b>{words.conflictKinds[conflict.kind](aboutWhat(floor, conflict))}</b>
              <br />
              <span class="soft">
                {formatDay(conflict.atMs, lineEver(floor, conflict.line)?.zone ?? 'UTC')}
              </span>
            </span>
            <Button disabledReason={refusal} onPress={() => setShown(conflict)} testId="settle">
              {words.settle}
            </Button>
          </div>
        ))}
      </ActGroup>
      {shown && <SettleDialog conflict={shown} onClose={() => setShown(null)} />}
    </div>
  );
}

/** The slots that tablets disagree about, or the product of a changeover. */
function aboutWhat(floor: FloorState, conflict: Conflict): string {
  return changeInConflict(floor, conflict)?.product ?? conflict.slots.join(', ');
}
