import type { words as english } from '../en/help.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  title: (screen) => `Hilfe: ${screen}`,
  practise: 'Mit Anleitung üben',
  lines: {
    line: [
      'Ein Gurt endet, wo seine Rolle leer wird. In der Klammer spleißen.',
      'Das Band oben nennt den nächsten Gang. Tippen Sie darauf, wenn Sie gehen.',
      'Die Leiste darüber startet, stoppt und zählt den Lauf.',
    ],
    load: [
      'Eine Bank antippen zeigt ihre Plätze. Was noch zu rüsten ist, steht an der Linie.',
      'Zuerst den Platz scannen, dann die Rolle.',
      'Kreis: angenommen. Achteck: abgelehnt. Raute: wartet auf den Schichtleiter.',
    ],
    change: [
      'Das nächste Produkt wählen. Dann steht jeder Handgriff in einer Liste.',
      'Einen Handgriff nach dem anderen; scannen, was hineinkommt.',
      'Checkliste abschließen, ersten Nutzen prüfen. Dann den Lauf freigeben.',
    ],
    stock: [
      'Welche Rollen zu bringen sind, und bis wann.',
      'Eine Rolle öffnen: zählen, einlagern oder sperren.',
      'Eine Rolle, die trocken bleiben muss, zeigt ihre Offenzeit.',
    ],
    log: [
      'Hier steht jede Handlung mit Zeit und Person. Nichts wird je entfernt.',
      'Von der Charge zu ihren Nutzen, vom Nutzen zu seinen Rollen.',
      'Die Schicht ansehen, übergeben und das Protokoll exportieren.',
    ],
    plant: [
      'Eine Rüstung importieren und wählen, was gebaut wird.',
      'Personen, Etiketten und Regeln der Linie anlegen.',
      'Auf einer Kopie der Linie üben. Dort zählt nichts.',
    ],
    search: [
      'Einen Code, Namen oder eine Nummer scannen oder eintippen.',
      'Funde sind nach Art geordnet.',
      'Einen Fund antippen, um ihn zu öffnen.',
    ],
    lines: [
      'Jede Zeile ist eine Linie mit Lauf und nächstem Gang.',
      'Glocke: Eine Warnung wartet. Raute: Eine Rolle ist zurückgehalten.',
      'Eine Zeile antippen, um an dieser Linie zu arbeiten.',
    ],
  },
};
