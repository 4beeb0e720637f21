import type { words as english } from '../en/shell.ts';
import { plural, type Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  nav: {
    line: 'Linha',
    load: 'Carga',
    change: 'Troca',
    stock: 'Rolos',
    log: 'Log',
    plant: 'Planta',
  },
  noLine: 'Nenhuma linha ainda',
  noSetup: 'nenhum setup escolhido',
  side: { top: 'superior', bottom: 'inferior' },
  revision: (revision) => `rev ${revision}`,
  run: (done, wanted) => plural(wanted, `${done} de ${wanted} painel`, `${done} de ${wanted} painéis`),
  signIn: 'Entrar',
  signInFirst: 'Escaneie antes o crachá',
  needsRole: (role) => `Precisa de: ${role}`,
  signInHelp: 'Escaneie seu crachá ou escolha seu nome.',
  signedInAs: (name) => `No sistema: ${name}`,
  signOut: 'Sair',
  roles: { operator: 'Operador', lead: 'Líder de turno', engineer: 'Engenheiro' },
  offlineReady: 'Pronto para uso sem rede',
  gettingReady: 'Preparando o uso sem rede…',
  toSend: (count) => `${count} a enviar`,
  skipToDock: 'Ir para Digitar e Câmera',
  done: 'Pronto',
  cancel: 'Cancelar',
  detailsOf: (what) => `Mais: ${what}`,
  lessOf: (what) => `Menos: ${what}`,
  close: 'Fechar',
  newVersion: 'Há uma nova versão pronta.',
  update: 'Atualizar agora',
  updateLater: 'Ela espera até não haver tarefa aberta.',
  languageLater: 'Esse idioma ainda não está neste tablet. Conecte-o à rede e escolha de novo.',
  leftAlone: (name, minutes) =>
    `Sessão de ${name} encerrada: ${plural(minutes, `${minutes} minuto sem toque`, `${minutes} minutos sem toque`)}. O trabalho aberto fica guardado.`,
  shiftOver: (name) => `Sessão de ${name} encerrada: passou um turno. O trabalho aberto fica guardado.`,
  notInPractice: 'Não disponível no treino',
  fault: {
    'disk-full': {
      title: 'Este tablet está cheio',
      text: 'Aqui nada mais pode ser gravado nem verificado. Tudo o que foi aceito está seguro. Trabalhe em outro tablet. Libere espaço neste e tente de novo.',
    },
    'closed-by-newer': {
      title: 'Uma versão mais nova está aberta em outra janela',
      text: 'Esta janela é de uma versão anterior e parou. Tudo o que foi aceito está seguro. Recarregue para continuar.',
    },
    lost: {
      title: 'Não foi possível abrir o log deste tablet',
      text: 'Trabalhe em outro tablet e chame o responsável pelos tablets. Não limpe os dados do navegador: registros não enviados talvez ainda possam ser salvos.',
    },
    unknown: {
      title: 'Não foi possível gravar o log',
      text: 'O que apareceu como feito está seguro. A última ação não foi gravada. Recarregue e confira o log antes de continuar.',
    },
  },
  reload: 'Recarregar',
  tryAgain: 'Tentar de novo',
  muted: 'Sem som até você tocar na tela',
  storageLow: (megabytes) => `Restam só ${megabytes} MB para o log neste tablet.`,
};
