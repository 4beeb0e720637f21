// What is said of the reasons that come from the plant's own lists: types of feeders, makers of a product, ages, the store.

import type { PlantReasons } from '../reason-words.ts';

export const plantReasonsHu: PlantReasons = {
  'feeder-unknown': {
    title: 'Ismeretlen feeder',
    say: (f) => `Feeder ${f['feeder']} nincs az üzem listáján, ezért a szélessége nem ellenőrizhető.`,
    act: 'Műszakvezetőnek kell döntenie.',
  },
  'feeder-type': {
    title: 'Rossz feedertípus',
    say: (f) => `Feeder ${f['feeder']} típusa ${f['found']}; ez a hely ezt kéri: ${f['wanted']}.`,
    act: 'Hozzon ilyen típusú feedert.',
  },
  'feeder-drive': {
    title: 'Rossz hajtás',
    say: (f) => `Feeder ${f['feeder']} hajtása ${f['found']}; ez a hely ezt kéri: ${f['wanted']}.`,
    act: 'Hozzon megfelelő hajtású feedert.',
  },
  'feeder-height': {
    title: 'A zsebek túl mélyek a feederhez',
    say: (f) =>
      `A szalag zsebei ${f['wanted']} mm mélyek; feeder ${f['feeder']} ennyit enged át: ${f['found']} mm.`,
    act: 'Hozzon mélyebb zsebekhez való feedert.',
  },
  'maker-not-listed': {
    title: 'A gyártó nincs e termék listáján',
    say: (f) =>
      `${f['supplierPart']} ezen a terméken nincs jóváhagyva ehhez: ${f['part']}.${f['listed'] ? ` Jóváhagyva: ${f['listed']}.` : ''}${f['approvedFor'] ? ` Itt van jóváhagyva: ${f['approvedFor']}.` : ''}`,
    act: 'Hozzon tekercset egy listán lévő gyártótól, vagy döntsön műszakvezető.',
  },
  'date-code-old': {
    title: 'A dátumkódja szerint túl régi',
    say: (f) => `Gyártva: ${f['made']}. A sor korhatára erre az alkatrészre lejárt: ${f['last']}.`,
    act: 'Műszakvezetőnek kell döntenie.',
  },
  'date-code-unknown': {
    title: 'A kora nem ismert',
    say: (f) =>
      f['dateCode']
        ? `A dátumkód (${f['dateCode']}) nem olvasható biztosan. A sor korlátozza ennek az alkatrésznek a korát.`
        : 'A címkén nincs dátumkód. A sor korlátozza ennek az alkatrésznek a korát.',
    act: 'Műszakvezetőnek kell döntenie.',
  },
  'older-in-store': {
    title: 'Régebbi tekercs van a raktárban',
    say: (f) =>
      f['by'] === 'expires'
        ? `Tekercs ${f['reel']} (${f['place']}) ennél előbb jár le: ${f['expires']}.`
        : `Tekercs ${f['reel']} (${f['place']}) dátumkódja ${f['dateCode']}, régebbi ennél.`,
    act: '',
  },
};
