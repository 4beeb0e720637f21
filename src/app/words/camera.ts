import type { CameraProblemCode } from '../scan/camera.ts';
import type { CameraState } from '../scan/camera-session.ts';
import { area, formatCount, plural } from './words.ts';

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

/** The camera's view. */
export const cameraWords = area({
  en: {
    view: 'Camera',
    picture: 'Camera picture',
    opening: 'Opening the camera…',
    allow: 'Does the browser ask? Tap Allow.',
    start: 'Start the camera',
    tryAgain: 'Try again',
    light: 'Light',
    zoom: 'Zoom',
    switchCamera: 'Other camera',
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
  },
  es: {
    view: 'Cámara',
    picture: 'Imagen de la cámara',
    opening: 'Abriendo la cámara…',
    allow: '¿Pregunta el navegador? Toque Permitir.',
    start: 'Encender la cámara',
    tryAgain: 'Reintentar',
    light: 'Luz',
    zoom: 'Aumento',
    switchCamera: 'Otra cámara',
    close: 'Cerrar cámara',
    type: 'Teclear',
    off: {
      'not-started': 'La cámara está apagada',
      idle: 'La cámara se paró: no se leyó nada durante un rato',
      hidden: 'La cámara se paró mientras la aplicación estaba oculta',
      stopped: 'La cámara está apagada',
    },
    problem: {
      insecure: {
        title: 'Sin cámara en esta dirección',
        steps: ['Abra la aplicación por su dirección https.', 'Hasta entonces: use el lector o teclee.'],
      },
      denied: {
        title: 'El navegador bloquea la cámara',
        steps: [
          'Abra los ajustes de esta página en el navegador.',
          'Ponga Cámara en Permitir.',
          'Vuelva y toque Reintentar.',
        ],
      },
      absent: { title: 'Este dispositivo no tiene cámara', steps: ['Use el lector o teclee.'] },
      busy: {
        title: 'Otra aplicación usa la cámara',
        steps: ['Cierre esa aplicación.', 'Toque Reintentar.'],
      },
      failed: {
        title: 'La cámara no arrancó',
        steps: ['Toque Reintentar.', 'Si sigue igual: use el lector o teclee.'],
      },
    },
    show: {
      any: 'Muestre un código',
      slot: 'Muestre el código de la posición',
      feeder: 'Muestre el código del alimentador',
      'old-reel': 'Muestre la bobina montada',
      reel: 'Muestre la etiqueta de la bobina',
      'new-reel': 'Muestre la etiqueta de la bobina nueva',
      badge: 'Muestre su tarjeta',
    },
    readThen: (next) => `Leído. ${next}`,
    noCode: 'Aún sin código. Acérquese hasta que la etiqueta llene el marco.',
    noCodeLight: 'Aún sin código. Acérquese o encienda la luz.',
    gathering: (codes) =>
      plural(codes, 'Un código leído. No se mueva…', `${formatCount(codes)} códigos leídos. No se mueva…`),
    half: (missing) => `Aún sin leer: ${missing}. Póngalo en el marco.`,
    takeAsRead: 'Usar lo leído',
    several: (labels) =>
      plural(
        labels,
        'Una etiqueta a la vista. Tóquela.',
        `${formatCount(labels)} etiquetas a la vista. Toque la suya.`,
      ),
    unknown: 'Código desconocido',
    elsewhere: 'Leído. Cierre la cámara para verlo.',
    slow: 'Este navegador lee despacio, un código cada vez. No se mueva.',
    wanted: (things) => `Falta: ${things}`,
    wantedAny: 'Lista para cualquier código',
    anyHelp: 'Posición, alimentador, bobina, tarjeta o panel',
    things: {
      slot: 'posición',
      feeder: 'alimentador',
      'old-reel': 'bobina vieja',
      reel: 'bobina',
      'new-reel': 'bobina nueva',
      badge: 'tarjeta',
    },
    inHand: (slot, part) => `${slot} quiere ${part}`,
    whichLabel: '¿Qué etiqueta?',
    chooseHelp: 'Toque su número',
    label: (number, text) => `Etiqueta ${number}: ${text}`,
    card: 'Etiqueta de la bobina',
    facts: { part: 'Componente', quantity: 'Cantidad', lot: 'Lote', reel: 'Id de bobina' },
    notRead: 'aún sin leer',
    names: {
      slot: 'Posición',
      feeder: 'Alimentador',
      cart: 'Carro',
      place: 'Lugar',
      reel: 'Id de bobina',
      lot: 'Lote',
      part: 'Componente',
      badge: 'Tarjeta',
      panel: 'Panel',
      label: 'Etiqueta entera',
      date: 'Fecha',
      other: 'Leído',
    },
  },
});
