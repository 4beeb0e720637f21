import type { PackageFamily } from '../../../shared/floor/vocabulary.ts';
import type { LineClimate } from '../../../shared/moisture/line-climate.ts';
import type { ValueSource } from '../../../shared/moisture/values.ts';
import { area } from './words.ts';

/** Floor life of moisture-sensitive reels: what is left, since when they lie open, drying and baking. */
export const moistureWords = area({
  en: {
    level: (msl: string) => `MSL ${msl}`,
    left: (span: string) => `${span} of floor life left`,
    leftUntil: (span: string, clock: string) => `${span} of floor life left, until ${clock}`,
    unopened: (span: string) => `not opened yet: ${span} of floor life`,
    noLimit: 'no limit in this air',
    over: 'floor life over',
    overSince: (clock: string) => `floor life over since ${clock}`,
    baking: 'in the oven',
    bakeShort: 'baked shorter than the table says',
    hotOver: (hours: string) => `${hours} h above 90 °C in all`,
    labelTime: 'level 6: bake it, then enter the time on its label',
    families: {
      ...{ bga: 'BGA', lga: 'LGA', pqfp: 'PQFP', mqfp: 'MQFP', qfp: 'QFP', tqfp: 'TQFP', lqfp: 'LQFP' },
      ...{ plcc: 'PLCC', qfn: 'QFN', sop: 'SOP', tsop: 'TSOP', soic: 'SOIC', sot: 'SOT', chip: 'Chip' },
      other: 'None of these',
    } as Readonly<Record<PackageFamily, string>>,
    sources: {
      own: 'the plant’s own copy',
      copy: 'compared with a published copy',
      memory: 'from memory, not compared',
    } as Readonly<Record<ValueSource, string>>,
    restsOn: (f: { classes: readonly string[]; celsius: number; humidity: number; edition: string }) =>
      `${f.classes.length === 1 ? `Class ${f.classes[0]}` : `Class ${[...f.classes].sort().join(' or ')} (the shorter counts)`} · ${f.celsius} °C, ${f.humidity} % · ${f.edition}`,
    classOpen:
      'The package is not fully known, so the worst class counts. An engineer can enter it under Plant, Parts.',
    labelHours: 'Time on its label, hours',
    labelHoursHelp: 'Level 6: the floor life printed on the bag, counted from the end of the bake.',
    badLabelHours: 'Enter the label’s hours: 1 to 9999.',
    hotSoFar: (hours: string, most: string) =>
      `Baked ${hours} h above 90 °C so far. The limit is ${most} h in all.`,
    hotLimit: 'this limit is from memory',
    bakeAdvice: (f: { options: string; source: string }) => `The table asks for ${f.options} (${f.source}).`,
    bakeOption: (hours: string, celsius: number) => `${hours} h at ${celsius} °C`,
    or: 'or',
    bakeLarge:
      'The 96 h row at 125 °C is for large BGA and stacked dies; it counts while the package is not known.',
    dry: 'in dry storage',
    open: 'Bag / oven',
    title: (reel: string) => `Floor life of ${reel}`,
    where: 'Where is it?',
    airs: { floor: 'Open on the floor', dry: 'Cabinet or sealed bag', bake: 'In the oven' },
    hours: 'How many hours ago?',
    hoursHelp: '0 = now. If it was earlier: the hours since then.',
    humidity: 'Relative humidity there',
    humidities: { 5: '5 % or less', 10: '10 % or less' } as Readonly<Record<number, string>>,
    celsius: 'Oven, degrees Celsius',
    celsiusHelp: 'Many tapes and reels take 40 °C at most: check the bag’s label.',
    bakeCaution: 'Hot: wear gloves at the oven. The bag’s label and your local rules come first.',
    resetHelp:
      'Enter it here when the reel is out again. A bake shorter than the table asks for its body and level does not restore floor life: a lead must then decide.',
    badHours: 'Enter 0 to 9999 hours.',
    badCelsius: 'Enter 30 to 150 °C.',
    climate: (f: LineClimate) =>
      f.reckoned !== f.entered
        ? `The floor’s ${f.entered.celsius} °C and ${f.entered.humidity} % are outside the table. Its worst row counts: ${f.reckoned.celsius} °C and ${f.reckoned.humidity} %. Ask the process engineer.`
        : f.isEntered
          ? `For a floor up to ${f.entered.celsius} °C and ${f.entered.humidity} % humidity, from the line rules.`
          : `For a floor up to ${f.entered.celsius} °C and ${f.entered.humidity} % humidity: nobody entered the line’s own.`,
    yes: 'Save',
    written: (reel: string) => `${reel}: saved.`,
    ends: (slot: string, life: string, out: string) =>
      `${slot}: floor life ends ${life}, the reel would last until ${out}.`,
    isOver: (slot: string, life: string) => `${slot}: floor life is over since ${life}.`,
    endsAct: 'Put on another reel by then. Dry or bake this one by your rules.',
    overAct: 'Stop using it. A lead decides about the parts placed since.',
    toBake: (reels: string) => `floor life over, bake first: ${reels}`,
  },
  es: {
    level: (msl) => `MSL ${msl}`,
    left: (span) => `${span} de vida en planta`,
    leftUntil: (span, clock) => `${span} de vida en planta, hasta ${clock}`,
    unopened: (span) => `sin abrir: ${span} de vida en planta`,
    noLimit: 'sin límite en este aire',
    over: 'vida en planta agotada',
    overSince: (clock) => `vida en planta agotada desde ${clock}`,
    baking: 'en el horno',
    bakeShort: 'horneada menos de lo que dice la tabla',
    hotOver: (hours) => `${hours} h por encima de 90 °C en total`,
    labelTime: 'nivel 6: hornéela y ponga el tiempo de su etiqueta',
    families: {
      ...{ bga: 'BGA', lga: 'LGA', pqfp: 'PQFP', mqfp: 'MQFP', qfp: 'QFP', tqfp: 'TQFP', lqfp: 'LQFP' },
      ...{ plcc: 'PLCC', qfn: 'QFN', sop: 'SOP', tsop: 'TSOP', soic: 'SOIC', sot: 'SOT', chip: 'Chip' },
      other: 'Ninguno de estos',
    },
    sources: {
      own: 'la copia propia de la planta',
      copy: 'comparado con una copia publicada',
      memory: 'de memoria, sin comparar',
    },
    restsOn: (f) =>
      `${f.classes.length === 1 ? `Clase ${f.classes[0]}` : `Clase ${[...f.classes].sort().join(' o ')} (cuenta la más corta)`} · ${f.celsius} °C, ${f.humidity} % · ${f.edition}`,
    classOpen:
      'El encapsulado no se conoce del todo; cuenta la peor clase. Un ingeniero puede ponerlo en Planta, Componentes.',
    labelHours: 'Tiempo en su etiqueta, horas',
    labelHoursHelp: 'Nivel 6: la vida en planta impresa en la bolsa, desde el final del horneado.',
    badLabelHours: 'Ponga las horas de la etiqueta: de 1 a 9999.',
    hotSoFar: (hours, most) => `Horneada ${hours} h por encima de 90 °C. El límite es ${most} h en total.`,
    hotLimit: 'este límite es de memoria',
    bakeAdvice: (f) => `La tabla pide ${f.options} (${f.source}).`,
    bakeOption: (hours, celsius) => `${hours} h a ${celsius} °C`,
    or: 'o',
    bakeLarge:
      'La fila de 96 h a 125 °C es para BGA grandes y chips apilados; cuenta mientras no se conozca el encapsulado.',
    dry: 'en almacén seco',
    open: 'Bolsa / horno',
    title: (reel) => `Vida en planta de ${reel}`,
    where: '¿Dónde está?',
    airs: { floor: 'Abierta en planta', dry: 'Armario o bolsa sellada', bake: 'En el horno' },
    hours: '¿Hace cuántas horas?',
    hoursHelp: '0 = ahora. Si fue antes: las horas desde entonces.',
    humidity: 'Humedad relativa allí',
    humidities: { 5: '5 % o menos', 10: '10 % o menos' },
    celsius: 'Horno, grados Celsius',
    celsiusHelp: 'Muchas cintas y bobinas soportan 40 °C como mucho: mire la etiqueta de la bolsa.',
    bakeCaution: 'Quema: use guantes en el horno. La etiqueta de la bolsa y sus reglas locales van primero.',
    resetHelp:
      'Apúntelo aquí cuando salga la bobina. Un horneado más corto que el de la tabla para su cuerpo y nivel no recupera vida en planta: debe decidir un jefe.',
    badHours: 'Ponga de 0 a 9999 horas.',
    badCelsius: 'Ponga de 30 a 150 °C.',
    climate: (f) =>
      f.reckoned !== f.entered
        ? `Los ${f.entered.celsius} °C y ${f.entered.humidity} % de la planta están fuera de la tabla. Cuenta su peor fila: ${f.reckoned.celsius} °C y ${f.reckoned.humidity} %. Pregunte al ingeniero de proceso.`
        : f.isEntered
          ? `Para una planta de hasta ${f.entered.celsius} °C y ${f.entered.humidity} % de humedad, según las reglas de línea.`
          : `Para una planta de hasta ${f.entered.celsius} °C y ${f.entered.humidity} % de humedad: nadie ha puesto los de la línea.`,
    yes: 'Guardar',
    written: (reel) => `${reel}: guardado.`,
    ends: (slot, life, out) => `${slot}: la vida en planta acaba ${life}, la bobina duraría hasta ${out}.`,
    isOver: (slot, life) => `${slot}: vida en planta agotada desde ${life}.`,
    endsAct: 'Ponga otra bobina antes. Seque u hornee esta según sus reglas.',
    overAct: 'Deje de usarla. Un jefe decide sobre lo colocado desde entonces.',
    toBake: (reels) => `vida en planta agotada, hornear antes: ${reels}`,
  },
});
