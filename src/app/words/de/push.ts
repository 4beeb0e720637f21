import type { words as english } from '../en/push.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  title: 'Meldungen bei geschlossener App',
  promise:
    'Für Schichtleiter: unbeantwortete Warnungen, gesperrte Rollen im Einsatz, stehende Linien. Eine kann spät oder nie kommen: Lassen Sie ein Tablet offen.',
  way: 'Sie gehen verschlüsselt über den Dienst des Browser-Herstellers. Der Server des Werks muss ihn erreichen.',
  noBrowser: 'Dieser Browser nimmt keine Meldungen an.',
  noServer: 'Kein Server antwortet. Treten Sie erst bei, oder versuchen Sie es später.',
  off: 'Der Server des Werks ist dafür nicht eingerichtet.',
  unreached: 'Der Server des Werks erreicht den Dienst nicht. Hier gibt es keine Meldungen.',
  denied: 'Der Browser sperrt Meldungen. Erlauben Sie sie in seinen Einstellungen für diese Seite.',
  turnOn: 'Meldungen einschalten',
  turnOff: 'Meldungen ausschalten',
  isOn: 'Hier kommen Meldungen an.',
  isOff: 'Hier sind Meldungen aus.',
  wrong: 'Das ging nicht. Versuchen Sie es noch einmal.',
  first: 'Meldungen kommen hier an.',
  warning: (line, slot) => `${line}: niemand beantwortet die Warnung für ${slot}.`,
  blocked: (line, slot) => `${line}: eine gesperrte Rolle ist auf ${slot} im Einsatz.`,
  stood: (line) => `${line} steht.`,
};
