import type { words as english } from '../en/run.ts';
import { byNumber, formatCount, plural, type Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  notRight: (count) =>
    byNumber(count, {
      one: `${count} slot nie jest jeszcze w porządku: zobacz Załaduj.`,
      few: `${count} sloty nie są jeszcze w porządku: zobacz Załaduj.`,
      other: `${count} slotów nie jest jeszcze w porządku: zobacz Załaduj.`,
    }),
  startTitle: 'Zacznij serię',
  panelSecondsHelp: 'Używane, dopóki tempo linii nie jest zmierzone.',
  panelPrefix: 'Kody paneli zaczynają się od',
  panelPrefixHelp: 'Zostaw puste, jeśli panele nie mają kodu. Wtedy licz dotknięciem.',
  wrongNumber: 'Podaj liczbę większą od zera.',
  startAnyway: 'Zacznij z pustymi slotami',
  stopTitle: 'Dlaczego linia stoi?',
  endTitle: 'Zakończyć tę serię?',
  endText: (done, wanted) =>
    `Policzono ${done} z ${plural(wanted, `${formatCount(wanted)} panelu`, `${formatCount(wanted)} paneli`)}. Rolki zostają na slotach.`,
  plusManyTitle: 'Ile paneli więcej?',
  skippedTitle: 'Które płytki następnego panelu pominąć?',
  skippedHelp: 'Dotknij każdej płytki oznaczonej jako zła. Następne liczenie to uwzględni.',
  skippedUse: (count) =>
    count === 0
      ? 'Nie pomijaj płytek'
      : byNumber(count, {
          one: `Pomiń ${count} płytkę`,
          few: `Pomiń ${count} płytki`,
          other: `Pomiń ${count} płytek`,
        }),
  skippedManyTitle: (panels) =>
    byNumber(panels, {
      one: 'Płytki pominięte na tym panelu?',
      few: `Płytki pominięte na tych ${formatCount(panels)} panelach?`,
      other: `Płytki pominięte na tych ${formatCount(panels)} panelach?`,
    }),
  skippedMost: (boards) =>
    byNumber(boards, {
      one: `Jest tylko ${boards} płytka.`,
      few: `Są tylko ${boards} płytki. Podaj mniej.`,
      other: `Jest tylko ${boards} płytek. Podaj mniej.`,
    }),
  skippedNotKnown: 'Nie wiadomo',
  scrapTitle: 'Ile paneli złomować?',
  scrapHelp: 'Pozostają policzone: ich komponenty są zużyte. Tyle samo trzeba zbudować dodatkowo.',
  scrapMost: (panels) =>
    byNumber(panels, {
      one: `Policzono tylko ${panels} dobry panel.`,
      few: `Policzono tylko ${panels} dobre panele. Podaj mniej.`,
      other: `Policzono tylko ${panels} dobrych paneli. Podaj mniej.`,
    }),
  setRightTitle: 'Ile paneli jest gotowych?',
  setRightHelp: 'Seria ma wtedy tę liczbę. Kto liczy, liczy dalej od niej.',
  setRightWhy: 'Dlaczego to inna liczba?',
  setRightYes: (panels) => `Ustaw ${panels}`,
  setRightMissing: 'Podaj inną liczbę i powód.',
  stoodSince: 'Stoi od',
  stoodLast: (clock, span) => `${clock}, ostatni panel, ${span} temu`,
  stoodNow: (clock) => `teraz, ${clock}`,
};
