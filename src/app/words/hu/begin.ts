import type { words as english } from '../en/begin.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  about:
    'Az üres tablettől az első jó tekercsig. Bármelyik lépésnél abbahagyhatja; itt vagy másik tableten folytathatja.',
  language: 'A tablet nyelve',
  done: 'kész',
  steps: {
    plant: {
      title: 'Az üzem',
      text: 'Neve és időzónája. A nyomatokon és az exportokon rajta a név.',
      act: 'Üzem elnevezése',
    },
    engineer: {
      title: 'Első mérnök',
      text: 'Név, kártya és PIN-kód. A mérnök veszi fel a többieket.',
      act: 'Mérnök felvétele',
    },
    line: {
      title: 'A sor',
      text: 'A gépei és bankjai; a helyek úgy, ahogy a gépeken állnak.',
      act: 'Sor leírása',
    },
    people: {
      title: 'Személyek és kártyák',
      text: 'Operátorok és műszakvezetők. A kártyák itt kinyomtathatók.',
      act: 'Személyek felvétele',
    },
    product: {
      title: 'Első termék',
      text: 'Setuplista, vagy a lap beültetési fájlja és anyagjegyzéke.',
      act: 'Termék importálása',
    },
    labels: {
      title: 'Helyek címkéi',
      text: 'Minden hely beolvasható kódot kap. A feederek és kocsik címkéi is ott nyomtathatók.',
      act: 'Címkék nyomtatása',
    },
    scanner: {
      title: 'Az olvasó',
      text: 'Egy próba megmutatja, jól érti-e ez a tablet.',
      act: 'Olvasó próbája',
    },
    label: {
      title: 'Egy nyomtatott címke',
      text: 'Olvassa be egy hely címkéjét: annak a helynek kell lennie.',
      act: 'Címke próbája',
    },
    practice: {
      title: 'Az első felrakás, gyakorlásul',
      text: 'A sor másolatán. Ott semmi sem számít.',
      act: 'Gyakorlás indítása',
    },
    load: {
      title: 'Az első tekercs',
      text: 'Olvassa be a helyet, a feedert és a tekercset. A tablet megmondja, összetartoznak-e.',
      act: 'Sor felrakása',
    },
  },
  fromFile: 'Kezdés egy másik üzem fájljával',
  badges: 'Kártyák nyomtatása',
  more: 'Megnyitás',
  openOf: (step) => `Megnyitás: ${step}`,
};
