import type { words as english } from '../en/unproven.ts';
import { plural, type Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  page: 'Sem prova',
  none: 'Nada está sem prova: um tíquete do servidor está por trás de cada registro que pede um líder.',
  noTickets:
    'Esta planta ainda não dá tíquetes. Eles começam quando um líder digita um PIN onde o servidor responde.',
  help: 'Estes registros pedem um líder ou engenheiro e foram feitos sem tíquete do servidor. Eles valem no chão de fábrica. Um líder que os conhece confirma ou rejeita.',
  stands: {
    proven: 'provado por um tíquete',
    unproven: 'sem prova',
    confirmed: 'confirmado por um líder',
    rejected: 'rejeitado por um líder',
    'before-tickets': 'feito antes dos tíquetes',
  },
  right: 'Direito',
  why: {
    'no-ticket': (role) => `Sem tíquete do servidor: nada prova que uma pessoa na função “${role}” fez isto.`,
    'ticket-over': () => 'O tíquete não cobria esta hora.',
    role: (role) => `O tíquete é de uma função menor. Necessária: ${role}.`,
  },
  before: 'Esta planta ainda não dava tíquetes quando isto foi escrito.',
  by: (name) => `por ${name}`,
  nobody: 'ninguém citado',
  confirm: 'Confirmar',
  reject: 'Rejeitar',
  confirmAll: (count) => plural(count, 'Confirmar', `Confirmar todos os ${count}`),
  confirmTitle: (count) => plural(count, 'Foi feito como diz?', `Os ${count} foram feitos como dizem?`),
  rejectTitle: 'Não foi feito por esta pessoa?',
  rejectHelp:
    'O registro fica, marcado como rejeitado. O que ele mudou no chão de fábrica também fica: corrija você mesmo.',
  rejectPerson: 'No servidor a mudança desta pessoa não vale. Veja as pessoas em Planta e acerte a lista.',
  reason: 'Como você sabe?',
  needsServer: 'Para isto o servidor precisa responder: só então se prova quem decide.',
  notProven:
    'Isso foi escrito, mas sem tíquete, por isso não decide nada. Tente de novo onde o servidor responde.',
  confirmed: (count) => plural(count, 'O registro está confirmado.', `${count} registros estão confirmados.`),
  rejected: 'O registro está rejeitado.',
  engineerOnly: (count) =>
    plural(
      count,
      `${count} deles precisa da palavra de um engenheiro.`,
      `${count} deles precisam da palavra de um engenheiro.`,
    ),
  badgeAlone: (name) =>
    `${name} entrou só com o crachá. O que pede um líder fica sem prova. Entre com nome e PIN para provar.`,
  settled: { confirmed: 'confirmado', rejected: 'rejeitado' },
};
