import type { words as english } from '../en/values.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  title: (part) => `Medir ${part}`,
  ask: 'Ponha um componente deste rolo no medidor antes de ele alimentar.',
  which: 'O código pode significar vários valores. Escolha o certo.',
  wanted: (nominal, least, most, unit) => `Esperado: ${nominal} ${unit}, de ${least} a ${most} ${unit}`,
  meter: (percent, digits, guard) =>
    `Medidor: ± ${percent} % e ± ${digits} na última casa. Banda de guarda: ${guard} % disso.`,
  shows: (unit) => `O medidor mostra, em ${unit}`,
  help: 'Digite, ou deixe o medidor digitar.',
  wrong: 'Digite um número, por exemplo 10,02.',
  otherUnit: (unit) => `O medidor mostra outra coisa. Esperado: um número em ${unit}.`,
  check: 'Conferir o valor',
  cannot: 'Deixar sem medir',
  rule: {
    title: 'Componentes medidos antes de alimentar',
    help: 'Uma linha por classe de componentes. O valor vem da lista de componentes ou da nota do setup. Sem linha: sem conferência.',
    begins: 'PNs começam com (vazio: todos com valor)',
    add: 'Adicionar classe de componentes',
    percent: 'Medidor: ± % da leitura',
    digits: 'Medidor: ± dígitos da última casa',
    guard: 'Banda de guarda, % da incerteza do medidor',
    wrong: 'Digite os dados do medidor como números, e cada classe uma vez.',
  },
};
