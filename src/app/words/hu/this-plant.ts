import type { words as english } from '../en/this-plant.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  name: 'Az üzem neve',
  nameHelp: 'A felrakási lapokon, kártyákon és exportokon áll.',
  zoneHelp: 'Az új sorok ezzel kezdenek.',
  nameMissing: 'Írja be az üzem nevét.',
  zoneUnknown: 'Válasszon időzónát a listából.',
  same: 'Semmi nem változott.',
  save: 'Név mentése',
  saved: (name) => `${name} mentve.`,
  fileTitle: 'Fájl egy második üzemhez',
  fileHelp:
    'Sorok, gépek, bankok, szabályok, alkatrészszabályok, ellenőrzőlisták és címkeszabályok vannak benne. Nincsenek benne személyek, tekercsek, setupok és előzmények.',
  noLine: 'Még nincs sor.',
  fileSave: 'Fájl mentése',
  fileSaved: (name) => `${name} mentve.`,
  beginTitle: 'Kezdés egy másik üzem fájljával',
  beginHelp: 'A másik üzemben mentették, ezen az oldalon vagy a „reelward plant” paranccsal.',
  notEmpty: 'Ebben az üzemben már vannak sorok. A fájl csak sorok nélküli üzemhez való.',
  begun: 'A sorok és szabályok itt vannak. Folytassa a következő lépéssel.',
  choose: 'Fájl kiválasztása',
  brings: 'Ezt hozza:',
  bringsOf: (name) => `Innen: ${name}, ezt hozza:`,
  counts: {
    lines: 'Sorok',
    slots: 'Helyek',
    parts: 'Alkatrészszabályok',
    checklists: 'Ellenőrzőlisták',
    labelRules: 'Címkeszabályok',
  },
  begin: 'Fájl használata',
  toSteps: 'Első lépések',
  faults: {
    'not-json': 'Ez nem üzem fájlja. Válassza azt, amelyet a másik üzem mentett.',
    'not-a-plant': 'Ez másfajta fájl. Válassza azt, amelyet a másik üzem mentett.',
    newer: 'Ezt a fájlt újabb verzió írta. Előbb frissítse ezt a tabletet.',
    'no-lines': 'Ebben a fájlban nincs sor. Mentse újra a másik üzemben.',
    kind: (at, what) => `A(z) ${at}. bejegyzés (${what}) nem való ilyen fájlba. Mentse újra a másik üzemben.`,
    payload: (at, what) => `A(z) ${at}. bejegyzés (${what}) sérült. Mentse újra a fájlt a másik üzemben.`,
  },
};
