import type { words as english } from '../en/begin.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  about:
    'Vom leeren Tablet zur ersten richtigen Rolle. Sie können bei jedem Schritt aufhören und hier oder an einem anderen Tablet weitermachen.',
  language: 'Sprache dieses Tablets',
  done: 'erledigt',
  steps: {
    plant: {
      title: 'Das Werk',
      text: 'Name und Zeitzone. Ausdrucke und Exporte tragen den Namen.',
      act: 'Werk benennen',
    },
    engineer: {
      title: 'Erster Ingenieur',
      text: 'Name, Ausweis und PIN. Der Ingenieur fügt alle anderen hinzu.',
      act: 'Ingenieur hinzufügen',
    },
    line: {
      title: 'Die Linie',
      text: 'Ihre Maschinen und Bänke; die Plätze so, wie sie an den Maschinen stehen.',
      act: 'Linie beschreiben',
    },
    people: {
      title: 'Personen und Ausweise',
      text: 'Bediener und Schichtleiter. Ausweise lassen sich hier drucken.',
      act: 'Personen hinzufügen',
    },
    product: {
      title: 'Erstes Produkt',
      text: 'Eine Rüstliste, oder Bestückdatei und Stückliste der Leiterplatte.',
      act: 'Produkt importieren',
    },
    labels: {
      title: 'Etiketten für Plätze',
      text: 'Jeder Platz bekommt einen Code zum Scannen. Feeder und Wagen drucken Sie auch dort.',
      act: 'Etiketten drucken',
    },
    scanner: {
      title: 'Der Scanner',
      text: 'Ein Test zeigt, ob dieses Tablet ihn richtig liest.',
      act: 'Scanner testen',
    },
    label: {
      title: 'Ein gedrucktes Etikett',
      text: 'Scannen Sie ein Platzetikett: Es muss als sein Platz gelesen werden.',
      act: 'Etikett testen',
    },
    practice: {
      title: 'Zum Üben: das erste Rüsten',
      text: 'An einer Kopie der Linie. Dort zählt nichts.',
      act: 'Übung starten',
    },
    load: {
      title: 'Die erste Rolle',
      text: 'Scannen Sie Platz, Feeder und Rolle. Das Tablet sagt, ob sie zusammengehören.',
      act: 'Linie rüsten',
    },
  },
  fromFile: 'Mit der Datei eines anderen Werks beginnen',
  badges: 'Ausweise drucken',
  more: 'Öffnen',
  openOf: (step) => `Öffnen: ${step}`,
};
