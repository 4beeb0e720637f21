// What is said of the reasons that come from the plant's own lists: types of feeders, makers of a product, ages, the store.

import type { PlantReasons } from '../reason-words.ts';

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
  'older-in-store': {
    title: 'Há um rolo mais antigo no estoque',
    say: (f) =>
      f['by'] === 'expires'
        ? `O rolo ${f['reel']} em ${f['place']} deve ser usado até ${f['expires']}, antes deste.`
        : `O rolo ${f['reel']} em ${f['place']} tem date code ${f['dateCode']}, mais antigo que este.`,
    act: '',
  },
};
