import type { words as english } from '../en/board.ts';
import { plural, type Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  way: 'Arquivo de coordenadas e BOM',
  wayHelp:
    'Não tem folha com slots? Comece pelo arquivo de coordenadas da placa. Depois pode vir a BOM; os slots são então propostos para a sua linha.',
  choosePlacements: 'Escolher coordenadas',
  isPlacements: 'Este arquivo não cita slots, por isso é lido como arquivo de coordenadas.',
  isBill: 'Isto é uma BOM. Agora escolha o arquivo de coordenadas da mesma placa.',
  readAsSheet: 'Ler como folha de setup',
  billColumnsTitle: 'Colunas da BOM',
  putAway: 'Deixar de lado',
  correctColumns: 'Corrigir colunas',
  variant: 'Variante que se produz',
  variantNone: 'não escolhida',
  variantHelp: 'A BOM muda de uma variante para outra.',
  sidesOf: (top, bottom) => `Inserções: superior ${top}, inferior ${bottom}.`,
  notPlacedTitle: (count) =>
    `Não inseridos: ${plural(count, `${count} designador`, `${count} designadores`)}. Listados, não contados.`,
  left: {
    notFitted: 'Não montados',
    fiducial: 'Fiduciais',
    testPoint: 'Pontos de teste',
    hole: 'Furos',
    mark: 'Marcas',
    throughHole: 'Through-hole (PTH)',
    noPart: 'Sem componente',
    doubled: 'Listados duas vezes',
  },
  leftByBill: 'Não montados pela BOM, ou não estão nos dois arquivos',
  noSide: 'Escolha antes o lado. Cada lado é um setup próprio.',
  noParts: 'Nenhum componente neste lado.',
  namedByValue: (count) =>
    `${plural(count, `${count} componente não tem PN e é chamado`, `${count} componentes não têm PN e são chamados`)} pelo valor. Os rolos são verificados com esse nome. Adicione uma BOM com PNs.`,
  filesWrong: (count) => `Corrija antes ${plural(count, 'o erro', `os ${count} erros`)} dos arquivos`,
  filesHelp: 'Corrija uma coluna acima, ou corrija o arquivo e escolha-o de novo. Avisos não bloqueiam.',
  noLine: 'Ainda não se conhece nenhuma linha com máquinas e slots.',
  noLineHelp:
    'Só dá para propor slots para uma linha conhecida. Importe antes uma folha de setup da linha; ela diz quais máquinas e slots existem. Depois escolha de novo seus arquivos.',
  toSheet: 'Importar antes uma folha de setup',
  chooseLine: 'Escolha a linha',
  slotsTitle: 'Slots',
  isProposal:
    'É uma proposta para feeders, não um programa de montagem. Não diz qual cabeçote monta o quê nem quando; faça os slots e o seu programa coincidirem.',
  proposalHelp:
    'Os componentes ficam onde estão na linha ou em outros setups dela. Os novos recebem slots livres.',
  propose: 'Propor slots',
  proposeAgain: 'Propor de novo',
  proposing: 'Procurando slots…',
  stopProposing: 'Parar',
  proposeFailed: 'Não foi possível propor. Tente de novo ou escolha os slots à mão.',
  toPutIn: (count) => plural(count, `${count} feeder a colocar`, `${count} feeders a colocar`),
  difference: (fresh, moves, stays) =>
    `${plural(fresh, `${fresh} novo`, `${fresh} novos`)}, ${moves} de outro slot da linha. ${plural(stays, `${stays} feeder fica`, `${stays} feeders ficam`)}.`,
  comeOut: (count) =>
    `${plural(count, `${count} outro feeder está no caminho e precisa sair`, `${count} outros feeders estão no caminho e precisam sair`)}.`,
  openTitle: (count) => plural(count, `${count} componente sem slot`, `${count} componentes sem slot`),
  leftTitle: (count) =>
    plural(
      count,
      `${count} componente que esta linha não monta`,
      `${count} componentes que esta linha não monta`,
    ),
  reasons: {
    'too-wide': 'O feeder é mais largo que qualquer banco da linha.',
    'no-room': 'Não há mais lugar na linha.',
  },
  noneYet: 'Nenhum slot foi proposto ainda.',
  ownPlaces: 'Lugares próprios',
  perPanel: (count) => `${count} por painel`,
  stays: 'fica',
  moves: (from) => `de ${from}`,
  fresh: 'novo',
  inFile: (part) => `${part} no arquivo`,
  said: 'escolhido por você',
  asIn: (product) => `como em ${product}`,
  width: {
    said: (mm) => `${mm} mm`,
    setup: (mm) => `${mm} mm`,
    usual: (mm) => `${mm} mm?`,
    none: 'largura desconhecida',
  },
  faults: {
    overlap: (part, slot) => `No caminho de ${part} em ${slot}.`,
    'over-end': (positions) =>
      `O feeder ocupa ${plural(positions, `${positions} posição`, `${positions} posições`)} e passa do fim do banco.`,
    'off-line': 'A linha não tem esse slot.',
    'lane-wide': (positions) =>
      `O feeder ocupa ${plural(positions, `${positions} posição`, `${positions} posições`)}; numa pista cabe uma.`,
    'lane-width': (part) => `A pista ao lado alimenta ${part} com outra largura de fita. Confira o feeder.`,
  },
  change: (part) => `${part}: trocar o slot`,
  tapeWidth: 'Largura da fita',
  widthUnknown: 'desconhecida',
  widthFrom: {
    said: 'Foi você que informou.',
    setup: 'Do setup mais novo com este componente.',
    usual: 'Comum para o encapsulamento. Vale só para o espaço; os feeders não são verificados com ela.',
    none: 'O feeder conta como uma posição até você informar mais.',
  },
  widthsUnknown: (count) =>
    `${plural(count, `${count} componente não tem`, `${count} componentes não têm`)} largura de fita conhecida. Cada feeder conta como uma posição: toque no componente e informe a largura da fita.`,
  bank: 'Máquina e banco',
  legend: '■ neste setup · □ há um feeder ali agora',
  free: (slot) => `${slot} está livre.`,
  here: (slot) => `Já está em ${slot}.`,
  swaps: (slot, other, back) => `${other} está em ${slot}. Vai para ${back}.`,
  pushes: (slot, other) => `${other} está em ${slot}. Fica então sem slot.`,
  takesOut: (slot, part) => `${part} está ali na linha agora. Precisa sair de ${slot}.`,
  moveHere: (slot) => `Usar ${slot}`,
  chooseSlot: 'Escolha antes um slot',
  leaveOut: 'Esta linha não monta',
  takeBack: 'Esta linha monta',
  close: 'Fechar',
  paper: {
    title: 'Folha de carga',
    print: 'Imprimir a folha de carga',
    perPanel: 'Por painel',
    feeder: 'Feeder',
  },
  noSlots: 'Proponha antes os slots',
  slotsOpen: (count) =>
    `${plural(count, `${count} componente não tem`, `${count} componentes não têm`)} slot: dê um, ou diga que esta linha não monta`,
  slotsFaulty: (count) =>
    `${plural(count, `${count} slot está no caminho de outro ou é pequeno`, `${count} slots estão no caminho de outro ou são pequenos`)} demais: escolha outro`,
};
