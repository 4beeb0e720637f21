import type { words as english } from '../en/walks.ts';
import { formatCount, type Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  walksTitle: 'Utak',
  walkSplices: (count) => (count === 1 ? '1 toldás' : `${count} toldás, egy út`),
  walkMore: (count) => `később még ${count} út`,
  crew: 'Személyek ezen a soron',
  missTitle: 'Időben nem lehetséges',
  miss: {
    windowTooShort: (moment) => `toldás eddig: ${moment}. Túl kevés rá az idő`,
    closesTooSoon: (moment) => `toldás eddig: ${moment}. Senki nem ér oda időben`,
    crowdedOut: (moment) => `toldás eddig: ${moment}. Mindenki más toldással van elfoglalva`,
  },
  remedies: {
    cutEarly: (parts, moment) =>
      `A régi szalag korábbi levágása, ekkor: ${moment}. Kb. ${formatCount(parts)} alkatrész vész el`,
    secondPerson: (moment) => `Egy második személy megy, eddig: ${moment}`,
    secondSlot: (moment) => `Az alkatrész felrakása egy második helyre, eddig: ${moment}`,
  },
  orRemedy: (remedy) => `vagy: ${remedy}`,
  missMore: (count) => `később még ${count}`,
  noRemedy: 'A sor le fog állni. Készítse oda a következő tekercset.',
};
