import type { words as english } from '../en/server.ts';
import { plural, type Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  noKey: 'Esta página não pode assinar registros',
  noKeyHelp:
    'Chaves, câmera e início sem rede precisam de uma página segura. Abra o aplicativo pelo endereço https (o servidor o mostra, e como confiar nele), ou no próprio computador do servidor. Até lá, os registros ficam neste tablet.',
  alone: 'Este tablet trabalha sozinho',
  aloneHelp:
    'Ele verifica, avisa e guarda seu log sem servidor. Entre num para compartilhar o log com os outros tablets, também os registros antigos.',
  joinTitle: 'Entrar no servidor da planta',
  joinAgain: 'Entrar de novo',
  code: 'Código de uso único',
  codeHelp: 'Dez letras e dígitos, do tablet de um líder ou do servidor. Digite ou escaneie o código.',
  codeWrong: 'Um código tem dez letras e dígitos, ex.: ABCDE-23456.',
  name: 'Como as pessoas chamam este tablet',
  nameMissing: 'Digite um nome, para um líder distinguir os tablets.',
  join: 'Entrar',
  joining: 'Entrando…',
  joined: (plant) => `Entrou em: ${plant}.`,
  standing: 'Sincronização',
  phases: {
    alone: 'Fora do servidor',
    follower: 'Outra janela deste tablet sincroniza',
    syncing: 'Enviando e buscando…',
    live: 'Sincronizado: os tablets veem os registros uns dos outros na hora',
    waiting: 'Esperando para tentar de novo',
    refused: 'Recusado pelo servidor: alguém precisa agir',
  },
  plant: 'Planta',
  lastAnswer: 'Última resposta',
  ago: (span) => `há ${span}`,
  never: 'nenhuma desde que o aplicativo foi aberto',
  backlog: 'A enviar',
  entries: (count) => plural(count, `${count} registro`, `${count} registros`),
  nothing: 'nada, o servidor tem tudo',
  clock: 'Relógio',
  clockRight: 'igual ao do servidor',
  clockBehind: (span) => `${span} atrás do servidor: acerte-o`,
  clockAhead: (span) => `${span} à frente do servidor: acerte-o`,
  why: 'Por quê',
  quarantined: 'Separados',
  quarantinedHelp:
    'O servidor separou estes registros: o selo ou o lugar na cadeia não bate. Nada se perde; eles ficam aqui também. Chame o responsável pelo servidor.',
  rolledBack: 'O log do servidor pode ter voltado atrás',
  rolledBackHelp: (span) =>
    `Notado há ${span}: o servidor talvez tivesse menos que antes, como após restaurar um backup. Os tablets enviam de novo o que têm. Confira o log e a lista de tablets.`,
  rolledBackSeen: 'Já conferi',
  headFaults: {
    forked: 'O servidor mostra dois logs',
    'other-key': 'O servidor tem outra chave',
    'no-proof': 'O servidor não prova seu log',
  },
  headFaultHelp: {
    forked: (span) =>
      `Notado há ${span}: o log não continua aquele que mostrou antes. Alguém pode tê-lo alterado. Siga trabalhando e chame o responsável pelo servidor.`,
    'other-key': (span) =>
      `Notado há ${span}: ele assina com outra chave que quando este tablet entrou. Isso só é certo após mudar para outro computador. Pergunte ao responsável pelo servidor.`,
    'no-proof': (span) =>
      `Notado há ${span}: antes ele provava seu log. Siga trabalhando e pergunte ao responsável pelo servidor.`,
  },
  quarantinedHere: (count) =>
    plural(count, `${count} registro fica fora do log aqui`, `${count} registros ficam fora do log aqui`),
  quarantinedHereHelp:
    'O texto, a assinatura ou o relógio não está certo. Todos os outros registros entraram. Chame o responsável pelo servidor.',
  clocksOff: 'Relógios fora de hora',
  clockOfAhead: (name, span) => `${name}: ${span} à frente`,
  clockOfBehind: (name, span) => `${name}: ${span} atrás`,
  clocksOffHelp: 'Acerte-os: o que estes tablets escrevem pode ficar na ordem errada.',
  stateNears: (share) => `Aquilo de que um tablet novo parte ocupa ${share} do espaço`,
  stateNearsHelp:
    'Quando encher, um tablet novo lerá antes o log inteiro, por minutos. Adicione tablets de reserva enquanto é rápido e avise o responsável pelo servidor.',
  stateOver: 'Tablets novos começam devagar',
  stateOverHelp:
    'Aquilo de que um tablet novo parte é grande demais para ser entregue: ele lê antes o log inteiro, por minutos. Adicione-o antes de precisar e deixe-o aberto, na tomada. Nada se perde.',
  now: 'Sincronizar agora',
  causes: {
    unreachable: 'O servidor não responde. Siga trabalhando; os registros esperam aqui.',
    unreadable: 'O que responde não é o servidor da planta. Confira a rede.',
    'other-plant':
      'Este é o servidor de outra planta. Nada vai para lá; os registros esperam aqui. Não entre: chame o responsável pelo servidor.',
    'tablet-unknown': 'O servidor não conhece este tablet. Entre de novo com um código novo.',
    'tablet-revoked': 'Um líder excluiu este tablet. Ele pode entrar de novo com um código novo.',
    'code-wrong': 'Esse código é desconhecido, já foi usado ou tem mais de dez minutos. Peça um novo.',
    'tablet-active':
      'Este tablet ainda está admitido com uma chave antiga. Um líder o exclui antes; depois um código novo o admite.',
    'wire-too-old': 'Este aplicativo é mais antigo que o servidor. Recarregue-o onde o servidor responde.',
    'wire-too-new': 'Este aplicativo é mais novo que o servidor. O servidor precisa ser atualizado.',
    'time-off': 'O relógio deste tablet está errado demais. Acerte-o.',
    'signature-wrong': 'O servidor não aceita a chave deste tablet. Entre de novo com um código novo.',
    'person-unproven': 'A entrada expirou. Escaneie o crachá e digite o PIN de novo.',
    'role-lacking': 'Só um líder de turno ou engenheiro pode fazer isso.',
    'too-often': 'Tentativas demais. Espere um minuto.',
    'store-away': 'O servidor não alcança o armazenamento. Ele tenta de novo.',
    'store-full':
      'O disco do servidor está cheio. Os registros esperam aqui. Chame o responsável pelo servidor.',
    'store-read-only':
      'O servidor não consegue gravar o log. Os registros esperam aqui. Chame o responsável pelo servidor.',
    'server-fault': 'O servidor teve uma falha; veja o log dele. O tablet tenta de novo.',
    stopping: 'O servidor está parando.',
  },
  otherCause: (code) => `O servidor diz: ${code}.`,
  leadTitle: 'Outros tablets',
  leadHelp: 'Um líder ou engenheiro admite e exclui tablets: crachá e PIN.',
  leadOpen: 'Admitir ou excluir tablets',
  leadOffline: 'Só o servidor admite tablets, e ele não responde agora. Tente quando responder.',
  newCode: 'Novo código para um tablet',
  newScreenCode: 'Código para uma tela de parede',
  codeForScreen:
    'Na tela, abra o aplicativo e digite este código. Ela mostra todas as linhas e não pode mudar nada.',
  codeUntilScreen: (span) => `Para uma tela de parede, vale por ${span}.`,
  isScreen: 'tela de parede',
  screenNotEmpty:
    'Uma tela de parede precisa começar vazia, e este tablet tem registros. Use outro navegador e um novo código.',
  codeFor: 'No tablet novo, escaneie isto com a câmera, ou abra o aplicativo e digite o código.',
  codeUntil: (span) => `Para um tablet, vale por ${span}.`,
  codeOver: 'Este código expirou.',
  tablets: 'Tablets',
  seen: (span) => `visto por último há ${span}`,
  neverSeen: 'nunca visto desde que entrou',
  clockOff: (span) => `relógio errado em ${span}`,
  thisOne: 'este tablet',
  isOut: 'excluído',
  revoke: 'Excluir',
  revokeTitle: (name) => `Excluir ${name}?`,
  revokeHelp:
    'Para um tablet perdido ou vendido. Ele não envia nem busca mais. Os registros dele até aqui ficam no log.',
  revoked: (name) => `${name}: excluído.`,
  list: 'Atualizar',
};
