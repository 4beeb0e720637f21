import type { words as english } from '../en/count.ts';
import { plural, type Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  title: (what) => `Quantas peças: ${what}`,
  ways: { typed: 'Digitado', machine: 'Contador ou máquina', weighed: 'Pesado', measured: 'Medido' },
  wayHelp: {
    typed: 'O número da etiqueta ou a sua contagem.',
    machine: 'O que mostra um contador de rolos ou a máquina.',
    weighed: 'Pese este rolo. Os pesos cheio e vazio do componente ficam salvos.',
    measured: 'Meça o diâmetro da fita enrolada, não o da borda.',
  },
  fields: {
    parts: 'Peças',
    massG: 'Este rolo, g',
    emptyG: 'Rolo vazio, g',
    fullMassG: 'Rolo cheio, g',
    outerMm: 'Fita enrolada D, mm',
    hubMm: 'Cubo d, mm',
    fullOuterMm: 'D de um rolo cheio, mm',
    thicknessMm: 'ou espessura da fita, mm',
    pitchMm: 'Passo, mm',
    fullParts: 'Peças num rolo cheio',
  },
  wrong: {
    missing: 'ainda falta',
    notNumber: 'não é um número',
    tooSmall: 'pequeno demais para os outros valores',
    tooLarge: 'maior que um rolo cheio',
  },
  picture:
    'Um rolo visto de lado: D é o diâmetro da fita enrolada, d o do cubo. A borda é mais larga que a fita.',
  flange: 'borda',
  wound: 'fita enrolada',
  hub: 'cubo',
  remembered: (parts) => `De um rolo cheio de ${parts}, medido antes.`,
  result: (parts, sd) => plural(parts, `${parts} ± ${sd} peça`, `${parts} ± ${sd} peças`),
  before: (parts, sd, basis) => `O log diz ${parts} ± ${sd} (${basis}).`,
  beforeUnknown: 'O log ainda não tem quantidade.',
  printed: (share, least, isEntered) =>
    `Números impressos ou digitados valem ± ${share}${isEntered ? ' (das regras da linha)' : ' (prática comum)'}, no mínimo ± ${least} (prática comum).`,
  agree: 'As duas contagens batem. Juntas:',
  contradicts: 'As duas contagens não batem. Confira o rolo e escolha.',
  takeNew: 'Usar a contagem nova',
  takeBoth: 'Usar as duas juntas',
  take: 'Usar esta contagem',
  bases: {
    'one-by-one': 'contadas uma a uma',
    label: 'etiqueta',
    typed: 'digitado',
    machine: 'contador',
    weighed: 'pesado',
    measured: 'medido',
    'counted-down': 'descontado pelo uso',
    combined: 'várias contagens',
  },
  saved: (slot, parts, sd) =>
    `${slot}: agora ${plural(parts, `${parts} ± ${sd} peça`, `${parts} ± ${sd} peças`)}.`,
  leftTitle: (slot) => `Descarregar ${slot}: o que sobrou?`,
  leftHelp: 'O que sobrou mostra quanto o feeder perdeu. Conte agora, ou deixe o estoque contar depois.',
  offLanes: {
    ask: 'O que sai?',
    one: (slot) => `Só o rolo em ${slot}`,
    all: (slots) => `O feeder inteiro, com ${slots}`,
  },
  leftEmpty: 'Nada: está vazio',
  leftCount: 'Contar',
  leftUnknown: (parts) => `Não contado: cerca de ${parts}`,
  leftUnknownPlain: 'Não contado',
  lost: (feeder, lost, picks, share) =>
    `${feeder} perdeu ${plural(picks, `${lost} de ${picks} coleta`, `${lost} de ${picks} coletas`)} (${share}).`,
  moreThanGone: 'Montou-se mais do que saiu do rolo: uma contagem está errada. A perda fica como estava.',
  unlikely: (feeder, share, bound) =>
    `${feeder} teria perdido ${share}. É improvável (acima de ${bound}): confira as contagens. A perda fica como estava.`,
  leftOut: (count, bound) =>
    `Não usados: ${count}. Perda acima de ${bound} é improvável (0,1–3 % é prática comum; o limite é nosso).`,
  lossTitle: 'Coletas perdidas',
  lossNone: 'Nenhum rolo com contagem conhecida terminou ainda. Até lá vale a perda suposta da linha.',
  lossRow: (share, low, high) => `${share} (${low} a ${high})`,
  skipsUnknown: (reels) =>
    plural(
      reels,
      `Placas puladas desconhecidas em ${reels} rolo: pode ter perdido mais.`,
      `Placas puladas desconhecidas em ${reels} rolos: podem ter perdido mais.`,
    ),
  skipsUnknownReel: 'placas puladas desconhecidas',
  lossEvidence: (reels, lost, picks) =>
    `terminados: ${reels}, ${plural(picks, `${lost} de ${picks} coleta perdida`, `${lost} de ${picks} coletas perdidas`)}`,
  rising: (feeder, share, others) => `O feeder ${feeder} descarta ${share}, os outros ${others}.`,
  risingAlone: (feeder, share) => `O feeder ${feeder} descarta ${share}, mais que antes.`,
  pickFaults: (times, since) =>
    plural(
      times,
      `A máquina informou ${times} falha de coleta desde ${since}.`,
      `A máquina informou ${times} falhas de coleta desde ${since}.`,
    ),
  pickFaultsTitle: 'Falhas de coleta onde ainda não se conhece a perda',
  risingAct: 'Na próxima parada, confira bico, caminho da fita e altura de coleta.',
  feeder: 'Feeder',
  slot: 'Slot',
  loss: 'Perda',
  evidence: 'Baseado em',
  told: { count: 'contado', splice: 'emendado', machine: 'informado pela máquina' },
  evidenceLine: (from, to, placed) => `${from} no início, ${to} restantes, ${placed} montadas`,
  showEvidence: 'Mostrar os rolos',
  hideEvidence: 'Ocultar os rolos',
  spliceDiffers: 'A emenda e a contagem não batem: a contagem do rolo antigo estava errada.',
};
