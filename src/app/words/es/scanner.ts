import type { Layout } from '../../scan/layouts.ts';
import type { words as english } from '../en/scanner.ts';
import { plural, type Sentences } from '../words.ts';

const layoutsEs: Readonly<Record<Layout, string>> = {
  us: 'inglés de EE. UU.',
  uk: 'inglés británico',
  german: 'alemán',
  'swiss-german': 'alemán de Suiza',
  french: 'francés',
  spanish: 'español',
  italian: 'italiano',
  swedish: 'sueco',
};

export const words: Sentences<typeof english> = {
  layouts: layoutsEs,
  title: 'Escanee este código con el lector',
  help: 'De esta pantalla, de otra o de la hoja impresa. Con esta página abierta, lo escaneado no va a otro sitio.',
  codeLabel: 'Código de calibración',
  striped: 'Un escáner que solo lee códigos de barras',
  stripedLabel: 'Código de barras de calibración',
  stripedHelp:
    'Demasiado ancho para una pantalla pequeña: allí, imprima la hoja. Los códigos de barras llevan un separador; solo ese se prueba.',
  stripedSheet: 'Para un escáner que solo lee códigos de barras:',
  print: 'Imprimir la hoja',
  waiting: 'Esperando un escaneo…',
  right: 'Este lector está bien ajustado.',
  rightText: 'Letras, signos y separadores llegan como están impresos.',
  plainOnly: 'Se leen códigos simples; etiquetas con separadores, no.',
  plainOnlyText: 'Esas etiquetas se rechazan hasta ajustar el lector como sigue.',
  wrong: 'Aún no se puede confiar en este lector.',
  wrongText: 'Lo que escanea no llega como está impreso.',
  findings: {
    'all-equal': 'Todos los caracteres llegaron como están impresos.',
    'half-arrived': (found, wanted) =>
      `${plural(wanted, `Solo llegó ${found} de 1 carácter`, `Solo llegaron ${found} de ${wanted} caracteres`)}: el escaneo se cortó. Quite el retardo entre caracteres o acerque el lector a su base.`,
    'layout-differs': (scanner, tablet) =>
      `El lector escribe para un teclado ${scanner}; la tableta espera ${tablet}. Ajuste el teclado del lector a ${tablet}, o la tableta a ${scanner}.`,
    'characters-differ':
      'Los caracteres llegan cambiados y ningún teclado conocido aquí lo explica. Ajuste el teclado del lector al de la tableta y escanee otra vez.',
    'case-inverted':
      'Mayúsculas y minúsculas llegan cambiadas. Quite Bloq Mayús y ajuste el lector para dejar las letras como están.',
    'separators-lost': (names) =>
      `Los separadores no llegan (${names}). Ajuste el lector para enviar caracteres de control, como Ctrl con tecla o Alt con el teclado numérico.`,
    'separator-replaced': (name, by) =>
      `El separador ${name} llega como «${by}». Ajuste el lector para enviar los caracteres de control tal cual.`,
    'terminator-missing':
      'Falta Intro al final, así que el final de un escaneo se adivina. Ponga Intro como sufijo del lector.',
    'unknown-key': (key) =>
      `La tecla «${key}» llegó en medio del escaneo. Quite esas teclas de los ajustes del lector.`,
    slow: (pace) => `${pace} ms entre caracteres es lento. Quite el retardo entre caracteres.`,
    'symbology-id-sent': (id) =>
      `El lector envía delante la clase de código (${id}). Se entiende y puede quedarse.`,
  },
  wanted: 'impreso',
  found: 'llegó',
  label: {
    title: 'Escanee una etiqueta impresa',
    help: 'De una posición, un alimentador, una tarjeta o una bobina.',
    read: 'Esta etiqueta se lee.',
    unknown: 'Esta tableta no conoce esta etiqueta.',
    unknownHelp: 'Escanéela otra vez. Si no ayuda, imprímala más grande o añádala antes a la planta.',
  },
  arrived: 'Lo que llegó',
  none: 'Nada aún. Escanee lo que sea: se ve aquí, con sus caracteres de control.',
  characters: (count) => plural(count, '1 carácter', `${count} caracteres`),
  pace: (ms) => `${ms} ms cada uno`,
  endedBy: { Enter: 'y luego Intro', Tab: 'y luego Tab', silence: 'sin Intro' },
  reads: 'se lee como',
  readsNothing: 'ninguna etiqueta conocida',
  settingsTitle: 'Cómo debe estar ajustado un lector',
  settings: [
    'Trabaja como teclado (HID).',
    'País del teclado: el mismo que en la tableta.',
    'Envía caracteres de control, como Ctrl con tecla o Alt con el teclado numérico.',
    'Sufijo: Intro. Sin prefijo.',
    'Letras como están impresas: sin cambiar mayúsculas.',
    'Sin retardo entre caracteres.',
  ],
  keep: 'Guardar el ritmo de este lector en esta tableta',
  keptNow: 'Guardado. Esta tableta distingue lo escaneado de lo tecleado por este ritmo.',
  isKept: 'Esta tableta tiene guardado el ritmo de su lector.',
  forget: 'Usar el ritmo habitual',
  sheetTitle: 'Calibración del lector',
  sheetText: 'Abra Planta, Lector en la tableta y escanee este código.',
  sheetHolds: 'El código contiene:',
  fields: {
    part: 'componente',
    supplierPart: 'referencia de proveedor',
    quantity: 'cantidad',
    lot: 'lote',
    dateCode: 'código de fecha',
    reel: 'bobina',
  },
};
