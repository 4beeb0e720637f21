import type { words as english } from '../en/verdict.ts';
import { type ReasonWords, restsOn } from '../reason-words.ts';
import { formatCount, plural, type Sentences } from '../words.ts';
import { moistureReasonsPt, tablePt } from './verdict-moisture.ts';
import { plantReasonsPt } from './verdict-plant.ts';

const reasonsPt: ReasonWords = {
  ...moistureReasonsPt,
  ...plantReasonsPt,
  'unknown-slot': {
    title: 'Slot inexistente',
    say: (f) => `Esta linha não tem o slot ${f['slot']}.`,
    act: 'Escaneie o código do slot na máquina.',
  },
  'slot-not-in-setup': {
    title: 'Slot não usado',
    say: (f) => `Este setup não pede nada em ${f['slot']}.`,
    act: 'Deixe-o vazio. Escaneie o slot certo.',
  },
  'slot-loaded': {
    title: 'Slot já carregado',
    say: (f) => `${f['slot']} já tem ${f['part']}${f['reel'] ? ` (rolo ${f['reel']})` : ''}.`,
    act: 'Descarregue antes esse rolo.',
  },
  'slot-empty': {
    title: 'Slot está vazio',
    say: (f) => `Nada está carregado em ${f['slot']}.`,
    act: 'Em vez disso, carregue um rolo ali.',
  },
  'no-part': {
    title: 'Sem PN',
    say: (f) => `Nenhum código nesta etiqueta diz qual é o componente. Pedido: ${f['wanted']}.`,
    act: 'Escaneie a etiqueta inteira ou digite o PN impresso.',
  },
  'wrong-part': {
    title: 'Componente errado',
    say: (f) =>
      f['goesTo'] ? `Este rolo vai em ${f['goesTo']}.` : 'Nenhum slot deste setup pede este componente.',
    act: 'Devolva-o. Escaneie outro rolo.',
  },
  'wrong-for-lane': {
    title: 'Errado para a outra pista',
    say: (f) => `${f['lane']} usa ${f['wanted']} deste slot.`,
    act: 'Devolva-o. Leia um rolo que sirva às duas pistas.',
  },
  'kept-for-lane': {
    title: 'Fica para a outra pista',
    say: (f) => `${f['slot']} tem ${f['part']} para ${f['lane']}.`,
    act: 'Deixe esse rolo lá. Para emendar outro, escolha antes a outra pista.',
  },
  'not-in-setup': {
    title: 'Não é deste setup',
    say: (f) =>
      f['slot']
        ? `Nenhum slot pede este rolo. O mais parecido é ${f['slot']}.`
        : 'Nenhum slot pede este rolo.',
    act: 'Deixe-o no carrinho ou devolva ao estoque.',
  },
  'bake-short': {
    title: 'Secagem curta demais',
    say: (f) =>
      `Secagem de ${f['hours']} h${f['celsius'] ? ` a ${f['celsius']} °C` : ''}. ${f['wanted'] ? `A tabela pede ${f['wanted']} h ali` : 'A tabela não tem linha para isso'}; o floor life não foi restaurado: restam ${f['leftSeconds']}. (${restsOn(f, tablePt)}Um encapsulamento desconhecido conta como o pior.)`,
    act: 'Um líder precisa decidir.',
  },
  'same-label': {
    title: 'Um segundo rolo com a mesma etiqueta',
    say: () => 'Uma pessoa confirmou: a etiqueta bate com o rolo que roda aqui.',
    act: '',
  },
  'reel-elsewhere': {
    title: 'O rolo está em outro slot',
    say: (f) => `Pelo log, o rolo ${f['reel']} está em ${f['slot']}.`,
    act: 'Se já saiu desse slot, descarregue-o lá antes.',
  },
  'reel-on-cart': {
    title: 'O rolo está num carrinho',
    say: (f) => `Pelo log, o rolo ${f['reel']} está no carrinho ${f['cart']}, pronto para ${f['slot']}.`,
    act: 'Pegue outro rolo, ou tire-o antes do carrinho em Preparar.',
  },
  'slot-on-cart': {
    title: 'O slot está pronto num carrinho',
    say: (f) => `O carrinho ${f['cart']} já tem um rolo pronto para ${f['slot']}.`,
    act: 'Escaneie outro slot, ou tire antes esse lugar do carrinho.',
  },
  'reel-here': {
    title: 'O rolo já está aqui',
    say: (f) => `O rolo ${f['reel']} já está em ${f['slot']}.`,
    act: 'Escaneie o próximo rolo.',
  },
  'reel-blocked': {
    title: 'O rolo está bloqueado',
    say: (f) => `Bloqueado: ${f['reason']}.`,
    act: 'Separe-o. Chame o líder.',
  },
  'feeder-elsewhere': {
    title: 'O feeder está em outro slot',
    say: (f) => `Pelo log, o feeder ${f['feeder']} está em ${f['slot']}.`,
    act: 'Confira o código do feeder, ou descarregue-o lá antes.',
  },
  'feeder-aside': {
    title: 'Feeder separado',
    say: (f) => `O feeder ${f['feeder']} não deve ser usado: ${f['why']}.`,
    act: 'Pegue outro feeder. Depois da revisão, registre-a no feeder.',
  },
  'feeder-lanes': {
    title: 'O feeder não tem pista livre',
    say: (f) => `Pistas do feeder ${f['feeder']}: ${f['lanes']}. Pelo log, ele já está em ${f['slots']}.`,
    act: 'Confira o código do feeder, ou corrija o número de pistas do tipo dele.',
  },
  'feeder-on-cart': {
    title: 'O feeder está num carrinho',
    say: (f) => `Pelo log, o feeder ${f['feeder']} está no carrinho ${f['cart']}, pronto para ${f['slot']}.`,
    act: 'Confira o código do feeder, ou tire-o antes do carrinho em Preparar.',
  },
  'feeder-width': {
    title: 'O feeder não serve para a fita',
    say: (f) => `O feeder ${f['feeder']} é para fita de ${f['found']} mm; este slot pede ${f['wanted']} mm.`,
    act: 'Pegue um feeder da largura certa.',
  },
  'feeder-pitch': {
    title: 'O passo do feeder não serve',
    say: (f) => `O feeder ${f['feeder']} avança ${f['found']} mm; esta fita pede ${f['wanted']} mm.`,
    act: 'Ajuste o passo ou pegue outro feeder. Um passo errado joga peças fora sem ninguém notar.',
  },
  'floor-life-over': {
    title: 'O floor life acabou',
    say: () => 'Este rolo ficou tempo demais fora da embalagem seca.',
    act: 'Não use. Mande secar na estufa conforme suas regras.',
  },
  'not-the-loaded-reel': {
    title: 'Não é o rolo do log',
    say: (f) => `Pelo log, ${f['loaded'] || 'outro rolo'} está em ${f['slot']}.`,
    act: 'Descubra quem trocou. Depois descarregue e carregue de novo.',
  },
  'part-contradicts': {
    title: 'A etiqueta se contradiz',
    say: (f) => `Ela diz ${f['part']}, mas ${f['supplierPart']} está aprovado para ${f['approvedFor']}.`,
    act: 'Um líder precisa decidir.',
  },
  'alternate-not-approved': {
    title: 'Alternativo não aprovado aqui',
    say: (f) => `${f['found']} pode substituir ${f['wanted']} em ${f['approvedFor']}, mas não neste produto.`,
    act: 'Um líder precisa decidir.',
  },
  'supplier-part-not-approved': {
    title: 'PN do fornecedor desconhecido',
    say: (f) => `${f['supplierPart']} não está na lista de aprovados. Pedido: ${f['wanted']}.`,
    act: 'Um líder precisa decidir.',
  },
  'no-quantity': {
    title: 'Sem quantidade',
    say: () => 'A etiqueta não dá quantidade; não se sabe quando o rolo acaba.',
    act: 'Digite a quantidade, ou deixe um líder decidir.',
  },
  expired: {
    title: 'Passou da data',
    say: (f) => `Usar até ${f['expires']}.`,
    act: 'Um líder precisa decidir.',
  },
  'by-alternate': {
    title: 'Alternativo aprovado',
    say: (f) => `${f['found']} é um alternativo aprovado de ${f['wanted']}.`,
    act: '',
  },
  'by-supplier-part': {
    title: 'Pelo PN do fornecedor',
    say: (f) => `${f['supplierPart']} está aprovado para ${f['part']}.`,
    act: '',
  },
  'by-comparison': {
    title: 'Tomado como o mesmo PN',
    say: (f) => `${f['found']} conta como ${f['wanted']} pela regra da planta sobre ${f['rule']}.`,
    act: '',
  },
  'mixed-lots': {
    title: 'Outro lote',
    say: (f) => `O lote muda de ${f['from']} para ${f['to']}.`,
    act: '',
  },
  'quantity-corrected': {
    title: 'Não é a quantidade da etiqueta',
    say: (f) =>
      f['label'] === ''
        ? `A etiqueta não dá nenhuma; o log usa ${f['quantity']}.`
        : `A etiqueta diz ${f['label']}; o log usa ${f['quantity']}.`,
    act: '',
  },
};

export const words: Sentences<typeof english> = {
  accepted: {
    exchange: 'Certo para a troca',
    refill: 'Certo para reabastecer',
    load: 'Rolo certo',
    splice: 'Rolo certo para emendar',
    sweep: 'Visto',
  },
  refused: 'Recusado',
  held: 'Retido para o líder',
  wants: (slot) => `${slot} pede`,
  says: 'o rolo diz',
  also: 'Além disso',
  goOn: 'Continuar',
  nextIs: (slot) => `Próximo: ${slot}`,
  another: 'Escanear outro rolo',
  callLead: 'Deixar um líder decidir',
  typeQuantity: 'Digitar a quantidade',
  takeBack: 'Desfazer',
  parts: (count) => plural(count, `${formatCount(count)} peça`, `${formatCount(count)} peças`),
  lot: (lot) => `lote ${lot}`,
  reel: (reel) => `rolo ${reel}`,
  practice: 'leitura de treino',
  allLoaded: 'Todos os slots estão carregados.',
  spliceCaution:
    'Emende as fitas com a máquina parada, ou com o feeder fora da zona protegida como diz o manual. Corte para longe dos dedos. As regras locais vêm primeiro.',
  loadCaution: 'Pare a máquina e espere o cabeçote antes de pôr a mão dentro. As regras locais vêm primeiro.',
  reasons: reasonsPt,
};
