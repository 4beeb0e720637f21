import type { words as english } from '../en/people.ts';
import { plural, type Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  whoTitle: 'Quem está trabalhando?',
  yourLanguage: 'Seu idioma, em todos os tablets',
  pinTitle: (name) => `PIN de ${name}`,
  pinHelp: 'De quatro a oito dígitos.',
  pinWrong: 'Esse não é o PIN.',
  pinLeft: (left) =>
    `Esse não é o PIN. ${plural(left, `Resta ${left} tentativa.`, `Restam ${left} tentativas.`)}`,
  pinLocked: (minutes) => `Tentativas demais. Travado por ${minutes} min.`,
  pinUnsafe: 'Um PIN só pode ser verificado numa página segura. Abra o aplicativo pelo endereço https.',
  notSeenHere: (name) =>
    `O servidor não responde, e este tablet nunca confirmou ${name}. Tente onde o servidor responde.`,
  pinNotHere: (name) =>
    `Este tablet ainda não conhece o PIN de ${name}. Digite-o uma vez onde o servidor responde, ou no tablet onde foi definido.`,
  seenTooLongAgo: (name) =>
    `O servidor não responde, e este tablet confirmou ${name} há mais de três dias. Tente onde o servidor responde.`,
  asking: 'Verificando…',
  enter: 'Pronto',
  erase: 'Apagar',
  nobody: 'Nenhuma pessoa neste tablet ainda. Adicione antes um engenheiro; ele adiciona os outros.',
  addFirst: 'Adicionar o primeiro engenheiro',
  awayTitle: (name) => `Sessão de ${name} encerrada`,
  awayHelp: (name) =>
    `O trabalho aberto fica guardado. ${name} entra de novo para continuar. Para qualquer outra pessoa ele é fechado.`,
  awayClose: 'Fechar trabalho aberto',
  badgeNeeded: (name) => `${name} não tem PIN: escaneie o crachá.`,
  scanBadge: 'Escaneie o crachá',
  badgeHelp: 'Com o leitor, ou digite o que está impresso sob o código.',
  badgeUnknown: 'Crachá desconhecido. Escaneie outro.',
  noPin: (name) => `${name} ainda não tem PIN. Um engenheiro define um em Planta.`,
  clearTitle: 'Um líder decide',
  clearHelp: 'Escaneie o crachá do líder. Depois digite PIN e motivo.',
  clearReason: 'Motivo',
  reasons: [
    'Aprovado pela engenharia para este lote',
    'Conferido e medido à mão',
    'Etiqueta danificada, componente confirmado',
    'Contado à mão',
  ],
  otherReason: 'Outro motivo',
  accept: 'Aceitar o rolo',
  decline: 'Recusar',
  cartKept: (f) => `${f.cart} tem agora ${f.carries} para ${f.slot}. ${f.held} fica fora do carrinho.`,
  cleared: (slot) => `Liberado para ${slot}.`,
  declined: 'Recusado. O rolo fica fora da linha.',
  withoutPasskey: 'Salvar sem ela',
  ownNotSigned: 'A chave de acesso não assinou; nada foi salvo.',
  withPasskey: 'Usar a chave de acesso',
  passkeyAsks: 'A chave de acesso é pedida a seguir.',
  passkeyFailed:
    'A chave de acesso não assinou, por isso nada foi escrito. Tente de novo, ou cancele e use o PIN.',
  needsRole: (role) => `Precisa de: ${role}`,
  quantityTitle: 'Quantas peças há no rolo?',
  quantityHelp: 'Como impresso ou contado. Dá para corrigir depois; o log guarda cada correção.',
  quantityWrong: 'Digite um número inteiro acima de zero.',
};
