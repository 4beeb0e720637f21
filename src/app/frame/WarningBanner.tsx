// The loudest open warning, above every screen until somebody takes note; the line screen holds them all.

import type { SlotOutlook } from '../../../shared/outlook/line.ts';
import { useApp, useFloor } from '../app.ts';
import { useRefusal } from '../may.ts';
import type { Watch } from '../outlook/watch.ts';
import { goTo, place } from '../router.ts';
import { Banner } from '../ui/Banner.tsx';
import { Button } from '../ui/Button.tsx';
import { Icon } from '../ui/Icon.tsx';
import { warningWords } from '../words/warning.ts';
import { formatSpan, formatTime, say } from '../words/words.ts';

const loudness = ['quiet', 'soon', 'due', 'late'] as const;

export function WarningBanner({
  warnings,
  watch,
}: {
  readonly warnings: readonly SlotOutlook[];
  readonly watch: Watch;
}) {
  const app = useApp();
  const floor = useFloor();
  const words = say(warningWords);
  const refusal = useRefusal('acknowledge-warning');
  const loudest = [...warnings].sort(
    (a, b) => loudness.indexOf(b.warning.level) - loudness.indexOf(a.warning.level),
  )[0];
  if (!loudest || loudest.warning.level === 'quiet') return null;
  const { level } = loudest.warning;
  const outlook = watch.outlook.value;
  const backup = loudest.turn?.backup ?? null;
  const zone = floor.lines.get(loudest.loaded.line)?.zone ?? 'UTC';
  const runOut = loudest.forecast.runOutMs.expected;
  const inSeconds = (runOut - app.nowMs.value) / 1000;
  const span = formatSpan(Math.abs(inSeconds));
  const isOver = level === 'late' && inSeconds < 0;
  const sayShort = words.short[isOver ? 'over' : level];
  const hold = outlook?.counting.ceased
    ? words.shortPace
    : outlook?.run.phase === 'stopped'
      ? words.shortStarts
      : null;
  const short = [hold ?? sayShort(inSeconds < 0 ? formatSpan(0) : span)];
  if (warnings.length > 1) short.push(words.shortMore(warnings.length - 1));
  return (
    <Banner
      tone={level === 'late' && backup === null ? 'stop' : 'care'}
      testId="warning"
      data={{ 'data-level': level }}
      picture={<Icon name="bell" />}
      slot={loudest.slot}
      short={short.join(' · ')}
      act={
        <Button
          tone="act"
          onPress={() => void watch.acknowledge(loudest)}
          testId="warning-ack"
          disabledReason={refusal}
        >
          {words.acknowledge}
        </Button>
      }
      rest={
        place.value.screen !== 'line' && (
          <Button onPress={() => goTo('line')} testId="warning-show">
            {words.show}
          </Button>
        )
      }
    >
      {isOver
        ? words.over(formatTime(runOut, zone), span)
        : words[level](inSeconds < 0 ? formatSpan(0) : span, formatTime(runOut, zone))}
      {outlook?.counting.ceased && ` ${words.ifPace}`}
      {outlook?.run.phase === 'stopped' && ` ${words.ifStarts}`}
      {backup !== null && ` ${words.backup(backup)}`}
      {warnings.length > 1 && ` ${words.more(warnings.length - 1)}`}
    </Banner>
  );
}
