import type { words as english } from '../en/guide.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  title: 'Ćwiczenie z przewodnikiem',
  about: 'Jeden krok naraz. Przerwij, gdy trzeba: wrócisz do tego samego kroku.',
  guides: {
    operator: 'Trzy rolki, jedna zła. Łączenie. Ostrzeżenie.',
    lead: 'Wstrzymana rolka do decyzji. Eksport.',
    engineer: 'Setup do importu.',
  },
  start: 'Uruchom przewodnik',
  goOn: (at, of) => `Wróć do kroku ${at} z ${of}`,
  again: 'Zacznij od kroku 1',
  step: (at, of) => `Krok ${at} z ${of}`,
  leave: 'Opuść przewodnik',
  go: 'Pokaż gdzie',
  skip: 'Pomiń ten krok',
  still: 'To było coś innego. Krok jest nadal otwarty.',
  over: 'Wszystkie kroki są zrobione. Ćwicz dalej albo zakończ ćwiczenie.',
  noLead: 'Ten zakład nie ma jeszcze lidera. Najpierw go dodaj.',
  example: 'Użyj przykładowego arkusza',
  steps: {
    first: {
      ask: 'Dotknij etykiety slotu, potem właściwej rolki.',
      seen: (slot) => `${slot}: przyjęto.`,
    },
    wrong: {
      ask: (group) => `Dotknij etykiety slotu, potem złej rolki. Zobacz „${group}”.`,
      seen: (slot) => `${slot}: odrzucono. Ta rolka nie może tam trafić.`,
    },
    second: {
      ask: 'Dotknij jeszcze jednego slotu, potem właściwej rolki.',
      seen: (slot) => `${slot}: przyjęto.`,
    },
    splice: {
      ask: (group) => `Łączenie: pod „${group}” dotknij slotu, potem jego rolki.`,
      seen: (slot) => `${slot}: połączono.`,
    },
    run: {
      ask: 'Uruchom serię na linii.',
      seen: 'Seria trwa.',
    },
    warning: {
      ask: 'Licz panele na linii, aż slot ostrzeże.',
      seen: (slot) => `${slot}: ostrzeżenie.`,
    },
    answer: {
      ask: (act) => `Dotknij „${act}” przy ostrzeżeniu albo połącz ten slot.`,
      seen: 'Na ostrzeżenie jest odpowiedź.',
    },
    hold: {
      ask: 'Dotknij etykiety slotu, potem rolki bez ilości.',
      seen: (slot) => `${slot}: wstrzymano. Decyduje lider.`,
    },
    clear: {
      ask: 'Zdecyduj jako lider: karta, PIN, powód.',
      seen: 'Jest decyzja, z nazwiskiem w dzienniku.',
    },
    export: {
      ask: (act) => `W dzienniku dotknij „${act}”, potem CSV. W ćwiczeniu nic się nie zapisuje.`,
      seen: 'Eksport zlecony. Żaden plik nie powstał.',
    },
    open: {
      ask: (page) => `Otwórz „${page}”.`,
      seen: (page) => `„${page}” jest otwarte.`,
    },
    take: {
      ask: (example, act) => `Dotknij „${example}”. Zobacz zmiany, potem dotknij „${act}”.`,
      seen: (product) => `${product}: zaimportowano.`,
    },
    look: {
      ask: (page) => `Znajdź go pod „${page}”.`,
      seen: 'Jest na liście.',
    },
  },
};
