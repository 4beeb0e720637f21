// The camera's picture with what is read in it: region, outlines, and the few controls the device has.
// Loaded on demand: nothing of the decoder is in the first load. No rule lives here; gathered codes go to `onCodes`.

import { useEffect, useRef, useState } from 'preact/hooks';
import type { CodeFormat, Quad } from '../../worker/decode-protocol.ts';
import type { CameraMemory, CameraProblemCode } from './camera.ts';
import {
  type CameraSession,
  type CameraState,
  createCameraSession,
  DEFAULT_REGION,
  type Region,
} from './camera-session.ts';
import './camera.css';
import type { GatherSettings } from './gather.ts';
import type { ScannedCode } from './scan.ts';

/** Every sentence and name the view shows. */
export interface CameraWords {
  readonly picture: string;
  readonly opening: string;
  readonly start: string;
  readonly torchOn: string;
  readonly torchOff: string;
  readonly zoom: string;
  readonly switchCamera: string;
  readonly off: Readonly<Record<'not-started' | 'idle' | 'hidden' | 'stopped', string>>;
  readonly problem: Readonly<Record<CameraProblemCode, string>>;
  /** Asked above the numbered labels. */
  readonly whichLabel: string;
  readonly label: (number: number, codes: readonly ScannedCode[]) => string;
  readonly gathering: (codes: number) => string;
}

export interface CameraViewProps {
  readonly words: CameraWords;
  readonly memory: CameraMemory;
  readonly onCodes: (codes: readonly ScannedCode[]) => void;
  readonly onState?: (state: CameraState) => void;
  readonly formats?: readonly CodeFormat[];
  readonly region?: Region;
  readonly gather?: Partial<GatherSettings>;
  readonly idleMs?: number;
}

export function CameraView(props: CameraViewProps) {
  const video = useRef<HTMLVideoElement>(null);
  const session = useRef<CameraSession | null>(null);
  const latest = useRef(props);
  latest.current = props;
  const [state, setState] = useState<CameraState>({ kind: 'off', why: 'not-started' });
  useEffect(() => {
    if (video.current === null) return;
    const { memory, formats, region, gather, idleMs } = latest.current;
    const opened = createCameraSession({
      video: video.current,
      devices: navigator.mediaDevices as MediaDevices | undefined, // missing on pages without TLS
      memory,
      onState: (next) => {
        setState(next);
        latest.current.onState?.(next);
      },
      onCodes: (codes) => latest.current.onCodes(codes),
      ...(formats && { formats }),
      ...(region && { region }),
      ...(gather && { gather }),
      ...(idleMs !== undefined && { idleMs }),
    });
    session.current = opened;
    void opened.start();
    return () => opened.close();
  }, []);
  const start = (deviceId?: string) => void session.current?.start(deviceId);
  return (
    <div class={`camera is-${state.kind}`}>
      <video class="camera-picture" ref={video} playsInline muted aria-label={props.words.picture} />
      {state.kind === 'watching' && (
        <Overlay state={state} region={props.region ?? DEFAULT_REGION} words={props.words} />
      )}
      <CameraStatus state={state} words={props.words} />
      {state.kind === 'watching' ? (
        <Controls state={state} words={props.words} session={session.current} start={start} />
      ) : (
        <div class="camera-controls">
          {state.kind !== 'opening' && (
            <button type="button" class="camera-start" onClick={() => start()}>
              {props.words.start}
            </button>
          )}
        </div>
      )}
    </div>
  );
}

type Watching = Extract<CameraState, { kind: 'watching' }>;

function CameraStatus({ state, words }: { readonly state: CameraState; readonly words: CameraWords }) {
  return (
    <p class="camera-status" role="status">
      {statusText(state, words)}
    </p>
  );
}

function statusText(state: CameraState, words: CameraWords): string {
  switch (state.kind) {
    case 'off':
      return words.off[state.why];
    case 'opening':
      return words.opening;
    case 'problem':
      return words.problem[state.problem.code];
    case 'watching':
      if (state.answer.kind === 'gathering') return words.gathering(state.answer.label.codes.length);
      return state.answer.kind === 'several' ? words.whichLabel : '';
  }
}

function Overlay(props: { readonly state: Watching; readonly region: Region; readonly words: CameraWords }) {
  const { outlines, picture, answer } = props.state;
  const { x, y, width, height } = props.region;
  return (
    <svg class="camera-overlay" viewBox={`0 0 ${picture.width} ${picture.height}`} aria-hidden="true">
      <rect
        class="camera-region"
        x={x * picture.width}
        y={y * picture.height}
        width={width * picture.width}
        height={height * picture.height}
      />
      {outlines.map(({ quad, state }) => (
        <polygon key={toPoints(quad)} class={`camera-outline is-${state}`} points={toPoints(quad)} />
      ))}
      {answer.kind === 'several' &&
        answer.labels.map(({ codes }, at) => {
          const [first] = codes;
          if (first === undefined) return null;
          const top = first.quad.reduce((highest, point) => (point.y < highest.y ? point : highest));
          return (
            <text
              key={toPoints(first.quad)}
              class="camera-number"
              x={top.x}
              y={top.y}
              font-size={picture.height / 12}
            >
              {at + 1}
            </text>
          );
        })}
    </svg>
  );
}

function toPoints(quad: Quad): string {
  return quad.map(({ x, y }) => `${Math.round(x)},${Math.round(y)}`).join(' ');
}

interface ControlsProps {
  readonly state: Watching;
  readonly words: CameraWords;
  readonly session: CameraSession | null;
  readonly start: (deviceId: string) => void;
}

function Controls({ state, words, session, start }: ControlsProps) {
  const { camera, answer, isTorchOn } = state;
  async function switchCamera() {
    const all = await camera.list();
    const at = all.findIndex(({ deviceId }) => deviceId === camera.deviceId);
    const next = all[(at + 1) % all.length];
    if (next !== undefined && next.deviceId !== camera.deviceId) start(next.deviceId);
  }
  return (
    <>
      {answer.kind === 'several' && (
        <fieldset class="camera-choices" aria-label={words.whichLabel}>
          {answer.labels.map(({ codes }, at) => (
            <button
              key={codes[0]?.text}
              type="button"
              class="camera-choice"
              onClick={() => session?.choose({ codes })}
            >
              {words.label(at + 1, codes)}
            </button>
          ))}
        </fieldset>
      )}
      <div class="camera-controls">
        {camera.hasTorch && (
          <button
            type="button"
            class="camera-torch"
            aria-pressed={isTorchOn}
            onClick={() => void session?.setTorch(!isTorchOn)}
          >
            {isTorchOn ? words.torchOff : words.torchOn}
          </button>
        )}
        {camera.zoom !== null && (
          <input
            type="range"
            class="camera-zoom"
            aria-label={words.zoom}
            min={camera.zoom.min}
            max={camera.zoom.max}
            step={camera.zoom.step}
            onInput={(event) => void session?.setZoom(Number(event.currentTarget.value))}
          />
        )}
        <button type="button" class="camera-switch" onClick={() => void switchCamera()}>
          {words.switchCamera}
        </button>
      </div>
    </>
  );
}
