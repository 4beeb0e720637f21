import type { LineClimate } from '../../../shared/moisture/line-climate.ts';
import { area } from './words.ts';

/** One bake as its sentence takes it; null: nobody told, or the table gives none. */
interface BakeFacts {
  readonly hours: string;
  readonly celsius: string | null;
  readonly wanted: string | null;
}

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
    bakeLet: (name: string) => `short bake counts: ${name}`,
    letBake: 'Let the bake count',
    letBakeTitle: (reel: string) => `Does the bake of ${reel} count?`,
    letBakeWhat: (f: BakeFacts) =>
      `Baked ${f.hours} h${f.celsius === null ? '' : ` at ${f.celsius} °C`}. ${f.wanted === null ? 'The table has no row for that.' : `The table asks for ${f.wanted} h.`}`,
    letBakeHelp:
      'If it counts, floor life starts again at its end, and this bake holds the reel no more. It counts once: another short bake is held again.',
    letBakeWhy: 'Why does it count?',
    letBakeDone: (reel: string) => `${reel}: the bake counts.`,
    letBakeFor: 'The bake',
    letBakeOnce: 'Only this time',
    letBakeAlways: 'It counts from now on',
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
    bakeLet: (name) => `horneado corto admitido: ${name}`,
    letBake: 'Dar por bueno el horneado',
    letBakeTitle: (reel) => `¿Vale el horneado de ${reel}?`,
    letBakeWhat: (f) =>
      `Horneada ${f.hours} h${f.celsius === null ? '' : ` a ${f.celsius} °C`}. ${f.wanted === null ? 'La tabla no tiene fila para eso.' : `La tabla pide ${f.wanted} h.`}`,
    letBakeHelp:
      'Si vale, la vida en planta empieza de nuevo al acabar, y este horneado ya no retiene la bobina. Vale una vez: otro horneado corto se retiene de nuevo.',
    letBakeWhy: '¿Por qué vale?',
    letBakeDone: (reel) => `${reel}: el horneado vale.`,
    letBakeFor: 'El horneado',
    letBakeOnce: 'Solo esta vez',
    letBakeAlways: 'Vale desde ahora',
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
