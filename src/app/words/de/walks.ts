import type { words as english } from '../en/walks.ts';
import { formatCount, plural, type Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  walksTitle: 'Gänge',
  walkSplices: (count) => plural(count, '1 Spleiß', `${count} Spleiße, ein Gang`),
  walkMore: (count) => plural(count, 'später noch 1 Gang', `später noch ${count} Gänge`),
  crew: 'Personen an dieser Linie',
  missTitle: 'Nicht rechtzeitig möglich',
  miss: {
    windowTooShort: (moment) => `bis ${moment} spleißen: Die Zeit reicht dafür nicht`,
    closesTooSoon: (moment) => `bis ${moment} spleißen: Niemand kann rechtzeitig dort sein`,
    crowdedOut: (moment) => `bis ${moment} spleißen: Alle sind mit anderen Spleißen beschäftigt`,
  },
  remedies: {
    cutEarly: (parts, moment) =>
      `Den alten Gurt früher abschneiden, um ${moment}: ${plural(parts, 'etwa 1 Bauteil geht verloren', `etwa ${formatCount(parts)} Bauteile gehen verloren`)}`,
    secondPerson: (moment) => `Eine zweite Person geht bis ${moment}`,
    secondSlot: (moment) => `Das Bauteil bis ${moment} auf einen zweiten Platz rüsten`,
  },
  orRemedy: (remedy) => `oder: ${remedy}`,
  missMore: (count) => plural(count, 'später noch 1', `später noch ${count}`),
  noRemedy: 'Die Linie wird stehen bleiben. Halten Sie die nächste Rolle bereit.',
};
