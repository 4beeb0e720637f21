// Work in the store: goods that come in, what lies where, jars of paste.

import { useState } from 'preact/hooks';
import { place } from '../../router.ts';
import { stockWords } from '../../words/stock.ts';
import { say } from '../../words/words.ts';
import { GoodsIn } from './GoodsIn.tsx';
import { Paste } from './Paste.tsx';
import { Places } from './Places.tsx';

const parts = ['in', 'places', 'paste'] as const;

export function Store({ onShow }: { readonly onShow: (place: string) => void }) {
  const words = say(stockWords).store;
  const [part, setPart] = useState<(typeof parts)[number]>(place.value.rest[0] === 'paste' ? 'paste' : 'in');
  return (
    <div class="stack">
      <div class="choice no-print">
        {parts.map((each) => (
          <button
            type="button"
            key={each}
            aria-pressed={part === each}
            data-testid={`store-${each}`}
            onClick={() => setPart(each)}
          >
            {words[each]}
          </button>
        ))}
      </div>
      {part === 'in' && <GoodsIn />}
      {part === 'places' && <Places onShow={onShow} />}
      {part === 'paste' && <Paste />}
    </div>
  );
}
