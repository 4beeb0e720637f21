// A warning on another line that nobody answered: whoever leads says that they go, or looks at that line.

import { needKey } from '../../../shared/floor/state.ts';
import type { Unanswered } from '../../../shared/outlook/unanswered.ts';
import { useApp, useFloor } from '../app.ts';
import { takeLine } from '../line-in-hand.ts';
import { useRefusal } from '../may.ts';
import { goTo } from '../router.ts';
import { Banner } from '../ui/Banner.tsx';
import { Button } from '../ui/Button.tsx';
import { Icon } from '../ui/Icon.tsx';
import { warningWords } from '../words/warning.ts';
import { formatSpan, say } from '../words/words.ts';
import { askedFor } from './warning-text.ts';

export function UnansweredBanner({ open }: { readonly open: readonly Unanswered[] }) {
  const app = useApp();
  const floor = useFloor();
  const words = say(warningWords);
  const refused = useRefusal('acknowledge-warning');
  const [first, ...rest] = open;
  if (!first) return null;
  const { line, slot, need, level, atMs } = first;
  const name = floor.lines.get(line)?.name ?? line;
  const waits = formatSpan((app.nowMs.value - atMs) / 1000);
  const short = [words.nobody(name)];
  if (rest.length > 0) short.push(words.shortMore(rest.length));
  return (
    <Banner
      key={needKey(line, slot, need)}
      tone={level === 'late' ? 'stop' : 'care'}
      testId="unanswered"
      data={{ 'data-level': level }}
      picture={<Icon name="bell" size={32} />}
      slot={slot}
      about={askedFor(open)}
      short={short.join(' · ')}
      act={
        <Button
          tone="act"
          testId="unanswered-go"
          label={`${words.acknowledge}: ${slot}`}
          disabledReason={refused}
          onPress={() => app.record([{ kind: 'warning.acknowledged', payload: { line, slot, need, level } }])}
        >
          {words.acknowledge}
        </Button>
      }
      rest={
        <Button
          testId="unanswered-show"
          onPress={() => {
            takeLine(app, line);
            goTo('line');
          }}
        >
          {words.showLine(name)}
        </Button>
      }
    >
      {words.unanswered[level](name, waits)}
      {rest.length > 0 && ` ${words.more(rest.length)}`}
    </Banner>
  );
}
