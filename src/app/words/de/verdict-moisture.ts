// What is said of the reasons about bakes, labels of level 6 and reels without an id.

import type { MoistureReasons, TableWords } from '../reason-words.ts';

/** On what a bake's hours rest. */
export const tableDe: TableWords = {
  own: 'Tabelle: das eigene Exemplar des Werks. ',
  copy: 'Tabelle: mit einem veröffentlichten Exemplar verglichen. ',
  memory: 'Tabelle: aus dem Gedächtnis. ',
};

export const moistureReasonsDe: MoistureReasons = {
  'bake-hours-over': {
    title: 'Insgesamt zu lange gebacken',
    say: (f) =>
      `Bisher ${f['hours']} h über 90 °C; die Grenze ist ${f['most']} h. Ihre Anschlüsse löten vielleicht nicht gut.`,
    act: 'Ein Schichtleiter muss entscheiden. Fragen Sie den Hersteller des Bauteils.',
  },
  'label-time-missing': {
    title: 'Stufe 6: Zeit auf dem Etikett?',
    say: () =>
      'Nach dem Backen hält eine Rolle der Stufe 6 so lange, wie das Etikett ihres Beutels sagt. Das hat niemand eingegeben.',
    act: 'Backen Sie sie, geben Sie die Stunden unter Beutel / Ofen ein, dann scannen Sie neu.',
  },
  'reel-unnamed': {
    title: 'Keine ID, und sie ist vielleicht geöffnet',
    say: (f) =>
      `Eine Rolle dieses Bauteils${f['lot'] ? `, Charge ${f['lot']},` : ''} kam früher von der Linie${f['left'] ? `, mit ${f['left']} übrig` : ''}. Ohne ID lassen sich beide nicht unterscheiden, daher ist ${f['floorLife'] === 'true' ? 'die Offenzeit' : 'die Zahl'} nicht bekannt.`,
    act: 'Geben Sie der Rolle eine ID, oder lassen Sie einen Schichtleiter entscheiden.',
  },
  'reel-gone': {
    title: 'Laut Protokoll seit Langem verbraucht',
    say: (f) =>
      `Laut Protokoll ist Rolle ${f['reel']} oder ein Teil ihres Inhalts seit Langem verbraucht. Wie lange sie offen war, kann dieses Tablet nicht sagen.`,
    act: 'Die Charge steht unter Rückverfolgung. Ein Schichtleiter muss entscheiden.',
  },
  'floor-life-short': {
    title: 'Offenzeit endet vor der Rolle',
    say: (f) => `Ihre Offenzeit endet in ${f['leftSeconds']}, die Rolle reicht ${f['neededSeconds']}.`,
    act: 'Ein Schichtleiter muss entscheiden.',
  },
};
