// Says above every screen that the tablet's clock is set wrong, for as long as it is.

import { useApp, useFloor } from '../app.ts';
import type { ClockSlip } from '../device/clock.ts';
import { Banner } from '../ui/Banner.tsx';
import { Button } from '../ui/Button.tsx';
import { Icon } from '../ui/Icon.tsx';
import { clockWords } from '../words/clock.ts';
import { formatSpan, formatTime, say } from '../words/words.ts';

export function ClockBanner({ slip }: { readonly slip: ClockSlip }) {
  const app = useApp();
  const floor = useFloor();
  const words = say(clockWords);
  const zone = floor.lines.get(app.line.value ?? '')?.zone ?? 'UTC';
  return (
    <Banner
      tone="care"
      testId="clock-slip"
      data={{ 'data-kind': slip.kind }}
      picture={<Icon name="warn" />}
      slot={null}
      about={slip.kind}
      short={words.short}
      act={null}
      rest={
        slip.kind === 'ahead' && (
          <Button onPress={app.trustClock} testId="clock-right">
            {words.isRight}
          </Button>
        )
      }
    >
      {words[slip.kind](formatSpan(slip.byMs / 1000), formatTime(slip.atMs, zone))}
      {slip.kind !== 'ahead' && ` ${words.goesOn}`}
    </Banner>
  );
}
