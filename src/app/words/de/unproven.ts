import type { words as english } from '../en/unproven.ts';
import { plural, type Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  page: 'Unbewiesen',
  none: 'Nichts ist unbewiesen: Hinter jedem Eintrag, der einen Schichtleiter braucht, steht ein Ticket des Servers.',
  noTickets:
    'Dieses Werk gibt noch keine Tickets. Sie beginnen, wenn ein Schichtleiter eine PIN eingibt, wo der Server antwortet.',
  help: 'Diese Einträge brauchen einen Schichtleiter oder Ingenieur und entstanden ohne Ticket des Servers. In der Halle zählen sie. Ein Schichtleiter, der von ihnen weiß, bestätigt sie oder verwirft sie.',
  stands: {
    proven: 'durch ein Ticket bewiesen',
    unproven: 'unbewiesen',
    confirmed: 'von einem Schichtleiter bestätigt',
    rejected: 'von einem Schichtleiter verworfen',
    'before-tickets': 'vor den Tickets entstanden',
  },
  right: 'Recht',
  why: {
    'no-ticket': (role) =>
      `Kein Ticket des Servers: Nichts beweist, dass eine Person mit der Funktion „${role}“ das getan hat.`,
    'ticket-over': () => 'Das Ticket deckte diese Zeit nicht ab.',
    role: (role) => `Das Ticket ist von einer geringeren Funktion. Nötig: ${role}.`,
  },
  before: 'Dieses Werk gab noch keine Tickets, als das geschrieben wurde.',
  by: (name) => `von ${name}`,
  nobody: 'niemand genannt',
  confirm: 'Bestätigen',
  reject: 'Verwerfen',
  confirmAll: (count) => plural(count, 'Bestätigen', `Alle ${count} bestätigen`),
  confirmTitle: (count) =>
    plural(count, 'Wurde es getan, wie es dort steht?', `Wurden alle ${count} getan, wie es dort steht?`),
  rejectTitle: 'Diese Person hat es nicht getan?',
  rejectHelp:
    'Der Eintrag bleibt, als verworfen markiert. Was er in der Halle geändert hat, bleibt auch: Bringen Sie das selbst in Ordnung.',
  rejectPerson:
    'Beim Server zählt die Änderung dieser Person nicht. Sehen Sie die Personen unter Werk an und bringen Sie die Liste in Ordnung.',
  reason: 'Woher wissen Sie es?',
  needsServer: 'Hierfür muss der Server antworten: Nur dann ist bewiesen, wer entscheidet.',
  notProven:
    'Das wurde aufgeschrieben, aber ohne Ticket, also klärt es nichts. Versuchen Sie es wieder, wo der Server antwortet.',
  confirmed: (count) => plural(count, 'Der Eintrag ist bestätigt.', `${count} Einträge sind bestätigt.`),
  rejected: 'Der Eintrag ist verworfen.',
  engineerOnly: (count) =>
    plural(
      count,
      'Einer davon braucht das Wort eines Ingenieurs.',
      `${count} davon brauchen das Wort eines Ingenieurs.`,
    ),
  badgeAlone: (name) =>
    `${name} ist nur mit dem Ausweis angemeldet. Was einen Schichtleiter braucht, bleibt unbewiesen. Melden Sie sich mit Namen und PIN an, um es zu beweisen.`,
  settled: { confirmed: 'bestätigt', rejected: 'verworfen' },
};
