// A handover as it was signed: by whom, what was open then and how each thing stands now, and the note.

import type { Handed } from '../../../../shared/floor/state-handover.ts';
import { useApp, useFloor } from '../../app.ts';
import { handoverWords } from '../../words/handover.ts';
import { say } from '../../words/words.ts';
import { personName, zoneOf } from './names.ts';
import { KnownBy, momentNear, OpenMatters } from './OpenMatters.tsx';

export function PastHandover({ handed }: { readonly handed: Handed }) {
  const app = useApp();
  const floor = useFloor();
  const words = say(handoverWords);
  const { line, by, note, left, more, known, taken } = handed;
  const moment = momentNear(app.nowMs.value, zoneOf(floor, line));
  return (
    <div class="past" data-testid="handed">
      <p>
        <span class="chip go">✓ {words.handedBy(personName(floor, by), moment(handed.atMs))}</span>{' '}
        {taken ? (
          <span class="chip go" data-testid="handed-taken">
            ✓ {words.takenBy(personName(floor, taken.by), moment(taken.atMs))}
          </span>
        ) : (
          <span class="chip care">? {words.notTaken}</span>
        )}
      </p>
      {note !== '' && <blockquote data-testid="handed-note">{note}</blockquote>}
      <OpenMatters line={line} items={left} more={more} atMs={known.atMs} isPast />
      <KnownBy line={line} known={known} />
      {taken && taken.came.length > 0 && (
        <>
          <h4>{words.cameSince}</h4>
          <OpenMatters line={line} items={taken.came} more={taken.more} atMs={taken.known.atMs} isPast />
        </>
      )}
    </div>
  );
}
