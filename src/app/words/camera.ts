import type { CameraWords } from '../scan/CameraView.tsx';
import { type Area, plural } from './words.ts';

/** The camera's view. */
export const cameraWords: Area<CameraWords> = {
  en: {
    picture: 'Camera picture',
    opening: 'Opening the camera…',
    start: 'Start the camera',
    torchOn: 'Light on',
    torchOff: 'Light off',
    zoom: 'Zoom',
    switchCamera: 'Other camera',
    off: {
      'not-started': 'The camera is off.',
      idle: 'Nothing was read for a while, so the camera stopped.',
      hidden: 'The camera stopped while the app was hidden.',
      stopped: 'The camera was stopped.',
    },
    problem: {
      insecure: 'The camera works only on a secure page (https). Use the scanner or type.',
      denied:
        'The browser was told not to use the camera. Allow it in the address bar, use the scanner, or type.',
      absent: 'This device has no camera. Use the scanner or type.',
      busy: 'Another app holds the camera. Close it and start again.',
      failed: 'The camera did not start. Try again, use the scanner, or type.',
    },
    whichLabel: 'Two labels in view. Which one?',
    label: (number, codes) => `Label ${number}: ${codes[0]?.text.slice(0, 28) ?? ''}`,
    gathering: (codes) => `${codes} read, looking for more…`,
  },
  es: {
    picture: 'Imagen de la cámara',
    opening: 'Abriendo la cámara…',
    start: 'Encender la cámara',
    torchOn: 'Encender luz',
    torchOff: 'Apagar luz',
    zoom: 'Aumento',
    switchCamera: 'Otra cámara',
    off: {
      'not-started': 'La cámara está apagada.',
      idle: 'No se leyó nada durante un rato y la cámara se paró.',
      hidden: 'La cámara se paró mientras la aplicación estaba oculta.',
      stopped: 'La cámara se paró.',
    },
    problem: {
      insecure: 'La cámara solo funciona en una página segura (https). Use el lector o teclee.',
      denied:
        'El navegador no tiene permiso para la cámara. Permítala en la barra de direcciones, use el lector o teclee.',
      absent: 'Este dispositivo no tiene cámara. Use el lector o teclee.',
      busy: 'Otra aplicación usa la cámara. Ciérrela y empiece de nuevo.',
      failed: 'La cámara no arrancó. Reintente, use el lector o teclee.',
    },
    whichLabel: 'Hay dos etiquetas a la vista. ¿Cuál?',
    label: (number, codes) => `Etiqueta ${number}: ${codes[0]?.text.slice(0, 28) ?? ''}`,
    gathering: (codes) => `${plural(codes, '1 leído', `${codes} leídos`)}, buscando más…`,
  },
};
