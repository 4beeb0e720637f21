// Does a machine of this line run another recipe than the line builds? Said plainly, with the act that cures it; an engineer says once that it
// is the right one.

import { type ProductSide, type RecipeDiffers, recipesOn } from '../../../../shared/floor/recipes.ts';
import { silentSince } from '../../../../shared/floor/told-states.ts';
import { useApp, useFloor } from '../../app.ts';
import { useRefusal } from '../../may.ts';
import { stationName } from '../../station-name.ts';
import { Button } from '../../ui/Button.tsx';
import { Icon } from '../../ui/Icon.tsx';
import { visible } from '../../ui/visible.ts';
import { lineWords } from '../../words/line.ts';
import { formatDay, say } from '../../words/words.ts';
import './machine-believes.css';

export function MachineRecipe({ line }: { readonly line: string }) {
  const app = useApp();
  const floor = useFloor();
  const words = say(lineWords).recipe;
  const refusal = useRefusal('take-setup');
  const zone = floor.lines.get(line)?.zone ?? 'UTC';
  const nowMs = app.nowMs.value;
  const differ = recipesOn(floor, line).filter(({ station }) => {
    const told = floor.stations.get(station);
    return told !== undefined && silentSince(told, nowMs) === null;
  });
  if (differ.length === 0) return null;
  const confirm = ({ recipe, wanted: { product, side } }: RecipeDiffers) => {
    app.record([{ kind: 'recipe.known', payload: { line, recipe, product, side } }], {
      notice: { tone: 'go', text: words.known(visible(recipe), sayWanted({ product, side })) },
    });
  };
  return (
    <div class="rising believes" role="status" data-testid="machine-recipe">
      {differ.map((each) => {
        const { station, recipe, revision, atMs, wanted, builds } = each;
        const name = visible([recipe, revision].filter((text) => text !== null).join(' '));
        const machine = stationName(floor, station);
        return (
          <p key={station}>
            <Icon name="warn" />
            <span class="grow">
              <b>{words.runs(machine, name, sayWanted(wanted))}</b>{' '}
              {builds === null ? words.unknown : words.other(sayWanted(builds))}
              <br />
              <span class="soft">
                {words.act} {words.told(formatDay(atMs, zone))}
              </span>
            </span>
            <Button testId={`recipe-right-${station}`} disabledReason={refusal} onPress={() => confirm(each)}>
              {words.right}
            </Button>
          </p>
        );
      })}
    </div>
  );
}

function sayWanted({ product, side }: ProductSide): string {
  return `${visible(product)}, ${say(lineWords).recipe.sides[side]}`;
}
