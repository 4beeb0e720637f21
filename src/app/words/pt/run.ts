import type { words as english } from '../en/run.ts';
import { formatCount, plural, type Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  notRight: (count) =>
    plural(
      count,
      `${count} slot ainda não está certo: veja Carga.`,
      `${count} slots ainda não estão certos: veja Carga.`,
    ),
  startTitle: 'Iniciar produção',
  panelSecondsHelp: 'Usado até o ritmo da linha ser medido.',
  panelPrefix: 'Códigos de painel começam com',
  panelPrefixHelp: 'Deixe vazio se os painéis não têm código. Então toque para contar.',
  wrongNumber: 'Digite um número acima de zero.',
  startAnyway: 'Iniciar com slots vazios',
  stopTitle: 'Por que a linha está parada?',
  endTitle: 'Encerrar esta produção?',
  endText: (done, wanted) =>
    `${plural(wanted, `${done} de ${formatCount(wanted)} painel contado.`, `${done} de ${formatCount(wanted)} painéis contados.`)} Os rolos ficam nos slots.`,
  plusManyTitle: 'Quantos painéis a mais?',
  skippedTitle: 'Quais placas do próximo painel são puladas?',
  skippedHelp: 'Toque em cada placa marcada como ruim. A próxima contagem já inclui isso.',
  skippedUse: (count) =>
    count === 0 ? 'Nenhuma placa pulada' : plural(count, `Pular ${count} placa`, `Pular ${count} placas`),
  skippedManyTitle: (panels) =>
    panels === 1 ? 'Placas puladas neste painel?' : `Placas puladas nestes ${formatCount(panels)} painéis?`,
  skippedMost: (boards) => plural(boards, `Só há ${boards} placa.`, `Só há ${boards} placas. Digite menos.`),
  skippedNotKnown: 'Não se sabe',
  scrapTitle: 'Quantos painéis são refugados?',
  scrapHelp: 'Continuam contados: as peças foram usadas. É preciso produzir outros tantos.',
  scrapMost: (panels) =>
    plural(
      panels,
      `Só ${panels} painel bom foi contado.`,
      `Só ${panels} painéis bons foram contados. Digite menos.`,
    ),
  setRightTitle: 'Quantos painéis estão prontos?',
  setRightHelp: 'A produção passa a ter este número. Quem conta segue a partir dele.',
  setRightWhy: 'Por que é outro número?',
  setRightYes: (panels) => `Passar para ${panels}`,
  setRightMissing: 'Digite outro número e o porquê.',
  stoodSince: 'Parada desde',
  stoodLast: (clock, span) => `${clock}, último painel, há ${span}`,
  stoodNow: (clock) => `agora, ${clock}`,
};
