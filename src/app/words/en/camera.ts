import type { CameraProblemCode } from '../../scan/camera.ts';
import type { CameraState } from '../../scan/camera-session.ts';
import { formatCount, plural } from '../words.ts';

type OffReason = Extract<CameraState, { kind: 'off' }>['why'];

type Blind = { readonly title: string; readonly steps: readonly string[] };

const problemsEn = {
  insecure: {
    title: 'No camera on this address',
    steps: ['Open the app by its https address.', 'Until then: use the hand scanner, or type.'],
  },
  denied: {
    title: 'The browser blocks the camera',
    steps: [
      'Open this page’s settings in the browser.',
      'Set Camera to Allow.',
      'Come back and tap Try again.',
    ],
  },
  absent: { title: 'This device has no camera', steps: ['Use the hand scanner, or type.'] },
  busy: {
    title: 'Another app is using the camera',
    steps: ['Close that app.', 'Tap Try again.'],
  },
  failed: {
    title: 'The camera did not start',
    steps: ['Tap Try again.', 'If it fails again: use the hand scanner, or type.'],
  },
} satisfies Record<CameraProblemCode, Blind>;

const offEn = {
  'not-started': 'The camera is off',
  idle: 'The camera stopped: nothing was read for a while',
  hidden: 'The camera stopped while the app was hidden',
  stopped: 'The camera is off',
} satisfies Record<OffReason, string>;

export const words = {
  view: 'Camera',
  picture: 'Camera picture',
  opening: 'Opening the camera…',
  allow: 'Does the browser ask? Tap Allow.',
  start: 'Start the camera',
  tryAgain: 'Try again',
  light: 'Light',
  zoom: 'Zoom',
  switchCamera: 'Switch camera',
  close: 'Close camera',
  type: 'Type',
  off: offEn,
  problem: problemsEn,
  show: {
    any: 'Show a code',
    slot: 'Show the slot’s code',
    feeder: 'Show the feeder’s code',
    'old-reel': 'Show the reel on the slot',
    reel: 'Show the reel’s label',
    'new-reel': 'Show the new reel’s label',
    badge: 'Show your badge',
  },
  readThen: (next: string) => `Read. ${next}`,
  noCode: 'No code yet. Go closer until the label fills the frame.',
  noCodeLight: 'No code yet. Go closer, or turn the light on.',
  gathering: (codes: number) =>
    plural(codes, 'One code read. Hold still…', `${formatCount(codes)} codes read. Hold still…`),
  half: (missing: string) => `Not read yet: ${missing}. Bring it into the frame.`,
  takeAsRead: 'Use what was read',
  several: (labels: number) =>
    plural(labels, 'One label in view. Tap it.', `${formatCount(labels)} labels in view. Tap yours.`),
  unknown: 'Unknown code',
  elsewhere: 'Read. Close the camera to see it.',
  slow: 'This browser reads slowly, one code at a time. Hold still.',
  wanted: (things: string) => `Wanted: ${things}`,
  wantedAny: 'Ready for any code',
  anyHelp: 'Slot, feeder, reel, badge or panel',
  things: {
    slot: 'slot',
    feeder: 'feeder',
    'old-reel': 'old reel',
    reel: 'reel',
    'new-reel': 'new reel',
    badge: 'badge',
  },
  inHand: (slot: string, part: string) => `${slot} wants ${part}`,
  whichLabel: 'Which label?',
  chooseHelp: 'Tap its number',
  label: (number: number, text: string) => `Label ${number}: ${text}`,
  card: 'Reel label',
  facts: { part: 'Part', quantity: 'Quantity', lot: 'Lot', reel: 'Reel id' },
  notRead: 'not read yet',
  names: {
    slot: 'Slot',
    feeder: 'Feeder',
    cart: 'Cart',
    place: 'Place',
    reel: 'Reel id',
    lot: 'Lot',
    part: 'Part',
    badge: 'Badge',
    panel: 'Panel',
    label: 'Whole label',
    date: 'Date',
    other: 'Read',
  },
} as const;
