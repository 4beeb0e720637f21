import type { words as english } from '../en/open-work.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  said: {
    misfit: () => 'A setup nem fér el ezen a soron',
    move: (count) => `${count} feedermozgatás van hátra`,
    'slot-empty': (count) => `${count} hely a tekercse nélkül`,
    'slot-other': (count) => `${count} helyen másik alkatrész van`,
    'slot-held': (count) => `${count} tekercs műszakvezetőre vár`,
    'measured-wrong': (count) => `${count} alkatrész mérése rossz`,
    'looked-wrong': (count) => `${count} alkatrész rossznak látszik`,
    'cannot-tell': (count) => `${count} alkatrész túl közel a határhoz a műszernek`,
    unchecked: (count) => `${count} alkatrész még nincs ellenőrizve`,
    step: (count) => `${count} lépés az ellenőrzőlistán`,
    'no-checklist': () => 'Az ellenőrzőlista sosem lett megnyitva',
  },
  on: (part, slot) => `${slot}: ${part}`,
  reelOn: (reel, slot) => `${slot}: tekercs ${reel}`,
  reel: (reel) => `tekercs ${reel}`,
  more: (count) => `és még ${count}`,
  isWrong: 'Rossz',
  isOpen: 'Még nyitott',
  nothing: 'Nincs nyitott teendő.',
};
