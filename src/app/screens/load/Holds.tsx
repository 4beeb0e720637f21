// Reels that wait for a lead, each with its slot, its part and why.

import { useState } from 'preact/hooks';
import type { Hold } from '../../../../shared/floor/state.ts';
import { ClearDialog } from '../../frame/PeopleDialogs.tsx';
import { Button } from '../../ui/Button.tsx';
import { loadWords } from '../../words/load.ts';
import { sayReason } from '../../words/verdict.ts';
import { say } from '../../words/words.ts';

export function Holds({ holds }: { readonly holds: readonly Hold[] }) {
  const words = say(loadWords);
  const [clearing, setClearing] = useState<string | null>(null);
  return (
    <section class="load-holds" data-testid="holds">
      <h2>{words.holds}</h2>
      {holds.map((hold) => (
        <div class="row" key={hold.entry}>
          <span class="chip care">
            ? <span class="code">{[hold.facts.cart, hold.facts.slot].filter(Boolean).join(' → ')}</span>
          </span>
          <span class="grow">
            <span class="code">{hold.facts.part ?? hold.facts.supplierPart}</span> ·{' '}
            {hold.reasons.map((reason) => sayReason(reason.code)?.title ?? reason.code).join(', ')}
          </span>
          <Button
            onPress={() => setClearing(hold.entry)}
            label={`${words.decide} ${hold.facts.slot ?? hold.facts.part ?? ''}`.trim()}
          >
            {words.decide}
          </Button>
        </div>
      ))}
      {clearing !== null && <ClearDialog entry={clearing} onClose={() => setClearing(null)} />}
    </section>
  );
}
