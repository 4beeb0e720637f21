import type { Words } from '../areas.ts';
import { plural } from '../words.ts';

export const words: Words<'feeds'> = {
  kinds: { tape: 'Bande', 'cut-tape': 'Bande coupée', tray: 'Plateau', tube: 'Tube', bulk: 'Vrac' },
  acts: { splice: 'Raccorder', exchange: 'Échanger', refill: 'Remplir' },
  label: 'Imprimer son étiquette',
  warns: {
    splice: (span, clock) => `se vide dans ${span}, vers ${clock}. Apportez le morceau suivant.`,
    exchange: (span, clock) =>
      `se vide dans ${span}, vers ${clock}. La machine s’arrête alors jusqu’à l’échange.`,
    refill: (span, clock) => `se vide dans ${span}, vers ${clock}. Remplissez avant.`,
  },
  comesNext: { splice: 'Nouvelle bobine', exchange: 'Mis à la place', refill: 'Versé dessus' },
  accepted: {
    exchange:
      'Ce qui y était compte comme déchargé. Pas de raccord : la machine attend que ceci soit en place.',
    refill: 'À partir d’ici les deux lots sont possibles, jusqu’à ce que le feeder soit vidé.',
  },
  sayFeeds: {
    tape: '',
    'cut-tape': 'Bande coupée : pas de fenêtre de raccord. Elle finit où finit le morceau.',
    tray: 'Plateau : une fois vide, la machine s’arrête jusqu’à l’échange.',
    tube: 'Tube : une fois vide, la machine s’arrête jusqu’à l’échange.',
    bulk: 'Vrac : remplissez avant qu’il soit vide.',
  },
  picks: {
    tape: '',
    'cut-tape': (count) => plural(count, `${count} morceau`, `${count} morceaux`),
    tray: (count) => plural(count, `${count} pile de plateaux`, `${count} piles de plateaux`),
    tube: (count) => plural(count, `${count} jeu de tubes`, `${count} jeux de tubes`),
    bulk: (count) => plural(count, `${count} conditionnement`, `${count} conditionnements`),
  },
  dueNow: { splice: 'à raccorder', exchange: 'à échanger', refill: 'à remplir' },
  forLane: (lane, part, count) => `Pour ${lane} : ${part}, ${count} par flan.`,
};
