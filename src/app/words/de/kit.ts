import type { words as english } from '../en/kit.ts';
import { plural, type Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  open: 'Entnahmeliste und Wagen',
  list: 'Entnahmeliste',
  panels: 'Nutzen des nächsten Auftrags',
  needed: (count) => plural(count, '1 Bauteil', `${count} Bauteile`),
  short: (count) => `${count} mehr nötig`,
  enough: 'genug',
  probably: (chance, missing) => `wahrscheinlich genug (${chance}): ${missing} mehr, um sicher zu sein`,
  readyNow: 'Tun Sie das, während die Linie läuft',
  readyFetch: (count) =>
    count === 0
      ? 'Keine Rollen zu holen.'
      : plural(
          count,
          'Rollen für 1 Bauteil holen: Entnahmeliste unten.',
          `Rollen für ${count} Bauteile holen: Entnahmeliste unten.`,
        ),
  readyCarts: (count) =>
    count === 0
      ? 'Die nächsten Feeder auf einen Wagen setzen.'
      : plural(
          count,
          'Feeder auf einen Wagen setzen: 1 Platz ist bereit.',
          `Feeder auf einen Wagen setzen: ${count} Plätze sind bereit.`,
        ),
  readyOpenList: 'Checkliste öffnen: Manche Schritte brauchen keinen Halt.',
  readyList: (count) =>
    plural(
      count,
      'Checkliste: 1 Schritt geht schon jetzt.',
      `Checkliste: ${count} Schritte gehen schon jetzt.`,
    ),
  toChecklist: 'Checkliste',
  fetch: (reels) => `${reels} holen`,
  stays: (slot, count) => `bleibt auf ${slot}, ${count}`,
  goesTo: (from, to, count) => `zieht von ${from} nach ${to}, ${count}`,
  comesOff: (slot, count) => `übrig auf ${slot}, ${count}`,
  leftThen: (count) => `etwa ${count} übrig nach diesem Auftrag`,
  leftNow: (count) => `etwa ${count} übrig`,
  onLine: (count) =>
    plural(
      count,
      '1 Bauteil ist auf der Linie: nichts zu holen',
      `${count} Bauteile sind auf der Linie: nichts zu holen`,
    ),
  cartFirst: 'Zuerst seinen Code scannen oder tippen.',
  leftUnknown: 'nicht gezählt',
  maybeShort: 'zuerst zählen',
  unsure: (count) =>
    plural(
      count,
      '1 Bauteil braucht vielleicht mehr: seine Rollen zählen.',
      `${count} Bauteile brauchen vielleicht mehr: ihre Rollen zählen.`,
    ),
  uncounted: (count) => plural(count, '1 Rolle nicht gezählt', `${count} Rollen nicht gezählt`),
  none: 'keine Rolle gefunden',
  msl: (level) => `MSL ${level}: auf Offenzeit achten`,
  shortfalls: (count) =>
    plural(
      count,
      '1 Bauteil braucht mehr, als die bekannten Rollen haben. Holen Sie mehr, oder sagen Sie es einem Schichtleiter.',
      `${count} Bauteile brauchen mehr, als die bekannten Rollen haben. Holen Sie mehr, oder sagen Sie es einem Schichtleiter.`,
    ),
  carts: 'Wagen',
  cart: 'Wagen',
  cartHelp: 'Scannen oder tippen Sie den Code des Wagens. Scannen Sie dann Platz, Feeder und Rolle.',
  use: 'Diesen Wagen nehmen',
  filling: (cart) => `${cart} wird gefüllt`,
  leave: 'Wagen verlassen',
  wanted: {
    slot: 'Platz scannen, für den es ist',
    feeder: 'Feeder scannen',
    'old-reel': '',
    reel: 'Rolle scannen',
  },
  accepted: (slot) => `Richtig: bereit für ${slot}.`,
  refused: (why) => `Nicht aufsetzen: ${why}`,
  held: (why) =>
    `Zurückgehalten: ${why}. Legen Sie sie beiseite. Ein Schichtleiter entscheidet unter Rüsten.`,
  places: (count) => plural(count, '1 Platz bereit', `${count} Plätze bereit`),
  empty: 'Herunternehmen',
  dock: 'Andocken',
  dockTitle: (cart) => `${cart} andocken?`,
  dockCaution:
    'Maschine zuerst anhalten und warten, bis sich nichts bewegt. Hände weg von Klemmung, Kopf und Schneider.',
  willLoad: (count, product) =>
    plural(count, `1 Platz wird für ${product} gerüstet:`, `${count} Plätze werden für ${product} gerüstet:`),
  goesOff: (count) => plural(count, '1 Feeder kommt herunter:', `${count} Feeder kommen herunter:`),
  doesNotFit: (count) =>
    plural(
      count,
      '1 Platz passt nicht und wird ausgelassen:',
      `${count} Plätze passen nicht und werden ausgelassen:`,
    ),
  unfit: {
    'feeder-loaded': (f) => `Feeder ${f.thing} ist jetzt auf ${f.at}.`,
    'reel-loaded': (f) => `Rolle ${f.thing} ist jetzt auf ${f.at}.`,
    'lane-beside': (f) =>
      `Sein Feeder bleibt auf dem Wagen: Die Rolle für ${f.at} kann jetzt nicht geladen werden.`,
    neighbour: (f) => `Feeder ${f.thing} überlappt ${f.at}. Nehmen Sie zuerst einen der beiden herunter.`,
    'other-lane': (f) => `${f.line} braucht ${f.slot}. Lassen Sie das auf dem Wagen.`,
    blocked: (f) => `${f.thing} ist jetzt gesperrt. Nehmen Sie es vom Wagen.`,
  },
  others: (count) =>
    plural(
      count,
      '1 Platz ist für eine andere Rüstung und bleibt.',
      `${count} Plätze sind für eine andere Rüstung und bleiben.`,
    ),
  nothingFits: 'Nichts auf diesem Wagen lässt sich für diese Umrüstung rüsten.',
  noChangeover: 'Auf dieser Linie ist keine Umrüstung offen. Planen Sie zuerst eine.',
  knownCart: (cart) => `${cart} ist gewählt.`,
  dockable: (count) => plural(count, 'rüstet 1 Platz', `rüstet ${count} Plätze`),
  notStanding: 'Andocken, sobald der letzte Nutzen gebaut ist.',
  docked: (cart, count) =>
    plural(count, `${cart} angedockt: 1 Platz gerüstet.`, `${cart} angedockt: ${count} Plätze gerüstet.`),
  signIn: 'Zuerst Ausweis scannen.',
  unknown: (text) =>
    `${text.slice(0, 40)} ist unbekannt. Um einen neuen Wagen zu füllen, verlassen Sie zuerst diesen.`,
};
