import type { words as english } from '../en/clock.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  back: (span, clock) => `O relógio deste tablet voltou ${span} às ${clock}: acerte-o.`,
  ahead: (span, clock) =>
    `Este tablet dormiu ${span} às ${clock}, ou o relógio adiantou. Se está errado agora, acerte-o.`,
  'behind-log': (span) => `O relógio deste tablet está ${span} atrás do registro mais novo: acerte-o.`,
  'behind-server': (span) => `O relógio deste tablet está ${span} atrás do servidor: acerte-o.`,
  'ahead-of-server': (span) => `O relógio deste tablet está ${span} à frente do servidor: acerte-o.`,
  goesOn: 'Avisos e horários seguem a partir da última hora certa.',
  short: 'Confira o relógio',
  isRight: 'O relógio está certo',
};
