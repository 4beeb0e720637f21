// What stands where the camera's picture would be: why there is none, and what to do about it, step by step.

import type { RunningCamera } from '../scan/CameraView.tsx';
import { Button } from '../ui/Button.tsx';
import { Icon } from '../ui/Icon.tsx';
import { cameraWords } from '../words/camera.ts';
import { say } from '../words/words.ts';

export function CameraBlind(props: {
  readonly camera: RunningCamera;
  readonly title: string;
  /** Null where nothing is typed in its place. */
  readonly onType: (() => void) | null;
}) {
  const { state, start } = props.camera;
  const words = say(cameraWords);
  const isOpening = state.kind === 'opening' || (state.kind === 'off' && state.why === 'not-started');
  const steps = state.kind === 'problem' ? words.problem[state.problem.code].steps : [];
  const hasHope = state.kind !== 'problem' || !['insecure', 'absent'].includes(state.problem.code);
  return (
    <div class="camera-blind" data-testid="camera-blind">
      <Icon name="camera" size={96} />
      <h2>{props.title}</h2>
      {isOpening && <p>{words.allow}</p>}
      {steps.length > 1 && (
        <ol>
          {steps.map((step) => (
            <li key={step}>{step}</li>
          ))}
        </ol>
      )}
      {steps.length === 1 && <p>{steps[0]}</p>}
      {!isOpening && (
        <div class="acts">
          {hasHope && (
            <Button tone="act" large onPress={start} testId="camera-start">
              {state.kind === 'off' ? words.start : words.tryAgain}
            </Button>
          )}
          {state.kind === 'problem' && props.onType !== null && (
            <Button tone={hasHope ? 'plain' : 'act'} large onPress={props.onType} testId="camera-type">
              <Icon name="keyboard" /> {words.type}
            </Button>
          )}
        </div>
      )}
    </div>
  );
}
