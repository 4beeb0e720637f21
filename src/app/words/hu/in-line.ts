import type { words as english } from '../en/in-line.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  title: 'Panelek a sorban',
  help: 'Tekercsváltáskor ezek a panelek kétesek. Adja meg, legfeljebb mennyi lehet valaha, a gép előtt várakozó panelt is beleértve. Ahol senki nem adott meg semmit, ott becslés áll.',
  behind: (machine) => `${machine}: itt kész, még nem számolt panelek, legfeljebb`,
  before: (machine) => `${machine}: már számolt, még ide nem ért panelek, legfeljebb`,
  missed: 'Számolatlanul áthaladó panelek, legfeljebb',
  guess: (most) => `Nincs megadva: legfeljebb ${most} a feltételezés (általános gyakorlat).`,
  seen: (panels, most) => `${panels} panel lett mindkét helyen beolvasva: legfeljebb ${most} volt köztük.`,
  takeSeen: 'A látottak átvétele',
  takeHelp:
    'A látott érték nem határ: adjon meg többet, ahol több is lehet. Amit a beolvasások ezen túl mutatnak, magától bővíti.',
  scansHere: 'Ezen a tableten beolvasott panelek',
  count: 'Számolva vannak',
  goInto: (machine) => `Ide mennek: ${machine}`,
  scansHelp:
    'Olvasson be néhány panelt egy gép előtt, majd ott is, ahol számolják őket: így tanulja meg a sor, mennyi van köztük.',
  save: 'Sorban lévő panelek mentése',
  saved: 'Mentve. A nyomkövetés mostantól ezzel számol.',
  wrong: 'Egész számokat írjon be 0 és 500 között, és 50 % alatti arányt.',
  exitOpen: 'Kimeneti képernyő megnyitása',
  exitTitle: 'Elkészült panelek',
  exitHelp: 'Olvasson be minden panelt, amikor elhagyja a sort.',
  exitCounted: 'Megszámolva:',
  exitBefore: 'Már beolvasva, nem számít újra:',
  exitOther: 'Nem panel, nem számít:',
  exitNoRun: 'Ezen a soron nincs futás. Előbb indítsa el.',
  exitLost: 'Ez az oldal elvesztette a billentyűzetet. Beolvasás előtt érintse meg itt.',
  exitLeave: 'Kilépés ebből a képernyőből',
};
