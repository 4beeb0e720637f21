import type { LineClimate } from '../../../shared/moisture/line-climate.ts';
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
    dry: 'in dry storage',
    open: 'Bag / oven',
    title: (reel: string) => `Floor life of ${reel}`,
    where: 'Where is it?',
    airs: { floor: 'Open on the floor', dry: 'Cabinet or sealed bag', bake: 'In the oven' },
    hours: 'Since how many hours?',
    hoursHelp: '0 = from now on. For a bag opened earlier: how long ago.',
    humidity: 'Relative humidity there',
    humidities: { 5: '5 % or less', 10: '10 % or less' } as Readonly<Record<number, string>>,
    celsius: 'Oven, degrees Celsius',
    celsiusHelp: 'Many tapes and reels bear 40 °C only: look at the label of the bag.',
    bakeCaution: 'Hot: gloves at the oven. What the bag’s label and your own rules say comes first.',
    resetHelp:
      'Say when the reel is out again. A bake shorter than the table for its body and level gives no floor life back: the reel is then held for a lead.',
    badHours: 'A number of hours from 0 to 9999, please.',
    badCelsius: 'A temperature from 30 to 150 °C, please.',
    climate: (f: LineClimate) =>
      f.reckoned !== f.entered
        ? `The floor’s ${f.entered.celsius} °C and ${f.entered.humidity} % lie beyond the table: reckoned with its worst, ${f.reckoned.celsius} °C and ${f.reckoned.humidity} %. Ask the process engineer.`
        : f.isEntered
          ? `Reckoned for a floor of up to ${f.entered.celsius} °C and ${f.entered.humidity} % humidity, from the line rules.`
          : `Reckoned for a floor of up to ${f.entered.celsius} °C and ${f.entered.humidity} % humidity, as nobody entered the line’s own.`,
    yes: 'Write it down',
    written: (reel: string) => `${reel}: written down.`,
    ends: (slot: string, life: string, out: string) =>
      `${slot}: floor life ends ${life}, the reel would last until ${out}.`,
    isOver: (slot: string, life: string) => `${slot}: floor life is over since ${life}.`,
    endsAct: 'Put on another reel by then; this one is dried or baked as your rules say.',
    overAct: 'Stop using it; a lead decides about what was placed since.',
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
    dry: 'en almacén seco',
    open: 'Bolsa / horno',
    title: (reel) => `Vida en planta de ${reel}`,
    where: '¿Dónde está?',
    airs: { floor: 'Abierta en planta', dry: 'Armario o bolsa sellada', bake: 'En el horno' },
    hours: '¿Desde hace cuántas horas?',
    hoursHelp: '0 = desde ahora. Si la bolsa se abrió antes: cuánto hace.',
    humidity: 'Humedad relativa allí',
    humidities: { 5: '5 % o menos', 10: '10 % o menos' },
    celsius: 'Horno, grados Celsius',
    celsiusHelp: 'Muchas cintas y bobinas solo soportan 40 °C: mire la etiqueta de la bolsa.',
    bakeCaution:
      'Quema: guantes en el horno. Vale primero lo que digan la etiqueta de la bolsa y sus propias reglas.',
    resetHelp:
      'Diga cuándo sale la bobina. Un horneado más corto que el de la tabla para su cuerpo y nivel no devuelve vida en planta: la bobina queda retenida para un jefe.',
    badHours: 'Un número de horas de 0 a 9999, por favor.',
    badCelsius: 'Una temperatura de 30 a 150 °C, por favor.',
    climate: (f) =>
      f.reckoned !== f.entered
        ? `Los ${f.entered.celsius} °C y ${f.entered.humidity} % de la planta quedan fuera de la tabla: se calcula con lo peor de ella, ${f.reckoned.celsius} °C y ${f.reckoned.humidity} %. Pregunte al ingeniero de proceso.`
        : f.isEntered
          ? `Calculado para una planta de hasta ${f.entered.celsius} °C y ${f.entered.humidity} % de humedad, según las reglas de línea.`
          : `Calculado para una planta de hasta ${f.entered.celsius} °C y ${f.entered.humidity} % de humedad: nadie ha puesto los de la línea.`,
    yes: 'Anotarlo',
    written: (reel) => `${reel}: anotado.`,
    ends: (slot, life, out) => `${slot}: la vida en planta acaba ${life}, la bobina duraría hasta ${out}.`,
    isOver: (slot, life) => `${slot}: vida en planta agotada desde ${life}.`,
    endsAct: 'Ponga otra bobina antes; esta se seca o se hornea según sus reglas.',
    overAct: 'Deje de usarla; un jefe decide sobre lo colocado desde entonces.',
    toBake: (reels) => `vida en planta agotada, hornear antes: ${reels}`,
  },
});
