import type { words as english } from '../en/refusal.ts';
import { formatCount, plural, type Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  inLog: (clock) => `${clock}, no log`,
  nothingLoaded: 'Nada está carregado.',
  closest: 'pedido mais parecido',
  characters: (count) =>
    plural(count, `${count} caractere difere.`, `${formatCount(count)} caracteres diferem.`),
  belongsAt: 'Este rolo vai em',
  belongsNowhere: 'Nenhum slot aqui o pede.',
  lacksReel: 'Sem rolo ali agora.',
  hasReel: 'Há um rolo ali agora.',
  onLine: (slot, line) => `${slot} em ${line}`,
  rightReel: (slot) => `${slot} precisa de`,
  rightReelNone: 'O log não tem rolo desse componente no estoque.',
  rightReelAt: (reel, more) => (more === 0 ? reel : `${reel} e mais ${formatCount(more)}`),
  feederToFetch: 'Feeder a buscar',
  feederNone: 'Nenhum feeder livre desse tamanho na lista.',
  anotherFeeder: 'Escanear outro feeder',
  carryOn: (slot) => `Levar para ${slot}`,
  unload: (slot) => `Descarregar ${slot}`,
  reachIn: 'Pare a máquina antes de pôr a mão dentro.',
  runsHere: {
    title: 'Esse rolo já está rodando aqui',
    text: (slot) => `Esta etiqueta bate com o rolo em ${slot}. É um segundo rolo com a mesma etiqueta?`,
    same: 'Não, é aquele rolo',
    second: 'Sim, um segundo rolo',
  },
  cameBefore: {
    title: 'Este rolo já esteve na linha?',
    text: (lot, left) =>
      `A etiqueta não tem id próprio. Um rolo como este${lot === null ? '' : `, lote ${lot},`} saiu da linha com ${left === null ? 'quantidade desconhecida' : plural(left, `${left} peça restante`, `${left} peças restantes`)}.`,
    same: 'Sim, é aquele rolo',
    fresh: 'Não, um novo',
  },
};
