import type { words as english } from '../en/trace.ts';
import { plural, type Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  entries: 'Registros',
  trace: 'Rastrear',
  held: 'Painéis retidos',
  conflicts: 'Divergências',
  title: 'Quais painéis têm isso?',
  help: 'Digite ou escaneie lote, rolo, componente, feeder, slot ou código de painel, em minúsculas ou maiúsculas. Ou escolha uma pessoa.',
  ask: 'Rastrear',
  kinds: {
    lot: 'Lote',
    reel: 'Rolo',
    part: 'Componente',
    feeder: 'Feeder',
    slot: 'Slot',
    person: 'Pessoa',
    panel: 'Painel',
  },
  choosePerson: 'Escolha quem o colocou',
  putOn: (when, who) => (who === null ? `colocado em ${when}` : `colocado em ${when}, por ${who}`),
  text: 'O que rastrear',
  reading: (done) => `Lendo o log… ${plural(done, `${done} registro`, `${done} registros`)}`,
  nothing: (text) => `O log não conhece nenhum painel de “${text}”.`,
  sure: (first, last) => `com certeza os painéis ${first} a ${last}`,
  possible: (first, last) => `talvez os painéis ${first} a ${last}`,
  none: 'nenhum painel foi produzido enquanto estava ali',
  goesOn: 'ainda na linha',
  serials: (count) => plural(count, `${count} código de painel`, `${count} códigos de painel`),
  onSlot: (slot, feeder) => (feeder === '' ? slot : `${slot}, feeder ${feeder}`),
  panelTitle: (panel, product) => `Painel ${panel} de ${product}`,
  either: 'um ou os dois de',
  notSure: '(talvez)',
  builtTimes: (count) =>
    plural(count, `Contado em ${count} produção:`, `Contado em ${count} produções, a mais antiga primeiro:`),
  noLot: 'sem lote na etiqueta',
  partsFrom: (reels) => `Tem componentes de ${reels}`,
  partsTo: (reels) => `Componentes dele foram para ${reels}`,
  save: 'Salvar em CSV',
  why: 'Perto de uma emenda ou troca de rolo não se sabe o painel exato, por isso os dois lotes aparecem. “Com certeza” erra menos de uma vez em um milhão pelas dispersões informadas para a linha.',
  guessed: {
    'in-line':
      'Ninguém informou quantos painéis ficam entre a máquina e o lugar da contagem. Supõe-se a faixa mais larga. Informe nas regras da linha e menos painéis ficam em dúvida.',
    boards:
      'Nenhum setup diz quais placas de um painel um slot atende. Supõe-se que atende todas igualmente: se atende só algumas, um painel com placas puladas pode não ter nada dele.',
    label:
      'Ninguém informou quão exatas são as contagens impressas. Supõe-se um quarto de por cento (prática comum).',
  },
  by: { server: 'Respondido pelo servidor.', tablet: 'Respondido pelo log deste tablet.' },
  more: (count) =>
    `${plural(count, `Só o mais antigo (${count}) é mostrado.`, `Só os ${count} mais antigos são mostrados.`)} Restrinja, ex.: por lote ou rolo.`,
  conflictKinds: {
    'slot-loaded-twice': (slots) => `${slots} foi carregado por dois tablets`,
    'reel-on-two-slots': (slots) => `Um só rolo está em ${slots}`,
    'cleared-though-blocked': (slots) => `Um rolo bloqueado foi liberado para ${slots}`,
    'spliced-though-unloaded': (slots) => `${slots} foi emendado num tablet e descarregado em outro`,
    'released-though-dropped': (product) =>
      `A troca para ${product} foi liberada num tablet e cancelada em outro`,
  },
  noConflicts: 'Os tablets concordam.',
  settle: 'Resolver',
  settleTitle: 'O que está na máquina?',
  settleHelp: 'Vá ver. Depois escolha o que está ali. O outro registro fica no log como anulado.',
  settleChangeTitle: 'Qual dos dois vale?',
  settleChangeHelp:
    'Pergunte a quem liberou e a quem cancelou. Depois escolha o que é verdade. O outro registro fica no log como anulado.',
  keep: (slot, what, when) => `${slot}: ${what}, ${when}`,
  keepParts: (count) => plural(count, `${count} peça`, `${count} peças`),
  keepBy: (who, tablet) => (who === '' ? `em ${tablet}` : `por ${who} em ${tablet}`),
  keepEmpty: 'o slot está vazio',
  neither: 'Resolvi de outro modo',
  reason: 'Como você sabe?',
  settled: 'Resolvido.',
};
