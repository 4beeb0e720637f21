import type { words as english } from '../en/lines.ts';
import { plural, type Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  add: 'Adicionar uma linha',
  edit: 'Alterar',
  editOf: (name) => `Alterar ${name}`,
  machines: (count) => plural(count, `${count} máquina`, `${count} máquinas`),
  slots: (count) => plural(count, `${count} slot`, `${count} slots`),
  fromSheets:
    'Alguns slots só são conhecidos por folhas de setup. Abra a linha para dar a eles o nome que está escrito na máquina.',
  newTitle: 'Uma linha nova',
  newName: (number) => `Linha ${number}`,
  name: 'Nome',
  zone: 'Fuso horário',
  zoneHelp: 'De onde a linha está, por exemplo America/Sao_Paulo.',
  help: 'Para cada banco, digite o primeiro e o último slot como estão escritos na máquina.',
  bankOf: (number) => `Banco ${number}`,
  removeOf: (number) => `Remover o banco ${number}`,
  first: 'Primeiro slot',
  last: 'Último slot',
  addAcross: (slot) => `Adicionar o outro lado: ${slot}`,
  addMachine: (slot) => `Adicionar a próxima máquina: ${slot}`,
  addBank: 'Adicionar um banco',
  holdsTrays: 'Bandejas, sem feeders',
  trays: 'bandejas',
  lanes: {
    title: 'Pistas',
    help: 'Um transportador pode levar dois produtos ao mesmo tempo. Cada pista tem sua própria produção; todas usam os mesmos slots.',
    add: 'Adicionar uma pista',
    name: (number) => `Nome da pista ${number}`,
    called: (line, number) => `${line}, pista ${number}`,
    removeOf: (number) => `Remover a pista ${number}`,
    held: {
      runs: (lane) => `${lane} está produzindo. Encerre antes a produção.`,
      reels: (slots) => `Retire antes o que só esta pista usa: ${slots}.`,
      open: 'Ainda aberto nesta pista: rolo retido, passagem de turno, troca, checklist, conferência, pasta, estação de contagem, feeder pronto ou carrinho. Termine isso antes.',
    },
  },
  picture: 'Como fica a linha',
  save: 'Salvar linha',
  saved: (name) => `${name}: salva.`,
  faults: {
    'no-number': 'Os dois devem terminar em número: M1-F-001 e M1-F-025.',
    differs: 'Só o número no fim pode mudar.',
    'not-from-one': 'O primeiro slot deve ser o número 1.',
    backwards: 'O último número é menor que o primeiro.',
    'too-many': 'Um banco tem no máximo 500 slots.',
    twice: 'Este banco já está na lista.',
  },
  obstacles: {
    ranges: (count) =>
      plural(count, 'Corrija o banco marcado acima.', `Corrija os ${count} bancos marcados acima.`),
    'name-missing': 'Digite um nome.',
    'lanes-alike': 'Dê a cada pista um nome próprio.',
    'zone-unknown': 'Escolha um fuso horário da lista.',
    'no-banks': 'Digite antes os slots de um banco.',
    lost: (slots, count) =>
      plural(
        count,
        `O slot ${slots} está em uso. Mantenha-o.`,
        `${count} slots em uso sumiriam: ${slots}. Mantenha-os.`,
      ),
  },
};
