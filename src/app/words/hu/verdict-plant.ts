// What is said of the reasons that come from the plant's own lists: types of feeders, makers of a product, ages, the store.

import type { PlantReasons, ReasonFacts } from '../reason-words.ts';

/** What was measured, what is wanted, and what the guard band leaves. */
const measured = (f: ReasonFacts) =>
  `Mért: ${f['quantity']} ± ${f['uncertainty']} ${f['unit']}. Elvárt: ${f['nominal']} ${f['unit']}, ${f['least']} – ${f['most']}. A ${f['guard']} védősávval: ${f['from']} – ${f['to']}.`;

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
  'value-outside': {
    title: 'Hibás érték',
    say: measured,
    act: 'Ne rakja fel. Tegye félre a tekercset, és olvasson be másikat.',
  },
  'value-unsure': {
    title: 'Az érték nem egyértelmű',
    say: (f) => `${measured(f)} Túl közel van a határhoz ehhez a műszerhez.`,
    act: 'Az újraméréshez olvassa be újra a tekercset, vagy döntsön műszakvezető.',
  },
  'value-unmeasured': {
    title: 'Az érték nincs megmérve',
    say: (f) => `A sor kéri, hogy adagolás előtt mérjenek meg egy alkatrészt: ${f['part']}.`,
    act: 'A méréshez olvassa be újra a tekercset, vagy döntsön műszakvezető.',
  },
  'value-unknown': {
    title: 'Nincs ellenőrizhető érték',
    say: (f) =>
      f['lack'] === 'tolerance'
        ? `Az alkatrészlista tűrés nélkül ad értéket ehhez: ${f['part']}.`
        : `Az alkatrészlista nem ad értéket ehhez: ${f['part']}.`,
    act: 'Műszakvezetőnek kell döntenie. Írja be az értéket az Alkatrészeknél.',
  },
  'value-within': { title: 'Érték ellenőrizve', say: measured, act: '' },
  'feeder-care': {
    title: 'A feeder karbantartása esedékes',
    say: (f) =>
      `Feeder ${f['feeder']}: kb. ${f['placed']} alkatrész beültetve, az üzem szerint karbantartás ennyi után: ${f['after']}. Kivétel után adja karbantartásra.`,
    act: '',
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
