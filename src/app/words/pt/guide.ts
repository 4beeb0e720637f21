import type { words as english } from '../en/guide.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  title: 'Treino guiado',
  about: 'Um passo por vez. Saia quando precisar: continua no mesmo passo.',
  guides: {
    operator: 'Três rolos, um deles errado. Uma emenda. Um aviso.',
    lead: 'Um rolo retido para decidir. Uma exportação.',
    engineer: 'Um setup para importar.',
  },
  start: 'Iniciar o guia',
  goOn: (at, of) => `Continuar no passo ${at} de ${of}`,
  again: 'Recomeçar no passo 1',
  step: (at, of) => `Passo ${at} de ${of}`,
  leave: 'Sair do guia',
  go: 'Mostrar onde',
  skip: 'Pular este passo',
  still: 'Isso foi outra coisa. O passo continua aberto.',
  over: 'Todos os passos estão feitos. Continue como quiser ou encerre o treino.',
  noLead: 'Esta planta ainda não tem líder. Adicione um primeiro.',
  example: 'Usar a folha de exemplo',
  steps: {
    first: {
      ask: 'Toque em uma etiqueta de slot, depois no rolo certo.',
      seen: (slot) => `${slot}: aceito.`,
    },
    wrong: {
      ask: (group) => `Toque em uma etiqueta de slot, depois em um rolo errado. Veja “${group}”.`,
      seen: (slot) => `${slot}: recusado. Esse rolo não pode entrar.`,
    },
    second: {
      ask: 'Toque em mais um slot, depois no rolo certo.',
      seen: (slot) => `${slot}: aceito.`,
    },
    splice: {
      ask: (group) => `Emenda: em “${group}”, toque em um slot, depois no rolo.`,
      seen: (slot) => `${slot}: emendado.`,
    },
    run: {
      ask: 'Inicie a produção na linha.',
      seen: 'A produção começou.',
    },
    warning: {
      ask: 'Conte painéis na linha até um slot avisar.',
      seen: (slot) => `${slot}: há um aviso.`,
    },
    answer: {
      ask: (act) => `Toque em “${act}” ao lado do aviso, ou emende esse slot.`,
      seen: 'O aviso foi respondido.',
    },
    hold: {
      ask: 'Toque em uma etiqueta de slot, depois no rolo sem quantidade.',
      seen: (slot) => `${slot}: retido. Um líder deve decidir.`,
    },
    clear: {
      ask: 'Decida como líder: crachá, PIN, motivo.',
      seen: 'Decidido, com seu nome no log.',
    },
    export: {
      ask: (act) => `No log, toque em “${act}”, depois em CSV. No treino nenhum arquivo é salvo.`,
      seen: 'Exportação pedida. Nenhum arquivo foi salvo.',
    },
    open: {
      ask: (page) => `Abra “${page}”.`,
      seen: (page) => `“${page}” está aberta.`,
    },
    take: {
      ask: (example, act) => `Toque em “${example}”. Veja o que muda, depois toque em “${act}”.`,
      seen: (product) => `${product}: importado.`,
    },
    look: {
      ask: (page) => `Encontre-o em “${page}”.`,
      seen: 'Está na lista.',
    },
  },
};
