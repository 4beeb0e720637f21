import type { words as english } from '../en/feeds.ts';
import { byNumber, type Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  kinds: { tape: 'Taśma', 'cut-tape': 'Odcinek taśmy', tray: 'Tacka', tube: 'Tuba', bulk: 'Luzem' },
  acts: { splice: 'Połącz', exchange: 'Wymień', refill: 'Dosyp' },
  label: 'Drukuj etykietę',
  warns: {
    splice: (span, clock) => `kończy się za ${span}, około ${clock}. Przynieś następny odcinek.`,
    exchange: (span, clock) => `kończy się za ${span}, około ${clock}. Potem maszyna stoi aż do wymiany.`,
    refill: (span, clock) => `kończy się za ${span}, około ${clock}. Dosyp wcześniej.`,
  },
  comesNext: { splice: 'Nowa rolka', exchange: 'Zakładane w zamian', refill: 'Dosypywane na wierzch' },
  accepted: {
    exchange: 'To, co tam było, liczy się jako zdjęte. To nie łączenie: maszyna stoi, aż to będzie założone.',
    refill: 'Odtąd możliwe są obie partie, aż podajnik zostanie opróżniony.',
  },
  sayFeeds: {
    tape: '',
    'cut-tape': 'Odcinek taśmy: bez okna łączenia. Kończy się tam, gdzie odcinek.',
    tray: 'Tacka: gdy jest pusta, maszyna stoi aż do wymiany.',
    tube: 'Tuba: gdy jest pusta, maszyna stoi aż do wymiany.',
    bulk: 'Luzem: dosyp, zanim będzie pusto.',
  },
  picks: {
    tape: '',
    'cut-tape': (count) =>
      byNumber(count, { one: `${count} odcinek`, few: `${count} odcinki`, other: `${count} odcinków` }),
    tray: (count) =>
      byNumber(count, {
        one: `${count} stos tacek`,
        few: `${count} stosy tacek`,
        other: `${count} stosów tacek`,
      }),
    tube: (count) =>
      byNumber(count, {
        one: `${count} zestaw tub`,
        few: `${count} zestawy tub`,
        other: `${count} zestawów tub`,
      }),
    bulk: (count) =>
      byNumber(count, {
        one: `${count} opakowanie`,
        few: `${count} opakowania`,
        other: `${count} opakowań`,
      }),
  },
  dueNow: { splice: 'łącz teraz', exchange: 'wymień teraz', refill: 'dosyp teraz' },
  forLane: (lane, part, count) => `Dla ${lane}: ${part}, ${count} na panel.`,
};
