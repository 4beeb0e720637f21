// Opens the right lens and answers what it can do.
// Method: wishes only (`ideal`), never demands, so that no device is refused; then each extra is tried by itself.
// Refused: `exact` constraints and asking again for each change: some tablets ask the person anew at each request.

import { fail, ok, type Result } from '../../../shared/kit/result.ts';

export const cameraProblems = ['insecure', 'denied', 'absent', 'busy', 'failed'] as const;
export type CameraProblemCode = (typeof cameraProblems)[number];

export interface CameraProblem {
  readonly code: CameraProblemCode;
  /** The browser's own name and message, for the support page. */
  readonly detail: string;
}

export interface ZoomRange {
  readonly min: number;
  readonly max: number;
  readonly step: number;
}

export interface Camera {
  readonly stream: MediaStream;
  readonly deviceId: string | null;
  readonly label: string;
  readonly hasTorch: boolean;
  readonly zoom: ZoomRange | null;
  readonly focus: 'continuous' | 'single-shot' | 'fixed' | 'unknown';
  /** Each answers whether the device did it. */
  setTorch(isOn: boolean): Promise<boolean>;
  setZoom(zoom: number): Promise<boolean>;
  /** Every camera of the tablet, for the manual choice; names are empty until one was allowed. */
  list(): Promise<readonly { readonly deviceId: string; readonly label: string }[]>;
  stop(): void;
}

/** Where the chosen camera is kept between sessions. */
export interface CameraMemory {
  read(): string | null;
  write(deviceId: string): void;
}

export interface OpenCameraOptions {
  /** `undefined` on pages that are not served over TLS. */
  readonly devices: MediaDevices | undefined;
  readonly memory: CameraMemory;
  /** A camera a person chose by hand; overrides what is remembered. */
  readonly deviceId?: string;
}

const SIZE = { width: { ideal: 1920 }, height: { ideal: 1080 } };
const REAR = /back|rear|environment|rück|arrière|trasera|posteriore|bak/i;
/** So many lenses are tried before the first one is kept as it is. */
const MOST_LENSES = 4;

// Not in the compiler's DOM library, as they come from the image capture draft.
interface LensCapabilities {
  readonly torch?: boolean;
  readonly zoom?: ZoomRange;
  readonly focusMode?: readonly string[];
}

/** Opens a camera. One permission request in the usual case; more lenses are tried only where the first has no focus. */
export async function openCamera(options: OpenCameraOptions): Promise<Result<Camera, CameraProblem>> {
  const { devices, memory } = options;
  if (devices?.getUserMedia === undefined) return fail({ code: 'insecure', detail: 'no media devices' });
  const wanted = options.deviceId ?? memory.read();
  const first = await request(devices, wanted);
  if (!first.ok) return first;
  const chosen = wanted === null ? await betterLens(devices, first.value) : first.value;
  const camera = describe(chosen, devices);
  if (camera.deviceId !== null) memory.write(camera.deviceId);
  if (camera.focus === 'continuous') await tryConstraint(trackOf(chosen), { focusMode: 'continuous' });
  return ok(camera);
}

async function request(
  devices: MediaDevices,
  deviceId: string | null,
): Promise<Result<MediaStream, CameraProblem>> {
  const lens =
    deviceId === null ? { facingMode: { ideal: 'environment' } } : { deviceId: { ideal: deviceId } };
  try {
    return ok(await devices.getUserMedia({ video: { ...lens, ...SIZE }, audio: false }));
  } catch (reason) {
    const problem = toProblem(reason);
    if (problem.code !== 'failed') return fail(problem);
  }
  try {
    // Some versions refuse wishes they should only weigh; without any, they open.
    return ok(await devices.getUserMedia({ video: true, audio: false }));
  } catch (reason) {
    return fail(toProblem(reason));
  }
}

async function betterLens(devices: MediaDevices, first: MediaStream): Promise<MediaStream> {
  if (focusOf(trackOf(first)) !== 'fixed') return first;
  const usedId = trackOf(first).getSettings().deviceId;
  const others = (await listCameras(devices)).filter(
    ({ deviceId, label }) => deviceId !== usedId && REAR.test(label),
  );
  for (const { deviceId } of others.slice(0, MOST_LENSES)) {
    // Most tablets cannot hold two lenses open at once.
    stopStream(first);
    const next = await request(devices, deviceId);
    if (!next.ok) continue;
    if (focusOf(trackOf(next.value)) !== 'fixed') return next.value;
    stopStream(next.value);
  }
  if (trackOf(first).readyState === 'live') return first;
  const again = await request(devices, usedId ?? null);
  return again.ok ? again.value : first;
}

function describe(stream: MediaStream, devices: MediaDevices): Camera {
  const track = trackOf(stream);
  const capabilities = capabilitiesOf(track);
  const { zoom } = capabilities;
  return {
    stream,
    deviceId: track.getSettings().deviceId ?? null,
    label: track.label,
    hasTorch: capabilities.torch === true,
    zoom:
      zoom !== undefined && zoom.max > zoom.min
        ? { min: zoom.min, max: zoom.max, step: zoom.step || 0.1 }
        : null,
    focus: focusOf(track),
    setTorch: (isOn) => tryConstraint(track, { torch: isOn }),
    setZoom: (value) => tryConstraint(track, { zoom: value }),
    list: () => listCameras(devices),
    stop: () => stopStream(stream),
  };
}

function trackOf(stream: MediaStream): MediaStreamTrack {
  const [track] = stream.getVideoTracks();
  if (track === undefined)
    throw new TypeError('Cannot use camera as it must have a video track: current value is none');
  return track;
}

function capabilitiesOf(track: MediaStreamTrack): LensCapabilities {
  // Older Firefox has no such call.
  return typeof track.getCapabilities === 'function' ? (track.getCapabilities() as LensCapabilities) : {};
}

function focusOf(track: MediaStreamTrack): Camera['focus'] {
  const modes = capabilitiesOf(track).focusMode;
  if (modes === undefined || modes.length === 0) return 'unknown';
  if (modes.includes('continuous')) return 'continuous';
  return modes.includes('single-shot') ? 'single-shot' : 'fixed';
}

async function tryConstraint(track: MediaStreamTrack, wish: object): Promise<boolean> {
  try {
    await track.applyConstraints({ advanced: [wish] });
    return true;
  } catch {
    // An extra the device does not have; the picture goes on as it is.
    return false;
  }
}

async function listCameras(devices: MediaDevices): Promise<readonly { deviceId: string; label: string }[]> {
  const all = await devices.enumerateDevices();
  return all.filter(({ kind }) => kind === 'videoinput').map(({ deviceId, label }) => ({ deviceId, label }));
}

function stopStream(stream: MediaStream): void {
  for (const track of stream.getTracks()) track.stop();
}

const CODES_BY_NAME: Readonly<Record<string, CameraProblemCode>> = {
  NotAllowedError: 'denied',
  SecurityError: 'denied',
  NotFoundError: 'absent',
  NotReadableError: 'busy',
  AbortError: 'busy',
};

function toProblem(reason: unknown): CameraProblem {
  const name = reason instanceof Error ? reason.name : '';
  return { code: CODES_BY_NAME[name] ?? 'failed', detail: String(reason) };
}
