import type { words as english } from '../en/times.ts';
import { plural, type Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  loading: 'Lendo o log…',
  running: 'A linha está rodando. O tempo conta a partir do último painel bom.',
  stopped: 'A linha está parada. Conta como parada quando o último painel bom for confirmado.',
  madeReady: (span) => `${span} de preparo antes`,
  standing: 'Linha ficou parada',
  external: 'Preparado com a linha rodando',
  paused: (span) => `${span} de intervalos e paradas planejadas ficam de fora.`,
  before: 'Comparado com trocas anteriores do mesmo tipo',
  noneBefore: 'Nenhuma troca anterior entre estes dois produtos está no log.',
  thisOne: 'esta',
  people: 'Por pessoa',
  nobody: 'ninguém no sistema',
  marks: (count) => plural(count, `${count} ação`, `${count} ações`),
  steps: 'Ações mais longas',
  kinds: {
    step: 'checklist',
    skip: 'pulado',
    load: 'colocado',
    unload: 'retirado',
    measure: 'medido',
    look: 'olhado',
  },
  none: 'Nada foi marcado ou escaneado nesta troca ainda.',
  where: 'Para onde foram os minutos',
  axis: 'min',
  legend: { act: 'ação', outside: 'podia ser feita antes', stop: 'intervalo ou parada planejada' },
  median: (count, span) =>
    count === 1 ? `A anterior levou ${span}.` : `A mediana de ${count} anteriores é ${span}.`,
  longer: (span) => `Esta ficou ${span} mais parada.`,
  shorter: (span) => `Esta ficou ${span} menos parada.`,
  asMedian: 'Esta ficou parada mais ou menos o mesmo tempo.',
  medianMark: (span) => `mediana das anteriores, ${span}`,
  saved: (steps, span) =>
    plural(
      steps,
      `${steps} passo podia ser feito antes do último painel. A linha teria ficado até ${span} menos parada.`,
      `${steps} passos podiam ser feitos antes do último painel. A linha teria ficado até ${span} menos parada.`,
    ),
  outside: 'Podia ser feito com a linha rodando',
  late: 'previsto para a linha rodando, feito com ela parada',
  candidate: 'não põe a mão dentro: decida se pode ser feito antes',
  noneOutside: 'Toda ação feita com a linha parada precisa dela parada.',
  how: 'Cada tempo conta da ação anterior da mesma pessoa.',
};
