import type { words as english } from '../en/record.ts';
import { plural, type Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  title: 'Registro em papel',
  asking: 'Pedindo a prova ao servidor…',
  proven: (place, size) =>
    `Provado: entrada ${place} de ${size} do registro da fábrica, assinada com a chave da fábrica.`,
  holds: 'O código traz a prova. “reelward log verify --record” a confere, sem o registro.',
  seen: (count, names) =>
    plural(
      count,
      `Conferido e assinado por 1 tablet: ${names}.`,
      `Conferido e assinado por ${count} tablets: ${names}.`,
    ),
  since: (when) => `Ainda sem prova: sem servidor desde ${when}.`,
  never: 'Ainda sem prova: nenhum servidor alcançado.',
  waiting: 'Ainda sem prova: o servidor não tem esta entrada.',
  noProof: 'Sem prova: o servidor não deu nenhuma.',
  later: 'Imprima de novo quando o servidor tiver a entrada. Então o papel traz a prova.',
  key: (fingerprint) => `Chave da fábrica: ${fingerprint}`,
  brought: {
    'one-log': 'Este papel é do mesmo registro que este tablet.',
    'not-one-log': 'Este papel e o servidor mostram dois registros diferentes. Chame o líder da qualidade.',
    'not-the-plants': 'Este papel não está assinado com a chave desta fábrica.',
    'no-server': 'Sem servidor. O papel é conferido quando o servidor responder.',
    'not-checked': 'O papel não foi conferido. Leia-o em um tablet sincronizado.',
  },
};
