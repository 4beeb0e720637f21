import type { words as english } from '../en/passkeys.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  open: (count) => `${count} azonosítókulcs`,
  openOf: (shown, name) => `${name}: ${shown}`,
  title: (name) => `${name} azonosítókulcsai`,
  help: 'Az azonosítókulcs igazolja, ki döntött: a tablet saját képernyőzára, vagy egy hozzá érintett kulcs. Nélküle a PIN-kód dönt.',
  none: 'Még nincs azonosítókulcs.',
  where: {
    unsafe:
      'Az azonosítókulcshoz biztonságos oldal kell. Nyissa meg az alkalmazást a https címén. Itt a PIN-kód dönt.',
    'by-number':
      'Az azonosítókulcshoz az alkalmazás névvel írt címe kell, nem számokkal írt. Itt a PIN-kód dönt.',
    none: 'Ez a böngésző nem kezel azonosítókulcsot. Itt a PIN-kód dönt.',
  },
  who: (name) => `Ezt csak ${name} vagy egy mérnök teheti. Olvassa be a kártyát, majd írja be a PIN-kódot.`,
  notThem: (name) => `Csak ${name} vagy egy mérnök.`,
  add: 'Azonosítókulcs felvétele',
  name: 'Mi a neve?',
  nameHelp: 'Például „kék kulcs” vagy „tablet a sor elején”.',
  nameMissing: 'Írjon be egy nevet.',
  make: 'Létrehozás most',
  made: (name) => `Azonosítókulcs felvéve: „${name}”.`,
  notMade:
    'Nem készült azonosítókulcs. Érintse a kulcsot a tablethez, vagy oldja fel a tabletet, és próbálja újra.',
  remove: 'Törlés',
  removeOf: (name) => `Azonosítókulcs törlése: ${name}`,
  removed: (name) => `Azonosítókulcs törölve: „${name}”.`,
  addedBy: (name, host) => `felvette: ${name}, az oldal címe: ${host}`,
  fell: 'A számlálója visszaesett: lehet, hogy lemásolták. Törölje, és hozzon létre másikat.',
  unproven:
    'Semmi nem igazolja, ki vette fel. Addig semmit nem igazol, amíg egy műszakvezető ezt meg nem erősíti a Napló alatt.',
  signed: 'Aláírva',
  byPasskey: (name) => `${name} azonosítókulcsa igazolja`,
  pinOnly: 'csak PIN-kód, a tablet szerint',
  refused: 'Az azonosítókulcs nem igazolja: mást írt alá, vagy nem ezé a személyé.',
  checking: 'Ellenőrzés…',
};
