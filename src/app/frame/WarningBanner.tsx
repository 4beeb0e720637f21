// The loudest open warning, above every screen until somebody takes note; the line screen holds them all.

import type { SlotOutlook } from '../../../shared/outlook/line.ts';
import { useApp, useFloor } from '../app.ts';
import { useRefusal } from '../may.ts';
import type { Watch } from '../outlook/watch.ts';
import { goTo, place } from '../router.ts';
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
  return (
    <div
      class={`banner ${level === 'late' && backup === null ? 'stop' : 'care'}`}
      role="alert"
      data-testid="warning"
      data-level={level}
    >
      <Icon name="bell" />
      <span class="grow">
        <b class="code">{loudest.slot}</b>{' '}
        {isOver
          ? words.over(formatTime(runOut, zone), span)
          : words[level](inSeconds < 0 ? formatSpan(0) : span, formatTime(runOut, zone))}
        {outlook?.counting.ceased && ` ${words.ifPace}`}
        {outlook?.run.phase === 'stopped' && ` ${words.ifStarts}`}
        {backup !== null && ` ${words.backup(backup)}`}
        {warnings.length > 1 && ` ${words.more(warnings.length - 1)}`}
      </span>
      {place.value.screen !== 'line' && (
        <Button onPress={() => goTo('line')} testId="warning-show">
          {words.show}
        </Button>
      )}
      <Button
        tone="act"
        onPress={() => void watch.acknowledge(loudest)}
        testId="warning-ack"
        disabledReason={refusal}
      >
        {words.acknowledge}
      </Button>
    </div>
  );
}
