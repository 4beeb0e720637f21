import type { words as english } from '../en/first-panel.ts';
import { plural, type Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  intro: 'Mida los componentes críticos. Mire cada componente que puede quedar al revés.',
  none: 'Este montaje no indica componentes críticos, valores ni polaridad.',
  other: 'Medir otro componente',
  critical: 'Componentes críticos y valores',
  orientation: 'Orientación',
  left: (open) => plural(open, 'queda 1', `quedan ${open}`),
  all: 'todo bien',
  states: { open: 'por hacer', accepted: 'bien', held: 'no está claro', refused: 'mal' },
  marks: { critical: 'crítico', perPanel: (count) => `${count} por panel` },
  measure: 'Medir',
  again: 'Medir otra vez',
  right: 'Bien',
  wrong: 'Mal',
  takeBack: 'Mirar otra vez',
  title: (part) => `Medir ${part}`,
  wanted: '¿Cuánto debe medir?',
  code: 'Valor o su código',
  codeHelp: 'Por ejemplo 4k7, 104K, 10 kΩ (IEC 60062). Luego elija la lectura correcta.',
  nominal: 'Valor nominal',
  unit: 'Unidad',
  tolerance: 'Tolerancia ± %',
  reading: (unit) => `El medidor marca, en ${unit}`,
  meter: 'Exactitud del medidor',
  percent: '± % de la lectura',
  fixed: (unit) => `± fijo, en ${unit}`,
  meterHelp: 'Véala en la hoja de datos del medidor. Esta tableta la recuerda.',
  limits: (least, most, unit) => `Se pide: de ${least} a ${most} ${unit}`,
  result: (value, uncertainty, unit) => `Medido: ${value} ± ${uncertainty} ${unit}`,
  why: {
    accepted: 'Dentro de los límites, incluso con el error del medidor.',
    held: 'Demasiado cerca de un límite para este medidor. Use uno mejor o que decida calidad.',
    refused:
      'Fuera de los límites, incluso con el error del medidor. Retenga el panel; revise bobina y posición.',
  },
  numbers: 'Ponga números en valor, tolerancia y lectura.',
  keep: 'Guardar la medida',
  caution:
    'Panel fuera de la línea y sin tensión, condensadores descargados. Lo que está al lado cambia lo que marca el medidor en el circuito.',
  known: 'como se midió antes',
};
