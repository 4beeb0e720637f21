import type { words as english } from '../en/record.ts';
import { plural, type Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  title: 'Registro em papel',
  asking: 'Pedindo a prova ao servidor…',
  proven: (place, size) =>
    `Provado: registro ${place} de ${size} do log da planta, assinado com a chave da planta.`,
  holds: 'O código traz a prova. “reelward log verify --record” a confere, sem o log.',
  seen: (count, names) =>
    plural(
      count,
      `Conferido e assinado por ${count} tablet: ${names}.`,
      `Conferido e assinado por ${count} tablets: ${names}.`,
    ),
  since: (when) => `Ainda sem prova: sem servidor desde ${when}.`,
  never: 'Ainda sem prova: nenhum servidor alcançado.',
  waiting: 'Ainda sem prova: o servidor não tem este registro.',
  noProof: 'Sem prova: o servidor não deu nenhuma.',
  later: 'Imprima de novo quando o servidor tiver o registro. Então o papel traz a prova.',
  key: (fingerprint) => `Chave da planta: ${fingerprint}`,
  brought: {
    'one-log': 'Este papel é do mesmo log que este tablet.',
    'not-one-log': 'Este papel e o servidor mostram dois logs diferentes. Chame o líder da qualidade.',
    'not-the-plants': 'Este papel não está assinado com a chave desta planta.',
    'no-server': 'Sem servidor. O papel é conferido quando o servidor responder.',
    'not-checked': 'O papel não foi conferido. Escaneie-o em um tablet sincronizado.',
  },
};
