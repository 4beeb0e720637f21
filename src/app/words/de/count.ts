import type { words as english } from '../en/count.ts';
import { plural, type Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  title: (what) => `Wie viele Bauteile: ${what}`,
  ways: { typed: 'Getippt', machine: 'Zähler oder Maschine', weighed: 'Gewogen', measured: 'Gemessen' },
  wayHelp: {
    typed: 'Die Zahl auf dem Etikett oder Ihre eigene Zählung.',
    machine: 'Was ein Rollenzähler oder die Maschine anzeigt.',
    weighed: 'Wiegen Sie diese Rolle. Voll- und Leergewicht des Bauteils werden gespeichert.',
    measured: 'Messen Sie über den gewickelten Gurt, nicht über den Flansch.',
  },
  fields: {
    parts: 'Bauteile',
    massG: 'Diese Rolle, g',
    emptyG: 'Leere Rolle, g',
    fullMassG: 'Volle Rolle, g',
    outerMm: 'Gewickelter Gurt D, mm',
    hubMm: 'Kern d, mm',
    fullOuterMm: 'D einer vollen Rolle, mm',
    thicknessMm: 'oder Gurtdicke, mm',
    pitchMm: 'Teilung, mm',
    fullParts: 'Bauteile auf voller Rolle',
  },
  wrong: {
    missing: 'fehlt noch',
    notNumber: 'keine Zahl',
    tooSmall: 'zu klein für die anderen Werte',
    tooLarge: 'größer als eine volle Rolle',
  },
  picture:
    'Eine Rolle von der Seite: D geht über den gewickelten Gurt, d über den Kern. Der Flansch ist weiter als der Gurt.',
  flange: 'Flansch',
  wound: 'gewickelter Gurt',
  hub: 'Kern',
  remembered: (parts) => `Von einer vollen Rolle mit ${parts}, früher gemessen.`,
  result: (parts, sd) => plural(parts, `${parts} ± ${sd} Bauteil`, `${parts} ± ${sd} Bauteile`),
  before: (parts, sd, basis) => `Im Protokoll stehen ${parts} ± ${sd} (${basis}).`,
  beforeUnknown: 'Im Protokoll steht noch keine Zahl.',
  printed: (share, least, isEntered) =>
    `Gedruckte oder getippte Zahlen gelten mit ± ${share}${isEntered ? ' (aus den Linienregeln)' : ' (übliche Praxis)'}, mindestens ± ${least} (übliche Praxis).`,
  agree: 'Beide Zählungen stimmen überein. Zusammen:',
  contradicts: 'Die zwei Zählungen passen nicht zusammen. Prüfen Sie die Rolle, dann wählen Sie.',
  takeNew: 'Neue Zahl nehmen',
  takeBoth: 'Beide zusammen nehmen',
  take: 'Diese Zahl nehmen',
  bases: {
    'one-by-one': 'einzeln gezählt',
    label: 'Etikett',
    typed: 'getippt',
    machine: 'Zähler',
    weighed: 'gewogen',
    measured: 'gemessen',
    'counted-down': 'heruntergezählt',
    combined: 'mehrere Zählungen',
  },
  saved: (slot, parts, sd) =>
    `${slot}: jetzt ${plural(parts, `${parts} ± ${sd} Bauteil`, `${parts} ± ${sd} Bauteile`)}.`,
  leftTitle: (slot) => `${slot} abrüsten: Was ist übrig?`,
  leftHelp:
    'Der Rest zeigt, was der Feeder verloren hat. Zählen Sie ihn jetzt, oder lassen Sie später das Lager zählen.',
  offLanes: {
    ask: 'Was kommt herunter?',
    one: (slot) => `Nur die Rolle auf ${slot}`,
    all: (slots) => `Der ganze Feeder, mit ${slots}`,
  },
  leftEmpty: 'Nichts: Sie ist leer',
  leftCount: 'Zählen',
  leftUnknown: (parts) => `Nicht gezählt: etwa ${parts}`,
  leftUnknownPlain: 'Nicht gezählt',
  lost: (feeder, lost, picks, share) =>
    `${feeder} hat ${plural(picks, `${lost} von 1 Abholung`, `${lost} von ${picks} Abholungen`)} verloren (${share}).`,
  moreThanGone:
    'Es wurde mehr bestückt, als weg ist: Eine Zählung ist falsch. Der Verlust bleibt, wie er war.',
  unlikely: (feeder, share, bound) =>
    `${feeder} hätte ${share} verloren. Das ist unwahrscheinlich (über ${bound}): Prüfen Sie die Zählungen. Der Verlust bleibt, wie er war.`,
  leftOut: (count, bound) =>
    `Nicht verwendet: ${count}. Über ${bound} Verlust ist unwahrscheinlich (0,1–3 % ist übliche Praxis; die Grenze ist unsere eigene).`,
  lossTitle: 'Abholverluste',
  lossNone:
    'Noch ist keine Rolle mit bekannter Zahl aufgebraucht. Bis dahin gilt der angenommene Verlust der Linie.',
  lossRow: (share, low, high) => `${share} (${low} bis ${high})`,
  skipsUnknown: (reels) =>
    plural(
      reels,
      'Übersprungene unbekannt bei 1 Rolle: Sie hat vielleicht mehr verloren.',
      `Übersprungene unbekannt bei ${reels} Rollen: Sie haben vielleicht mehr verloren.`,
    ),
  skipsUnknownReel: 'Übersprungene unbekannt',
  lossEvidence: (reels, lost, picks) =>
    `${reels} aufgebraucht, ${plural(picks, `${lost} von 1 Abholung verloren`, `${lost} von ${picks} Abholungen verloren`)}`,
  rising: (feeder, share, others) => `Feeder ${feeder} wirft ${share} weg, die anderen ${others}.`,
  risingAlone: (feeder, share) => `Feeder ${feeder} wirft ${share} weg, mehr als zuvor.`,
  pickFaults: (times, since) =>
    plural(
      times,
      `Seit ${since} hat die Maschine 1 Abholfehler gemeldet.`,
      `Seit ${since} hat die Maschine ${times} Abholfehler gemeldet.`,
    ),
  pickFaultsTitle: 'Abholfehler, wo noch kein Verlust bekannt ist',
  risingAct: 'Prüfen Sie beim nächsten Halt Düse, Gurtweg und Abholhöhe.',
  feeder: 'Feeder',
  slot: 'Platz',
  loss: 'Verlust',
  evidence: 'Grundlage',
  told: { count: 'gezählt', splice: 'gespleißt', machine: 'von der Maschine gemeldet' },
  evidenceLine: (from, to, placed) => `${from} am Anfang, ${to} übrig, ${placed} bestückt`,
  showEvidence: 'Rollen zeigen',
  hideEvidence: 'Rollen verbergen',
  spliceDiffers: 'Spleiß und Zählung widersprechen sich: Die Zahl der alten Rolle war falsch.',
};
