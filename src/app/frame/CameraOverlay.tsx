// The camera over the main area; loaded when first used, so that the first page does not carry the decoder.

import { useApp } from '../app.ts';
import type { ScannedCode } from '../scan/scan.ts';
import { Button } from '../ui/Button.tsx';
import { cameraWords } from '../words/camera.ts';
import { shellWords } from '../words/shell.ts';
import { say } from '../words/words.ts';
import { lazy } from './lazy.tsx';

const CameraView = lazy(() => import('../scan/CameraView.tsx').then((module) => module.CameraView));

/**
 * What a code claims to be: two different envelopes, or two codes of one data identifier, cannot stand on one label. Only
 * identifiers that no bare part number is likely to begin with are told.
 */
function claim({ text }: ScannedCode): string | null {
  if (/^\[\)>/.test(text)) return 'envelope';
  return /^(1P|1T|10D|3S|4S)(?=.)/.exec(text)?.[1] ?? (/^Q\d{1,9}$/.test(text) ? 'Q' : null);
}

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
        gather={{ claim }}
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
