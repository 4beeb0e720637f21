import type { words as english } from '../en/search.ts';
import { plural, type Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  field: 'Suchwort tippen oder Code scannen',
  help: 'Rolle, Bauteil, Charge, Nutzen, Platz, Feeder, Person oder Produkt. Ein Scan wird hier gesucht, nicht gerüstet.',
  kinds: {
    reel: 'Rollen',
    slot: 'Plätze',
    part: 'Bauteile',
    'supplier-part': 'Lieferantenteile',
    lot: 'Chargen',
    panel: 'Nutzen',
    feeder: 'Feeder',
    person: 'Personen',
    setup: 'Rüstungen',
    entry: 'Protokolleinträge',
  },
  more: (count) => `Noch ${count} zeigen`,
  nothing: (text) => `Hier hat nichts „${text}“.`,
  alike: (codes) => `Nicht dasselbe: ${codes}. Prüfen Sie jedes Zeichen.`,
  onLabel: 'Auch auf diesem Etikett:',
  left: (count) => `noch ${count}`,
  slotIs: {
    right: 'richtig',
    empty: 'nichts gerüstet',
    held: 'wartet auf den Schichtleiter',
    'other-part': 'falsches Bauteil',
    'wrong-feeder': 'falscher Feeder',
    blocked: 'gesperrt',
  },
  notWanted: 'nicht in dieser Rüstung',
  chosen: 'gewählt',
  reading: (entries) =>
    `Protokoll wird gelesen: bisher ${plural(entries, '1 Eintrag', `${entries} Einträge`)}.`,
  searchedAll: (entries) =>
    `Durchsucht: ${plural(entries, '1 Protokolleintrag', `alle ${entries} Protokolleinträge`)} auf diesem Tablet.`,
  searchedSince: (day) => `Durchsucht: Protokolleinträge seit ${day}. Ältere stehen im Protokoll.`,
  askServer: 'Server fragen',
  asking: 'Server wird gefragt…',
  noServer: 'Der Server antwortet nicht: Was nur er weiß, ist nicht durchsucht.',
  serverNothing: (text) => `Der Server hat nichts zu „${text}“.`,
  serverHas: (kind, count) => `${kind}: ${count} auf dem Server`,
};
