import type { words as english } from '../en/practice.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  word: 'GYAKORLÁS',
  tells: 'Itt semmi nem számít. Az igazi sor megy tovább.',
  end: 'Gyakorlás befejezése',
  real: (slot, told) => `Az igazi soron: ${slot} ${told}`,
  title: 'Gyakorlás a sor érintése nélkül',
  about:
    'Megkapja a sor másolatát úgy, ahogy most van. Olvasson be, toldjon, álljon át, hibázzon: semmi nem jut el az igazi sorhoz, a naplójához és a darabszámaihoz. A másolat a gyakorlás befejezésekor törlődik, vagy tizenkét óra múlva.',
  aboutNew:
    'Ennek az üzemnek még nincs sora, ezért egy kicsi, kitalált sort kap. Olvasson be, rakjon fel, toldjon, hibázzon. A gyakorlás befejezésekor törlődik, vagy tizenkét óra múlva.',
  warns: 'Az igazi sor figyelmeztetései továbbra is látszanak.',
  start: 'Gyakorlás indítása',
  taken: 'A gyakorlás a tablet egy másik ablakában nyitva van. Előbb ott fejezze be.',
  notSaved: (name) => `Gyakorlás: nem mentődik fájl. A valódi soron ez lenne: ${name}.`,
  labels: 'Címkék gyakorláshoz',
  labelsHelp: 'Beolvasás helyett érintsen meg egy címkét: a hely, a feedere, ha kell, a tekercse.',
  print: 'Címkék nyomtatása',
  groups: {
    load: 'Felrakni',
    splice: 'Legközelebb toldani',
    wrong: 'Elutasítani vagy visszatartani',
    panels: 'Panelek',
  },
  slot: (slot) => `Hely: ${slot}`,
  wants: (part) => `ezt kéri: ${part}`,
  right: (slot) => `jó tekercs ide: ${slot}`,
  wrong: (slot, asked) => `helye ${slot}; próbálja itt: ${asked}`,
  foreign: (asked) => `egy hely sem kéri; próbálja itt: ${asked}`,
  bare: (slot) => `nincs mennyiség a címkén; ide: ${slot}`,
  free: (slot) => `szabad feeder ide: ${slot}`,
  panel: 'egy panelt számol',
  nothing: 'Előbb válasszon setupot. A címkéi akkor itt látszanak.',
  names: {
    line: 'Gyakorlósor',
    machine: 'első gép',
    bank: 'elöl',
    product: 'Gyakorlólap',
  },
};
