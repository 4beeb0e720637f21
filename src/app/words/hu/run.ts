import type { words as english } from '../en/run.ts';
import { formatCount, plural, type Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  notRight: (count) => `${count} hely még nem jó: lásd Felrakás.`,
  startTitle: 'Gyártás indítása',
  panelSecondsHelp: 'Addig számít, amíg a sor saját üteme meg nincs mérve.',
  panelPrefix: 'A panelkódok eleje',
  panelPrefixHelp: 'Hagyja üresen, ha a paneleken nincs kód. Akkor érintéssel számol.',
  wrongNumber: 'Írjon be nullánál nagyobb számot.',
  startAnyway: 'Indítás üres helyekkel',
  stopTitle: 'Miért áll a sor?',
  endTitle: 'Befejezi ezt a gyártást?',
  endText: (done, wanted) =>
    `${done} / ${formatCount(wanted)} panel van megszámolva. A tekercsek a helyükön maradnak.`,
  plusManyTitle: 'Hány panellel több?',
  skippedTitle: 'A következő panel melyik lapjai maradnak ki?',
  skippedHelp: 'Érintsen meg minden rossznak jelölt lapot. A következő számolás magával viszi.',
  skippedUse: (count) => (count === 0 ? 'Nincs kihagyott lap' : `${count} lap kihagyása`),
  skippedManyTitle: (panels) =>
    panels === 1
      ? 'Kihagyott lapok ezen a panelen?'
      : `Kihagyott lapok ezen a ${formatCount(panels)} panelen?`,
  skippedMost: (boards) => plural(boards, 'Csak 1 lap van.', `Csak ${boards} lap van. Adjon meg kevesebbet.`),
  skippedNotKnown: 'Nem ismert',
  scrapTitle: 'Hány panel selejt?',
  scrapHelp: 'Számolva maradnak: az alkatrészeik elfogytak. Ugyanennyivel többet kell gyártani.',
  scrapMost: (panels) =>
    plural(
      panels,
      'Csak 1 jó panel van megszámolva.',
      `Csak ${panels} jó panel van megszámolva. Adjon meg kevesebbet.`,
    ),
  setRightTitle: 'Hány panel van kész?',
  setRightHelp: 'A gyártás ezt a számot kapja. A számolás innen megy tovább.',
  setRightWhy: 'Miért más a szám?',
  setRightYes: (panels) => `Legyen ${panels}`,
  setRightMissing: 'Adjon meg másik számot, és hogy miért.',
  stoodSince: 'Leállás kezdete',
  stoodLast: (clock, span) => `${clock}, az utolsó panel, ${span} ezelőtt`,
  stoodNow: (clock) => `most, ${clock}`,
};
