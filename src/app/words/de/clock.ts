import type { words as english } from '../en/clock.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  back: (span, clock) => `Die Uhr dieses Tablets ging um ${clock} um ${span} zurück: bitte stellen.`,
  ahead: (span, clock) =>
    `Dieses Tablet ruhte um ${clock} für ${span}, oder seine Uhr sprang vor. Geht sie jetzt falsch, bitte stellen.`,
  'behind-log': (span) =>
    `Die Uhr dieses Tablets geht ${span} gegenüber dem neuesten Eintrag nach: bitte stellen.`,
  'behind-server': (span) => `Die Uhr dieses Tablets geht ${span} gegenüber dem Server nach: bitte stellen.`,
  'ahead-of-server': (span) => `Die Uhr dieses Tablets geht ${span} gegenüber dem Server vor: bitte stellen.`,
  goesOn: 'Warnungen und Zeiten laufen ab der letzten richtigen Zeit weiter.',
  short: 'Uhr prüfen',
  isRight: 'Die Uhr stimmt',
};
