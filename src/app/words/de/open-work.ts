import type { words as english } from '../en/open-work.ts';
import { plural, type Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  said: {
    misfit: () => 'Die Rüstung passt nicht auf diese Linie',
    move: (count) => plural(count, '1 Handgriff an Feedern übrig', `${count} Handgriffe an Feedern übrig`),
    'slot-empty': (count) => plural(count, '1 Platz ohne seine Rolle', `${count} Plätze ohne ihre Rollen`),
    'slot-other': (count) =>
      plural(count, '1 Platz hat ein anderes Bauteil', `${count} Plätze haben andere Bauteile`),
    'slot-held': (count) =>
      plural(
        count,
        '1 Rolle wartet auf einen Schichtleiter',
        `${count} Rollen warten auf einen Schichtleiter`,
      ),
    'measured-wrong': (count) =>
      plural(count, '1 Bauteil falsch gemessen', `${count} Bauteile falsch gemessen`),
    'looked-wrong': (count) =>
      plural(count, '1 Bauteil sieht falsch aus', `${count} Bauteile sehen falsch aus`),
    'cannot-tell': (count) =>
      plural(count, '1 Bauteil zu knapp für das Messgerät', `${count} Bauteile zu knapp für das Messgerät`),
    unchecked: (count) =>
      plural(count, '1 Bauteil noch nicht geprüft', `${count} Bauteile noch nicht geprüft`),
    step: (count) => plural(count, '1 Schritt der Checkliste', `${count} Schritte der Checkliste`),
    'no-checklist': () => 'Die Checkliste wurde nie geöffnet',
  },
  on: (part, slot) => `${part} auf ${slot}`,
  reelOn: (reel, slot) => `Rolle ${reel} auf ${slot}`,
  reel: (reel) => `Rolle ${reel}`,
  more: (count) => `und ${count} mehr`,
  isWrong: 'Falsch',
  isOpen: 'Noch offen',
  nothing: 'Nichts ist offen.',
};
