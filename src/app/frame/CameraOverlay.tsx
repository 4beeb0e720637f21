// The camera over the main area; loaded when first used, so that the first page does not carry the decoder.

import { useApp } from '../app.ts';
import { Button } from '../ui/Button.tsx';
import { cameraWords } from '../words/camera.ts';
import { shellWords } from '../words/shell.ts';
import { say } from '../words/words.ts';
import { lazy } from './lazy.tsx';

const CameraView = lazy(() => import('../scan/CameraView.tsx').then((module) => module.CameraView));

export function CameraOverlay({ onClose }: { readonly onClose: () => void }) {
  const app = useApp();
  const words = say(cameraWords);
  return (
    <section class="camera-overlay" aria-label={words.picture} data-testid="camera">
      <CameraView
        words={words}
        memory={{
          read: () => app.preferences.value.camera,
          write: (camera) => {
            app.preferences.value = { ...app.preferences.value, camera };
          },
        }}
        onCodes={(codes) => app.scans.push({ codes, via: 'camera', atMs: app.clock.nowMs() })}
      />
      <div class="close">
        <Button large onPress={onClose} testId="camera-close">
          {say(shellWords).close}
        </Button>
      </div>
    </section>
  );
}
