import type { words as english } from '../en/people.ts';
import { plural, type Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  whoTitle: 'Wer arbeitet?',
  yourLanguage: 'Ihre Sprache, auf jedem Tablet',
  pinTitle: (name) => `PIN von ${name}`,
  pinHelp: 'Vier bis acht Ziffern.',
  pinWrong: 'Das ist nicht die PIN.',
  pinLeft: (left) => `Das ist nicht die PIN. ${plural(left, 'Noch 1 Versuch.', `Noch ${left} Versuche.`)}`,
  pinLocked: (minutes) => `Zu viele Versuche. Für ${minutes} min gesperrt.`,
  pinUnsafe:
    'Eine PIN lässt sich nur auf einer sicheren Seite prüfen. Öffnen Sie die App über ihre https-Adresse.',
  notSeenHere: (name) =>
    `Der Server antwortet nicht, und dieses Tablet hat ${name} noch nie bestätigt. Versuchen Sie es, wo der Server antwortet.`,
  pinNotHere: (name) =>
    `Dieses Tablet kennt die PIN von ${name} noch nicht. Geben Sie sie einmal ein, wo der Server antwortet, oder am Tablet, an dem sie gesetzt wurde.`,
  seenTooLongAgo: (name) =>
    `Der Server antwortet nicht, und dieses Tablet hat ${name} zuletzt vor über drei Tagen bestätigt. Versuchen Sie es, wo der Server antwortet.`,
  asking: 'Wird geprüft…',
  enter: 'Fertig',
  erase: 'Löschen',
  nobody:
    'Noch keine Personen auf diesem Tablet. Fügen Sie zuerst einen Ingenieur hinzu; er fügt die anderen hinzu.',
  addFirst: 'Ersten Ingenieur hinzufügen',
  awayTitle: (name) => `${name} wurde abgemeldet`,
  awayHelp: (name) =>
    `Offene Arbeit bleibt erhalten. ${name} meldet sich an, um weiterzumachen. Für alle anderen wird sie geschlossen.`,
  awayClose: 'Offene Arbeit schließen',
  badgeNeeded: (name) => `${name} hat keine PIN: Ausweis scannen.`,
  scanBadge: 'Ausweis scannen',
  badgeHelp: 'Mit dem Scanner, oder tippen Sie, was unter seinem Code gedruckt ist.',
  badgeUnknown: 'Unbekannter Ausweis. Scannen Sie einen anderen.',
  noPin: (name) => `${name} hat noch keine PIN. Ein Ingenieur setzt eine unter Werk.`,
  clearTitle: 'Ein Schichtleiter entscheidet',
  clearHelp: 'Scannen Sie den Ausweis des Schichtleiters. Dann PIN und Grund eingeben.',
  clearReason: 'Grund',
  reasons: [
    'Von der Technik für diese Charge freigegeben',
    'Von Hand geprüft und gemessen',
    'Etikett beschädigt, Bauteil bestätigt',
    'Von Hand gezählt',
  ],
  otherReason: 'Anderer Grund',
  accept: 'Rolle annehmen',
  decline: 'Ablehnen',
  cartKept: (f) => `${f.cart} hat jetzt ${f.carries} für ${f.slot}. ${f.held} kommt nicht auf den Wagen.`,
  cleared: (slot) => `Für ${slot} freigegeben.`,
  declined: 'Abgelehnt. Die Rolle kommt nicht auf die Linie.',
  withoutPasskey: 'Ohne speichern',
  ownNotSigned: 'Der Passkey hat nicht signiert. Nichts wurde gespeichert.',
  withPasskey: 'Passkey verwenden',
  passkeyAsks: 'Als Nächstes wird der Passkey verlangt.',
  passkeyFailed:
    'Der Passkey hat nicht signiert, also wurde nichts geschrieben. Versuchen Sie es wieder, oder brechen Sie ab und nehmen Sie die PIN.',
  needsRole: (role) => `Nötig: ${role}`,
  quantityTitle: 'Wie viele Bauteile sind auf der Rolle?',
  quantityHelp:
    'Wie gedruckt oder gezählt. Sie können es später berichtigen; das Protokoll behält jede Berichtigung.',
  quantityWrong: 'Geben Sie eine ganze Zahl größer als 0 ein.',
};
