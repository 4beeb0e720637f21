// Boards that were put aside: each can be gone on with once nothing else is in hand.

import { Button } from '../../../ui/Button.tsx';
import { boardWords } from '../../../words/board.ts';
import { say } from '../../../words/words.ts';
import { heldName } from './held-boards.ts';
import type { SheetSession } from './session.ts';

export function Held({ session }: { readonly session: SheetSession }) {
  const words = say(boardWords);
  const held = session.held.value;
  if (held.length === 0) return null;
  return (
    <section class="card stack" data-testid="boards-held">
      <h2>{words.heldTitle}</h2>
      <div class="row">
        {held.map((board) => (
          <Button
            key={`${board.inHand.placements?.number}`}
            large
            testId="board-take-up"
            onPress={() => session.takeUp(board)}
          >
            {words.goOnWith(heldName(board))}
          </Button>
        ))}
      </div>
    </section>
  );
}
