import { plural } from '../words.ts';

export const words = {
  title: 'Record on paper',
  asking: 'Asking the server for the proof…',
  proven: (place: string, size: string) =>
    `Proven: entry ${place} of ${size} in the plant’s log, signed by the plant’s key.`,
  holds: 'The code carries the proof. “reelward log verify --record” checks it, without the log.',
  seen: (count: number, names: string) =>
    plural(
      count,
      `Checked and signed by 1 tablet: ${names}.`,
      `Checked and signed by ${count} tablets: ${names}.`,
    ),
  since: (when: string) => `Not proven yet: no server since ${when}.`,
  never: 'Not proven yet: no server was reached.',
  waiting: 'Not proven yet: the server does not have this entry.',
  noProof: 'Not proven: the server gave no proof.',
  later: 'Print it again when the server has the entry. Then the paper carries the proof.',
  key: (fingerprint: string) => `Plant’s key: ${fingerprint}`,
  brought: {
    'one-log': 'This paper is of the same log as this tablet.',
    'not-one-log': 'This paper and the server show two different logs. Call the quality lead.',
    'not-the-plants': 'This paper is not signed by this plant’s key.',
    'no-server': 'No server. The paper is checked when the server answers.',
    'not-checked': 'The paper was not checked. Scan it on a tablet that is synced.',
  },
} as const;
