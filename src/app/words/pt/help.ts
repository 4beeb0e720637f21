import type { words as english } from '../en/help.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  title: (screen) => `Ajuda: ${screen}`,
  practise: 'Treinar com um guia',
  lines: {
    line: [
      'Uma fita termina onde o rolo acaba. Emende dentro do colchete.',
      'A faixa no topo mostra a próxima ronda. Toque nela quando for.',
      'A barra acima inicia, para e conta a produção.',
    ],
    load: [
      'Toque em um banco para ver os slots. A linha mostra o que falta carregar.',
      'Escaneie o slot, depois o rolo.',
      'Círculo: aceito. Octógono: recusado. Losango: retido para o líder.',
    ],
    change: [
      'Escolha o próximo produto. Cada movimento fica em uma lista.',
      'Faça um movimento por vez e escaneie o que coloca.',
      'Termine o checklist e confira o primeiro painel. Depois libere a produção.',
    ],
    stock: [
      'Veja quais rolos levar, e até quando.',
      'Abra um rolo para contar, guardar ou bloquear.',
      'Um rolo que deve ficar seco mostra o floor life.',
    ],
    log: [
      'Cada ato fica aqui com hora e pessoa. Nada é removido.',
      'Do lote aos painéis, ou do painel aos rolos.',
      'Veja o turno, passe o turno e exporte o log.',
    ],
    plant: [
      'Importe um setup e escolha o que produzir.',
      'Adicione pessoas, etiquetas e as regras da linha.',
      'Treine em uma cópia da linha. Nada conta ali.',
    ],
    search: [
      'Escaneie ou digite um código, nome ou número.',
      'Os resultados vêm por tipo.',
      'Toque em um resultado para abrir.',
    ],
    lines: [
      'Cada fileira é uma linha, com a produção e a próxima ronda.',
      'Sino: um aviso espera. Losango: há um rolo retido.',
      'Toque em uma fileira para trabalhar nessa linha.',
    ],
  },
};
