import type { TemplateFault } from '../../../../shared/checklist/steps.ts';
import type { StepCondition, StepKind } from '../../../../shared/floor/checklist.ts';
import type { words as english } from '../en/template.ts';
import { plural, type Sentences } from '../words.ts';

const kindsPt: Readonly<Record<StepKind, string>> = {
  tick: 'marcar',
  measure: 'valor medido',
  scan: 'leitura',
  choice: 'escolha',
  photo: 'foto',
  note: 'nota',
  sign: 'assinatura',
  known: 'verificado pelo aplicativo',
};

const conditionsPt: Readonly<Record<StepCondition, string>> = {
  always: 'sempre',
  'side-changes': 'se o lado muda',
  'stencil-changes': 'se o estêncil muda',
  'product-changes': 'se o produto muda',
  'program-changes': 'se o programa muda',
};

const faultsPt: Readonly<Record<TemplateFault['code'], string>> = {
  'no-title': 'Dê um nome ao checklist.',
  'no-steps': 'O checklist não tem passo.',
  'step-twice': 'O mesmo passo está duas vezes.',
  'no-text': 'Falta um texto.',
  'limits-crossed': 'O limite inferior está acima do superior.',
  'no-options': 'Uma escolha precisa de duas opções ou mais.',
  'right-not-listed': 'Uma resposta certa não está entre as opções.',
  'no-unit': 'Um valor medido precisa de unidade.',
  'nothing-known': 'Escolha o que deve ser verdade. Só um checklist de troca pode pedir isso.',
  'signatures-differ': 'Toda assinatura precisa de uma função.',
};

export const words: Sentences<typeof english> = {
  kinds: kindsPt,
  conditions: conditionsPt,
  faults: faultsPt,
  times: { running: 'com a linha rodando', stopped: 'com a linha parada' },
  version: (version, steps) => `versão ${version} · ${plural(steps, `${steps} passo`, `${steps} passos`)}`,
  edit: 'Editar',
  title: 'Nome',
  language: 'Adicionar um idioma',
  noLanguage: 'nenhum',
  text: 'Texto',
  group: 'Título',
  caution: 'Cuidado',
  kind: 'Respondido por',
  time: 'Quando',
  condition: 'Condição',
  mandatory: 'Obrigatório',
  least: 'No mínimo',
  most: 'No máximo',
  unit: 'Unidade',
  expects: 'Texto que a leitura deve dar',
  options: 'Opções, separadas por vírgulas',
  right: 'Respostas certas, separadas por vírgulas',
  signature: (number) => `Assinatura ${number}`,
  noSignature: 'nenhuma',
  wants: 'O que se escaneia',
  wantNames: {
    stencil: 'um estêncil',
    paste: 'um pote de pasta',
    program: 'um programa',
    feeder: 'um feeder desta planta',
    slot: 'um slot desta linha',
    reel: 'um rolo desta planta',
    other: 'outro código da planta',
  },
  knows: 'O que deve ser verdade',
  factNames: {
    moves: 'não faltam movimentos de feeder',
    slots: 'todo slot tem seu rolo verificado',
    'first-panel': 'o primeiro painel foi conferido e está certo',
  },
  up: 'Mais cedo',
  down: 'Mais tarde',
  remove: 'Remover',
  add: 'Adicionar um passo',
  done: 'Pronto',
  save: (version) => `Salvar como versão ${version}`,
  saved: (version) => `Versão ${version} salva. Checklists abertos ficam como estão.`,
  help: 'Uma versão nunca muda. Checklists abertos e fechados mantêm a versão com que foram abertos.',
  newGroup: 'Mais',
};
