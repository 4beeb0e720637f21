import type { words as english } from '../en/guide.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  title: 'Vezetett gyakorlás',
  about: 'Egyszerre egy lépés. Bármikor félbehagyható: ugyanannál a lépésnél folytatódik.',
  guides: {
    operator: 'Három tekercs, az egyik rossz. Egy toldás. Egy figyelmeztetés.',
    lead: 'Döntés egy visszatartott tekercsről. Egy exportálás.',
    engineer: 'Egy setup importálása.',
  },
  start: 'Vezető indítása',
  goOn: (at, of) => `Folytatás: ${at}. lépés, összesen ${of}`,
  again: 'Újrakezdés az 1. lépésnél',
  step: (at, of) => `${at}. lépés, összesen ${of}`,
  leave: 'Vezető elhagyása',
  go: 'Hol van?',
  skip: 'Lépés kihagyása',
  still: 'Ez valami más volt. A lépés még nyitva van.',
  over: 'Minden lépés kész. Gyakoroljon tovább, vagy fejezze be.',
  noLead: 'Ennek az üzemnek még nincs műszakvezetője. Előbb vegyen fel egyet.',
  example: 'Példalista használata',
  steps: {
    first: {
      ask: 'Érintsen meg egy helycímkét, aztán a jó tekercset.',
      seen: (slot) => `${slot} hely: elfogadva.`,
    },
    wrong: {
      ask: (group) => `Érintsen meg egy helycímkét, aztán egy rossz tekercset. Lásd: „${group}”.`,
      seen: (slot) => `${slot} hely: elutasítva. Ez a tekercs nem kerülhet oda.`,
    },
    second: {
      ask: 'Érintsen meg még egy helyet, aztán a jó tekercset.',
      seen: (slot) => `${slot} hely: elfogadva.`,
    },
    splice: {
      ask: (group) => `Toldás: „${group}” alatt érintsen meg egy helyet, aztán a tekercsét.`,
      seen: (slot) => `${slot} hely: toldva.`,
    },
    run: {
      ask: 'Indítsa el a gyártást a soron.',
      seen: 'A gyártás elindult.',
    },
    warning: {
      ask: 'Számoljon paneleket a soron, amíg egy hely figyelmeztet.',
      seen: (slot) => `${slot} hely: figyelmeztetés.`,
    },
    answer: {
      ask: (act) => `Koppintson a figyelmeztetés mellett erre: „${act}”, vagy toldja azt a helyet.`,
      seen: 'A figyelmeztetésre van válasz.',
    },
    hold: {
      ask: 'Érintsen meg egy helycímkét, aztán a mennyiség nélküli tekercset.',
      seen: (slot) => `${slot} hely: visszatartva. Műszakvezető dönt.`,
    },
    clear: {
      ask: 'Döntsön műszakvezetőként: kártya, PIN-kód, ok.',
      seen: 'Eldöntve, az Ön nevével a naplóban.',
    },
    export: {
      ask: (act) => `A naplóban koppintson: „${act}”, aztán CSV. Gyakorláskor nem mentődik fájl.`,
      seen: 'Exportálás kérve. Nem mentődött fájl.',
    },
    open: {
      ask: (page) => `Nyissa meg: „${page}”.`,
      seen: (page) => `Nyitva: „${page}”.`,
    },
    take: {
      ask: (example, act) => `Koppintson: „${example}”. Nézze meg, mi változik, aztán: „${act}”.`,
      seen: (product) => `${product}: importálva.`,
    },
    look: {
      ask: (page) => `Keresse meg itt: „${page}”.`,
      seen: 'A listában van.',
    },
  },
};
