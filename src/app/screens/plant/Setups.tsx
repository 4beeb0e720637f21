// What each product wants, newest revision first; a lead chooses what the line is made ready for.

import { buildingOn } from '../../../../shared/floor/building.ts';
import { useApp, useFloor } from '../../app.ts';
import { useRefusal } from '../../may.ts';
import { address, fromHereTo } from '../../router.ts';
import { Button } from '../../ui/Button.tsx';
import { plantWords } from '../../words/plant.ts';
import { shellWords } from '../../words/shell.ts';
import { formatDay, say } from '../../words/words.ts';

export function Setups() {
  const app = useApp();
  const floor = useFloor();
  const words = say(plantWords);
  const shell = say(shellWords);
  const line = app.line.value;
  const zone = floor.lines.get(line ?? '')?.zone ?? 'UTC';
  const setups = [...floor.setups.values()]
    .filter((setup) => setup.line === line)
    .sort(
      (a, b) => a.product.localeCompare(b.product) || a.side.localeCompare(b.side) || b.takenMs - a.takenMs,
    );
  const run = buildingOn(floor, line);
  const refusal = useRefusal('choose-setup');
  const blocked = refusal ?? (run ? words.setups.runOpen : null);
  if (setups.length === 0 || line === null) {
    return (
      <div class="empty">
        {words.setups.none}
        <a class="button" href={address('plant', 'sheet')}>
          {words.tiles.sheet.title}
        </a>
      </div>
    );
  }
  return (
    <div>
      {setups.map((setup) => {
        const chosen = floor.chosen.get(line) === setup.setup;
        return (
          <div class="listed" key={setup.setup} data-testid={`setup-${setup.setup}`}>
            <span class="grow">
              <b>{setup.product}</b> · {shell.side[setup.side]} · {shell.revision(setup.revision)}
              <br />
              <span class="soft">
                {words.setups.slots(setup.slots.length)} ·{' '}
                {words.setups.taken(formatDay(setup.takenMs, zone))}
              </span>
            </span>
            {chosen ? (
              <span class="chip go">
                ✓ {run?.setup === setup.setup ? words.setups.building : words.setups.chosen}
              </span>
            ) : (
              <Button
                disabledReason={blocked}
                testId={`choose-${setup.setup}`}
                onPress={() => {
                  app.record([{ kind: 'setup.chosen', payload: { line, setup: setup.setup } }], {
                    notice: { tone: 'go', text: words.setups.chosenNow(setup.product) },
                    next: fromHereTo('load'),
                  });
                }}
              >
                {words.setups.choose}
              </Button>
            )}
          </div>
        );
      })}
    </div>
  );
}
