// The camera's view: the picture, and beside it what the label has told, what is still wanted, and the way out. Loaded when first
// used, so that the first page does not carry the decoder. It lies over the screen and leaves the dock and the navigation in reach.

import { useEffect, useRef, useState } from 'preact/hooks';
import { MOST_PICTURE_BYTES } from '../../../shared/floor/kinds-pictures.ts';
import type { ScannedCode } from '../../../shared/labels/scan.ts';
import { useApp, useFloor } from '../app.ts';
import type { DeskRun } from '../desk/desk.ts';
import { CameraView, useCamera } from '../scan/CameraView.tsx';
import { DEFAULT_GATHER_SETTINGS } from '../scan/gather.ts';
import { siteFormats } from '../scan/site-formats.ts';
import { Button } from '../ui/Button.tsx';
import { useEscape } from '../ui/escape.ts';
import { cameraWords } from '../words/camera.ts';
import { say } from '../words/words.ts';
import { CameraBlind } from './CameraBlind.tsx';
import { CameraPanel } from './CameraPanel.tsx';
import { cameraMemory } from './camera-memory.ts';
import { blindTitle, useSentence } from './camera-sentence.ts';
import { framesToWait } from './camera-task.ts';
import { codeText, labelText } from './camera-texts.ts';
import { evidenceOf } from './evidence.ts';
import './camera-overlay.css';

/**
 * What a code claims to be: two different envelopes, or two codes of one data identifier, cannot stand on one label. Only
 * identifiers that no bare part number is likely to begin with are told.
 */
function claim({ text }: ScannedCode): string | null {
  if (/^\[\)>/.test(text)) return 'envelope';
  return /^(1P|1T|10D|3S|4S)(?=.)/.exec(text)?.[1] ?? (/^Q\d{1,9}$/.test(text) ? 'Q' : null);
}

interface CameraOverlayProps {
  readonly desk: DeskRun;
  /** True while a dialog lies over the picture. */
  readonly isCovered: boolean;
  readonly onClose: () => void;
  readonly onType: () => void;
}

export function CameraOverlay({ desk, isCovered, onClose, onType }: CameraOverlayProps) {
  const app = useApp();
  useFloor();
  const words = say(cameraWords);
  const state = desk.desk.value;
  const view = desk.view();
  const hasVerdict = desk.shown.value !== null;
  /** True where a page behind the camera took what was read last: it shows nothing of it here. */
  const [isElsewhere, setElsewhere] = useState(false);

  async function push(codes: readonly ScannedCode[]): Promise<void> {
    await desk.getReady().catch(() => undefined); // offline and not kept: the desk keeps the scan and asks again
    const [before, shown] = [desk.desk.peek(), desk.shown.peek()];
    app.scans.push({ codes, via: 'camera', atMs: app.clock.nowMs() });
    const isUntouched = desk.desk.peek() === before && desk.shown.peek() === shown && !desk.busy.peek();
    setElsewhere(isUntouched && desk.view() !== null);
  }

  const also = siteFormats(view?.floor.rules.get(view.line)?.alsoRead);
  const evidence = evidenceOf(app, desk);
  const camera = useCamera({
    formats: also.formats,
    lengths: also.lengths,
    memory: cameraMemory(app),
    gather: {
      claim,
      settleFor: (codes) => framesToWait(codes, desk.view(), DEFAULT_GATHER_SETTINGS.settleFrames),
    },
    onCodes: (codes) => void push(codes),
    pictures: {
      isWanted: evidence.isWanted,
      mostBytes: MOST_PICTURE_BYTES,
      take: evidence.take,
    },
    isPaused: hasVerdict || isCovered || desk.busy.value || state.question !== null,
  });
  const company =
    camera.state.kind === 'watching' ? camera.state.outlines.map((outline) => outline.code) : [];
  const section = useFocusInside(hasVerdict);
  // A verdict is to be answered.
  useEscape(hasVerdict ? () => undefined : onClose);
  const sentence = useSentence(camera.state, state, view, isElsewhere);
  const title = blindTitle(camera.state, words);
  const isHalf =
    camera.state.kind === 'watching' &&
    camera.state.answer.kind === 'gathering' &&
    camera.state.answer.isHalf;
  return (
    <section
      ref={section}
      class="camera-overlay"
      aria-label={words.view}
      tabIndex={-1}
      inert={hasVerdict}
      data-testid="camera"
    >
      <CameraView
        camera={camera}
        words={{
          picture: words.picture,
          label: (number, codes) => words.label(number, labelText(codes, view)),
        }}
        nameCode={(code) => codeText(code, view, company)}
      >
        {title !== null && <CameraBlind camera={camera} title={title} onType={onType} />}
        <div class="camera-over">
          <p class={`camera-say${title !== null || sentence === '' ? ' hidden' : ''}`} role="status">
            {title ?? sentence}
          </p>
        </div>
        {isHalf && (
          <div class="camera-act">
            <Button tone="act" large onPress={() => camera.session?.takeAsRead()} testId="camera-take">
              {words.takeAsRead}
            </Button>
          </div>
        )}
        {camera.state.kind === 'watching' && camera.state.decoderPath === 'script' && !isHalf && (
          <p class="camera-note">{words.slow}</p>
        )}
      </CameraView>
      <CameraPanel
        camera={camera}
        desk={state}
        view={view}
        step={desk.step.value?.asks.wants ?? null}
        onClose={onClose}
      />
    </section>
  );
}

/** Goes into the view when it opens, and again when what covered it is gone, so that a keyboard goes on where the eyes are. */
function useFocusInside(isCovered: boolean) {
  const section = useRef<HTMLElement>(null);
  // After the tap that opened it is over: a scanner's page takes the focus from what was tapped.
  useEffect(() => {
    const isLost = document.activeElement === null || document.activeElement === document.body;
    if (!isCovered && (isLost || !section.current?.contains(document.activeElement)))
      section.current?.focus({ preventScroll: true });
  }, [isCovered]);
  return section;
}
