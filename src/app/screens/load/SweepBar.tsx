// A sweep of the line that is on its way: how far it is, what is missing, its end.

import { useComputed } from '@preact/signals';
import { setupProgress } from '../../../../shared/floor/progress.ts';
import type { Sweep } from '../../../../shared/floor/state.ts';
import { entryId } from '../../../../shared/log/entry.ts';
import { useApp, useFloor } from '../../app.ts';
import type { DeskRun } from '../../desk/desk.ts';
import { goTo } from '../../router.ts';
import { Button } from '../../ui/Button.tsx';
import { Icon } from '../../ui/Icon.tsx';
import { loadWords } from '../../words/load.ts';
import { formatCount, say } from '../../words/words.ts';
import { sweepMissing, sweepSlots } from './model.ts';

interface SweepBarProps {
  readonly line: string;
  readonly sweep: Sweep;
  readonly desk: DeskRun;
}

export function SweepBar({ line, sweep, desk }: SweepBarProps) {
  const app = useApp();
  const floor = useFloor();
  const words = say(loadWords);
  const isSweeping = useComputed(() => desk.desk.value.mode === 'sweep').value;
  const progress = setupProgress(floor, line);
  const missing = sweepMissing(progress, sweep);
  const all = sweepSlots(progress).length;
  return (
    <div class="row">
      <span class="chip" data-testid="sweep-progress">
        ◉ {words.sweepRunning(formatCount(all - missing.length), formatCount(all))}
      </span>
      {missing.length > 0 && (
        <span class="chip care code">
          {missing.slice(0, 3).join(' · ')}
          {missing.length > 3 ? '…' : ''}
        </span>
      )}
      {/* After a reload, or begun on another tablet: scans here are no part of the sweep until a person says so. */}
      {!isSweeping && (
        <Button
          tone="act"
          testId="sweep-resume"
          onPress={() => {
            desk.desk.value = { ...desk.desk.peek(), mode: 'sweep' };
          }}
        >
          <Icon name="search" /> {words.sweepResume}
        </Button>
      )}
      <Button
        testId="sweep-end"
        onPress={async () => {
          const [entry] = await app.write([
            {
              kind: 'sweep.ended',
              payload: { line, sweep: sweep.sweep, seen: all - missing.length, missing: [...missing] },
            },
          ]);
          desk.desk.value = { ...desk.desk.peek(), mode: 'work' };
          app.notice.value =
            missing.length === 0
              ? { tone: 'go', text: words.sweepAll }
              : {
                  tone: 'care',
                  text: `${words.sweepMissing(missing.length)}: ${missing.slice(0, 6).join(', ')}${missing.length > 6 ? '…' : ''}`,
                  act: { label: say(loadWords).list, run: () => goTo('log', entry ? entryId(entry) : '') },
                };
        }}
      >
        {words.sweepEnd}
      </Button>
    </div>
  );
}
