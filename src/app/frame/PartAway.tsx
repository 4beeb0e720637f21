// In the place of a part of the page that could not be fetched: says so, and tries again at a tap.

import { Button } from '../ui/Button.tsx';
import { Icon } from '../ui/Icon.tsx';
import { unreachable } from '../words/unreachable.ts';
import { language } from '../words/words.ts';
import './part-away.css';

export function PartAway({ onAgain }: { readonly onAgain: () => void }) {
  const { told, reload } = unreachable[language.value];
  return (
    <div class="part-away" role="alert" data-testid="part-away">
      <Icon name="warn" />
      <span>{told}</span>
      <Button testId="part-again" onPress={onAgain}>
        {reload}
      </Button>
    </div>
  );
}
