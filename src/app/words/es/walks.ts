import type { words as english } from '../en/walks.ts';
import { formatCount, plural, type Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  walksTitle: 'Rondas',
  walkSplices: (count) => plural(count, '1 empalme', `${count} empalmes, una ronda`),
  walkMore: (count) => plural(count, '1 ronda más después', `${count} rondas más después`),
  crew: 'Personas en esta línea',
  missTitle: 'No da tiempo',
  miss: {
    windowTooShort: (moment) => `empalme antes de las ${moment}: no da tiempo a hacerlo`,
    closesTooSoon: (moment) => `empalme antes de las ${moment}: nadie llega a tiempo`,
    crowdedOut: (moment) => `empalme antes de las ${moment}: todos están con otros empalmes`,
  },
  remedies: {
    cutEarly: (parts, moment) =>
      `Corte antes la cinta vieja, a las ${moment}: ${plural(parts, 'se pierde 1 pieza', `se pierden unas ${formatCount(parts)} piezas`)}`,
    secondPerson: (moment) => `Una segunda persona sale antes de las ${moment}`,
    secondSlot: (moment) => `Cargue el componente en otra posición antes de las ${moment}`,
  },
  orRemedy: (remedy) => `o: ${remedy}`,
  missMore: (count) => plural(count, '1 más después', `${count} más después`),
  noRemedy: 'La línea parará. Tenga lista la bobina siguiente.',
};
