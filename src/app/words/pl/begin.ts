import type { words as english } from '../en/begin.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  about:
    'Od pustego tabletu do pierwszej właściwej rolki. Przerwij na dowolnym kroku; kontynuuj tu lub na innym tablecie.',
  language: 'Język tego tabletu',
  done: 'zrobione',
  steps: {
    plant: {
      title: 'Zakład',
      text: 'Nazwa i strefa czasowa. Wydruki i eksporty noszą nazwę.',
      act: 'Nazwij zakład',
    },
    engineer: {
      title: 'Pierwszy inżynier',
      text: 'Nazwisko, karta i PIN. Inżynier dodaje wszystkich innych.',
      act: 'Dodaj inżyniera',
    },
    line: {
      title: 'Linia',
      text: 'Jej maszyny i banki, ze slotami tak, jak są opisane na maszynach.',
      act: 'Opisz linię',
    },
    people: {
      title: 'Osoby i karty',
      text: 'Operatorzy i liderzy. Karty można tu wydrukować.',
      act: 'Dodaj osoby',
    },
    product: {
      title: 'Pierwszy produkt',
      text: 'Arkusz setupu albo plik współrzędnych i BOM płytki.',
      act: 'Zaimportuj produkt',
    },
    labels: {
      title: 'Etykiety slotów',
      text: 'Każdy slot dostaje kod do skanowania. Tam też drukuje się etykiety podajników i wózków.',
      act: 'Drukuj etykiety',
    },
    scanner: {
      title: 'Skaner',
      text: 'Jeden test pokazuje, czy ten tablet dobrze go odczytuje.',
      act: 'Przetestuj skaner',
    },
    label: {
      title: 'Wydrukowana etykieta',
      text: 'Zeskanuj etykietę slotu: musi zostać odczytana jako ten slot.',
      act: 'Przetestuj etykietę',
    },
    practice: {
      title: 'Pierwsze załadowanie, dla ćwiczenia',
      text: 'Na kopii linii. Tam nic się nie liczy.',
      act: 'Zacznij ćwiczenie',
    },
    load: {
      title: 'Pierwsza rolka',
      text: 'Zeskanuj slot, podajnik i rolkę. Tablet powie, czy do siebie pasują.',
      act: 'Załaduj linię',
    },
  },
  fromFile: 'Zacznij od pliku innego zakładu',
  badges: 'Drukuj karty',
  more: 'Otwórz',
  openOf: (step) => `Otwórz: ${step}`,
};
