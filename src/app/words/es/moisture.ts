import type { words as english } from '../en/moisture.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
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
};
