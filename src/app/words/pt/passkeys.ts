import type { words as english } from '../en/passkeys.ts';
import { plural, type Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  open: (count) => plural(count, `${count} chave de acesso`, `${count} chaves de acesso`),
  openOf: (shown, name) => `${shown} de ${name}`,
  title: (name) => `Chaves de acesso de ${name}`,
  help: 'Uma chave de acesso prova quem decidiu: o bloqueio deste tablet ou uma chave que se encosta nele. Sem ela, o PIN decide.',
  none: 'Nenhuma chave de acesso ainda.',
  where: {
    unsafe:
      'Chaves de acesso precisam de uma página segura. Abra o aplicativo pelo endereço https. Aqui o PIN decide.',
    'by-number':
      'Chaves de acesso precisam do endereço do aplicativo por nome, não por número. Aqui o PIN decide.',
    none: 'Este navegador não tem chaves de acesso. Aqui o PIN decide.',
  },
  who: (name) => `Só ${name} ou um engenheiro pode fazer isto. Escaneie o crachá e digite o PIN.`,
  notThem: (name) => `Só ${name} ou um engenheiro.`,
  add: 'Adicionar uma chave de acesso',
  name: 'Como ela se chama?',
  nameHelp: 'Por exemplo “chave azul” ou “tablet da frente da linha”.',
  nameMissing: 'Digite um nome.',
  make: 'Criar agora',
  made: (name) => `Chave de acesso “${name}” adicionada.`,
  notMade: 'Nenhuma chave de acesso foi criada. Encoste a chave no tablet ou desbloqueie-o, e tente de novo.',
  remove: 'Remover',
  removeOf: (name) => `Remover a chave de acesso ${name}`,
  removed: (name) => `Chave de acesso “${name}” removida.`,
  addedBy: (name, host) => `adicionada por ${name}, para a página em ${host}`,
  fell: 'A contagem dela caiu: pode ter sido copiada. Remova-a e crie outra.',
  unproven: 'Nada prova quem a adicionou. Ela não prova nada até um líder confirmar isso em Log.',
  signed: 'Assinado',
  byPasskey: (name) => `provado pela chave de acesso de ${name}`,
  pinOnly: 'só PIN, informado pelo tablet',
  refused: 'A chave de acesso não prova isto: assinou outra coisa, ou não é desta pessoa.',
  checking: 'Verificando…',
};
