// One shift hands the line over to the next: what is open, worked out by the tablet, and the signatures of both leads.

import { useLayoutEffect, useState } from 'preact/hooks';
import { lastHandover } from '../../../../shared/floor/held-at-handover.ts';
import { isAtLeast } from '../../../../shared/floor/vocabulary.ts';
import { handedKey } from '../../../../shared/handover/open.ts';
import { useFloor } from '../../app.ts';
import type { Watch } from '../../outlook/watch.ts';
import { Button } from '../../ui/Button.tsx';
import { handoverWords } from '../../words/handover.ts';
import { say } from '../../words/words.ts';
import { HandDialog, TakeDialog } from './HandoverDialogs.tsx';
import { knownOf, type Over, stillOver } from './handover-model.ts';
import { KnownBy, OpenMatters } from './OpenMatters.tsx';
import { PastHandover } from './PastHandover.tsx';
import { useOpen, useStanding } from './use-open.ts';
import './handover.css';

export function Handover({ line, watch }: { readonly line: string; readonly watch: Watch }) {
  const floor = useFloor();
  const words = say(handoverWords);
  const standing = useStanding();
  const [asked, setAsked] = useState<Over | null>(null);
  // Stays where the dialog is closed to look at something.
  const [note, setNote] = useState('');
  const last = lastHandover(floor, line);
  const waits = last !== null && last.taken === null ? last : null;
  const over = stillOver(asked, waits);
  // What was asked about one handover must not come up again at the next.
  useLayoutEffect(() => {
    if (over !== asked) setAsked(over);
  }, [over, asked]);
  const close = () => setAsked(null);
  const { list, atMs } = useOpen({ line, watch, without: waits ?? undefined });
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
          <Button
            tone="act"
            large
            testId="take-over"
            disabledReason={reason}
            onPress={() => setAsked({ does: 'take', handover: waits.handover })}
          >
            {words.takeOver}
          </Button>
        )}
        <Button
          tone={waits ? 'plain' : 'act'}
          large
          testId="hand-over"
          disabledReason={reason}
          onPress={() => setAsked({ does: 'hand' })}
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
      {over?.does === 'hand' && (
        <HandDialog line={line} watch={watch} note={note} onNote={setNote} onClose={close} />
      )}
      {over?.does === 'take' && waits && (
        <TakeDialog key={over.handover} handed={waits} watch={watch} onClose={close} />
      )}
    </section>
  );
}
