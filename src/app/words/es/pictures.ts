import type { words as english } from '../en/pictures.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  rule: 'Imágenes de etiquetas',
  ruleHelp: 'Guarda la imagen de cada etiqueta que la cámara lee al cargar o empalmar.',
  keep: 'Guardar imágenes',
  days: 'Días que se guardan',
  megabytes: 'Espacio en cada tableta, MB',
  fault: 'Las imágenes necesitan de 1 a 3650 días y de 1 a 10000 MB.',
  shown: 'Imagen de la etiqueta',
  notHere: 'La imagen no está en esta tableta. Búsquela en la que leyó la etiqueta.',
  none: 'No se encontró ninguna imagen.',
  broken: 'Esta imagen no es la que se guardó. Avise a un jefe de turno.',
  failed: 'No se guardó la imagen de la etiqueta. El veredicto vale.',
  exported: 'Guardar también las imágenes de etiquetas',
  saved: (name) => `Guardado como ${name}.`,
};
