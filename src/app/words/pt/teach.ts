import type { RuleField } from '../../../../shared/labels/rules.ts';
import type { words as english } from '../en/teach.ts';
import type { Problems } from '../teach.ts';
import { plural, type Sentences } from '../words.ts';

const fieldsPt: Readonly<Record<RuleField, string>> = {
  part: 'PN interno',
  supplierPart: 'PN do fornecedor',
  quantity: 'Quantidade',
  lot: 'Lote',
  dateCode: 'Date code',
  expires: 'Usar antes de',
  reel: 'Id do rolo',
  supplier: 'Fornecedor',
  country: 'País',
  msl: 'MSL',
  order: 'Pedido',
};

const problemsPt: Problems = {
  'nothing-tapped': 'Toque em um trecho e diga o que é',
  'tap-outside': 'Um trecho passa do código',
  'taps-overlap': 'Dois trechos se sobrepõem',
  'field-tapped-twice': 'Dois trechos têm o mesmo significado',
  'too-loose': 'Serviria para quase qualquer etiqueta: nomeie mais um trecho',
  'too-long': 'A etiqueta é longa demais para uma regra',
};

export const words: Sentences<typeof english> = {
  fields: fieldsPt,
  problems: problemsPt,
  listHelp: 'Escaneie qualquer etiqueta para ver como é lida.',
  teach: 'Ensinar uma etiqueta',
  export: 'Salvar as regras em arquivo',
  exported: (name) => `Salvo como ${name}.`,
  import: 'Importar regras de um arquivo',
  importTitle: 'Regras neste arquivo',
  importFailed: 'Este arquivo não foi importado',
  importAgain:
    'Nada foi alterado. Corrija o arquivo ou salve as regras de novo onde elas vêm. Depois escolha-o de novo.',
  importProblems: {
    'not-json': 'O arquivo não é JSON válido: está cortado ou é de outro tipo.',
    'no-list': 'O arquivo não contém uma lista de regras.',
    empty: 'A lista no arquivo está vazia.',
    'not-a-rule': (rule, at) => `A regra “${rule}” não é válida${at === '' ? '' : `: veja ${at}`}.`,
    twice: (rule) => `A regra “${rule}” está duas vezes no arquivo: deixe uma.`,
  },
  importStatus: {
    new: (version) => `+ nova, versão ${version}`,
    newer: (version, here) => `↑ versão ${version} em vez da ${here}`,
    same: (version) => `= a mesma aqui, versão ${version}`,
    older: (version, here) => `△ a versão ${version} é mais antiga que a ${here} daqui: não importada`,
    differs: (version) =>
      `△ outra regra é aqui a versão ${version}: não importada até o arquivo lhe dar uma versão maior`,
    fails: (version) => `✕ a versão ${version} não lê os próprios exemplos: não importada`,
  },
  importNothing: 'Nenhuma regra neste arquivo é nova ou mais nova.',
  importTake: (count) => plural(count, `Importar ${count} regra`, `Importar ${count} regras`),
  imported: (count) => plural(count, `${count} regra importada.`, `${count} regras importadas.`),
  none: 'Nenhuma etiqueta foi ensinada ainda.',
  noneHelp: 'Etiquetas padronizadas não precisam de regra. Escaneie uma que não é lida e ensine-a uma vez.',
  version: (version) => `versão ${version}`,
  approvedBy: (name, when) => `aprovada por ${name}, ${when}`,
  needsAll: (count) =>
    `${plural(count, 'Seu código deve estar', `Seus ${count} códigos devem estar`)} numa só imagem da câmera, ou digitados juntos.`,
  examples: (count) => plural(count, 'lê seu exemplo', `lê seus ${count} exemplos`),
  examplesFail: (failed, count) =>
    plural(count, 'lê seu exemplo de outro modo', `lê ${failed} de seus ${count} exemplos de outro modo`),
  again: 'Ensinar de novo',
  withdraw: 'Retirar',
  withdrawTitle: (rule) => `Retirar a regra “${rule}”`,
  withdrawWhy: 'Por quê?',
  withdrawn: (rule) => `Etiquetas não são mais lidas por “${rule}”.`,
  pieces: {
    digits: (length) =>
      length === null ? 'dígitos' : plural(length, `${length} dígito`, `${length} dígitos`),
    letters: (length) => (length === null ? 'letras' : plural(length, `${length} letra`, `${length} letras`)),
    alphanumeric: (length) =>
      length === null
        ? 'letras ou dígitos'
        : plural(length, `${length} letra ou dígito`, `${length} letras ou dígitos`),
    any: (length) =>
      length === null ? 'qualquer coisa' : plural(length, `${length} caractere`, `${length} caracteres`),
  },
  skipped: 'pulado',
  scanned: 'Escaneado agora',
  readBy: (rule) => `lido pela regra “${rule}”`,
  readByStandard: 'lido por uma norma',
  notRead: 'Nada nela é lido.',
  teachThis: 'Ensinar esta etiqueta',
  lookAgain: 'Limpar',
  codesTitle: 'A etiqueta',
  codesHelp: 'Escaneie todos os códigos de uma etiqueta; cada leitura acrescenta um.',
  waiting: 'Esperando uma leitura…',
  addTyped: 'Digitar um código',
  remove: 'Remover este código',
  alreadyRead: 'Esta etiqueta já é lida sem regra:',
  tapHelp: 'Toque em um trecho e diga o que é. Toque em outro trecho para abranger os dois.',
  what: 'O que é?',
  nothing: 'Nada',
  from: 'Começa',
  to: 'Termina',
  earlier: 'antes',
  later: 'depois',
  ruleTitle: 'A regra',
  name: 'Nome da regra',
  nameHelp: 'Por exemplo de quem são as etiquetas.',
  nameMissing: 'Dê um nome à regra',
  replaces: (version) => `Substitui a versão ${version}.`,
  datePrinted: (field) => `${field}: impresso como`,
  asPrinted: 'deixar como impresso',
  reads: 'Ela lê desta etiqueta',
  pattern: 'Uma etiqueta serve se diz',
  tried: (count) =>
    plural(count, `Testada com ${count} etiqueta do log`, `Testada com ${count} etiquetas do log`),
  trying: 'Testando com o log…',
  fitsNone: 'Não serve para nenhuma, por isso nada do que se lê agora muda.',
  fits: (count) => `Serve para ${count} delas:`,
  contradicts: (count) =>
    plural(
      count,
      `${count} era lida de outro modo antes. Torne a regra mais restrita.`,
      `${count} eram lidas de outro modo antes. Torne a regra mais restrita.`,
    ),
  fitsAlso: (rule, count) => `A regra “${rule}” também serve para ${count} delas.`,
  disagrees: (rule, count) =>
    plural(
      count,
      `A regra “${rule}” também serve para ${count} delas e a lê de outro modo. Torne uma das duas mais restrita.`,
      `A regra “${rule}” também serve para ${count} delas e as lê de outro modo. Torne uma das duas mais restrita.`,
    ),
  readsAnew: (count) => `Diz mais do que antes: ${count}.`,
  variedTitle: 'Etiquetas formadas a partir desta',
  variedNot: 'Não é lida: aqui cada parte deve ter o tamanho da etiqueta ensinada.',
  before: 'antes',
  now: 'com esta regra',
  lostExamples: (count) =>
    plural(
      count,
      `${count} etiqueta que a versão atual lê não é mais lida.`,
      `${count} etiquetas que a versão atual lê não são mais lidas.`,
    ),
  approve: 'Deixar um líder aprovar',
  approveTitle: (rule) => `Aprovar a regra “${rule}”`,
  approveHelp: 'Todo tablet passa a ler etiquetas deste tipo por esta regra.',
  approved: (rule) => `As etiquetas agora são lidas por “${rule}”.`,
  doesNotRead: 'Não lê a etiqueta como foi marcada',
};
