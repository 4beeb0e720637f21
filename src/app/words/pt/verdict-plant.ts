// What is said of the reasons that come from the plant's own lists: types of feeders, makers of a product, ages, the store.

import type { PlantReasons, ReasonFacts } from '../reason-words.ts';

/** What was measured, what is wanted, and what the guard band leaves. */
const measured = (f: ReasonFacts) =>
  `Medido: ${f['quantity']} ± ${f['uncertainty']} ${f['unit']}. Esperado: ${f['nominal']} ${f['unit']}, de ${f['least']} a ${f['most']}. Com a banda de guarda de ${f['guard']}: de ${f['from']} a ${f['to']}.`;

export const plantReasonsPt: PlantReasons = {
  'feeder-unknown': {
    title: 'Feeder desconhecido',
    say: (f) =>
      `O feeder ${f['feeder']} não está na lista da planta; a largura dele não pode ser verificada.`,
    act: 'Um líder precisa decidir.',
  },
  'feeder-type': {
    title: 'Tipo de feeder errado',
    say: (f) => `O feeder ${f['feeder']} é ${f['found']}; este slot pede ${f['wanted']}.`,
    act: 'Pegue um feeder desse tipo.',
  },
  'feeder-drive': {
    title: 'Acionamento errado',
    say: (f) => `O feeder ${f['feeder']} tem acionamento ${f['found']}; este slot pede ${f['wanted']}.`,
    act: 'Pegue um feeder com o acionamento certo.',
  },
  'feeder-height': {
    title: 'Cavidades fundas demais para o feeder',
    say: (f) =>
      `As cavidades da fita têm ${f['wanted']} mm de profundidade; o feeder ${f['feeder']} deixa passar ${f['found']} mm.`,
    act: 'Pegue um feeder para cavidades mais fundas.',
  },
  'maker-not-listed': {
    title: 'Fabricante fora da lista deste produto',
    say: (f) =>
      `${f['supplierPart']} não está aprovado para ${f['part']} neste produto.${f['listed'] ? ` Aprovados: ${f['listed']}.` : ''}${f['approvedFor'] ? ` Está aprovado em ${f['approvedFor']}.` : ''}`,
    act: 'Pegue um rolo de um fabricante da lista, ou deixe um líder decidir.',
  },
  'date-code-old': {
    title: 'Antigo demais pelo date code',
    say: (f) =>
      `Fabricado em ${f['made']}. O limite de idade da linha para este componente acabou em ${f['last']}.`,
    act: 'Um líder precisa decidir.',
  },
  'date-code-unknown': {
    title: 'Idade desconhecida',
    say: (f) =>
      f['dateCode']
        ? `O date code ${f['dateCode']} não pode ser lido com certeza. A linha limita a idade deste componente.`
        : 'A etiqueta não dá date code. A linha limita a idade deste componente.',
    act: 'Um líder precisa decidir.',
  },
  'value-outside': {
    title: 'Valor errado',
    say: measured,
    act: 'Não carregue. Separe o rolo e escaneie outro.',
  },
  'value-unsure': {
    title: 'Valor não está claro',
    say: (f) => `${measured(f)} Perto demais de um limite para este medidor.`,
    act: 'Escaneie o rolo de novo para medir outra vez, ou deixe um líder decidir.',
  },
  'value-unmeasured': {
    title: 'Valor não medido',
    say: (f) => `A linha pede medir um componente de ${f['part']} antes de o rolo alimentar.`,
    act: 'Escaneie o rolo de novo para medir, ou deixe um líder decidir.',
  },
  'value-unknown': {
    title: 'Sem valor para conferir',
    say: (f) =>
      f['lack'] === 'tolerance'
        ? `A lista de componentes dá a ${f['part']} um valor sem tolerância.`
        : `A lista de componentes não dá valor para ${f['part']}.`,
    act: 'Um líder precisa decidir. Digite o valor em Componentes.',
  },
  'value-within': { title: 'Valor conferido', say: measured, act: '' },
  'feeder-care': {
    title: 'Hora da revisão do feeder',
    say: (f) =>
      `O feeder ${f['feeder']} inseriu cerca de ${f['placed']} peças; a planta pede revisão após ${f['after']}. Mande revisá-lo quando sair.`,
    act: '',
  },
  'older-in-store': {
    title: 'Há um rolo mais antigo no estoque',
    say: (f) =>
      f['by'] === 'expires'
        ? `O rolo ${f['reel']} em ${f['place']} deve ser usado até ${f['expires']}, antes deste.`
        : `O rolo ${f['reel']} em ${f['place']} tem date code ${f['dateCode']}, mais antigo que este.`,
    act: '',
  },
};
