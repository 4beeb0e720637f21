// The camera's picture with what is read in it: it fills its box, what was read is ticked off on the label's own codes.
// Loaded on demand: nothing of the decoder is in the first load. No rule lives here: gathered codes go to `onCodes`, and what a
// code is called comes from whoever knows the plant.

import type { ComponentChildren, RefObject } from 'preact';
import { useEffect, useLayoutEffect, useRef, useState } from 'preact/hooks';
import type { CodeFormat } from '../../worker/decode-protocol.ts';
import type { CameraMemory } from './camera.ts';
import {
  boxAround,
  fitPicture,
  fitQuad,
  GUIDE,
  guidedRegion,
  placeTags,
  type Size,
  shownRegion,
} from './camera-fit.ts';
import {
  type CameraSession,
  type CameraState,
  createCameraSession,
  type Look,
  type Outline,
} from './camera-session.ts';
import './camera.css';
import type { ScannedCode } from '../../../shared/labels/scan.ts';
import type { GatheredLabel, GatherSettings } from './gather.ts';
import type { LabelPictures } from './held-frame.ts';
import type { CodeLengths } from './site-formats.ts';

export interface CameraParts {
  readonly memory: CameraMemory;
  readonly onCodes: (codes: readonly ScannedCode[]) => void;
  readonly onState?: (state: CameraState) => void;
  readonly formats?: readonly CodeFormat[];
  /** Numbers of characters that codes of a format have; absent: any. */
  readonly lengths?: CodeLengths;
  readonly gather?: Partial<GatherSettings>;
  /** Takes each look, in place of gathering one label; then all of the picture that is shown is read, not the guide alone. */
  readonly onLook?: (look: Look) => boolean;
  readonly pictures?: LabelPictures;
  readonly idleMs?: number;
  /** True while something lies over the picture: nothing is read then. */
  readonly isPaused?: boolean;
}

/** A camera that runs as long as the component that asked for it is drawn. */
export interface RunningCamera {
  readonly video: RefObject<HTMLVideoElement | null>;
  readonly state: CameraState;
  readonly session: CameraSession | null;
  /** Every camera of the device, once one was allowed. */
  readonly cameras: readonly string[];
  readonly start: () => void;
  /** Goes on to the next camera of the device. */
  readonly switchCamera: () => void;
}

/** Opens the camera when first drawn, lets it go when taken away. The video's element must be drawn with it. */
export function useCamera(parts: CameraParts): RunningCamera {
  const video = useRef<HTMLVideoElement>(null);
  const session = useRef<CameraSession | null>(null);
  const latest = useRef(parts);
  latest.current = parts;
  const [state, setState] = useState<CameraState>({ kind: 'off', why: 'not-started' });
  const [cameras, setCameras] = useState<readonly string[]>([]);
  useEffect(() => {
    const element = video.current;
    if (element === null) return;
    const { memory, formats, gather, idleMs, onLook, pictures } = latest.current;
    const readOf = onLook === undefined ? guidedRegion : shownRegion;
    const opened = createCameraSession({
      video: element,
      devices: navigator.mediaDevices as MediaDevices | undefined, // missing on pages without TLS
      memory,
      region: (picture) => readOf(picture, { width: element.clientWidth, height: element.clientHeight }),
      onState: (next) => {
        setState(next);
        latest.current.onState?.(next);
      },
      onCodes: (codes) => latest.current.onCodes(codes),
      lengths: () => latest.current.lengths ?? {},
      ...(formats && { formats }),
      ...(gather && { gather }),
      ...(pictures && { pictures }),
      ...(onLook && { onLook: (look: Look) => latest.current.onLook?.(look) ?? false }),
      ...(idleMs !== undefined && { idleMs }),
    });
    session.current = opened;
    opened.setPaused(latest.current.isPaused ?? false);
    void opened.start();
    return () => opened.close();
  }, []);
  const { isPaused = false } = parts;
  // Before the next look, not after the next drawing: what is hidden must not be read.
  useLayoutEffect(() => session.current?.setPaused(isPaused), [isPaused]);
  const camera = state.kind === 'watching' ? state.camera : null;
  useEffect(() => {
    if (camera === null) return;
    camera.list().then(
      (all) => setCameras(all.map(({ deviceId }) => deviceId)),
      () => setCameras([]), // a browser that tells no list has one camera as far as anybody can know
    );
  }, [camera]);
  return {
    video,
    state,
    session: session.current,
    cameras,
    start: () => void session.current?.start(),
    switchCamera: () => {
      const at = cameras.indexOf(camera?.deviceId ?? '');
      const next = cameras[(at + 1) % cameras.length];
      if (next !== undefined && next !== camera?.deviceId) void session.current?.start(next);
    },
  };
}

export interface CameraViewProps {
  readonly camera: RunningCamera;
  readonly words: {
    readonly picture: string;
    /** Names the button on a label, one of several in view. */
    readonly label: (number: number, codes: readonly ScannedCode[]) => string;
  };
  /** What a code is, in a word or two; null where nobody here knows it. */
  readonly nameCode: (code: ScannedCode) => string | null;
  /** What stands over the picture. */
  readonly children?: ComponentChildren;
}

/** The picture, the frame guide, and the marks on what was read. */
export function CameraView({ camera, words, nameCode, children }: CameraViewProps) {
  const { video, state, session } = camera;
  const box = useSize(video);
  const isWatching = state.kind === 'watching';
  const several = isWatching && state.answer.kind === 'several' ? state.answer.labels : [];
  return (
    <div class={`camera is-${state.kind}`}>
      <video
        class="camera-picture"
        ref={video}
        playsInline
        muted
        aria-label={words.picture}
        hidden={!isWatching}
      />
      {isWatching && (
        <>
          {several.length === 0 && <Guide />}
          <Marks outlines={state.outlines} picture={state.picture} box={box} nameCode={nameCode} />
          {several.map((label, at) => (
            <LabelButton
              // By its number, as which code of a label comes first changes with each look: a button that is made anew under
              // a finger loses the tap.
              key={at}
              label={label}
              name={words.label(at + 1, label.codes)}
              number={at + 1}
              picture={state.picture}
              box={box}
              onChoose={() => session?.choose(label)}
              onHold={(isHeld) => session?.holdChoice(isHeld)}
            />
          ))}
        </>
      )}
      {children}
    </div>
  );
}

/** The size of an element's box; follows when it changes. */
export function useSize(element: RefObject<HTMLElement | null>): Size {
  const [size, setSize] = useState<Size>({ width: 0, height: 0 });
  useLayoutEffect(() => {
    // The picture may be hidden; what it stands in has the size.
    const box = element.current?.parentElement;
    if (!box) return;
    const look = () => setSize({ width: box.clientWidth, height: box.clientHeight });
    look();
    const watch = new ResizeObserver(look);
    watch.observe(box);
    return () => watch.disconnect();
  }, []);
  return size;
}

const CORNERS = ['top left', 'top right', 'bottom right', 'bottom left'] as const;

function Guide() {
  const share = (part: number) => `${part * 100}%`;
  return (
    <div
      class="camera-guide"
      aria-hidden="true"
      style={{
        left: share(GUIDE.x),
        top: share(GUIDE.y),
        width: share(GUIDE.width),
        height: share(GUIDE.height),
      }}
    >
      {CORNERS.map((corner) => (
        <i key={corner} class={corner} />
      ))}
    </div>
  );
}

const MARKS: Readonly<Record<Outline['state'] | 'unknown', string>> = {
  done: 'M-6 0l5 5 8-10',
  read: 'M-6 0l5 5 8-10',
  seen: 'M-6 0h.01M0 0h.01M6 0h.01',
  unknown: 'M-4-3a4 4 0 1 1 6 3.4c-1.4.8-2 1.6-2 3M0 8h.01',
};

function Marks(props: {
  readonly outlines: readonly Outline[];
  readonly picture: Size;
  readonly box: Size;
  readonly nameCode: (code: ScannedCode) => string | null;
}) {
  const { outlines, picture, box, nameCode } = props;
  const fit = fitPicture(picture, box);
  const shown = outlines.map(({ quad, code, state }) => {
    const name = nameCode(code);
    const look: keyof typeof MARKS = name === null && state !== 'seen' ? 'unknown' : state;
    return { quad: fitQuad(fit, quad), look, text: state === 'seen' ? '' : (name ?? ''), code };
  });
  if (shown.length === 0) return null;
  const tags = placeTags(shown, box);
  return (
    <svg class="camera-marks" aria-hidden="true">
      {shown.map(({ quad, look, code }, at) => (
        <polygon
          key={`${at} ${code.text}`}
          class={`camera-outline is-${look}`}
          points={quad.map(({ x, y }) => `${Math.round(x)},${Math.round(y)}`).join(' ')}
        />
      ))}
      {shown.map(({ look, code }, at) => {
        const tag = tags[at];
        if (!tag) return null;
        const markX = tag.text ? 18 - tag.width / 2 : 0;
        return (
          <g
            key={`${at} ${code.text}`}
            class={`camera-tag is-${look}`}
            transform={`translate(${Math.round(tag.x)} ${Math.round(tag.y)})`}
          >
            <rect x={-tag.width / 2} y={-16} width={tag.width} height={32} rx={8} />
            <path d={MARKS[look]} transform={`translate(${markX} 0)`} />
            {tag.text && (
              <text x={markX + 14} y={6}>
                {tag.text}
              </text>
            )}
          </g>
        );
      })}
    </svg>
  );
}

/** At least this large, so that a gloved thumb finds it. */
const NUMBER_SIZE = 76;
/** The click of a tap comes within so much of the moment in which the finger is off, ms. */
const CLICK_MS = 300;

function LabelButton(props: {
  readonly label: GatheredLabel;
  readonly name: string;
  readonly number: number;
  readonly picture: Size;
  readonly box: Size;
  readonly onChoose: () => void;
  /** A finger is put on it or taken off. */
  readonly onHold: (isHeld: boolean) => void;
}) {
  const { box, onHold } = props;
  const fit = fitPicture(props.picture, box);
  const around = boxAround(props.label.codes.flatMap(({ quad }) => fitQuad(fit, quad)));
  const within = (middle: number, most: number) =>
    Math.min(
      Math.max(middle, NUMBER_SIZE / 2 + 4),
      Math.max(NUMBER_SIZE / 2 + 4, most - NUMBER_SIZE / 2 - 4),
    );
  const x = within(around.x + around.width / 2, box.width);
  const y = within(around.y + around.height / 2, box.height);
  return (
    <>
      <div
        class="camera-label"
        aria-hidden="true"
        style={{
          left: `${around.x - 12}px`,
          top: `${around.y - 12}px`,
          width: `${around.width + 24}px`,
          height: `${around.height + 24}px`,
        }}
      />
      <button
        type="button"
        class="camera-number"
        aria-label={props.name}
        style={{ left: `${x - NUMBER_SIZE / 2}px`, top: `${y - NUMBER_SIZE / 2}px` }}
        onPointerDown={() => onHold(true)}
        // The tap that follows is told by the click.
        onPointerUp={() => setTimeout(() => onHold(false), CLICK_MS)}
        onPointerCancel={() => onHold(false)}
        // A lifted finger leaves the button too, before its click: only a mouse that is drawn off it while pressed lets go here.
        onPointerLeave={({ buttons }) => {
          if (buttons !== 0) onHold(false);
        }}
        onClick={props.onChoose}
      >
        {props.number}
      </button>
    </>
  );
}
