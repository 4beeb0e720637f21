// A page with nothing but the scan room on it: wedge, camera, a field, buttons and a dialog. What comes in is kept on the
// window for the tests to look at.

import { render } from 'preact';
import { lazy, Suspense } from 'preact/compat';
import { useState } from 'preact/hooks';
import type { CameraState } from '../../../../src/app/scan/camera-session.ts';
import { createScanStream, type Scan } from '../../../../src/app/scan/scan.ts';
import { attachWedge } from '../../../../src/app/scan/wedge-dom.ts';

export interface Harness {
  readonly scans: Scan[];
  readonly clicks: string[];
  readonly violations: string[];
  readonly cameraRequests: number[];
  readonly states: string[];
  readonly cuts: string[];
}

declare global {
  interface Window {
    harness: Harness;
  }
}

const harness: Harness = { scans: [], clicks: [], violations: [], cameraRequests: [], states: [], cuts: [] };
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
const CameraView = lazy(async () => ({
  default: (await import('../../../../src/app/scan/CameraView.tsx')).CameraView,
}));

const words = {
  picture: 'Camera picture',
  opening: 'Opening',
  start: 'Start camera',
  torchOn: 'Torch on',
  torchOff: 'Torch off',
  zoom: 'Zoom',
  switchCamera: 'Other camera',
  off: { 'not-started': 'Off', idle: 'Stopped by itself', hidden: 'Paused', stopped: 'Stopped' },
  problem: {
    insecure: 'Not secure',
    denied: 'Not allowed',
    absent: 'No camera',
    busy: 'Busy',
    failed: 'Failed',
  },
  whichLabel: 'Which label?',
  label: (number: number) => `Label ${number}`,
  gathering: (codes: number) => `${codes} read`,
};

const BUTTONS = ['Confirm', 'Clear', 'Delete'];

function App() {
  const [isOpen, setOpen] = useState(query.has('camera'));
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
      {isOpen && (
        <Suspense fallback={<p>Loading</p>}>
          <div style={{ width: '640px', height: '360px', display: 'grid' }}>
            <CameraView
              words={words}
              memory={{
                read: () => localStorage.getItem('camera'),
                write: (id) => localStorage.setItem('camera', id),
              }}
              idleMs={Number(query.get('idle') ?? 30_000)}
              onState={(state: CameraState) => {
                const said =
                  state.kind === 'watching'
                    ? `watching ${state.decoderPath} ${state.answer.kind}`
                    : state.kind;
                if (harness.states.at(-1) !== said) harness.states.push(said);
              }}
              onCodes={(codes) => stream.push({ codes, via: 'camera', atMs: Date.now() })}
            />
          </div>
        </Suspense>
      )}
    </>
  );
}

const root = document.getElementById('root');
if (root !== null) render(<App />, root);
document.documentElement.dataset['ready'] = '';
