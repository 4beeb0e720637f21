// Beside the camera's picture: what is wanted, what the label has told so far, the device's extras, and the way out. It keeps its
// size whatever it says, so that the picture never jumps under the hand that holds the tablet still.

import type { Desk, DeskView } from '../../../shared/desk/model.ts';
import type { ScanWant } from '../../../shared/floor/checklist.ts';
import type { RunningCamera } from '../scan/CameraView.tsx';
import type { GatheredLabel } from '../scan/gather.ts';
import { Button } from '../ui/Button.tsx';
import { Icon } from '../ui/Icon.tsx';
import { cameraWords } from '../words/camera.ts';
import { checklistWords } from '../words/checklist.ts';
import { formatCount, say } from '../words/words.ts';
import {
  isIdle,
  type LabelTold,
  labelFacts,
  slotInHand,
  toldByCodes,
  toldByDesk,
  wantedThings,
} from './camera-task.ts';
import { labelText, missingText, wantedText } from './camera-texts.ts';
import './camera-panel.css';

interface CameraPanelProps {
  readonly camera: RunningCamera;
  readonly desk: Desk;
  readonly view: DeskView | null;
  /** What the checklist behind the camera asks for; null where it asks for no scan. */
  readonly step: ScanWant | null;
  readonly onClose: () => void;
}

export function CameraPanel({ camera, desk, view, step, onClose }: CameraPanelProps) {
  const words = say(cameraWords);
  const { state, session } = camera;
  const answer = state.kind === 'watching' ? state.answer : null;
  const labels = answer?.kind === 'several' ? answer.labels : null;
  const inView = answer?.kind === 'gathering' && view !== null ? toldByCodes(answer.label.codes, view) : null;
  const isHalf = answer?.kind === 'gathering' && answer.isHalf;
  const slot = slotInHand(desk, view);
  const title = labels
    ? words.whichLabel
    : isHalf && inView
      ? words.wanted(missingText(inView.missing))
      : step !== null && isIdle(desk)
        ? say(checklistWords).scanWants[step]
        : wantedText(wantedThings(desk, view));
  const help = labels
    ? words.chooseHelp
    : slot?.part
      ? words.inHand(slot.slot, slot.part)
      : isIdle(desk)
        ? words.anyHelp
        : '\u00a0'; // keeps its line
  return (
    <div class="camera-panel">
      <h1>
        {title}
        <small translate={false}>{help}</small>
      </h1>
      {labels ? (
        <Choices labels={labels} view={view} onChoose={(label) => session?.choose(label)} />
      ) : (
        <LabelCard told={inView ?? toldByDesk(desk)} isInView={inView !== null} />
      )}
      <div class="camera-ways">
        <CameraTools camera={camera} />
        <button type="button" class="camera-close" onClick={onClose} data-testid="camera-close">
          <Icon name="cross" size={34} />
          {words.close}
        </button>
      </div>
    </div>
  );
}

/** What the label has told: ticked off where it is read, open where it is not. */
function LabelCard({ told, isInView }: { readonly told: LabelTold | null; readonly isInView: boolean }) {
  const words = say(cameraWords);
  const isWhole = told !== null && told.missing.length === 0;
  return (
    <div class={`camera-card${told === null ? '' : isWhole ? ' whole' : ' open'}`} data-testid="camera-card">
      <h2>{words.card}</h2>
      <dl>
        {labelFacts.map((fact) => {
          const value = told?.[fact] ?? null;
          const isMissing = told?.missing.some((piece) => piece === fact) ?? false;
          return (
            <div
              key={fact}
              class={value !== null ? 'in' : isMissing ? 'wanted' : ''}
              data-testid={`fact-${fact}`}
            >
              <dt>
                <i aria-hidden="true">{value !== null ? '✓' : isMissing ? '○' : '·'}</i>
                {words.facts[fact]}
              </dt>
              <dd translate={false}>
                {typeof value === 'number'
                  ? formatCount(value)
                  : (value ?? (isMissing && isInView ? words.notRead : '–'))}
              </dd>
            </div>
          );
        })}
      </dl>
    </div>
  );
}

/** The same for a label from frame to frame, in whatever order its codes were read: a button must not move under the finger. */
const firstText = (label: GatheredLabel) => label.codes.map(({ text }) => text).sort()[0];

function Choices(props: {
  readonly labels: readonly GatheredLabel[];
  readonly view: DeskView | null;
  readonly onChoose: (label: GatheredLabel) => void;
}) {
  return (
    <div class="camera-card camera-choices">
      {props.labels.map((label, at) => (
        <Button key={firstText(label)} large onPress={() => props.onChoose(label)}>
          <b class="number">{at + 1}</b>
          <span class="code" translate={false}>
            {labelText(label.codes, props.view)}
          </span>
        </Button>
      ))}
    </div>
  );
}

/** Light, other camera and zoom, each where the device has it. */
export function CameraTools({ camera }: { readonly camera: RunningCamera }) {
  const words = say(cameraWords);
  const { state, session, cameras, switchCamera } = camera;
  if (state.kind !== 'watching') return null;
  const { hasTorch, zoom } = state.camera;
  return (
    <>
      {zoom !== null && (
        <label class="camera-zoom">
          <span>{words.zoom}</span>
          <input
            type="range"
            min={zoom.min}
            max={zoom.max}
            step={zoom.step}
            onInput={(event) => void session?.setZoom(Number(event.currentTarget.value))}
          />
        </label>
      )}
      {hasTorch && (
        <button
          type="button"
          class="camera-tool"
          aria-pressed={state.isTorchOn}
          onClick={() => void session?.setTorch(!state.isTorchOn)}
        >
          <Icon name="torch" />
          {words.light}
        </button>
      )}
      {cameras.length > 1 && (
        <button type="button" class="camera-tool" onClick={switchCamera}>
          <Icon name="turn" />
          {words.switchCamera}
        </button>
      )}
    </>
  );
}
