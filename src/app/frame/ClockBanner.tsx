// Says above every screen that the tablet's clock is set wrong, for as long as it is.

import { useApp, useFloor } from '../app.ts';
import type { ClockSlip } from '../device/clock.ts';
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
    <div class="banner care" role="alert" data-testid="clock-slip" data-kind={slip.kind}>
      <Icon name="warn" />
      <span class="grow">
        {words[slip.kind](formatSpan(slip.byMs / 1000), formatTime(slip.atMs, zone))}
        {slip.kind !== 'ahead' && ` ${words.goesOn}`}
      </span>
      {slip.kind === 'ahead' && (
        <Button onPress={app.trustClock} testId="clock-right">
          {words.isRight}
        </Button>
      )}
    </div>
  );
}
