import type { words as english } from '../en/help.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  title: (screen) => `Pomoc: ${screen}`,
  practise: 'Ćwicz z przewodnikiem',
  lines: {
    line: [
      'Taśma kończy się tam, gdzie kończy się rolka. Łącz w obrębie klamry.',
      'Pasek u góry podaje następny obchód. Dotknij go, gdy idziesz.',
      'Listwa nad nim uruchamia, zatrzymuje i liczy serię.',
    ],
    load: [
      'Dotknij banku, by zobaczyć jego sloty. Linia pokazuje, co jeszcze załadować.',
      'Zeskanuj slot, potem rolkę.',
      'Koło: przyjęta. Ośmiokąt: odrzucona. Romb: czeka na lidera.',
    ],
    change: [
      'Wybierz następny produkt. Każde przestawienie stoi potem na liście.',
      'Rób jedno przestawienie naraz i skanuj, co wkładasz.',
      'Dokończ listę kontrolną i sprawdź pierwszy panel. Potem zwolnij serię.',
    ],
    stock: [
      'Zobacz, które rolki przynieść i na kiedy.',
      'Otwórz rolkę, by ją policzyć, odłożyć lub zablokować.',
      'Rolka, która musi być sucha, pokazuje swój czas na hali.',
    ],
    log: [
      'Każda czynność jest tu z godziną i osobą. Nic nie znika.',
      'Od partii do paneli albo od panelu do rolek.',
      'Zobacz zmianę, przekaż ją i eksportuj dziennik.',
    ],
    plant: [
      'Zaimportuj setup i wybierz, co budować.',
      'Dodaj osoby, etykiety i reguły linii.',
      'Ćwicz na kopii linii. Nic się tam nie liczy.',
    ],
    search: [
      'Zeskanuj lub wpisz dowolny kod, nazwę lub numer.',
      'Wyniki są ułożone według rodzaju.',
      'Dotknij wyniku, by go otworzyć.',
    ],
    lines: [
      'Każdy wiersz to linia, jej seria i następny obchód.',
      'Dzwonek: czeka ostrzeżenie. Romb: rolka jest wstrzymana.',
      'Dotknij wiersza, by pracować na tej linii.',
    ],
  },
};
