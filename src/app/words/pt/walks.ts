import type { words as english } from '../en/walks.ts';
import { formatCount, plural, type Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  walksTitle: 'Rondas',
  walkSplices: (count) => plural(count, `${count} emenda`, `${count} emendas, uma ronda`),
  walkMore: (count) => plural(count, `mais ${count} ronda depois`, `mais ${count} rondas depois`),
  crew: 'Pessoas nesta linha',
  missTitle: 'Não dá tempo',
  miss: {
    windowTooShort: (moment) => `emende até ${moment}: o tempo é curto demais para isso`,
    closesTooSoon: (moment) => `emende até ${moment}: ninguém chega a tempo`,
    crowdedOut: (moment) => `emende até ${moment}: todos estão ocupados com outras emendas`,
  },
  remedies: {
    cutEarly: (parts, moment) =>
      `Corte a fita antiga antes, às ${moment}: ${plural(parts, `perde-se cerca de ${formatCount(parts)} peça`, `perdem-se cerca de ${formatCount(parts)} peças`)}`,
    secondPerson: (moment) => `Uma segunda pessoa vai até ${moment}`,
    secondSlot: (moment) => `Carregue o componente num segundo slot até ${moment}`,
  },
  orRemedy: (remedy) => `ou: ${remedy}`,
  missMore: (count) => `mais ${count} depois`,
  noRemedy: 'A linha vai parar. Tenha o próximo rolo pronto.',
};
