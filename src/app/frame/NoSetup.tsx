// What stands where a line has nothing to show yet: in a plant that begins the way to its first reel, else the setups to choose from.

import { useFloor } from '../app.ts';
import { address } from '../router.ts';
import { Icon } from '../ui/Icon.tsx';
import { lineWords } from '../words/line.ts';
import { say } from '../words/words.ts';

export function NoSetup({ icon }: { readonly icon: 'line' | 'load' }) {
  const floor = useFloor();
  const words = say(lineWords).noSetup;
  const begins = floor.setups.size === 0;
  return (
    <div class="empty">
      <Icon name={icon} size={56} />
      <h2>{words.title}</h2>
      <p>{words.help}</p>
      <div class="row">
        {begins && (
          <a class="button act large" href={address('plant', 'begin')} data-testid="begin">
            {words.begin}
          </a>
        )}
        <a class={`button large${begins ? '' : ' act'}`} href={address('plant', 'setups')}>
          {words.choose}
        </a>
        <a class="button large" href={address('plant', 'sheet')}>
          {words.bring}
        </a>
      </div>
    </div>
  );
}
