// A slot of a line of this tablet is about to run dry and nobody has answered for a while: the chip of the top bar is not enough any more.

import { needKey } from '../../../shared/floor/state.ts';
import type { OpenWarning } from '../../../shared/outlook/loudest-open.ts';
import { useApp, useFloor } from '../app.ts';
import { slotToTell, takeLine } from '../line-in-hand.ts';
import { useRefusal } from '../may.ts';
import type { Watch } from '../outlook/watch.ts';
import { address } from '../router.ts';
import { Banner } from '../ui/Banner.tsx';
import { Button } from '../ui/Button.tsx';
import { VerdictShape } from '../ui/Shape.tsx';
import { warningWords } from '../words/warning.ts';
import { say } from '../words/words.ts';
import { sayWarning, warningTone } from './warning-text.ts';

/** A late warning takes a band of its own after this long without an answer, ms: by then it has called three times. */
const LATE_BAND_MS = 45_000;

interface LateBannerProps {
  /** What is open on the lines that the tablet serves. */
  readonly open: readonly OpenWarning[];
  readonly acknowledge: Watch['acknowledge'];
}

export function LateBanner({ open, acknowledge }: LateBannerProps) {
  const app = useApp();
  const floor = useFloor();
  const words = say(warningWords);
  const heard = useRefusal('acknowledge-warning');
  const late = open.filter(
    ({ slot }) =>
      slot.warning.level === 'late' &&
      warningTone(slot) === 'stop' &&
      app.nowMs.value - slot.warning.sinceMs >= LATE_BAND_MS,
  );
  const [first, ...rest] = late;
  if (!first) return null;
  const { outlook } = first;
  const { line } = outlook;
  const zone = floor.lines.get(line)?.zone ?? 'UTC';
  const slot = slotToTell(app, line, first.slot.slot);
  const said = sayWarning(first.slot, { outlook, nowMs: app.nowMs.value, zone });
  const short = rest.length > 0 ? `${said.short} · ${words.shortMore(rest.length)}` : said.short;
  return (
    <Banner
      key={needKey(line, first.slot.slot, first.slot.need)}
      tone="stop"
      testId="late"
      picture={<VerdictShape verdict="refused" size={44} />}
      slot={slot}
      about={late.map((each) => needKey(each.outlook.line, each.slot.slot, each.slot.need)).join(' ')}
      short={short}
      act={
        <Button
          tone="act"
          testId="late-go"
          label={`${words.acknowledge}: ${slot}`}
          disabledReason={heard}
          onPress={() => void acknowledge(late).catch(() => undefined)}
        >
          {words.acknowledge}
        </Button>
      }
      rest={
        <a class="button" href={address('line')} onClick={() => takeLine(app, line)}>
          {words.show}
        </a>
      }
    >
      {said.long}
      {rest.length > 0 && ` ${words.more(rest.length)}`}
    </Banner>
  );
}
