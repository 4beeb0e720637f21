import type { words as english } from '../en/this-plant.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  name: 'Nome da planta',
  nameHelp: 'Aparece em folhas de carga, crachás e exportações.',
  zoneHelp: 'Linhas novas começam com ele.',
  nameMissing: 'Digite o nome da planta.',
  zoneUnknown: 'Escolha um fuso horário da lista.',
  same: 'Nada mudou.',
  save: 'Salvar o nome',
  saved: (name) => `${name}: salvo.`,
  fileTitle: 'Um arquivo para uma segunda planta',
  fileHelp:
    'Contém linhas, máquinas, bancos, regras, regras de componentes, checklists e regras de etiquetas. Não contém pessoas, rolos, setups nem histórico.',
  noLine: 'Ainda não há linha.',
  fileSave: 'Salvar o arquivo',
  fileSaved: (name) => `${name}: salvo.`,
  beginTitle: 'Começar com o arquivo de outra planta',
  beginHelp: 'Foi salvo na outra planta, nesta página ou com “reelward plant”.',
  notEmpty: 'Esta planta já tem linhas. O arquivo serve só para uma planta sem linhas.',
  begun: 'As linhas e as regras estão aqui. Siga com o próximo passo.',
  choose: 'Escolher o arquivo',
  brings: 'Traz:',
  bringsOf: (name) => `De ${name} traz:`,
  counts: {
    lines: 'Linhas',
    slots: 'Slots',
    parts: 'Regras de componentes',
    checklists: 'Checklists',
    labelRules: 'Regras de etiquetas',
  },
  begin: 'Usar este arquivo',
  toSteps: 'Primeiros passos',
  faults: {
    'not-json': 'Este não é o arquivo de uma planta. Escolha o que a outra planta salvou.',
    'not-a-plant': 'É um arquivo de outro tipo. Escolha o que a outra planta salvou.',
    newer: 'Uma versão mais nova escreveu este arquivo. Atualize primeiro este tablet.',
    'no-lines': 'Não há linha neste arquivo. Salve-o de novo na outra planta.',
    kind: (at, what) =>
      `O registro ${at} (${what}) não cabe num arquivo assim. Salve-o de novo na outra planta.`,
    payload: (at, what) =>
      `O registro ${at} (${what}) está danificado. Salve o arquivo de novo na outra planta.`,
  },
};
