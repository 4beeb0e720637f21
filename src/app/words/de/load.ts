import type { words as english } from '../en/load.ts';
import { plural, type Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  title: 'Rüsten',
  of: (verified, all) =>
    plural(all, `${verified} von 1 Platz gerüstet`, `${verified} von ${all} Plätzen gerüstet`),
  next: 'Als Nächstes auf Ihrem Weg',
  allDone: 'Jeder Platz hat seine Rolle.',
  perPanel: (count) => (count === '0' ? 'auf diesem Produkt nicht bestückt' : `${count} pro Nutzen`),
  inTurn: (turn) => `nacheinander genutzt, Nummer ${turn}`,
  tape: (width) => `${width}-mm-Gurt`,
  pitch: (pitch) => `Teilung ${pitch} mm`,
  feederFor: (width) => `Feeder für ${width}-mm-Gurt`,
  ready: (feeder, cart) => `Feeder ${feeder} ist bereit auf Wagen ${cart}`,
  overview: 'Die ganze Linie: Bank wählen',
  loadedOf: (verified, all) => `${verified} von ${all}`,
  toDo: {
    missing: (count) => plural(count, `${count} fehlt`, `${count} fehlen`),
    held: (count) =>
      plural(count, `${count} wartet auf den Schichtleiter`, `${count} warten auf den Schichtleiter`),
    other: (count) => `${count} herauszunehmen`,
  },
  alternates: (parts) => `oder ${parts}`,
  legend: {
    verified: 'gerüstet',
    missing: 'fehlt',
    held: 'wartet auf den Schichtleiter',
    other: 'herausnehmen',
    next: 'als Nächstes',
    seen: 'in dieser Runde gesehen',
    spare: 'nicht nötig, darf bleiben',
  },
  trays: 'Hier stehen Trays, keine Feeder.',
  banks: (machine, bank) => `${machine} · ${bank}`,
  front: 'vorn',
  rear: 'hinten',
  holds: 'Warten auf einen Schichtleiter',
  decide: 'Entscheiden',
  conflicts: 'Zwei Tablets widersprechen sich',
  sweep: 'Kontrollrunde starten',
  sweepHelp:
    'Scannen Sie zu Schichtbeginn jede gerüstete Rolle einmal. Nicht gesehene Rollen werden am Ende aufgeführt.',
  sweepRunning: (seen, all) => `Kontrollrunde: ${seen} von ${all} gesehen`,
  sweepEnd: 'Runde beenden',
  sweepResume: 'Runde hier fortsetzen',
  sweepMissing: (count) => `${count} nicht gesehen`,
  sweepAll: 'Jede gerüstete Rolle wurde gesehen.',
  unwanted: 'Nicht in dieser Rüstung',
  takeOut: 'Abrüsten',
  unloaded: (slot) => `${slot} abgerüstet.`,
  undo: 'Zurücknehmen',
  choose: 'Rüstung wählen',
  caution:
    'Maschine anhalten und auf den Kopf warten, bevor Sie hineingreifen. Auf den Schneider achten. Örtliche Regeln gehen vor.',
  slotDetail: 'Platz',
  emptySlot: 'Nichts gerüstet.',
  loadThis: 'Diesen Platz rüsten',
  spliceThis: 'Diesen Platz spleißen',
  since: (time, who) => `seit ${time}${who ? `, ${who}` : ''}`,
  left: (count) => `etwa ${count} übrig`,
  unknownCount: 'Zahl nicht bekannt',
  lossIs: (share, reels) =>
    reels === 0
      ? `Verlust ${share}, angenommen`
      : `Verlust ${share}, aus ${plural(reels, '1 Rolle', `${reels} Rollen`)}`,
  correctCount: 'Zählen',
  counted: (slot, count) => `${slot}: Zahl ist jetzt ${count}.`,
  mapName: 'Die Plätze der Linie: mit den Pfeiltasten bewegen',
  list: 'Liste',
  map: 'Karte',
  print: 'Liste drucken',
};
