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
  hotOver: (hours) => `${hours} h por encima de 90 °C en total`,
  labelTime: 'nivel 6: hornéela y ponga el tiempo de su etiqueta',
  families: {
    bga: 'BGA',
    lga: 'LGA',
    pqfp: 'PQFP',
    mqfp: 'MQFP',
    qfp: 'QFP',
    tqfp: 'TQFP',
    lqfp: 'LQFP',
    plcc: 'PLCC',
    qfn: 'QFN',
    sop: 'SOP',
    tsop: 'TSOP',
    soic: 'SOIC',
    sot: 'SOT',
    chip: 'Chip',
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
  ovenAir: 'Humedad relativa en el horno',
  ovenAirs: { dry: '5 % o menos', moist: 'Más, o nadie lo sabe' },
  ovenAirHelp:
    'Por debajo de 125 °C la tabla vale solo con aire seco. Con otro aire, un jefe de turno debe aceptar el horneado.',
  ovenAirMissing: 'Elija cómo de seco está el horno',
  celsius: 'Horno, grados Celsius',
  celsiusHelp: 'Muchas cintas y bobinas soportan 40 °C como mucho: mire la etiqueta de la bolsa.',
  bakeCaution: 'Quema: use guantes en el horno. La etiqueta de la bolsa y sus reglas locales van primero.',
  resetHelp:
    'Apúntelo aquí cuando salga la bobina. Un horneado más corto que el de la tabla para su cuerpo y nivel no recupera vida en planta: debe decidir un jefe de turno.',
  badHours: 'Ponga de 0 a 9999 horas.',
  badCelsius: 'Ponga de 30 a 150 °C.',
  climate: (f) =>
    f.computed !== f.entered
      ? `Los ${f.entered.celsius} °C y ${f.entered.humidity} % de la planta están fuera de la tabla. Cuenta su peor fila: ${f.computed.celsius} °C y ${f.computed.humidity} %. Pregunte al ingeniero de proceso.`
      : f.isEntered
        ? `Para una planta de hasta ${f.entered.celsius} °C y ${f.entered.humidity} % de humedad, según las reglas de línea.`
        : `Para una planta de hasta ${f.entered.celsius} °C y ${f.entered.humidity} % de humedad: nadie ha puesto los de la línea.`,
  yes: 'Guardar',
  written: (reel) => `${reel}: guardado.`,
  ends: (slot, life, out) => `${slot}: la vida en planta acaba ${life}, la bobina duraría hasta ${out}.`,
  isOver: (slot, life) => `${slot}: vida en planta agotada desde ${life}.`,
  endsAct: 'Ponga otra bobina antes. Seque u hornee esta según sus reglas.',
  overAct: 'Deje de usarla. Un jefe de turno decide sobre lo colocado desde entonces.',
  toBake: (reels) => `vida en planta agotada, hornear antes: ${reels}`,
};
