// On how many slots does a machine of this line believe something else than the scans say, and where is it told slot by slot?

import { compareBelieved } from '../../../../shared/floor/believed.ts';
import { useFloor } from '../../app.ts';
import { address } from '../../router.ts';
import { Icon } from '../../ui/Icon.tsx';
import { lineWords } from '../../words/line.ts';
import { say } from '../../words/words.ts';
import './machine-believes.css';

export function MachineBelieves({ line }: { readonly line: string }) {
  const floor = useFloor();
  const words = say(lineWords);
  const slots = [...floor.believed].flatMap(([station, believed]) =>
    believed.line === line ? (compareBelieved(floor, station)?.differs ?? []).map(({ slot }) => slot) : [],
  );
  const many = new Set(slots).size;
  if (many === 0) return null;
  return (
    <div class="rising believes" role="status" data-testid="machine-believes">
      <p>
        <Icon name="warn" />
        <b>{words.believes(many)}</b>
        <a class="button" href={address('plant', 'stations')}>
          {words.believesAct}
        </a>
      </p>
    </div>
  );
}
