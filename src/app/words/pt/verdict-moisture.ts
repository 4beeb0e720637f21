// What is said of the reasons about bakes, labels of level 6 and reels without an id.

import type { MoistureReasons, TableWords } from '../reason-words.ts';

/** On what a bake's hours rest. */
export const tablePt: TableWords = {
  own: 'Tabela: a cópia da própria planta. ',
  copy: 'Tabela: comparada com uma cópia publicada. ',
  memory: 'Tabela: de memória. ',
};

export const moistureReasonsPt: MoistureReasons = {
  'bake-hours-over': {
    title: 'Secagem longa demais ao todo',
    say: (f) =>
      `${f['hours']} h acima de 90 °C até agora; o limite é ${f['most']} h. Os terminais podem não soldar bem.`,
    act: 'Um líder precisa decidir. Pergunte ao fabricante do componente.',
  },
  'label-time-missing': {
    title: 'Nível 6: tempo na etiqueta?',
    say: () =>
      'Depois da secagem, um rolo de nível 6 dura o que diz a etiqueta da embalagem. Ninguém informou isso.',
    act: 'Seque, digite as horas em Embalagem / estufa e escaneie de novo.',
  },
  'reel-unnamed': {
    title: 'Sem id, e pode ser um rolo aberto',
    say: (f) =>
      `Um rolo deste componente${f['lot'] ? `, lote ${f['lot']},` : ''} saiu antes da linha${f['left'] ? ` com ${f['left']} restantes` : ''}. Sem id não dá para distinguir os dois, por isso não se sabe ${f['floorLife'] === 'true' ? 'o floor life' : 'a contagem'}.`,
    act: 'Dê um id ao rolo, ou deixe um líder decidir.',
  },
  'reel-gone': {
    title: 'Usado há muito tempo, segundo o registro',
    say: (f) =>
      `Segundo o registro, o rolo ${f['reel']} ou parte do que há nele acabou há muito tempo. Este tablet não sabe quanto tempo ficou fora do saco.`,
    act: 'Procure o lote em Rastrear. Um líder deve decidir.',
  },
  'floor-life-short': {
    title: 'O floor life acaba antes do rolo',
    say: (f) => `O floor life acaba em ${f['leftSeconds']}, o rolo dura ${f['neededSeconds']}.`,
    act: 'Um líder precisa decidir.',
  },
};
