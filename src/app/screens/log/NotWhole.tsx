// Says above the log that it is not whole yet, and how far it is.

import { sayShare, useBehind } from '../../behind.ts';
import { Icon } from '../../ui/Icon.tsx';
import { syncWords } from '../../words/sync.ts';
import { formatCount, say } from '../../words/words.ts';

export function NotWhole() {
  const behind = useBehind();
  const words = say(syncWords);
  if (!behind || behind.missing === 0) return null;
  return (
    <div class="caution" data-testid="log-behind" role="status">
      <Icon name="warn" />
      <div>
        <b>{words.history(sayShare(behind))}</b>
        <p>{words.stillMissing(formatCount(behind.missing), formatCount(behind.of))}</p>
        <p>{words.historyHelp}</p>
      </div>
    </div>
  );
}
