// One camera session: lens, decoder, beat and gathering behind one small set of states that a view can draw.
// Method: a state union told to one listener; the page's visibility opens and closes the lens. Refused: rules about what a
// label means: codes go out as read, and the task in hand judges them.

import { type CodeFormat, DEFAULT_FORMATS, type Quad } from '../../worker/decode-protocol.ts';
import { type Camera, type CameraMemory, type CameraProblem, openCamera } from './camera.ts';
import { createDecoder, type DecodeAnswer, type Decoder } from './decoder.ts';
import { runFrameLoop } from './frame-loop.ts';
import {
  DEFAULT_GATHER_SETTINGS,
  EMPTY_GATHER,
  type GatherAnswer,
  type GatheredLabel,
  type GatherSettings,
  gatherAnswer,
  gatherFrame,
  type SeenCode,
} from './gather.ts';
import type { ScannedCode } from './scan.ts';

/** The part of the picture that is read, as shares of width and height. */
export interface Region {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

export const DEFAULT_REGION: Region = { x: 0.05, y: 0.1, width: 0.9, height: 0.8 };

export interface Outline {
  /** Corners in pixels of the whole picture. */
  readonly quad: Quad;
  readonly state: 'read' | 'done';
}

export type CameraState =
  | { readonly kind: 'off'; readonly why: 'not-started' | 'idle' | 'hidden' | 'stopped' }
  | { readonly kind: 'opening' }
  | { readonly kind: 'problem'; readonly problem: CameraProblem }
  | {
      readonly kind: 'watching';
      readonly camera: Camera;
      readonly decoderPath: Decoder['path'];
      readonly answer: GatherAnswer;
      readonly outlines: readonly Outline[];
      readonly picture: { readonly width: number; readonly height: number };
      readonly isTorchOn: boolean;
    };

export interface CameraSessionParts {
  readonly video: HTMLVideoElement;
  readonly devices: MediaDevices | undefined;
  readonly memory: CameraMemory;
  readonly onState: (state: CameraState) => void;
  /** A gathered label, once for each time it comes into view. */
  readonly onCodes: (codes: readonly ScannedCode[]) => void;
  readonly formats?: readonly CodeFormat[];
  readonly region?: Region;
  readonly gather?: Partial<GatherSettings>;
  readonly idleMs?: number;
  readonly openDecoder?: () => Promise<Decoder>;
}

export interface CameraSession {
  start(deviceId?: string): Promise<void>;
  stop(): void;
  /** Answers the question which of several labels in view was meant. */
  choose(label: GatheredLabel): void;
  setTorch(isOn: boolean): Promise<void>;
  setZoom(zoom: number): Promise<void>;
  close(): void;
}

/** A label counts as gone, and may be read again, after this many frames without it. */
const AWAY_FRAMES = 10;

export function createCameraSession(parts: CameraSessionParts): CameraSession {
  const settings: GatherSettings = { ...DEFAULT_GATHER_SETTINGS, ...parts.gather };
  const region = parts.region ?? DEFAULT_REGION;
  let state: CameraState = { kind: 'off', why: 'not-started' };
  let opening: Promise<Decoder> | null = null;
  let endLoop = () => {};
  let gathered = EMPTY_GATHER;
  let done: { readonly keys: ReadonlySet<string>; readonly awayFrames: number } = {
    keys: new Set(),
    awayFrames: 0,
  };
  let attempt = 0;

  function tell(next: CameraState): void {
    state = next;
    parts.onState(next);
  }

  function release(why: Extract<CameraState, { kind: 'off' }>['why']): void {
    attempt += 1;
    endLoop();
    if (state.kind === 'watching') state.camera.stop();
    parts.video.srcObject = null;
    gathered = EMPTY_GATHER;
    tell({ kind: 'off', why });
  }

  async function start(deviceId?: string): Promise<void> {
    if (state.kind === 'opening') return;
    if (state.kind === 'watching') release('stopped');
    attempt += 1;
    const mine = attempt;
    tell({ kind: 'opening' });
    opening ??= (parts.openDecoder ?? createDecoder)();
    const [opened, decoder] = await Promise.allSettled([
      openCamera({
        devices: parts.devices,
        memory: parts.memory,
        ...(deviceId === undefined ? {} : { deviceId }),
      }),
      opening,
    ]);
    if (opened.status === 'rejected') return tellProblem(opened.reason);
    if (!opened.value.ok) return tell({ kind: 'problem', problem: opened.value.error });
    const camera = opened.value.value;
    if (mine !== attempt) return camera.stop();
    if (decoder.status === 'rejected') {
      opening = null;
      camera.stop();
      return tellProblem(decoder.reason);
    }
    await watch(camera, decoder.value);
  }

  function tellProblem(reason: unknown): void {
    tell({ kind: 'problem', problem: { code: 'failed', detail: String(reason) } });
  }

  async function watch(camera: Camera, decoder: Decoder): Promise<void> {
    const { video } = parts;
    video.srcObject = camera.stream;
    // A browser that will not play by itself shows the first picture only; the next tap plays it.
    await video.play().catch(() => {});
    const picture = { width: video.videoWidth, height: video.videoHeight };
    const common = {
      kind: 'watching',
      camera,
      decoderPath: decoder.path,
      picture,
      isTorchOn: false,
    } as const;
    tell({ ...common, answer: { kind: 'nothing' }, outlines: [] });
    endLoop = runFrameLoop({
      look: () => look(decoder),
      tell: takeAnswer,
      onIdle: () => release('idle'),
      onTrouble: (reason) => {
        release('stopped');
        tellProblem(reason);
      },
      nowMs: () => performance.now(),
      after: (ms, then) => {
        const timer = setTimeout(then, ms);
        return () => clearTimeout(timer);
      },
      ...(parts.idleMs === undefined ? {} : { idleMs: parts.idleMs }),
    });
  }

  async function look(decoder: Decoder): Promise<DecodeAnswer | null> {
    const { videoWidth, videoHeight, readyState } = parts.video;
    if (readyState < HTMLMediaElement.HAVE_CURRENT_DATA || videoWidth === 0) return null;
    const frame = await createImageBitmap(
      parts.video,
      Math.round(region.x * videoWidth),
      Math.round(region.y * videoHeight),
      Math.round(region.width * videoWidth),
      Math.round(region.height * videoHeight),
    );
    return decoder.decode(frame, { formats: parts.formats ?? DEFAULT_FORMATS, isThorough: true });
  }

  function takeAnswer(answer: DecodeAnswer): boolean {
    if (state.kind !== 'watching') return false;
    const { videoWidth, videoHeight } = parts.video;
    const codes = answer.codes.map((code) =>
      toSeen(code, { x: region.x * videoWidth, y: region.y * videoHeight }),
    );
    const isDone = (code: SeenCode) => done.keys.has(keyOf(code));
    const open = codes.filter((code) => !isDone(code));
    const awayFrames = codes.some(isDone) ? 0 : done.awayFrames + 1;
    done = awayFrames > AWAY_FRAMES ? { keys: new Set(), awayFrames: 0 } : { ...done, awayFrames };
    const before = gathered;
    gathered = gatherFrame(gathered, open, settings);
    const said = gatherAnswer(gathered, settings);
    if (said.kind === 'complete') deliver(said.label.codes);
    const outlines = codes.map(
      (code): Outline => ({ quad: code.quad, state: isDone(code) ? 'done' : 'read' }),
    );
    tell({ ...state, answer: said, outlines, picture: { width: videoWidth, height: videoHeight } });
    return open.length > 0 && (gathered.quietFrames === 0 || before === EMPTY_GATHER);
  }

  function deliver(codes: readonly SeenCode[]): void {
    done = { keys: new Set([...done.keys, ...codes.map(keyOf)]), awayFrames: 0 };
    gathered = EMPTY_GATHER;
    parts.onCodes(codes.map(({ text, format, symbologyId }) => ({ text, format, symbologyId })));
  }

  // By the label that was shown and not by its number: the numbers may have changed between the picture and the tap.
  function choose(chosen: GatheredLabel): void {
    if (state.kind !== 'watching') return;
    const labels = state.answer.kind === 'several' ? state.answer.labels : [chosen];
    // The others were looked at and not meant: they are not asked about again while they stay in view.
    done = {
      keys: new Set([...done.keys, ...labels.flatMap((label) => label.codes.map(keyOf))]),
      awayFrames: 0,
    };
    deliver(chosen.codes);
    tell({ ...state, answer: { kind: 'nothing' } });
  }

  function onVisibility(): void {
    if (document.visibilityState === 'hidden') {
      if (state.kind === 'watching' || state.kind === 'opening') release('hidden');
    } else if (state.kind === 'off' && state.why === 'hidden') void start();
  }

  document.addEventListener('visibilitychange', onVisibility);
  return {
    start,
    stop: () => release('stopped'),
    choose,
    async setTorch(isOn) {
      if (state.kind === 'watching' && (await state.camera.setTorch(isOn)) && state.kind === 'watching') {
        tell({ ...state, isTorchOn: isOn });
      }
    },
    async setZoom(zoom) {
      if (state.kind === 'watching') await state.camera.setZoom(zoom);
    },
    close() {
      document.removeEventListener('visibilitychange', onVisibility);
      release('stopped');
      void opening?.then((decoder) => decoder.close());
    },
  };
}

function keyOf(code: ScannedCode): string {
  return `${code.format ?? ''}\n${code.text}`;
}

function toSeen(
  code: DecodeAnswer['codes'][number],
  offset: { readonly x: number; readonly y: number },
): SeenCode {
  const [a, b, c, d] = code.quad;
  const move = ({ x, y }: { readonly x: number; readonly y: number }) => ({
    x: x + offset.x,
    y: y + offset.y,
  });
  const symbologyId = code.symbologyId === '' ? null : code.symbologyId;
  return { text: code.text, format: code.format, symbologyId, quad: [move(a), move(b), move(c), move(d)] };
}
