// A camera in numbers: a sheet, flat or bent round a reel, seen at a distance and tilt, out of focus, moving, in noise.
// Method: a pinhole camera; each pixel's four rays are met with the plane or cylinder and the sheet is sampled there;
// then focus blur, motion blur, light and noise. Refused: canvas drawing in a browser, which is neither seeded nor curved.

import { type Chance, chanceNormal } from '../../shared/kit/chance.ts';
import type { GrayImage } from '../../src/worker/decode-protocol.ts';
import type { Sheet } from './frames-labels.ts';

export interface Shot {
  readonly width: number;
  readonly height: number;
  /** Pixels a millimetre at the sheet's middle, seen straight on. */
  readonly pixelsPerMm: number;
  readonly turnDeg: number;
  readonly tiltDeg: number;
  readonly tiltTowardsDeg: number;
  /** Shift of the sheet's middle from the picture's, in pixels. */
  readonly offset: { readonly x: number; readonly y: number };
  /** Radius of the surface; null when flat. */
  readonly bendMm: number | null;
  /** Standard deviation of focus blur and length of motion blur, in pixels. */
  readonly blurPx: number;
  readonly motionPx: number;
  readonly motionDeg: number;
  /** Standard deviation of noise in grey steps. */
  readonly noise: number;
  /** Share of the light that is left, and a glare spot's strength in grey steps. */
  readonly light: number;
  readonly glare: number;
  readonly glareAt: { readonly x: number; readonly y: number };
}

/** Focal length in pixels of a lens that sees 65 degrees across 1280 pixels. */
const FOCAL_PX = 640 / Math.tan((32.5 * Math.PI) / 180);
const DESK = 88;

/** Takes one picture. */
export function takePicture(sheet: Sheet, shot: Shot, chance: Chance): GrayImage {
  const { width, height } = shot;
  const picture = new Float32Array(width * height).fill(DESK);
  const box = project(sheet, shot, picture);
  const margin = Math.ceil(3 * shot.blurPx + shot.motionPx) + 2;
  const area = {
    left: Math.max(0, box.left - margin),
    top: Math.max(0, box.top - margin),
    right: Math.min(width, box.right + margin),
    bottom: Math.min(height, box.bottom + margin),
  };
  if (shot.blurPx > 0.05) blur(picture, width, area, shot.blurPx);
  if (shot.motionPx > 0.3) smear(picture, width, area, shot);
  return expose(picture, shot, chance);
}

interface Area {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

/** Rows of the rotation that takes sheet coordinates to camera coordinates. */
function rotation(shot: Shot): readonly number[] {
  const radians = Math.PI / 180;
  const turn = shot.turnDeg * radians;
  const tilt = shot.tiltDeg * radians;
  const towards = shot.tiltTowardsDeg * radians;
  // Rodrigues' formula about an axis in the sheet's plane, after the turn in the plane.
  const [kx, ky] = [Math.cos(towards), Math.sin(towards)];
  const [c, s] = [Math.cos(tilt), Math.sin(tilt)];
  const lean = [
    c + kx * kx * (1 - c),
    kx * ky * (1 - c),
    ky * s,
    kx * ky * (1 - c),
    c + ky * ky * (1 - c),
    -kx * s,
    -ky * s,
    kx * s,
    c,
  ];
  const [ct, st] = [Math.cos(turn), Math.sin(turn)];
  const spin = [ct, -st, 0, st, ct, 0, 0, 0, 1];
  const product = new Array<number>(9).fill(0);
  for (let row = 0; row < 3; row++) {
    for (let column = 0; column < 3; column++) {
      for (let k = 0; k < 3; k++) product[row * 3 + column]! += lean[row * 3 + k]! * spin[k * 3 + column]!; // 3 x 3
    }
  }
  return product;
}

/** Where a point of a flat sheet, in millimetres from its middle, lies in the picture. */
export function pointInPicture(
  shot: Shot,
  { x, y }: { readonly x: number; readonly y: number },
): { readonly x: number; readonly y: number } {
  const distance = FOCAL_PX / shot.pixelsPerMm;
  const m = rotation(shot);
  const depth = m[6]! * x + m[7]! * y + distance; // 3 x 3
  const across = m[0]! * x + m[1]! * y + (shot.offset.x * distance) / FOCAL_PX;
  const down = m[3]! * x + m[4]! * y + (shot.offset.y * distance) / FOCAL_PX;
  return {
    x: (across / depth) * FOCAL_PX + shot.width / 2,
    y: (down / depth) * FOCAL_PX + shot.height / 2,
  };
}

function project(sheet: Sheet, shot: Shot, picture: Float32Array): Area {
  const distance = FOCAL_PX / shot.pixelsPerMm;
  const m = rotation(shot);
  const shiftX = (shot.offset.x * distance) / FOCAL_PX;
  const shiftY = (shot.offset.y * distance) / FOCAL_PX;
  // Camera in sheet coordinates: transpose of the rotation times minus the sheet's place.
  const eye = [0, 1, 2].map((k) => -(m[k]! * shiftX + m[3 + k]! * shiftY + m[6 + k]! * distance)) as [
    number,
    number,
    number,
  ];
  const box = projectedBox(sheet, shot, m, { shiftX, shiftY, distance });
  const { width } = shot;
  const { image, pixelsPerMm: density } = sheet;
  const offsets = [0.25, 0.75];
  for (let y = box.top; y < box.bottom; y++) {
    for (let x = box.left; x < box.right; x++) {
      let sum = 0;
      for (const oy of offsets) {
        const py = (y + oy - shot.height / 2) / FOCAL_PX;
        for (const ox of offsets) {
          const px = (x + ox - width / 2) / FOCAL_PX;
          const dx = m[0]! * px + m[3]! * py + m[6]!;
          const dy = m[1]! * px + m[4]! * py + m[7]!;
          const dz = m[2]! * px + m[5]! * py + m[8]!;
          sum += sampleRay(image, density, { sheet, shot, eye, dx, dy, dz });
        }
      }
      picture[y * width + x] = sum / 4;
    }
  }
  return box;
}

interface Ray {
  readonly sheet: Sheet;
  readonly shot: Shot;
  readonly eye: readonly [number, number, number];
  readonly dx: number;
  readonly dy: number;
  readonly dz: number;
}

function sampleRay(image: GrayImage, density: number, ray: Ray): number {
  const { eye, dx, dy, dz, shot, sheet } = ray;
  const bend = shot.bendMm;
  let u: number;
  let v: number;
  if (bend === null) {
    const t = -eye[2] / dz;
    u = eye[0] + t * dx;
    v = eye[1] + t * dy;
  } else {
    // Cylinder of radius `bend` about a line parallel to the sheet's height, touching the sheet's middle.
    const ez = eye[2] - bend;
    const a = dx * dx + dz * dz;
    const b = eye[0] * dx + ez * dz;
    const c = eye[0] * eye[0] + ez * ez - bend * bend;
    const under = b * b - a * c;
    if (under < 0) return DESK;
    const t = (-b - Math.sqrt(under)) / a;
    u = bend * Math.atan2(eye[0] + t * dx, -(ez + t * dz));
    v = eye[1] + t * dy;
  }
  const fx = (u + sheet.widthMm / 2) * density - 0.5;
  const fy = (v + sheet.heightMm / 2) * density - 0.5;
  const x = Math.floor(fx);
  const y = Math.floor(fy);
  if (x < 0 || y < 0 || x + 1 >= image.width || y + 1 >= image.height) return DESK;
  const [sx, sy] = [fx - x, fy - y];
  const at = y * image.width + x;
  const { data } = image;
  const upper = data[at]! * (1 - sx) + data[at + 1]! * sx; // inside by the check above
  const lower = data[at + image.width]! * (1 - sx) + data[at + image.width + 1]! * sx;
  return upper * (1 - sy) + lower * sy;
}

function projectedBox(
  sheet: Sheet,
  shot: Shot,
  m: readonly number[],
  place: { readonly shiftX: number; readonly shiftY: number; readonly distance: number },
): Area {
  const xs: number[] = [];
  const ys: number[] = [];
  for (const u of [-0.5, -0.25, 0, 0.25, 0.5]) {
    for (const v of [-0.5, 0.5]) {
      const arc = u * sheet.widthMm;
      const bend = shot.bendMm;
      const sx = bend === null ? arc : bend * Math.sin(arc / bend);
      const sz = bend === null ? 0 : bend * (1 - Math.cos(arc / bend));
      const sy = v * sheet.heightMm;
      const cx = m[0]! * sx + m[1]! * sy + m[2]! * sz + place.shiftX;
      const cy = m[3]! * sx + m[4]! * sy + m[5]! * sz + place.shiftY;
      const cz = m[6]! * sx + m[7]! * sy + m[8]! * sz + place.distance;
      xs.push((cx / cz) * FOCAL_PX + shot.width / 2);
      ys.push((cy / cz) * FOCAL_PX + shot.height / 2);
    }
  }
  return {
    left: Math.max(0, Math.floor(Math.min(...xs)) - 4),
    top: Math.max(0, Math.floor(Math.min(...ys)) - 4),
    right: Math.min(shot.width, Math.ceil(Math.max(...xs)) + 4),
    bottom: Math.min(shot.height, Math.ceil(Math.max(...ys)) + 4),
  };
}

function blur(picture: Float32Array, width: number, area: Area, sigma: number): void {
  const reach = Math.ceil(3 * sigma);
  const kernel = Array.from({ length: 2 * reach + 1 }, (_, at) =>
    Math.exp(-((at - reach) ** 2) / (2 * sigma * sigma)),
  );
  const total = kernel.reduce((sum, value) => sum + value, 0);
  const weights = Float32Array.from(kernel, (value) => value / total);
  for (const isAcross of [true, false]) {
    const copy = picture.slice();
    const stride = isAcross ? 1 : width;
    for (let y = area.top; y < area.bottom; y++) {
      for (let x = area.left; x < area.right; x++) {
        let sum = 0;
        const [low, high, here] = isAcross ? [area.left, area.right - 1, x] : [area.top, area.bottom - 1, y];
        for (let k = -reach; k <= reach; k++) {
          const to = Math.min(high, Math.max(low, here + k));
          sum += weights[k + reach]! * copy[y * width + x + (to - here) * stride]!;
        }
        picture[y * width + x] = sum;
      }
    }
  }
}

function smear(picture: Float32Array, width: number, area: Area, shot: Shot): void {
  const copy = picture.slice();
  const steps = Math.max(2, Math.ceil(shot.motionPx * 2));
  const [dx, dy] = [Math.cos((shot.motionDeg * Math.PI) / 180), Math.sin((shot.motionDeg * Math.PI) / 180)];
  for (let y = area.top; y < area.bottom; y++) {
    for (let x = area.left; x < area.right; x++) {
      let sum = 0;
      for (let step = 0; step < steps; step++) {
        const along = ((step + 0.5) / steps - 0.5) * shot.motionPx;
        const fx = Math.min(area.right - 1.01, Math.max(area.left, x + along * dx));
        const fy = Math.min(area.bottom - 1.01, Math.max(area.top, y + along * dy));
        const [ix, iy] = [Math.floor(fx), Math.floor(fy)];
        const [sx, sy] = [fx - ix, fy - iy];
        const at = iy * width + ix;
        const below = iy + 1 < area.bottom ? width : 0;
        const right = ix + 1 < area.right ? 1 : 0;
        sum +=
          (copy[at]! * (1 - sx) + copy[at + right]! * sx) * (1 - sy) +
          (copy[at + below]! * (1 - sx) + copy[at + below + right]! * sx) * sy;
      }
      picture[y * width + x] = sum / steps;
    }
  }
}

const NOISE_LENGTH = 1 << 16;

function expose(picture: Float32Array, shot: Shot, chance: Chance): GrayImage {
  const { width, height } = shot;
  const noise = Float32Array.from({ length: NOISE_LENGTH }, () => chanceNormal(chance, 0, shot.noise));
  const data = new Uint8ClampedArray(width * height);
  for (let y = 0; y < height; y++) {
    let from = Math.floor(chance() * NOISE_LENGTH);
    for (let x = 0; x < width; x++) {
      const at = y * width + x;
      const away = ((x - shot.glareAt.x) ** 2 + (y - shot.glareAt.y) ** 2) / 28_000;
      const glare = shot.glare > 0 && away < 8 ? shot.glare * Math.exp(-away) : 0;
      // A lamp from one side: up to 15 % less light at the far edge.
      const side = 1 - (0.15 * x) / width;
      data[at] = picture[at]! * shot.light * side + glare + noise[from]!;
      from = (from + 1) % NOISE_LENGTH;
    }
  }
  return { data: new Uint8Array(data.buffer), width, height };
}
