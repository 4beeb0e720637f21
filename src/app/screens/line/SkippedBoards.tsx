// Boards skipped on the next panel, beside the plain tap: what is said of them, and the button to say it.

import { useState } from 'preact/hooks';
import { boardsOf } from '../../../../shared/floor/remaining.ts';
import type { Run } from '../../../../shared/floor/state.ts';
import { useApp, useFloor } from '../../app.ts';
import { lazy } from '../../frame/lazy.tsx';
import { skippedOnTap } from '../../skipped.ts';
import { Button } from '../../ui/Button.tsx';
import { lineWords } from '../../words/line.ts';
import { say } from '../../words/words.ts';

export const SkippedDialog = lazy(() => import('./CountPanels.tsx').then((module) => module.SkippedDialog));

/** What is said of boards skipped on the next panel; tapped to say it. Nothing where a panel is one board. */
export function SkippedBoards(props: {
  readonly run: Run;
  /** Why it may not be said; null where it may. */
  readonly refusal: string | null;
}) {
  const { run, refusal } = props;
  const app = useApp();
  const floor = useFloor();
  const words = say(lineWords);
  const [asking, setAsking] = useState(false);
  const boards = boardsOf(floor, run.setup);
  if (boards <= 1) return null;
  const said = skippedOnTap(floor, run, app.skippedNext.value);
  const count = said === null ? null : typeof said === 'number' ? said : said.length;
  return (
    <div class="skips">
      <Button testId="skipped" disabledReason={refusal} onPress={() => setAsking(true)}>
        {count === null ? words.skippedUnknown : words.skipped(count)}
      </Button>
      {asking && (
        <SkippedDialog
          boards={boards}
          said={said}
          onSkipped={(value) => {
            app.skippedNext.value = { run: run.run, boards: value };
            setAsking(false);
          }}
          onClose={() => setAsking(false)}
        />
      )}
    </div>
  );
}
