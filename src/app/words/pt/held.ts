import type { words as english } from '../en/held.ts';
import { plural, type Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  causes: {
    'wrong-reel': 'Rolo errado visto tarde',
    cleared: 'Retenção liberada por engano',
    blocked: 'Material bloqueado',
    'floor-life': 'O floor life tinha acabado',
  },
  hold: 'Reter estes painéis',
  holdTitle: (panels) => `Reter ${plural(panels, `${panels} painel`, `${panels} painéis`)}?`,
  holdHelp:
    'Todos os painéis que podem ter o material são retidos, também os que ainda estão na linha. Ficam retidos até um líder assinar.',
  goesOn: 'Ainda está num slot. Retire antes, ou os próximos painéis não serão retidos.',
  cause: 'Por que são retidos?',
  lifeHelp: 'São retidos os painéis a partir do momento em que o floor life acabou.',
  noLifeOver: 'Pelo log, o floor life nunca esteve acabado enquanto se produziam painéis.',
  reason: 'O que foi encontrado?',
  codes: (codes) =>
    plural(codes, `${codes} código de painel é conhecido.`, `${codes} códigos de painel são conhecidos.`),
  sure: (panels) =>
    panels === 0
      ? 'Nenhum o tem com certeza.'
      : plural(panels, `${panels} o tem com certeza.`, `${panels} o têm com certeza.`),
  done: (panels) => plural(panels, `${panels} painel está retido.`, `${panels} painéis estão retidos.`),
  none: 'Nenhum painel está retido.',
  span: (first, last) => `Painéis ${first} a ${last}`,
  still: (held, all) => `Ainda sem assinatura: ${held} de ${all}`,
  noCodes: 'Sem códigos de painel. Ache estes painéis pelos números.',
  signed: (who, when) => `Assinado por ${who}, ${when}`,
  sign: 'Assinar',
  signAll: 'Assinar todos',
  signTitle: 'O que foi feito com estes painéis?',
  signHelp: 'Escolha painéis um a um, ou assine todos.',
  signWhy: 'O que foi feito? Ex.: retrabalhado, refugado, achado certo.',
  signDone: 'Assinado.',
  save: 'Salvar os códigos em CSV',
  which: 'Quais painéis?',
};
