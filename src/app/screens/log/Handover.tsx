// One shift hands the line over to the next: what is open, worked out by the tablet, and the signatures of both leads.

import { useState } from 'preact/hooks';
import { lastHandover } from '../../../../shared/floor/held-at-handover.ts';
import { isAtLeast } from '../../../../shared/floor/vocabulary.ts';
import { handedKey } from '../../../../shared/handover/open.ts';
import { useFloor } from '../../app.ts';
import { Button } from '../../ui/Button.tsx';
import { handoverWords } from '../../words/handover.ts';
import { say } from '../../words/words.ts';
import { HandDialog, TakeDialog } from './HandoverDialogs.tsx';
import { knownOf } from './handover-model.ts';
import { KnownBy, OpenMatters } from './OpenMatters.tsx';
import { PastHandover } from './PastHandover.tsx';
import { useOpen, useStanding } from './use-open.ts';
import './handover.css';

export function Handover({ line }: { readonly line: string }) {
  const floor = useFloor();
  const words = say(handoverWords);
  const standing = useStanding();
  const [over, setOver] = useState<'hand' | 'take' | null>(null);
  // Stays where the dialog is closed to look at something.
  const [note, setNote] = useState('');
  const last = lastHandover(floor, line);
  const waits = last !== null && last.taken === null ? last : null;
  const { list, atMs } = useOpen(line, waits ?? undefined);
  const leads = [...floor.people.values()].filter(({ role }) => isAtLeast(role, 'lead')).length;
  const left = new Set((last?.left ?? []).map(handedKey));
  const reason = leads < 2 ? words.twoLeads : null;
  return (
    <section class="card handover" data-testid="handover">
      <h3>{words.title}</h3>
      {waits && <PastHandover handed={waits} />}
      <h4>{waits ? words.cameSince : words.openNow(list.items.length + list.more)}</h4>
      <OpenMatters line={line} items={list.items} more={list.more} atMs={atMs} isPast={false} left={left} />
      <KnownBy line={line} known={knownOf(standing, list, atMs)} />
      <div class="row">
        {waits && (
          <Button tone="act" large testId="take-over" disabledReason={reason} onPress={() => setOver('take')}>
            {words.takeOver}
          </Button>
        )}
        <Button
          tone={waits ? 'plain' : 'act'}
          large
          testId="hand-over"
          disabledReason={reason}
          onPress={() => setOver('hand')}
        >
          {words.handOver}
        </Button>
      </div>
      {last?.taken && (
        <details>
          <summary class="button quiet" data-testid="handover-before">
            {words.before}
          </summary>
          <PastHandover handed={last} />
        </details>
      )}
      {over === 'hand' && (
        <HandDialog line={line} note={note} onNote={setNote} onClose={() => setOver(null)} />
      )}
      {over === 'take' && waits && <TakeDialog handed={waits} onClose={() => setOver(null)} />}
    </section>
  );
}
