import type { words as english } from '../en/in-line.ts';
import { plural, type Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  title: 'Nutzen in der Linie',
  help: 'Wo eine Rolle wechselt, sind diese Nutzen ungewiss. Geben Sie an, wie viele es höchstens je sein können, auch ein Nutzen, der vor einer Maschine steht. Eine Schätzung gilt, wo niemand etwas eingegeben hat.',
  behind: (machine) => `${machine}: hier fertige, noch nicht gezählte Nutzen, höchstens`,
  before: (machine) => `${machine}: gezählte Nutzen, die noch nicht dort sind, höchstens`,
  missed: 'Nutzen, die ungezählt durchlaufen, höchstens',
  guess: (most) => `Nicht eingegeben: Bis zu ${most} werden angenommen (übliche Praxis).`,
  seen: (panels, most) =>
    plural(
      panels,
      `1 Nutzen wurde an beiden Stellen gescannt: Bis zu ${most} lagen dazwischen.`,
      `${panels} Nutzen wurden an beiden Stellen gescannt: Bis zu ${most} lagen dazwischen.`,
    ),
  takeSeen: 'Gescanntes nehmen',
  takeHelp:
    'Was gesehen wurde, ist keine Grenze: Geben Sie mehr ein, wo je mehr sein können. Was Scans darüber hinaus zeigen, erweitert es von selbst.',
  scansHere: 'An diesem Tablet gescannte Nutzen',
  count: 'Werden gezählt',
  goInto: (machine) => `Gehen in ${machine}`,
  scansHelp:
    'Scannen Sie einige Nutzen vor einer Maschine und noch einmal, wo sie gezählt werden: So lernt die Linie, wie viele dazwischen liegen.',
  save: 'Nutzen in der Linie speichern',
  saved: 'Gespeichert. Rückverfolgungen richten sich von jetzt an danach.',
  wrong: 'Geben Sie ganze Zahlen von 0 bis 500 und einen Anteil unter 50 % ein.',
  exitOpen: 'Ausgangsbildschirm öffnen',
  exitTitle: 'Gebaute Nutzen',
  exitHelp: 'Scannen Sie jeden Nutzen, wenn er die Linie verlässt.',
  exitCounted: 'Gezählt:',
  exitBefore: 'Schon gescannt, nichts gezählt:',
  exitOther: 'Kein Nutzen, nichts gezählt:',
  exitNoRun: 'Kein Lauf auf dieser Linie. Starten Sie ihn zuerst.',
  exitLost: 'Diese Seite hat die Tastatur verloren. Vor dem Scannen hier tippen.',
  exitLeave: 'Diesen Bildschirm verlassen',
};
