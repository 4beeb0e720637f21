// The frame set of the decoder bench: five hand-held pictures of each label, an easy and a hard half by stated ranges.
// Easy is a steady hand in good light close by; hard is at least one of far, tilted, bent, soft, moving, dim or glaring.

import { type Chance, chanceBelow, seededChance } from '../../shared/kit/chance.ts';
import type { GrayImage } from '../../src/worker/decode-protocol.ts';
import { makeSheet, type PrintedLabel } from './frames-labels.ts';
import { type Shot, takePicture } from './frames-render.ts';

export const FRAMES_PER_CASE = 5;
export const HALVES = ['easy', 'hard'] as const;
export type Half = (typeof HALVES)[number];

interface Range {
  readonly from: number;
  readonly to: number;
}

interface HalfRanges {
  readonly modulePx: Range;
  readonly tiltDeg: Range;
  readonly blurPx: Range;
  readonly motionPx: Range;
  readonly noise: Range;
  readonly light: Range;
  readonly glare: number;
  readonly bent: number;
  readonly twoLabels: number;
}

const MODULE_MM: Range = { from: 0.19, to: 0.35 };
// A tablet that sees 1280 pixels over 65 degrees gives these at 9 to 17 cm; two labels need the farther half.
const PX_PER_MM: Range = { from: 6, to: 11 };
const FAR_PX_PER_MM: Range = { from: 5.8, to: 7.5 };
const RANGES: Readonly<Record<Half, HalfRanges>> = {
  easy: {
    modulePx: { from: 2.5, to: 3.8 },
    tiltDeg: { from: 0, to: 20 },
    blurPx: { from: 0.3, to: 0.7 },
    motionPx: { from: 0, to: 0.8 },
    noise: { from: 1, to: 4 },
    light: { from: 0.75, to: 1 },
    glare: 0,
    bent: 0.15,
    twoLabels: 0.25,
  },
  hard: {
    modulePx: { from: 1.7, to: 3 },
    tiltDeg: { from: 0, to: 45 },
    blurPx: { from: 0.4, to: 1 },
    motionPx: { from: 0, to: 1.6 },
    noise: { from: 2, to: 7 },
    light: { from: 0.4, to: 0.95 },
    glare: 0.4,
    bent: 0.4,
    twoLabels: 0.25,
  },
};

export interface FrameCase {
  readonly half: Half;
  readonly seed: number;
  readonly labels: readonly PrintedLabel[];
  readonly frames: readonly GrayImage[];
  /** What makes the pictures hard, for telling where labels are lost. */
  readonly look: {
    readonly modulePx: number;
    readonly tiltDeg: number;
    readonly isBent: boolean;
    readonly isGlaring: boolean;
    readonly blurPx: number;
    readonly noise: number;
    readonly light: number;
  };
}

function within(chance: Chance, { from, to }: Range): number {
  return from + chance() * (to - from);
}

/** One case of a half; the same seed gives the same pictures. */
export function makeCase(half: Half, seed: number): FrameCase {
  const chance = seededChance(seed * 2654435761 + (half === 'hard' ? 77 : 0));
  const ranges = RANGES[half];
  const labels = chance() < ranges.twoLabels ? 2 : 1;
  const pixelsPerMm = within(chance, labels === 2 ? FAR_PX_PER_MM : PX_PER_MM);
  const wantedMm = within(chance, ranges.modulePx) / pixelsPerMm;
  const moduleMm = Math.min(MODULE_MM.to, Math.max(MODULE_MM.from, wantedMm));
  const sheet = makeSheet(chance, { moduleMm, pixelsPerMm: pixelsPerMm * 2, labels });
  const isGlaring = chance() < ranges.glare;
  const steady = {
    width: 1280,
    height: 720,
    bendMm: chance() < ranges.bent ? 90 : null,
    light: within(chance, ranges.light),
    noise: within(chance, ranges.noise),
    glare: isGlaring ? 60 + chance() * 110 : 0,
  };
  const pose = {
    turnDeg: chance() * 360,
    tiltDeg: within(chance, ranges.tiltDeg),
    tiltTowardsDeg: chance() * 360,
    x: (chance() - 0.5) * (labels === 2 ? 120 : 240),
    y: (chance() - 0.5) * (labels === 2 ? 20 : 80),
  };
  const focus = within(chance, ranges.blurPx);
  const frames = Array.from({ length: FRAMES_PER_CASE }, () => {
    // A hand moves a little from frame to frame, and the lens breathes.
    const shot: Shot = {
      ...steady,
      pixelsPerMm: pixelsPerMm * (0.98 + 0.04 * chance()),
      turnDeg: pose.turnDeg + (chance() - 0.5) * 3,
      tiltDeg: Math.max(0, pose.tiltDeg + (chance() - 0.5) * 4),
      tiltTowardsDeg: pose.tiltTowardsDeg,
      offset: { x: pose.x + (chance() - 0.5) * 16, y: pose.y + (chance() - 0.5) * 16 },
      blurPx: focus * (0.9 + 0.2 * chance()),
      motionPx: within(chance, ranges.motionPx),
      motionDeg: chance() * 360,
      glareAt: { x: 340 + chanceBelow(chance, 600), y: 160 + chanceBelow(chance, 400) },
    };
    return takePicture(sheet, shot, chance);
  });
  const look = {
    modulePx: moduleMm * pixelsPerMm,
    tiltDeg: pose.tiltDeg,
    isBent: steady.bendMm !== null,
    isGlaring,
    blurPx: focus,
    noise: steady.noise,
    light: steady.light,
  };
  return { half, seed, labels: sheet.labels, frames, look };
}
