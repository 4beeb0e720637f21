import type { words as english } from '../en/in-line.ts';
import { plural, type Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  title: 'Painéis na linha',
  help: 'Onde um rolo muda, estes painéis ficam em dúvida. Digite o máximo que pode haver, contando um painel parado antes de uma máquina. Uma suposição vale onde ninguém digitou.',
  behind: (machine) => `${machine}: painéis prontos aqui e ainda não contados, no máximo`,
  before: (machine) => `${machine}: painéis contados antes de chegar nela, no máximo`,
  missed: 'Painéis que passam sem ser contados, no máximo',
  guess: (most) => `Não informado: supõem-se até ${most} (prática comum).`,
  seen: (panels, most) =>
    plural(
      panels,
      `${panels} painel foi escaneado nos dois lugares: havia até ${most} no meio.`,
      `${panels} painéis foram escaneados nos dois lugares: havia até ${most} no meio.`,
    ),
  takeSeen: 'Usar o que as leituras mostram',
  takeHelp:
    'O que se viu não é um limite: digite mais onde pode haver mais. O que as leituras mostrarem além disso amplia sozinho.',
  scansHere: 'Painéis escaneados neste tablet',
  count: 'São contados',
  goInto: (machine) => `Entram em ${machine}`,
  scansHelp:
    'Escaneie alguns painéis antes de uma máquina e de novo onde são contados: assim a linha aprende quantos ficam no meio.',
  save: 'Salvar painéis na linha',
  saved: 'Salvo. Os rastreios passam a usar isto.',
  wrong: 'Digite números inteiros de 0 a 500, e uma parcela abaixo de 50 %.',
  exitOpen: 'Abrir a tela de saída',
  exitTitle: 'Painéis feitos',
  exitHelp: 'Escaneie cada painel ao sair da linha.',
  exitCounted: 'Contado:',
  exitBefore: 'Já lido, nada somado:',
  exitOther: 'Não é um painel, nada somado:',
  exitNoRun: 'Nenhuma produção nesta linha. Inicie primeiro.',
  exitLost: 'Esta página perdeu o teclado. Toque aqui antes de ler.',
  exitLeave: 'Sair desta tela',
};
