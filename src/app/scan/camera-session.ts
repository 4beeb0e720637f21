// One camera session: lens, decoder, beat and gathering behind one small set of states that a view can draw.
// Method: a state union told to one listener; the page's visibility opens and closes the lens. Refused: rules about what a
// label means: codes go out as read, and the task in hand judges them.

import type { ScannedCode } from '../../../shared/labels/scan.ts';
import { type CodeFormat, type Crop, DEFAULT_FORMATS, type Quad } from '../../worker/decode-protocol.ts';
import { type Camera, type CameraMemory, type CameraProblem, openCamera } from './camera.ts';
import {
  createDecoder,
  type DecodeAnswer,
  type Decoder,
  type OpenStream,
  type StreamReader,
  showStream,
} from './decoder.ts';
import { runFrameLoop } from './frame-loop.ts';
import {
  DEFAULT_GATHER_SETTINGS,
  EMPTY_GATHER,
  type GatherAnswer,
  type GatheredLabel,
  type GatherSettings,
  type GatherState,
  gatherAnswer,
  gatherFrame,
  type SeenCode,
} from './gather.ts';
import { HeldFrame, type LabelPictures } from './held-frame.ts';
import { keyOf, toSeen } from './seen-codes.ts';
import { type CodeLengths, ofKnownLength } from './site-formats.ts';

/** The part of the picture that is read, as shares of width and height. */
export interface Region {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

export const DEFAULT_REGION: Region = { x: 0.05, y: 0.1, width: 0.9, height: 0.8 };

/** A code in the picture. */
export interface Outline {
  /** Corners in pixels of the whole picture. */
  readonly quad: Quad;
  readonly code: ScannedCode;
  /** Seen once and not believed yet; read; given out as part of a label. */
  readonly state: 'seen' | 'read' | 'done';
}

export type CameraState =
  | { readonly kind: 'off'; readonly why: 'not-started' | 'idle' | 'hidden' | 'stopped' }
  | { readonly kind: 'opening' }
  | { readonly kind: 'problem'; readonly problem: CameraProblem }
  | {
      readonly kind: 'watching';
      readonly camera: Camera;
      readonly decoderPath: 'worker' | 'script';
      readonly answer: GatherAnswer;
      readonly outlines: readonly Outline[];
      readonly picture: { readonly width: number; readonly height: number };
      readonly isTorchOn: boolean;
    };

/** What one look at the picture read. */
export interface Look {
  /** Corners in pixels of the whole picture. */
  readonly codes: readonly SeenCode[];
  readonly picture: { readonly width: number; readonly height: number };
}

export interface CameraSessionParts {
  readonly video: HTMLVideoElement;
  readonly devices: MediaDevices | undefined;
  readonly memory: CameraMemory;
  readonly onState: (state: CameraState) => void;
  /** A gathered label, once for each time it comes into view. */
  readonly onCodes: (codes: readonly ScannedCode[]) => void;
  readonly formats?: readonly CodeFormat[];
  /** Numbers of characters that codes of a format have, asked for at each look; a code of another length was not read whole. */
  readonly lengths?: () => CodeLengths;
  /** What is read of a picture, asked for at each look: the part that a person sees may change its shape. */
  readonly region?: (picture: { readonly width: number; readonly height: number }) => Region;
  readonly gather?: Partial<GatherSettings>;
  /** Takes what each look read, in place of gathering one label; `true` says that something new was in it. */
  readonly onLook?: (look: Look) => boolean;
  /** Where the label's picture is wanted: gets it with the codes, after `onCodes`; its encoding goes on meanwhile. */
  readonly pictures?: LabelPictures;
  readonly idleMs?: number;
  readonly openDecoder?: () => Promise<Decoder | StreamReader>;
}

export interface CameraSession {
  start(deviceId?: string): Promise<void>;
  stop(): void;
  /** Answers the question which of several labels in view was meant. */
  choose(label: GatheredLabel): void;
  /** A finger rests on one of them, or does no more: what is asked stays as it is under it. */
  holdChoice(isHeld: boolean): void;
  /** A person says that the label in view has no more codes: it goes out as far as it was read. */
  takeAsRead(): void;
  /** Holds the reading while something lies over the picture; the lens stays open. */
  setPaused(isPaused: boolean): void;
  setTorch(isOn: boolean): Promise<void>;
  setZoom(zoom: number): Promise<void>;
  close(): void;
}

/** A label counts as gone, and may be read again, after this many frames without it. */
const AWAY_FRAMES = 10;
/** Stripes are not read in every frame: an outline stays where it was for this many. */
const STAY_FRAMES = 4;
const STAY_DONE_FRAMES = 8;

/** Makes a session; nothing is opened until `start`. */
export function createCameraSession(parts: CameraSessionParts): CameraSession {
  return new Session(parts);
}

// A class, as it holds a lens, a worker and a listener that have to be closed.
class Session implements CameraSession {
  readonly #parts: CameraSessionParts;
  readonly #settings: GatherSettings;
  readonly #region: NonNullable<CameraSessionParts['region']>;
  readonly #held: HeldFrame;
  #state: CameraState = { kind: 'off', why: 'not-started' };
  #decoder: Promise<Decoder | StreamReader> | null = null;
  /** The lens's stream while it is shown. */
  #stream: OpenStream | null = null;
  #endLoop = () => {};
  #gathered: GatherState = EMPTY_GATHER;
  /** Labels already given out, until they have been away for a while. */
  #done: { readonly keys: ReadonlySet<string>; readonly awayFrames: number } = {
    keys: new Set(),
    awayFrames: 0,
  };
  /** The codes that were given out last, as they stand in the picture. */
  #doneInView: readonly { readonly code: SeenCode; readonly missed: number }[] = [];
  #isPaused = false;
  #isHeld = false;
  /** The region of the look that is under way. */
  #read: Region = DEFAULT_REGION;
  #startLoop = () => {};
  /** Counts starts and stops, so that a lens that opens too late is closed again. */
  #attempt = 0;

  constructor(parts: CameraSessionParts) {
    this.#parts = parts;
    this.#settings = { ...DEFAULT_GATHER_SETTINGS, ...parts.gather };
    this.#region = parts.region ?? (() => DEFAULT_REGION);
    this.#held = new HeldFrame(parts.pictures, parts.video);
    document.addEventListener('visibilitychange', this.#onVisibility);
  }

  async start(deviceId?: string): Promise<void> {
    if (this.#state.kind === 'opening') return;
    if (this.#state.kind === 'watching') this.#release('stopped');
    this.#attempt += 1;
    const mine = this.#attempt;
    this.#tell({ kind: 'opening' });
    this.#decoder ??= (this.#parts.openDecoder ?? createDecoder)();
    const { devices, memory } = this.#parts;
    const [opened, decoder] = await Promise.allSettled([
      openCamera({ devices, memory, ...(deviceId === undefined ? {} : { deviceId }) }),
      this.#decoder,
    ]);
    const isStale = mine !== this.#attempt;
    if (opened.status === 'rejected') return isStale ? undefined : this.#tellFailure(opened.reason);
    if (!opened.value.ok)
      return isStale ? undefined : this.#tell({ kind: 'problem', problem: opened.value.error });
    const camera = opened.value.value;
    if (isStale) return camera.stop();
    if (decoder.status === 'rejected') {
      this.#decoder = null;
      camera.stop();
      return this.#tellFailure(decoder.reason);
    }
    await this.#watch(camera, decoder.value);
  }

  stop(): void {
    this.#release('stopped');
  }

  holdChoice(isHeld: boolean): void {
    this.#isHeld = isHeld;
  }

  // By the label that was shown and not by its number: the numbers may have changed between the picture and the tap.
  choose(chosen: GatheredLabel): void {
    this.#isHeld = false;
    if (this.#state.kind !== 'watching') return;
    const labels = this.#state.answer.kind === 'several' ? this.#state.answer.labels : [chosen];
    // The others were looked at and not meant: they are not asked about again while they stay in view.
    const keys = labels.flatMap((label) => label.codes.map(keyOf));
    this.#done = { keys: new Set([...this.#done.keys, ...keys]), awayFrames: 0 };
    this.#deliver(chosen.codes);
    this.#tell({ ...this.#state, answer: { kind: 'nothing' } });
  }

  takeAsRead(): void {
    if (this.#state.kind !== 'watching' || this.#state.answer.kind !== 'gathering') return;
    this.#deliver(this.#state.answer.label.codes);
    if (this.#state.kind === 'watching') this.#tell({ ...this.#state, answer: { kind: 'nothing' } });
  }

  setPaused(isPaused: boolean): void {
    if (isPaused === this.#isPaused) return;
    this.#isPaused = isPaused;
    this.#isHeld = false;
    if (this.#state.kind !== 'watching') return;
    if (!isPaused) {
      this.#startLoop();
      return;
    }
    this.#endLoop();
    this.#gathered = EMPTY_GATHER;
    this.#doneInView = [];
    this.#tell({ ...this.#state, answer: { kind: 'nothing' }, outlines: [] });
  }

  async setTorch(isOn: boolean): Promise<void> {
    if (this.#state.kind !== 'watching') return;
    const { camera } = this.#state;
    const hasDone = await camera.setTorch(isOn);
    const now = this.#state as CameraState; // may have changed while the lamp was set
    if (hasDone && now.kind === 'watching' && now.camera === camera) this.#tell({ ...now, isTorchOn: isOn });
  }

  async setZoom(zoom: number): Promise<void> {
    if (this.#state.kind === 'watching') await this.#state.camera.setZoom(zoom);
  }

  close(): void {
    document.removeEventListener('visibilitychange', this.#onVisibility);
    this.#release('stopped');
    void this.#decoder?.then(
      (decoder) => decoder.close(),
      () => {}, // it never opened: nothing to close
    );
  }

  #tell(next: CameraState): void {
    this.#state = next;
    this.#parts.onState(next);
  }

  #tellFailure(reason: unknown): void {
    this.#tell({ kind: 'problem', problem: { code: 'failed', detail: String(reason) } });
  }

  #release(why: Extract<CameraState, { kind: 'off' }>['why']): void {
    this.#attempt += 1;
    this.#endLoop();
    this.#held.drop();
    this.#stream?.stop();
    this.#stream = null;
    if (this.#state.kind === 'watching') this.#state.camera.stop();
    this.#parts.video.srcObject = null;
    this.#gathered = EMPTY_GATHER;
    this.#doneInView = [];
    this.#isHeld = false;
    this.#tell({ kind: 'off', why });
  }

  async #watch(camera: Camera, decoder: Decoder | StreamReader): Promise<void> {
    const { video, idleMs, formats = DEFAULT_FORMATS } = this.#parts;
    const mine = this.#attempt;
    const shown = await showStream(decoder, {
      stream: camera.stream,
      video,
      crop: () => this.#crop(),
      formats,
      onFrame: (frame) => this.#held.hold(frame),
    }).catch((reason: unknown) => {
      if (mine === this.#attempt) this.#tellFailure(reason);
      return null;
    });
    if (shown === null) return camera.stop();
    if (mine !== this.#attempt) {
      shown.stop();
      return camera.stop();
    }
    this.#stream = shown;
    // A lens that is pulled out or taken away ends by itself; one that is let go here does not say so.
    for (const track of camera.stream.getVideoTracks())
      track.addEventListener('ended', () => {
        if (mine !== this.#attempt) return;
        this.#release('stopped');
        this.#tellFailure('the lens went away');
      });
    const picture = { width: video.videoWidth, height: video.videoHeight };
    const common = {
      kind: 'watching',
      camera,
      decoderPath: decoder.path,
      picture,
      isTorchOn: false,
    } as const;
    this.#tell({ ...common, answer: { kind: 'nothing' }, outlines: [] });
    // Whoever was told may have stopped the camera.
    if (mine !== this.#attempt) return;
    this.#startLoop = () => {
      this.#endLoop = runFrameLoop({
        look: () => shown.look(),
        tell: (answer) => this.#take(answer),
        onIdle: () => this.#release('idle'),
        onTrouble: (reason) => {
          this.#release('stopped');
          this.#tellFailure(reason);
        },
        nowMs: () => performance.now(),
        after: (ms, then) => {
          const timer = setTimeout(then, ms);
          return () => clearTimeout(timer);
        },
        ...(idleMs === undefined ? {} : { idleMs }),
      });
    };
    if (!this.#isPaused) this.#startLoop();
  }

  /** The part of the picture that is read now, in its pixels. */
  #crop(): Crop {
    const { videoWidth, videoHeight } = this.#parts.video;
    this.#read = this.#region({ width: videoWidth, height: videoHeight });
    const { x, y, width, height } = this.#read;
    return {
      x: Math.round(x * videoWidth),
      y: Math.round(y * videoHeight),
      width: Math.round(width * videoWidth),
      height: Math.round(height * videoHeight),
    };
  }

  #take(answer: DecodeAnswer): boolean {
    if (this.#state.kind !== 'watching') return false;
    const { videoWidth, videoHeight } = this.#parts.video;
    const corner = {
      x: Math.round(this.#read.x * videoWidth),
      y: Math.round(this.#read.y * videoHeight),
    };
    const lengths = this.#parts.lengths?.() ?? {};
    const codes = ofKnownLength(answer.codes, lengths).map((code) => toSeen(code, corner));
    const { onLook } = this.#parts;
    if (onLook !== undefined) return onLook({ codes, picture: { width: videoWidth, height: videoHeight } });
    const isDone = (code: SeenCode) => this.#done.keys.has(keyOf(code));
    const open = codes.filter((code) => !isDone(code));
    const awayFrames = codes.some(isDone) ? 0 : this.#done.awayFrames + 1;
    this.#done =
      awayFrames > AWAY_FRAMES ? { keys: new Set(), awayFrames: 0 } : { ...this.#done, awayFrames };
    this.#gathered = gatherFrame(this.#gathered, open, this.#settings);
    const isNew = open.length > 0 && this.#gathered.quietFrames === 0;
    const asked = this.#state.answer.kind === 'several' ? this.#state.answer : null;
    // A label that is not read for a moment would take its button away from under the finger, and the other one would be taken.
    const said =
      this.#isHeld && asked !== null ? asked : gatherAnswer(this.#gathered, this.#settings, asked !== null);
    if (said.kind === 'complete') this.#deliver(said.label.codes);
    const isMarked = (code: SeenCode) => this.#doneInView.some((done) => keyOf(done.code) === keyOf(code));
    // What was given out before the reading was held is still marked where it stands.
    const back = codes.filter((code) => isDone(code) && !isMarked(code));
    this.#doneInView = [...this.#doneInView, ...back.map((code) => ({ code, missed: 0 }))]
      .map(({ code, missed }) => {
        const now = codes.find((each) => keyOf(each) === keyOf(code));
        return now === undefined ? { code, missed: missed + 1 } : { code: now, missed: 0 };
      })
      .filter(({ missed }) => missed <= STAY_DONE_FRAMES);
    const outlines = this.#outlines();
    const picture = { width: videoWidth, height: videoHeight };
    // Whoever got the codes may have stopped the camera.
    if (this.#state.kind === 'watching') this.#tell({ ...this.#state, answer: said, outlines, picture });
    return isNew || said.kind === 'several';
  }

  #outlines(): readonly Outline[] {
    const open = this.#gathered.tracks
      .filter(({ missed }) => missed <= STAY_FRAMES)
      .map(({ code, frames }): Outline => {
        const isSure = frames >= 2 || !this.#settings.doubtful.includes(code.format ?? '');
        return { quad: code.quad, code, state: isSure ? 'read' : 'seen' };
      });
    const done = this.#doneInView.map(({ code }): Outline => ({ quad: code.quad, code, state: 'done' }));
    return [...done, ...open];
  }

  #deliver(codes: readonly SeenCode[]): void {
    this.#done = { keys: new Set([...this.#done.keys, ...codes.map(keyOf)]), awayFrames: 0 };
    this.#doneInView = codes.map((code) => ({ code, missed: 0 }));
    this.#gathered = EMPTY_GATHER;
    this.#parts.onCodes(codes.map(({ quad: _, ...code }) => code));
    this.#held.take(codes);
  }

  readonly #onVisibility = (): void => {
    const { kind } = this.#state;
    if (document.visibilityState === 'hidden') {
      if (kind === 'watching' || kind === 'opening') this.#release('hidden');
    } else if (this.#state.kind === 'off' && this.#state.why === 'hidden') void this.start();
  };
}
