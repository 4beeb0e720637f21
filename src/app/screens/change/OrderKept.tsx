// Who kept the order of jobs for all tablets and when, whether what is shown has changed since, and keeping it anew.

import { useState } from 'preact/hooks';
import { useApp, useFloor } from '../../app.ts';
import { useRefusal } from '../../may.ts';
import { AskFeet } from '../../ui/Ask.tsx';
import { Button } from '../../ui/Button.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { orderWords } from '../../words/order.ts';
import { formatDay, say } from '../../words/words.ts';
import { keptPayload, type OrderDraft, type OrderList } from './order-model.ts';

interface OrderKeptProps {
  readonly line: string;
  readonly list: OrderList;
  /** What differs from the kept order; null where the kept one is shown. */
  readonly draft: OrderDraft | null;
  /** The kept order is to show: the list just kept, null where the draft is dropped whatever it says. */
  readonly onSettle: (kept: OrderList | null) => void;
  readonly isSearching: boolean;
  /** The order shown is what the search found: keeping it is the next act. */
  readonly isFound: boolean;
}

export function OrderKept({ line, list, draft, onSettle, isSearching, isFound }: OrderKeptProps) {
  const app = useApp();
  const floor = useFloor();
  const words = say(orderWords);
  const refusal = useRefusal('keep-plan');
  const [isAsking, setAsking] = useState(false);
  const plan = floor.plans.get(line);
  if (!plan && draft === null) return null;
  const zone = floor.lines.get(line)?.zone ?? 'UTC';
  const name = plan?.by ? (floor.people.get(plan.by)?.name ?? plan.by) : words.somebody;
  const isNewer = plan !== undefined && draft !== null && draft.sinceMs !== plan.atMs;

  const keepIt = () =>
    app.record([{ kind: 'plan.kept', payload: keptPayload(line, list) }], {
      notice: { tone: 'go', text: words.keptNow },
      next: () => onSettle(list),
    });

  return (
    <div class="stack" data-testid="order-kept">
      <p>
        {plan && <b>{words.keptBy(name, formatDay(plan.atMs, zone))} </b>}
        {draft === null ? (
          <span class="soft">✓ {words.asKept}</span>
        ) : (
          <span class="chip care">
            ? {plan ? words.changed : words.neverKept} {isNewer && words.newer}
          </span>
        )}
      </p>
      {draft !== null && (
        <div class="row">
          <Button
            large
            tone={isFound && !isSearching ? 'act' : 'plain'}
            testId="order-keep"
            disabledReason={refusal ?? (isSearching ? words.keepLater : null)}
            onPress={keepIt}
          >
            {words.keep}
          </Button>
          {plan && (
            <Button large testId="order-take-kept" onPress={() => setAsking(true)}>
              {words.takeKept}
            </Button>
          )}
        </div>
      )}
      {isAsking && (
        <Dialog title={words.takeTitle} onClose={() => setAsking(false)}>
          <p>{words.takeText}</p>
          <AskFeet
            testId="order-take-yes"
            onYes={() => {
              setAsking(false);
              onSettle(null);
            }}
            onNo={() => setAsking(false)}
          >
            {words.takeKept}
          </AskFeet>
        </Dialog>
      )}
    </div>
  );
}
