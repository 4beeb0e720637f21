import type { words as english } from '../en/run.ts';
import { formatCount, plural, type Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  notRight: (count) =>
    plural(
      count,
      '1 Platz ist noch nicht richtig: siehe Rüsten.',
      `${count} Plätze sind noch nicht richtig: siehe Rüsten.`,
    ),
  startTitle: 'Lauf starten',
  panelSecondsHelp: 'Gilt, bis der eigene Takt der Linie gemessen ist.',
  panelPrefix: 'Nutzencodes beginnen mit',
  panelPrefixHelp: 'Leer lassen, wenn Nutzen keinen Code haben. Dann zum Zählen tippen.',
  wrongNumber: 'Geben Sie eine Zahl größer als 0 ein.',
  startAnyway: 'Mit leeren Plätzen starten',
  stopTitle: 'Warum steht die Linie?',
  endTitle: 'Diesen Lauf beenden?',
  endText: (done, wanted) =>
    `${done} von ${formatCount(wanted)} Nutzen ${plural(wanted, 'ist', 'sind')} gezählt. Rollen bleiben auf ihren Plätzen.`,
  plusManyTitle: 'Wie viele Nutzen mehr?',
  skippedTitle: 'Welche Leiterplatten des nächsten Nutzens werden übersprungen?',
  skippedHelp: 'Tippen Sie jede an, die als schlecht markiert ist. Die nächste Zählung nimmt es mit.',
  skippedUse: (count) =>
    count === 0
      ? 'Keine überspringen'
      : plural(count, '1 Leiterplatte überspringen', `${count} Leiterplatten überspringen`),
  skippedManyTitle: (panels) =>
    plural(
      panels,
      'Übersprungene Leiterplatten auf diesem Nutzen?',
      `Übersprungene Leiterplatten auf diesen ${formatCount(panels)} Nutzen?`,
    ),
  skippedMost: (boards) =>
    plural(
      boards,
      'Es gibt nur 1 Leiterplatte.',
      `Es gibt nur ${boards} Leiterplatten. Geben Sie weniger ein.`,
    ),
  skippedNotKnown: 'Nicht bekannt',
  scrapTitle: 'Wie viele Nutzen sind verschrottet?',
  scrapHelp: 'Sie bleiben gezählt: Ihre Bauteile sind verbraucht. Ebenso viele mehr sind zu bauen.',
  scrapMost: (panels) =>
    plural(
      panels,
      'Nur 1 guter Nutzen ist gezählt.',
      `Nur ${panels} gute Nutzen sind gezählt. Geben Sie weniger ein.`,
    ),
  setRightTitle: 'Wie viele Nutzen sind fertig?',
  setRightHelp: 'Der Lauf hat dann diese Zahl. Wer zählt, zählt von dort weiter.',
  setRightWhy: 'Warum ist es eine andere Zahl?',
  setRightYes: (panels) => `Auf ${panels} setzen`,
  setRightMissing: 'Geben Sie eine andere Zahl und den Grund ein.',
  stoodSince: 'Angehalten seit',
  stoodLast: (clock, span) => `${clock}, der letzte Nutzen, vor ${span}`,
  stoodNow: (clock) => `jetzt, ${clock}`,
};
