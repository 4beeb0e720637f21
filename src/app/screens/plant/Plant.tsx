// What changes seldom: setups, people, rules, this tablet. One tile a subject; each subject is a page of its own.

import type { ComponentChildren } from 'preact';
import { type Act, mayDo } from '../../../../shared/setup/may.ts';
import { useApp, useFloor } from '../../app.ts';
import type { Alarm } from '../../device/alarm.ts';
import type { Offline } from '../../device/offline.ts';
import { lazy } from '../../frame/lazy.tsx';
import { address, place } from '../../router.ts';
import { Icon, type IconName } from '../../ui/Icon.tsx';
import { plantWords } from '../../words/plant.ts';
import { shellWords } from '../../words/shell.ts';
import { say } from '../../words/words.ts';
import { People } from './People.tsx';
import { Practice } from './Practice.tsx';
import { Rules } from './Rules.tsx';
import { Setups } from './Setups.tsx';
import { ThisTablet } from './ThisTablet.tsx';
import './plant.css';

const Checklists = lazy(() => import('./checklists/Checklists.tsx').then((module) => module.Checklists));
const Labels = lazy(() => import('./labels/Labels.tsx').then((module) => module.Labels));
const Parts = lazy(() => import('./parts/Parts.tsx').then((module) => module.Parts));
const Scanner = lazy(() => import('./scanner/Scanner.tsx').then((module) => module.Scanner));
const Server = lazy(() => import('./server/Server.tsx').then((module) => module.Server));
const Sheet = lazy(() => import('./sheet/Sheet.tsx').then((module) => module.Sheet));

type PageName =
  | 'setups'
  | 'sheet'
  | 'people'
  | 'rules'
  | 'parts'
  | 'checklists'
  | 'labels'
  | 'scanner'
  | 'practice'
  | 'server'
  | 'tablet';

const pages: readonly { readonly name: PageName; readonly icon: IconName; readonly act: Act }[] = [
  { name: 'setups', icon: 'stock', act: 'look' },
  { name: 'sheet', icon: 'save', act: 'take-setup' },
  { name: 'people', icon: 'person', act: 'manage-people' },
  { name: 'rules', icon: 'line', act: 'rule-line' },
  { name: 'parts', icon: 'reel', act: 'look' },
  { name: 'checklists', icon: 'check', act: 'edit-checklist' },
  { name: 'labels', icon: 'search', act: 'look' },
  { name: 'scanner', icon: 'keyboard', act: 'look' },
  { name: 'practice', icon: 'load', act: 'look' },
  { name: 'server', icon: 'cloud', act: 'look' },
  { name: 'tablet', icon: 'plant', act: 'look' },
];

/** What belongs to the tablet and not to a floor: not to be met in practice. */
const ofTheTablet: readonly PageName[] = ['scanner', 'server', 'tablet'];

interface PlantProps {
  readonly offline: Offline;
  readonly alarm: Alarm;
}

export function Plant({ offline, alarm }: PlantProps) {
  const app = useApp();
  const floor = useFloor();
  const words = say(plantWords);
  const shell = say(shellWords);
  const wanted = place.value.rest[0];
  const here = pages.filter(({ name }) => app.practice === null || !ofTheTablet.includes(name));
  const page = here.find((each) => each.name === wanted);
  if (!page) {
    return (
      <div class="tiles">
        {here.map((each) => {
          const may = mayDo(each.act, app.person.value, floor.people.size > 0);
          return (
            <a
              key={each.name}
              class="tile"
              href={address('plant', each.name)}
              data-testid={`tile-${each.name}`}
            >
              <Icon name={each.icon} size={32} />
              <b>{words.tiles[each.name].title}</b>
              <span>{words.tiles[each.name].text}</span>
              {!may.may && <span class="chip">{words.needs(shell.roles[may.needs])}</span>}
            </a>
          );
        })}
      </div>
    );
  }
  const may = mayDo(page.act, app.person.value, floor.people.size > 0);
  return (
    <div class="stack page">
      <header class="row">
        <a class="button quiet" href={address('plant')}>
          <Icon name="left" /> {words.back}
        </a>
        <h1>{words.tiles[page.name].title}</h1>
      </header>
      {may.may ? (
        contentOf(page.name, { offline, alarm })
      ) : (
        <p class="empty">
          <Icon name="person" size={56} />
          {words.needs(shell.roles[may.needs])}
        </p>
      )}
    </div>
  );
}

function contentOf(page: PageName, { offline, alarm }: PlantProps): ComponentChildren {
  switch (page) {
    case 'setups':
      return <Setups />;
    case 'sheet':
      return <Sheet />;
    case 'people':
      return <People />;
    case 'rules':
      return <Rules />;
    case 'checklists':
      return <Checklists />;
    case 'parts':
      return <Parts />;
    case 'labels':
      return <Labels />;
    case 'scanner':
      return <Scanner />;
    case 'practice':
      return <Practice />;
    case 'server':
      return <Server />;
    case 'tablet':
      return <ThisTablet offline={offline} alarm={alarm} />;
  }
}
