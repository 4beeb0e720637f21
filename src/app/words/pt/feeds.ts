import type { words as english } from '../en/feeds.ts';
import { plural, type Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  kinds: { tape: 'Fita', 'cut-tape': 'Fita cortada', tray: 'Bandeja', tube: 'Tubo', bulk: 'A granel' },
  acts: { splice: 'Emendar', exchange: 'Trocar', refill: 'Reabastecer' },
  label: 'Imprimir a etiqueta',
  warns: {
    splice: (span, clock) => `acaba em ${span}, por volta de ${clock}. Traga o próximo pedaço.`,
    exchange: (span, clock) =>
      `acaba em ${span}, por volta de ${clock}. A máquina então para até ser feita a troca.`,
    refill: (span, clock) => `acaba em ${span}, por volta de ${clock}. Reabasteça antes.`,
  },
  comesNext: { splice: 'Rolo novo', exchange: 'Entra no lugar', refill: 'Despejado por cima' },
  accepted: {
    exchange:
      'O que estava ali conta como descarregado. Não é emenda: a máquina para até isto estar no lugar.',
    refill: 'Daqui em diante os dois lotes contam como possíveis, até o feeder ser esvaziado.',
  },
  sayFeeds: {
    tape: '',
    'cut-tape': 'Fita cortada: sem janela de emenda. Acaba onde o pedaço acaba.',
    tray: 'Bandeja: quando fica vazia, a máquina para até ser trocada.',
    tube: 'Tubo: quando fica vazio, a máquina para até ser trocado.',
    bulk: 'A granel: reabasteça antes de ficar vazio.',
  },
  picks: {
    tape: '',
    'cut-tape': (count) => plural(count, `${count} pedaço`, `${count} pedaços`),
    tray: (count) => plural(count, `${count} pilha de bandejas`, `${count} pilhas de bandejas`),
    tube: (count) => plural(count, `${count} jogo de tubos`, `${count} jogos de tubos`),
    bulk: (count) => plural(count, `${count} embalagem`, `${count} embalagens`),
  },
  dueNow: { splice: 'emendar agora', exchange: 'trocar agora', refill: 'reabastecer agora' },
  forLane: (lane, part, count) => `Para ${lane}: ${part}, ${count} por painel.`,
};
