// A page with nothing but the scan room on it: wedge, camera, a field, buttons and a dialog. What comes in is kept on the
// window for the tests to look at.

import { render } from 'preact';
import { lazy, Suspense } from 'preact/compat';
import { useState } from 'preact/hooks';
import type { Scan } from '../../../../shared/labels/scan.ts';
import type { CameraState } from '../../../../src/app/scan/camera-session.ts';
import { createScanStream } from '../../../../src/app/scan/scan.ts';
import { attachWedge } from '../../../../src/app/scan/wedge-dom.ts';

export interface Harness {
  readonly scans: Scan[];
  readonly clicks: string[];
  readonly violations: string[];
  readonly cameraRequests: number[];
  readonly states: string[];
  /** Looks at the picture so far. */
  looks: number;
  readonly cuts: string[];
}

declare global {
  interface Window {
    harness: Harness;
  }
}

const harness: Harness = {
  scans: [],
  clicks: [],
  violations: [],
  cameraRequests: [],
  states: [],
  looks: 0,
  cuts: [],
};
window.harness = harness;
document.addEventListener('securitypolicyviolation', (event) => {
  harness.violations.push(`${event.violatedDirective} ${event.blockedURI}`);
});

const devices = navigator.mediaDevices as MediaDevices | undefined; // missing on pages without TLS
if (devices !== undefined) {
  const open = devices.getUserMedia.bind(devices);
  devices.getUserMedia = (constraints) => {
    harness.cameraRequests.push(performance.now());
    return open(constraints);
  };
}

const stream = createScanStream();
stream.take((scan) => harness.scans.push(scan));
const query = new URLSearchParams(location.search);
attachWedge(window, stream, {
  nowMs: () => Date.now(),
  keepSink: query.has('sink'),
  onCut: (scan) => harness.cuts.push(scan.text),
});

// The camera and all it needs come in a chunk of their own.
const Camera = lazy(async () => {
  const { CameraView, useCamera } = await import('../../../../src/app/scan/CameraView.tsx');
  function Camera({ isPaused }: { readonly isPaused: boolean }) {
    const camera = useCamera({
      memory: {
        read: () => localStorage.getItem('camera'),
        write: (id) => localStorage.setItem('camera', id),
      },
      idleMs: Number(query.get('idle') ?? 30_000),
      gather: query.has('patient') ? { settleFor: () => null } : {},
      isPaused,
      onState: keepState,
      onCodes: (codes) => stream.push({ codes, via: 'camera', atMs: Date.now() }),
    });
    return (
      <>
        <div style={{ width: '640px', height: '360px', display: 'grid' }}>
          <CameraView camera={camera} words={words} nameCode={({ text }) => text.slice(0, 4)} />
        </div>
        <p class="camera-status" role="status">
          {toldBy(camera.state)}
        </p>
        <button type="button" onClick={camera.start}>
          Start camera
        </button>
        <button type="button" onClick={() => camera.session?.takeAsRead()}>
          Take it
        </button>
      </>
    );
  }
  return { default: Camera };
});

const words = {
  picture: 'Camera picture',
  opening: 'Opening',
  off: { 'not-started': 'Off', idle: 'Stopped by itself', hidden: 'Paused', stopped: 'Stopped' },
  problem: {
    insecure: 'Not secure',
    denied: 'Not allowed',
    absent: 'No camera',
    busy: 'Busy',
    failed: 'Failed',
  },
  label: (number: number) => `Label ${number}`,
};

function toldBy(state: CameraState): string {
  if (state.kind === 'off') return words.off[state.why];
  if (state.kind === 'problem') return words.problem[state.problem.code];
  return state.kind === 'opening' ? words.opening : '';
}

function keepState(state: CameraState): void {
  if (state.kind === 'watching') harness.looks += 1;
  const said = state.kind === 'watching' ? `watching ${state.decoderPath} ${state.answer.kind}` : state.kind;
  if (harness.states.at(-1) !== said) harness.states.push(said);
}

const BUTTONS = ['Confirm', 'Clear', 'Delete'];

function App() {
  const [isOpen, setOpen] = useState(query.has('camera'));
  const [isPaused, setPaused] = useState(query.has('paused'));
  const [text, setText] = useState('');
  return (
    <>
      <h1>Scan harness</h1>
      {BUTTONS.map((name) => (
        <button key={name} type="button" onClick={() => harness.clicks.push(name)}>
          {name}
        </button>
      ))}
      <label>
        <input type="checkbox" onClick={() => harness.clicks.push('Check')} /> Check
      </label>
      <a href="#elsewhere">Slot map</a>
      <label>
        Note <input data-typing value={text} onInput={(event) => setText(event.currentTarget.value)} />
      </label>
      <output>{text}</output>
      <button type="button" onClick={() => document.querySelector('dialog')?.showModal()}>
        Open dialog
      </button>
      <dialog>
        <button type="button" onClick={() => harness.clicks.push('Dialog')}>
          In dialog
        </button>
      </dialog>
      <button type="button" onClick={() => setOpen(!isOpen)}>
        Camera
      </button>
      <button type="button" onClick={() => setPaused(!isPaused)}>
        Pause
      </button>
      {isOpen && (
        <Suspense fallback={<p>Loading</p>}>
          <Camera isPaused={isPaused} />
        </Suspense>
      )}
    </>
  );
}

const root = document.getElementById('root');
if (root !== null) render(<App />, root);
document.documentElement.dataset['ready'] = '';
