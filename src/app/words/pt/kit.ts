import type { words as english } from '../en/kit.ts';
import { plural, type Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  open: 'Lista de coleta e carrinhos',
  list: 'Lista de coleta',
  panels: 'Painéis da próxima ordem',
  needed: (count) => plural(count, `${count} peça`, `${count} peças`),
  short: (count) => plural(count, `falta ${count}`, `faltam ${count}`),
  enough: 'suficiente',
  probably: (chance, missing) => `provavelmente suficiente (${chance}): mais ${missing} para ter certeza`,
  readyNow: 'Faça isto com a linha rodando',
  readyFetch: (count) =>
    count === 0
      ? 'Nenhum rolo a buscar.'
      : plural(
          count,
          `Busque rolos de ${count} componente: lista de coleta abaixo.`,
          `Busque rolos de ${count} componentes: lista de coleta abaixo.`,
        ),
  readyCarts: (count) =>
    count === 0
      ? 'Ponha os próximos feeders num carrinho.'
      : plural(
          count,
          `Ponha feeders num carrinho: ${count} lugar está pronto.`,
          `Ponha feeders num carrinho: ${count} lugares estão prontos.`,
        ),
  readyOpenList: 'Abra o checklist: alguns passos não precisam de parada.',
  readyList: (count) =>
    plural(
      count,
      `Checklist: ${count} passo já pode ser feito.`,
      `Checklist: ${count} passos já podem ser feitos.`,
    ),
  toChecklist: 'Checklist',
  fetch: (reels) => `Buscar ${reels}`,
  stays: (slot, count) => `fica em ${slot}, ${count}`,
  goesTo: (from, to, count) => `passa de ${from} para ${to}, ${count}`,
  comesOff: (slot, count) => `sobra em ${slot}, ${count}`,
  leftThen: (count) => `restam cerca de ${count} ao fim desta ordem`,
  leftNow: (count) => `restam cerca de ${count}`,
  onLine: (count) =>
    plural(
      count,
      `${count} componente está na linha: nada a buscar`,
      `${count} componentes estão na linha: nada a buscar`,
    ),
  cartFirst: 'Escaneie ou digite antes o código dele.',
  leftUnknown: 'não contado',
  maybeShort: 'conte antes',
  unsure: (count) =>
    plural(
      count,
      `${count} componente pode precisar de mais: conte os rolos.`,
      `${count} componentes podem precisar de mais: conte os rolos.`,
    ),
  uncounted: (count) => plural(count, `${count} rolo não contado`, `${count} rolos não contados`),
  none: 'nenhum rolo encontrado',
  msl: (level) => `MSL ${level}: atenção ao floor life`,
  shortfalls: (count) =>
    plural(
      count,
      `${count} componente precisa de mais do que há nos rolos conhecidos. Busque mais ou avise um líder.`,
      `${count} componentes precisam de mais do que há nos rolos conhecidos. Busque mais ou avise um líder.`,
    ),
  carts: 'Carrinhos',
  cart: 'Carrinho',
  cartHelp: 'Escaneie ou digite o código do carrinho. Depois escaneie slot, feeder e rolo.',
  use: 'Usar este carrinho',
  filling: (cart) => `Enchendo ${cart}`,
  leave: 'Deixar o carrinho',
  wanted: {
    slot: 'Escaneie o slot de destino',
    feeder: 'Escaneie o feeder',
    'old-reel': '',
    reel: 'Escaneie o rolo',
  },
  accepted: (slot) => `Certo: pronto para ${slot}.`,
  refused: (why) => `Não coloque no carrinho: ${why}`,
  held: (why) => `Retido: ${why}. Separe-o. Um líder decide na tela Carga.`,
  places: (count) => plural(count, `${count} lugar pronto`, `${count} lugares prontos`),
  empty: 'Retirar',
  dock: 'Acoplar',
  dockTitle: (cart) => `Acoplar ${cart}?`,
  dockCaution:
    'Pare antes a máquina e espere até nada se mover. Mantenha as mãos longe da trava, do cabeçote e do cortador.',
  willLoad: (count, product) =>
    plural(
      count,
      `${count} slot é carregado para ${product}:`,
      `${count} slots são carregados para ${product}:`,
    ),
  goesOff: (count) => plural(count, `${count} feeder sai:`, `${count} feeders saem:`),
  doesNotFit: (count) =>
    plural(count, `${count} lugar não serve e fica de fora:`, `${count} lugares não servem e ficam de fora:`),
  unfit: {
    'feeder-loaded': (f) => `O feeder ${f.thing} está agora em ${f.at}.`,
    'reel-loaded': (f) => `O rolo ${f.thing} está agora em ${f.at}.`,
    'lane-beside': (f) => `O feeder dele fica no carrinho: o rolo para ${f.at} não pode ser carregado agora.`,
    neighbour: (f) => `O feeder ${f.thing} se sobrepõe a ${f.at}. Retire antes um dos dois.`,
    'other-lane': (f) => `${f.line} precisa de ${f.slot}. Deixe este no carrinho.`,
    blocked: (f) => `${f.thing} está bloqueado agora. Retire do carrinho.`,
  },
  others: (count) =>
    plural(count, `${count} lugar é de outro setup e fica.`, `${count} lugares são de outro setup e ficam.`),
  nothingFits: 'Nada neste carrinho pode ser carregado para esta troca.',
  noChangeover: 'Nenhuma troca está aberta nesta linha. Planeje uma antes.',
  knownCart: (cart) => `${cart} está selecionado.`,
  dockable: (count) => plural(count, `carrega ${count} slot`, `carrega ${count} slots`),
  notStanding: 'Acople quando o último painel estiver pronto.',
  docked: (cart, count) =>
    plural(
      count,
      `${cart} acoplado: ${count} slot carregado.`,
      `${cart} acoplado: ${count} slots carregados.`,
    ),
  signIn: 'Escaneie antes o seu crachá.',
  unknown: (text) => `${text.slice(0, 40)} é desconhecido. Para encher um carrinho novo, deixe antes este.`,
};
