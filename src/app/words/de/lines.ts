import type { words as english } from '../en/lines.ts';
import { plural, type Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  add: 'Linie hinzufügen',
  edit: 'Ändern',
  editOf: (name) => `${name} ändern`,
  machines: (count) => plural(count, '1 Maschine', `${count} Maschinen`),
  slots: (count) => plural(count, '1 Platz', `${count} Plätze`),
  fromSheets:
    'Manche Plätze sind nur aus Rüstlisten bekannt. Öffnen Sie die Linie und benennen Sie sie so, wie sie an der Maschine stehen.',
  newTitle: 'Neue Linie',
  newName: (number) => `Linie ${number}`,
  name: 'Name',
  zone: 'Zeitzone',
  zoneHelp: 'Wo die Linie steht, zum Beispiel Europe/Berlin.',
  help: 'Geben Sie für jede Bank den ersten und den letzten Platz ein, so wie sie an der Maschine stehen.',
  bankOf: (number) => `Bank ${number}`,
  removeOf: (number) => `Bank ${number} entfernen`,
  first: 'Erster Platz',
  last: 'Letzter Platz',
  addAcross: (slot) => `Andere Seite hinzufügen: ${slot}`,
  addMachine: (slot) => `Nächste Maschine hinzufügen: ${slot}`,
  addBank: 'Bank hinzufügen',
  holdsTrays: 'Trays, keine Feeder',
  trays: 'Trays',
  lanes: {
    title: 'Spuren',
    help: 'Ein Transport kann zwei Produkte zugleich führen. Jede Spur hat ihren eigenen Lauf; alle nehmen von denselben Plätzen.',
    add: 'Spur hinzufügen',
    name: (number) => `Name der Spur ${number}`,
    called: (line, number) => `${line}, Spur ${number}`,
    removeOf: (number) => `Spur ${number} entfernen`,
    held: {
      runs: (lane) => `${lane} fertigt gerade. Beenden Sie erst ihren Lauf.`,
      reels: (slots) => `Nehmen Sie erst heraus, was nur diese Spur braucht: ${slots}.`,
      open: 'Für diese Spur ist noch etwas offen: Zurückgehaltenes, Übergabe, Umrüstung, Checkliste, Kontrollrunde, Paste, Zählstation, bereiter Feeder oder Wagen. Schließen Sie das zuerst ab.',
    },
  },
  picture: 'So sieht die Linie aus',
  save: 'Linie speichern',
  saved: (name) => `${name} gespeichert.`,
  faults: {
    'no-number': 'Beide müssen mit einer Zahl enden: M1-F-001 und M1-F-025.',
    differs: 'Nur die Zahl am Ende darf verschieden sein.',
    'not-from-one': 'Der erste Platz muss Nummer 1 sein.',
    backwards: 'Die letzte Zahl ist kleiner als die erste.',
    'too-many': 'Eine Bank hat höchstens 500 Plätze.',
    twice: 'Diese Bank gibt es schon.',
  },
  obstacles: {
    ranges: (count) =>
      plural(
        count,
        'Berichtigen Sie die oben markierte Bank.',
        `Berichtigen Sie die ${count} oben markierten Bänke.`,
      ),
    'name-missing': 'Geben Sie einen Namen ein.',
    'lanes-alike': 'Geben Sie jeder Spur einen eigenen Namen.',
    'zone-unknown': 'Wählen Sie eine Zeitzone aus der Liste.',
    'no-banks': 'Geben Sie zuerst die Plätze einer Bank ein.',
    lost: (slots, count) =>
      plural(
        count,
        `Platz ${slots} ist in Gebrauch. Behalten Sie ihn.`,
        `${count} Plätze in Gebrauch würden wegfallen: ${slots}. Behalten Sie sie.`,
      ),
  },
};
