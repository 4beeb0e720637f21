// A site's own rule: names of its fields with signs between them, which no standard reads.

import type { LabelRule } from '../../../shared/labels/rules.ts';

export const ownRule: LabelRule = {
  rule: 'own',
  version: 1,
  codes: [
    {
      pieces: [
        { text: 'ART#' },
        { takes: 'any', field: 'part' },
        { text: '#MENGE#' },
        { takes: 'digits', field: 'quantity' },
        { text: '#CH#' },
        { takes: 'any', field: 'lot' },
      ],
    },
  ],
};
