import type { SeparatorName } from '../scan/calibration.ts';
import type { Layout } from '../scan/layouts.ts';
import { area, plural } from './words.ts';

const layoutsEn: Readonly<Record<Layout, string>> = {
  us: 'US English',
  uk: 'UK English',
  german: 'German',
  'swiss-german': 'Swiss German',
  french: 'French',
  spanish: 'Spanish',
  italian: 'Italian',
  swedish: 'Swedish',
};

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

/** Testing the scanner: what to set, what arrived, what is wrong. */
export const scannerWords = area({
  en: {
    layouts: layoutsEn,
    title: 'Scan this code with the scanner',
    help: 'From this screen, another one, or the printed sheet. While this page is open, scans go nowhere else.',
    codeLabel: 'Calibration code',
    striped: 'A scanner that reads bar codes only',
    stripedLabel: 'Calibration bar code',
    stripedHelp:
      'Too wide for a small screen: there, print the sheet. Bar codes carry one separator, so only that one is tested.',
    stripedSheet: 'For a scanner that reads bar codes only:',
    print: 'Print the sheet',
    waiting: 'Waiting for a scan…',
    right: 'This scanner is set right.',
    rightText: 'Letters, signs and separators arrive as printed.',
    plainOnly: 'Plain codes are read; labels with separators are not.',
    plainOnlyText: 'Such labels are refused until the scanner is set as below.',
    wrong: 'This scanner cannot be trusted yet.',
    wrongText: 'What is scanned with it does not arrive as printed.',
    findings: {
      'all-equal': 'Every character arrived as printed.',
      'half-arrived': (found: number, wanted: number) =>
        `Only ${plural(wanted, `${found} of 1 character`, `${found} of ${wanted} characters`)} arrived: the scan was cut off. Set the delay between characters to none, or bring the scanner closer to its base.`,
      'layout-differs': (scanner: string, tablet: string) =>
        `The scanner types for a ${scanner} keyboard, the tablet expects ${tablet}. Set the scanner’s keyboard to ${tablet}, or the tablet’s layout to ${scanner}.`,
      'characters-differ':
        'Characters arrive changed, and no keyboard layout known here explains it. Set the scanner’s keyboard to the tablet’s layout and scan again.',
      'case-inverted':
        'Capital and small letters arrive swapped. Turn Caps Lock off, and set the scanner to leave letters as printed.',
      'separators-lost': (names: string) =>
        `Separators do not arrive (${names}). Set the scanner to send control characters, as Ctrl with a key or as Alt with the number pad.`,
      'separator-replaced': (name: SeparatorName, by: string) =>
        `The separator ${name} arrives as “${by}”. Set the scanner to send control characters as they are.`,
      'terminator-missing':
        'No Enter at the end, so the end of a scan is a guess. Set the scanner’s suffix to Enter.',
      'unknown-key': (key: string) =>
        `The key “${key}” came in the middle of the scan. Take such keys out of the scanner’s settings.`,
      slow: (pace: number) =>
        `${pace} ms between two characters is slow. Set the delay between characters to none.`,
      'symbology-id-sent': (id: string) =>
        `The scanner sends the kind of code in front (${id}). That is understood and may stay.`,
    },
    wanted: 'printed',
    found: 'arrived',
    arrived: 'What arrived',
    none: 'Nothing yet. Scan anything: it shows here, control characters included.',
    characters: (count: number) => plural(count, '1 character', `${count} characters`),
    pace: (ms: string) => `${ms} ms each`,
    endedBy: { Enter: 'then Enter', Tab: 'then Tab', silence: 'no Enter' },
    reads: 'reads as',
    readsNothing: 'no known label',
    settingsTitle: 'How a scanner should be set',
    settings: [
      'Works as a keyboard (HID).',
      'Keyboard country: the same as the tablet’s.',
      'Sends control characters, as Ctrl with a key or Alt with the number pad.',
      'Suffix: Enter. No prefix.',
      'Letters as printed: no change of case.',
      'No delay between characters.',
    ],
    keep: 'Save this scanner’s pace on this tablet',
    keptNow: 'Saved. This tablet tells scans from typing by this pace.',
    isKept: 'This tablet has saved its scanner’s pace.',
    forget: 'Use the usual pace',
    sheetTitle: 'Scanner calibration',
    sheetText: 'Open Plant, Scanner on the tablet, then scan this code.',
    sheetHolds: 'The code holds:',
    fields: {
      part: 'part',
      supplierPart: 'supplier part',
      quantity: 'quantity',
      lot: 'lot',
      dateCode: 'date code',
      reel: 'reel',
    },
  },
  es: {
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
  },
});
