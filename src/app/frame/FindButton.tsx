// Opens the camera over many labels from wherever a list asks for reels, by one tap. What it is to find is what was asked when it was
// opened, whatever the list becomes meanwhile.

import { useState } from 'preact/hooks';
import { emptyDesk } from '../../../shared/desk/model.ts';
import { useApp } from '../app.ts';
import type { DeskRun } from '../desk/desk.ts';
import { Button } from '../ui/Button.tsx';
import { Icon } from '../ui/Icon.tsx';
import { findWords } from '../words/find.ts';
import { say } from '../words/words.ts';
import { lazyTask } from './lazy.tsx';
import type { FindTask } from './use-find.ts';

const FindOver = lazyTask(() => import('./FindOver.tsx').then((module) => module.FindOver));

interface FindButtonProps {
  readonly task: FindTask;
  readonly testId: string;
  /** False where there is nothing to begin; a pass that is under way goes on. */
  readonly isOffered?: boolean;
  readonly disabledReason?: string | null;
  /** What is begun with it. */
  readonly onOpen?: () => void;
  /** The desk that checks a slot of a sweep; null where nothing is swept. */
  readonly desk: DeskRun | null;
}

export function FindButton({
  task,
  testId,
  isOffered = true,
  disabledReason = null,
  onOpen,
  desk,
}: FindButtonProps) {
  const app = useApp();
  const words = say(findWords);
  const [open, setOpen] = useState<FindTask | null>(null);
  return (
    <>
      {isOffered && (
        <Button
          testId={testId}
          disabledReason={disabledReason}
          onPress={() => {
            onOpen?.();
            setOpen(task);
          }}
        >
          <Icon name="camera" /> {task.do === 'find' ? words.open : words.sweep}
        </Button>
      )}
      {open !== null && (
        <FindOver
          task={open}
          onClose={() => setOpen(null)}
          onCheck={(slot, codes) => {
            if (desk === null) return;
            desk.desk.value = { ...emptyDesk, mode: 'sweep', slot, atSlot: true };
            app.scans.push({ codes, via: 'camera', atMs: app.clock.nowMs() });
          }}
        />
      )}
    </>
  );
}
