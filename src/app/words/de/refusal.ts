import type { words as english } from '../en/refusal.ts';
import { formatCount, plural, type Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  inLog: (clock) => `${clock}, im Protokoll`,
  nothingLoaded: 'Nichts ist gerüstet.',
  closest: 'verlangt, am ähnlichsten',
  characters: (count) => plural(count, '1 Zeichen weicht ab.', `${formatCount(count)} Zeichen weichen ab.`),
  belongsAt: 'Diese Rolle gehört auf',
  belongsNowhere: 'Kein Platz hier braucht sie.',
  lacksReel: 'Dort ist jetzt keine Rolle.',
  hasReel: 'Dort ist jetzt eine Rolle.',
  onLine: (slot, line) => `${slot} auf ${line}`,
  rightReel: (slot) => `${slot} braucht`,
  rightReelNone: 'Laut Protokoll ist keine Rolle davon im Lager.',
  rightReelAt: (reel, more) => (more === 0 ? reel : `${reel} und ${formatCount(more)} weitere`),
  feederToFetch: 'Zu holender Feeder',
  feederNone: 'Kein freier Feeder dieser Größe steht auf der Liste.',
  anotherFeeder: 'Anderen Feeder scannen',
  carryOn: (slot) => `Zu ${slot} bringen`,
  unload: (slot) => `${slot} abrüsten`,
  reachIn: 'Maschine anhalten, bevor Sie hineingreifen.',
  runsHere: {
    title: 'Diese Rolle läuft hier schon',
    text: (slot) =>
      `Dieses Etikett passt zur Rolle auf ${slot}. Ist es eine zweite Rolle mit demselben Etikett?`,
    same: 'Nein, es ist diese Rolle',
    second: 'Ja, eine zweite Rolle',
  },
  cameBefore: {
    title: 'War diese Rolle schon auf der Linie?',
    text: (lot, left) =>
      `Ihr Etikett hat keine eigene ID. Eine Rolle wie diese${lot === null ? '' : `, Charge ${lot},`} kam mit ${left === null ? 'unbekannter Zahl' : plural(left, '1 Bauteil', `${left} Bauteilen`)} von der Linie.`,
    same: 'Ja, es ist diese Rolle',
    fresh: 'Nein, eine neue',
  },
};
