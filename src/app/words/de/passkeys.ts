import type { words as english } from '../en/passkeys.ts';
import { plural, type Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  open: (count) => plural(count, '1 Passkey', `${count} Passkeys`),
  openOf: (shown, name) => `${shown} von ${name}`,
  title: (name) => `Passkeys von ${name}`,
  help: 'Ein Passkey beweist, wer entschieden hat: die Bildschirmsperre dieses Tablets oder ein Schlüssel, den man daran hält. Ohne Passkey entscheidet die PIN.',
  none: 'Noch kein Passkey.',
  where: {
    unsafe:
      'Passkeys brauchen eine sichere Seite. Öffnen Sie die App über ihre https-Adresse. Hier entscheidet die PIN.',
    'by-number':
      'Passkeys brauchen die Adresse der App als Namen, nicht als Zahlen. Hier entscheidet die PIN.',
    none: 'Dieser Browser kann keine Passkeys. Hier entscheidet die PIN.',
  },
  who: (name) => `Nur ${name} oder ein Ingenieur darf das. Ausweis scannen, dann PIN eingeben.`,
  notThem: (name) => `Nur ${name} oder ein Ingenieur.`,
  add: 'Passkey hinzufügen',
  name: 'Wie heißt er?',
  nameHelp: 'Etwa „blauer Schlüssel“ oder „Tablet vorn an der Linie“.',
  nameMissing: 'Geben Sie einen Namen ein.',
  make: 'Jetzt anlegen',
  made: (name) => `Passkey „${name}“ hinzugefügt.`,
  notMade:
    'Kein Passkey angelegt. Halten Sie den Schlüssel an das Tablet oder entsperren Sie es, und versuchen Sie es wieder.',
  remove: 'Entfernen',
  removeOf: (name) => `Passkey ${name} entfernen`,
  removed: (name) => `Passkey „${name}“ entfernt.`,
  addedBy: (name, host) => `hinzugefügt von ${name}, für die Seite auf ${host}`,
  fell: 'Sein Zähler fiel: Vielleicht wurde er kopiert. Entfernen Sie ihn und legen Sie einen neuen an.',
  unproven:
    'Nichts beweist, wer ihn hinzugefügt hat. Er beweist nichts, bis ein Schichtleiter das unter Protokoll bestätigt.',
  signed: 'Signiert',
  byPasskey: (name) => `durch Passkey von ${name} bewiesen`,
  pinOnly: 'nur PIN, sagt das Tablet',
  refused: 'Der Passkey beweist es nicht: Er hat etwas anderes signiert oder gehört nicht dieser Person.',
  checking: 'Wird geprüft…',
};
