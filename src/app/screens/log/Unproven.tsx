// Entries that take a lead or an engineer and that no ticket stands behind: a lead who knows of them says what they were.

import { useState } from 'preact/hooks';
import { isSettleable, type Unproven as Mark } from '../../../../shared/floor/rights.ts';
import type { FloorState } from '../../../../shared/floor/state.ts';
import { useApp, useFloor } from '../../app.ts';
import type { Sure } from '../../frame/confirmed.ts';
import { LeadDecides } from '../../frame/LeadDecides.tsx';
import { useRefusal } from '../../may.ts';
import { ActGroup } from '../../ui/ActGroup.tsx';
import { Button } from '../../ui/Button.tsx';
import { logWords } from '../../words/log.ts';
import { shellWords } from '../../words/shell.ts';
import { unprovenWords } from '../../words/unproven.ts';
import { formatDay, say } from '../../words/words.ts';
import { personName, zoneOf } from './names.ts';

/** What one word of a lead may settle. */
const AT_ONCE = 200;

/** What waits for a lead's word, newest first. */
export function waiting(floor: FloorState): readonly Mark[] {
  return [...floor.unproven.values()].filter(isSettleable).sort((a, b) => b.atMs - a.atMs);
}

/** Why nothing proves it, as a sentence. */
export function sayWhy({ why, needs }: Pick<Mark, 'why' | 'needs'>): string {
  return say(unprovenWords).why[why](say(shellWords).roles[needs]);
}

interface Asked {
  readonly marks: readonly Mark[];
  readonly settled: 'confirmed' | 'rejected';
}

export function Unproven() {
  const app = useApp();
  const floor = useFloor();
  const words = say(unprovenWords);
  const refusal = useRefusal('settle-unproven');
  const [asked, setAsked] = useState<Asked | null>(null);
  const marks = waiting(floor);
  if (app.store.trust() === null) return <p class="empty">{words.noTickets}</p>;
  if (marks.length === 0) return <p class="empty">✓ {words.none}</p>;
  const some = marks.slice(0, AT_ONCE);
  return (
    <div class="stack" data-testid="unproven">
      <p>{words.help}</p>
      <ActGroup reason={refusal}>
        {some.length > 1 && (
          <div>
            <Button
              tone="act"
              large
              disabledReason={refusal}
              testId="unproven-all"
              onPress={() => setAsked({ marks: some, settled: 'confirmed' })}
            >
              {words.confirmAll(some.length)}
            </Button>
          </div>
        )}
        {some.map((mark) => (
          <Row key={mark.entry} mark={mark} refusal={refusal} onAsk={setAsked} />
        ))}
      </ActGroup>
      {asked && <Settle asked={asked} onClose={() => setAsked(null)} />}
    </div>
  );
}

interface RowProps {
  readonly mark: Mark;
  readonly refusal: string | null;
  readonly onAsk: (asked: Asked) => void;
}

function Row({ mark, refusal, onAsk }: RowProps) {
  const floor = useFloor();
  const words = say(unprovenWords);
  return (
    <div class="traced" data-testid="unproven-entry">
      <p>
        <MarkText mark={mark} />
        <br />
        <span class="soft">
          {formatDay(mark.atMs, zoneOf(floor, mark.line))} · {sayWhy(mark)}
        </span>
      </p>
      <div class="row">
        <Button
          large
          disabledReason={refusal}
          testId="unproven-confirm"
          onPress={() => onAsk({ marks: [mark], settled: 'confirmed' })}
        >
          {words.confirm}
        </Button>
        <Button
          large
          tone="stop"
          disabledReason={refusal}
          testId="unproven-reject"
          onPress={() => onAsk({ marks: [mark], settled: 'rejected' })}
        >
          {words.reject}
        </Button>
      </div>
    </div>
  );
}

/** What it is and whose name it bears. */
function MarkText({ mark }: { readonly mark: Mark }) {
  const floor = useFloor();
  const words = say(unprovenWords);
  const name = mark.by === null ? words.nobody : words.by(personName(floor, mark.by));
  const about = mark.changes === null ? '' : `: ${personName(floor, mark.changes.person)}`;
  return (
    <>
      <b>
        {say(logWords).kinds[mark.kind]}
        {about}
      </b>{' '}
      · {name}
    </>
  );
}

function Settle({ asked, onClose }: { readonly asked: Asked; readonly onClose: () => void }) {
  const app = useApp();
  const words = say(unprovenWords);
  const { marks, settled } = asked;
  const isReject = settled === 'rejected';
  const decide = ({ person }: Sure, reason: string) => {
    const payload = { entries: marks.map(({ entry }) => entry), settled, by: person.person, reason };
    app.write([{ kind: 'unproven.settled', payload }]).then(
      () => {
        const after = app.store.floor().unproven;
        const left = marks.filter(({ entry }) => after.get(entry)?.settled === null).length;
        app.notice.value =
          left === marks.length && marks.every(({ needs }) => needs !== 'engineer')
            ? { tone: 'care', text: words.notProven }
            : left > 0
              ? { tone: 'care', text: words.engineerOnly(left) }
              : { tone: 'go', text: isReject ? words.rejected : words.confirmed(marks.length) };
        onClose();
      },
      () => undefined, // shown by the fault screen
    );
  };
  return (
    <LeadDecides
      title={isReject ? words.rejectTitle : words.confirmTitle(marks.length)}
      tone={isReject ? 'stop' : 'plain'}
      why={words.reason}
      act={isReject ? words.reject : words.confirmAll(marks.length)}
      testId="settle-unproven"
      onDecide={decide}
      onClose={onClose}
    >
      {marks.slice(0, 5).map((mark) => (
        <p key={mark.entry}>
          <MarkText mark={mark} />
        </p>
      ))}
      {isReject && (
        <p>{marks.some(({ changes }) => changes !== null) ? words.rejectPerson : words.rejectHelp}</p>
      )}
      <p class="soft">{words.needsServer}</p>
    </LeadDecides>
  );
}
