import type { words as english } from '../en/search.ts';
import { plural, type Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  field: 'Digite ou escaneie qualquer coisa',
  help: 'Rolo, componente, lote, painel, slot, feeder, pessoa ou produto. O que se escaneia aqui é buscado, não carregado.',
  kinds: {
    reel: 'Rolos',
    slot: 'Slots',
    part: 'Componentes',
    'supplier-part': 'PNs do fornecedor',
    lot: 'Lotes',
    panel: 'Painéis',
    feeder: 'Feeders',
    person: 'Pessoas',
    setup: 'Setups',
    entry: 'Registros do log',
  },
  more: (count) => `Mostrar mais ${count}`,
  nothing: (text) => `Nada aqui tem “${text}”.`,
  alike: (codes) => `Não são iguais: ${codes}. Confira cada caractere.`,
  onLabel: 'Também nesta etiqueta:',
  left: (count) => plural(count, `resta ${count}`, `restam ${count}`),
  slotIs: {
    right: 'certo',
    empty: 'nada carregado',
    held: 'espera o líder',
    'other-part': 'componente errado',
    'wrong-feeder': 'feeder errado',
    blocked: 'bloqueado',
  },
  notWanted: 'fora deste setup',
  chosen: 'escolhido',
  reading: (entries) =>
    `Lendo o log: ${plural(entries, `${entries} registro`, `${entries} registros`)} até agora.`,
  searchedAll: (entries) =>
    `Buscado: ${plural(entries, `${entries} registro do log`, `todos os ${entries} registros do log`)} neste tablet.`,
  searchedSince: (day) => `Buscado: registros do log desde ${day}. Os mais antigos estão no log.`,
  askServer: 'Perguntar ao servidor',
  asking: 'Perguntando ao servidor…',
  noServer: 'O servidor não responde: o que só ele sabe não foi buscado.',
  serverNothing: (text) => `O servidor não tem nada sobre “${text}”.`,
  serverHas: (kind, count) => `${kind}: ${count} no servidor`,
};
