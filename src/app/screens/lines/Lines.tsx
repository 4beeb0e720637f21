// All lines of the plant, for those who answer for more than one: a tap opens a line on this tablet.

import { useApp } from '../../app.ts';
import { takeLine } from '../../line-in-hand.ts';
import { linesServed } from '../../lines-served.ts';
import type { Watch } from '../../outlook/watch.ts';
import { address, goTo } from '../../router.ts';
import { Icon } from '../../ui/Icon.tsx';
import { linesWords } from '../../words/all-lines.ts';
import { shellWords } from '../../words/shell.ts';
import { say } from '../../words/words.ts';
import { LineRow } from './LineRow.tsx';
import { Quiet, Summary } from './Summary.tsx';
import { useLines } from './use-lines.ts';
import './lines.css';

export function Lines({ watch }: { readonly watch: Watch }) {
  const app = useApp();
  const words = say(linesWords);
  const { nowMs, lines, quiet } = useLines(watch);
  const open = (line: string) => {
    takeLine(app, line);
    goTo('line');
  };
  return (
    <div class="stack lines">
      <div class="lines-head">
        <h2>{say(shellWords).nav.lines}</h2>
        <Summary lines={lines} />
        <a class="button" href={address('wall')} data-testid="lines-wall">
          {words.toWall}
        </a>
      </div>
      {lines.length === 0 && <p class="empty">{say(shellWords).noLine}</p>}
      <div class="all-lines">
        {lines.map((seen) => {
          const { line } = seen.glance;
          return (
            <button
              key={line}
              type="button"
              class="line-row"
              data-testid={`line-${line}`}
              data-state={seen.glance.state}
              onClick={() => open(line)}
            >
              <LineRow seen={seen} nowMs={nowMs} isHere={linesServed(app).includes(line)} namesPeople />
            </button>
          );
        })}
      </div>
      <Quiet tablets={quiet} />
      <p class="caution">
        <Icon name="warn" />
        {words.caution}
      </p>
    </div>
  );
}
