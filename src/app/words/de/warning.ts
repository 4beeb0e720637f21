import type { words as english } from '../en/warning.ts';
import { formatCount, plural, type Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  soon: (span, clock) => `läuft in ${span} leer, etwa ${clock}. Bringen Sie die nächste Rolle.`,
  due: (span, clock) => `kann jetzt gespleißt werden; läuft in ${span} leer, etwa ${clock}.`,
  late: (_span, clock) => `ist über sein Spleißfenster hinaus; der Gurt endet etwa ${clock}.`,
  over: (clock, span) => `hätte um ${clock} leer sein sollen, vor ${span}. Sehen Sie nach.`,
  ifPace: 'Keine Nutzen gezählt: wenn sie ihren Takt hielt.',
  ifStarts: 'Wenn sie jetzt wieder startet.',
  backup: (slot) => `Dann versorgt ${slot}, die Linie hält also noch nicht an.`,
  short: {
    soon: (span) => `in ${span}`,
    due: () => 'jetzt spleißen',
    late: () => 'zu spät zum Spleißen',
    over: () => 'sollte leer sein',
    blocked: () => 'gesperrte Rolle',
  },
  shortPace: 'keine Nutzen gezählt',
  shortStarts: 'Linie steht',
  shortMore: (count) => `+${count}`,
  more: (count) => plural(count, '1 weitere wartet.', `${count} weitere warten.`),
  show: 'Zeigen',
  nobody: (line) => `${line}: niemand hat reagiert`,
  unanswered: {
    due: (line, span) => `auf ${line} muss gespleißt werden. Seit ${span} hat niemand reagiert.`,
    late: (line, span) => `auf ${line} läuft gleich leer. Seit ${span} hat niemand reagiert.`,
  },
  showLine: (line) => `${line} zeigen`,
  noSound: 'Noch kein Ton: tippen und den Testton hören',
  acknowledge: 'Ich gehe',
  blocked: (what, reason) => `verarbeitet gesperrte Bauteile: ${what} (${reason}).`,
  blockedAct: 'Linie anhalten und diese Rolle herunternehmen.',
  blockedPanels: (since, sinceBlock) =>
    `${formatCount(since)} Nutzen in diesem Lauf damit gebaut, ${formatCount(sinceBlock)} davon seit der Sperre.`,
  blockedBefore: 'Sie war auch in einem früheren Lauf dort.',
  blockedNone: 'Dort ist kein Lauf offen.',
  blockedMore: (slots) => `Auch gesperrt: ${slots}.`,
  blockedTrace: 'Nutzen zeigen',
  blockedOff: 'Herunternehmen',
  letRun: 'Weiterlaufen lassen',
  letRunTitle: (slot) => `Gesperrte Rolle auf ${slot}: weiterlaufen lassen?`,
  letRunHelp:
    'Nur diese Rolle, nur auf diesem Platz. Die Sperre selbst bleibt, und Ihr Name und Grund stehen im Protokoll.',
  letRunWhy: 'Warum darf sie weiterlaufen?',
  letRunDone: (slot) => `${slot}: Ein Schichtleiter ließ sie weiterlaufen. Die Sperre selbst bleibt.`,
  blockedTape: (reason) => `Gesperrt: ${reason}`,
};
