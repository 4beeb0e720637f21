import type { Layout } from '../../scan/layouts.ts';
import type { words as english } from '../en/scanner.ts';
import { plural, type Sentences } from '../words.ts';

const layoutsPt: Readonly<Record<Layout, string>> = {
  us: 'inglês (EUA)',
  uk: 'inglês (Reino Unido)',
  german: 'alemão',
  'swiss-german': 'alemão suíço',
  french: 'francês',
  spanish: 'espanhol',
  italian: 'italiano',
  swedish: 'sueco',
};

export const words: Sentences<typeof english> = {
  layouts: layoutsPt,
  title: 'Escaneie este código com o leitor',
  help: 'Desta tela, de outra ou da folha impressa. Com esta página aberta, as leituras não vão a outro lugar.',
  codeLabel: 'Código de calibração',
  striped: 'Um leitor que só lê códigos de barras',
  stripedLabel: 'Código de barras de calibração',
  stripedHelp:
    'Largo demais para uma tela pequena: ali, imprima a folha. Códigos de barras levam um só separador, por isso só ele é testado.',
  stripedSheet: 'Para um leitor que só lê códigos de barras:',
  print: 'Imprimir a folha',
  waiting: 'Esperando uma leitura…',
  right: 'Este leitor está bem ajustado.',
  rightText: 'Letras, sinais e separadores chegam como impressos.',
  plainOnly: 'Códigos simples são lidos; etiquetas com separadores, não.',
  plainOnlyText: 'Tais etiquetas são recusadas até o leitor ser ajustado como abaixo.',
  wrong: 'Ainda não se pode confiar neste leitor.',
  wrongText: 'O que ele lê não chega como impresso.',
  findings: {
    'all-equal': 'Todos os caracteres chegaram como impressos.',
    'half-arrived': (found, wanted) =>
      `Só ${plural(wanted, `${found} de ${wanted} caractere chegou`, `${found} de ${wanted} caracteres chegaram`)}: a leitura foi cortada. Ponha o intervalo entre caracteres em zero, ou traga o leitor mais perto da base.`,
    'layout-differs': (scanner, tablet) =>
      `O leitor digita para um teclado ${scanner}, o tablet espera ${tablet}. Ajuste o teclado do leitor para ${tablet}, ou o do tablet para ${scanner}.`,
    'characters-differ':
      'Os caracteres chegam trocados, e nenhum teclado conhecido aqui explica isso. Ajuste o teclado do leitor ao do tablet e escaneie de novo.',
    'case-inverted':
      'Maiúsculas e minúsculas chegam trocadas. Desligue o Caps Lock e ajuste o leitor para deixar as letras como impressas.',
    'separators-lost': (names) =>
      `Os separadores não chegam (${names}). Ajuste o leitor para enviar caracteres de controle, como Ctrl com uma tecla ou como Alt com o teclado numérico.`,
    'separator-replaced': (name, by) =>
      `O separador ${name} chega como “${by}”. Ajuste o leitor para enviar caracteres de controle como são.`,
    'terminator-missing':
      'Sem Enter no fim, o término de uma leitura é um palpite. Ajuste o sufixo do leitor para Enter.',
    'unknown-key': (key) =>
      `A tecla “${key}” veio no meio da leitura. Tire essas teclas dos ajustes do leitor.`,
    slow: (pace) => `${pace} ms entre dois caracteres é lento. Ponha o intervalo entre caracteres em zero.`,
    'symbology-id-sent': (id) =>
      `O leitor envia na frente o tipo de código (${id}). Isso é entendido e pode ficar.`,
  },
  wanted: 'impresso',
  found: 'chegou',
  label: {
    title: 'Leia uma etiqueta impressa',
    help: 'De um slot, um feeder, um crachá ou um rolo.',
    read: 'Esta etiqueta é lida.',
    unknown: 'Este tablet não conhece esta etiqueta.',
    unknownHelp: 'Leia de novo. Se não ajudar, imprima maior ou adicione antes à planta.',
  },
  arrived: 'O que chegou',
  none: 'Nada ainda. Escaneie qualquer coisa: aparece aqui, com os caracteres de controle.',
  characters: (count) => plural(count, `${count} caractere`, `${count} caracteres`),
  pace: (ms) => `${ms} ms cada`,
  endedBy: { Enter: 'depois Enter', Tab: 'depois Tab', silence: 'sem Enter' },
  reads: 'lê-se como',
  readsNothing: 'nenhuma etiqueta conhecida',
  settingsTitle: 'Como ajustar um leitor',
  settings: [
    'Funciona como teclado (HID).',
    'País do teclado: o mesmo do tablet.',
    'Envia caracteres de controle, como Ctrl com uma tecla ou Alt com o teclado numérico.',
    'Sufixo: Enter. Sem prefixo.',
    'Letras como impressas: sem trocar maiúsculas e minúsculas.',
    'Sem intervalo entre caracteres.',
  ],
  keep: 'Salvar o ritmo deste leitor neste tablet',
  keptNow: 'Salvo. Este tablet distingue leitura de digitação por este ritmo.',
  isKept: 'Este tablet salvou o ritmo do seu leitor.',
  forget: 'Usar o ritmo comum',
  sheetTitle: 'Calibração do leitor',
  sheetText: 'Abra Planta, Leitor no tablet e escaneie este código.',
  sheetHolds: 'O código contém:',
  fields: {
    part: 'componente',
    supplierPart: 'PN do fornecedor',
    quantity: 'quantidade',
    lot: 'lote',
    dateCode: 'date code',
    reel: 'rolo',
  },
};
