// The camera passed over a shelf, a cart or a bank: over the whole screen, every label in view outlined, what was found in a list
// beside it. Loaded when first used. It lies in the platform's top layer, so that one touch or Escape leaves it, wherever it was opened.

import { useLayoutEffect, useRef } from 'preact/hooks';
import { openSweep, setupProgress } from '../../../shared/floor/progress.ts';
import type { ScannedCode } from '../../../shared/labels/scan.ts';
import { useApp, useFloor } from '../app.ts';
import { mayVerify } from '../desk/may-verify.ts';
import { useRefusal } from '../may.ts';
import { useCamera, useSize } from '../scan/CameraView.tsx';
import { siteFormats } from '../scan/site-formats.ts';
import { Icon } from '../ui/Icon.tsx';
import { PracticeMark } from '../ui/PracticeMark.tsx';
import { cameraWords } from '../words/camera.ts';
import { findWords } from '../words/find.ts';
import { formatCount, say } from '../words/words.ts';
import { CameraBlind } from './CameraBlind.tsx';
import { CameraTools } from './CameraPanel.tsx';
import { cameraMemory } from './camera-memory.ts';
import { blindTitle } from './camera-sentence.ts';
import { FindMarks } from './FindMarks.tsx';
import { FoundList, SweptList } from './FoundList.tsx';
import { passDrafts } from './find-drafts.ts';
import { type FindTask, useFind } from './use-find.ts';
import './camera-overlay.css';
import './camera-panel.css';
import './find.css';

interface FindOverProps {
  readonly task: FindTask;
  readonly onClose: () => void;
  /** A slot of a sweep that a person says the reel hangs on: it is checked as if both had been scanned. */
  readonly onCheck: (slot: string, codes: readonly ScannedCode[]) => void;
}

export function FindOver({ task, onClose, onCheck }: FindOverProps) {
  const app = useApp();
  const floor = useFloor();
  const words = say(findWords);
  const refusal = useRefusal('verify-reel');
  const find = useFind(task, () => mayVerify(app));
  const line = app.line.value ?? '';
  const camera = useCamera({
    ...siteFormats(floor.rules.get(line)?.alsoRead),
    memory: cameraMemory(app),
    onCodes: () => undefined,
    onLook: find.onLook,
  });
  const box = useSize(camera.video);
  const title = blindTitle(camera.state, say(cameraWords));
  const sweep = openSweep(floor, line);
  const leave = () => {
    onClose();
    if (task.do === 'find') keepPass();
  };
  function keepPass(): void {
    find.finish();
    const reelOf = (key: string) => {
      const thing = find.thingOf(key);
      return thing !== null && 'reel' in thing ? thing : null;
    };
    const drafts = passDrafts(line, find.pan.found.values(), reelOf);
    if (drafts.length === 0) return;
    if (refusal !== null) app.notice.value = { tone: 'care', text: words.notKept };
    else app.record(drafts, { notice: { tone: 'plain', text: words.kept(formatCount(drafts.length)) } });
  }
  const dialog = useModal();
  return (
    <dialog
      ref={dialog}
      class="find"
      aria-label={task.do === 'find' ? words.title : words.sweep}
      tabIndex={-1}
      onCancel={(event) => {
        event.preventDefault();
        leave();
      }}
      data-testid="find"
    >
      <PracticeMark brief />
      <div class={`camera is-${camera.state.kind}`}>
        <video
          class="camera-picture"
          ref={camera.video}
          playsInline
          muted
          aria-label={say(cameraWords).picture}
          hidden={title !== null}
        />
        {title === null && <FindMarks find={find} box={box} ticked={new Set(sweep?.seen)} />}
        {title !== null && <CameraBlind camera={camera} title={title} onType={null} />}
      </div>
      <div class="camera-panel find-panel">
        <h2>
          {task.do === 'find' ? words.title : words.sweep}
          <small>{task.do === 'find' ? words.help : words.sweepHelp}</small>
        </h2>
        {task.do === 'find' ? (
          <FoundList find={find} />
        ) : (
          <SweptList
            find={find}
            progress={setupProgress(floor, line)}
            sweep={sweep}
            onCheck={(slot, codes) => {
              onClose();
              onCheck(slot, codes);
            }}
          />
        )}
        <div class="camera-ways">
          <CameraTools camera={camera} />
          <button type="button" class="camera-close" onClick={leave} data-testid="find-close">
            <Icon name="cross" size={34} />
            {say(cameraWords).close}
          </button>
        </div>
      </div>
    </dialog>
  );
}

/** Opens the dialog before it is painted, and closes it when it is taken away. */
function useModal() {
  const dialog = useRef<HTMLDialogElement>(null);
  useLayoutEffect(() => {
    const element = dialog.current;
    if (element && !element.open) element.showModal();
    element?.focus();
    return () => element?.close();
  }, []);
  return dialog;
}
