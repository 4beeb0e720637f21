// What changes seldom: setups, people, rules, this tablet. One tile a subject; each subject is a page of its own.

import type { ComponentChildren } from 'preact';
import { useRef, useState } from 'preact/hooks';
import { type Act, type May, mayDo, mayManagePeople } from '../../../../shared/floor/may.ts';
import { useApp, useFloor } from '../../app.ts';
import { lazyTask } from '../../frame/lazy.tsx';
import { SignInDialog } from '../../frame/PeopleDialogs.tsx';
import { address, place } from '../../router.ts';
import { Button } from '../../ui/Button.tsx';
import { Icon, type IconName } from '../../ui/Icon.tsx';
import { linesWords } from '../../words/all-lines.ts';
import { plantWords } from '../../words/plant.ts';
import { shellWords } from '../../words/shell.ts';
import { say } from '../../words/words.ts';
import type { Work } from '../../work.ts';
import { InLine } from './InLine.tsx';
import { People } from './People.tsx';
import { Practice } from './Practice.tsx';
import { Rules } from './Rules.tsx';
import { Setups } from './Setups.tsx';
import { ThisTablet } from './ThisTablet.tsx';
import './plant.css';

const Begin = lazyTask(() => import('./begin/Begin.tsx').then((module) => module.Begin));
const Lines = lazyTask(() => import('./lines/Lines.tsx').then((module) => module.Lines));
const Checklists = lazyTask(() => import('./checklists/Checklists.tsx').then((module) => module.Checklists));
const Labels = lazyTask(() => import('./labels/Labels.tsx').then((module) => module.Labels));
const Parts = lazyTask(() => import('./parts/Parts.tsx').then((module) => module.Parts));
const Print = lazyTask(() => import('./print/Print.tsx').then((module) => module.Print));
const Scanner = lazyTask(() => import('./scanner/Scanner.tsx').then((module) => module.Scanner));
const Server = lazyTask(() => import('./server/Server.tsx').then((module) => module.Server));
const Sheet = lazyTask(() => import('./sheet/Sheet.tsx').then((module) => module.Sheet));
const ThisPlant = lazyTask(() => import('./this/ThisPlant.tsx').then((module) => module.ThisPlant));
const Stations = lazyTask(() => import('./stations/Stations.tsx').then((module) => module.Stations));

type PageName =
  | 'begin'
  | 'this'
  | 'lines'
  | 'setups'
  | 'sheet'
  | 'people'
  | 'rules'
  | 'parts'
  | 'checklists'
  | 'labels'
  | 'print'
  | 'scanner'
  | 'practice'
  | 'stations'
  | 'server'
  | 'tablet';

const pages: readonly { readonly name: PageName; readonly icon: IconName; readonly act: Act }[] = [
  { name: 'begin', icon: 'check', act: 'look' },
  { name: 'this', icon: 'plant', act: 'look' },
  { name: 'setups', icon: 'stock', act: 'look' },
  { name: 'sheet', icon: 'save', act: 'take-setup' },
  { name: 'lines', icon: 'line', act: 'look' },
  { name: 'people', icon: 'person', act: 'manage-people' },
  { name: 'rules', icon: 'bell', act: 'rule-line' },
  { name: 'parts', icon: 'reel', act: 'look' },
  { name: 'checklists', icon: 'check', act: 'edit-checklist' },
  { name: 'labels', icon: 'search', act: 'look' },
  { name: 'print', icon: 'print', act: 'look' },
  { name: 'scanner', icon: 'keyboard', act: 'look' },
  { name: 'practice', icon: 'load', act: 'look' },
  { name: 'stations', icon: 'camera', act: 'look' },
  { name: 'server', icon: 'cloud', act: 'look' },
  { name: 'tablet', icon: 'plant', act: 'look' },
];

/** What belongs to the tablet and not to a floor: not to be met in practice. */
const ofTheTablet: readonly PageName[] = ['begin', 'this', 'scanner', 'stations', 'server', 'tablet'];

/** What the tablet itself can do. */
type PlantProps = Pick<Work, 'offline' | 'alarm' | 'awake'>;

export function Plant({ offline, alarm, awake }: PlantProps) {
  const app = useApp();
  const wanted = place.value.rest[0];
  const here = pages.filter(({ name }) => app.practice === null || !ofTheTablet.includes(name));
  const page = here.find((each) => each.name === wanted);
  if (!page) {
    return (
      <div class="tiles">
        <a class="tile" href={address('lines')} data-testid="tile-all-lines">
          <Icon name="line" size={32} />
          <b>{say(shellWords).nav.lines}</b>
          <span>{say(linesWords).tile}</span>
        </a>
        {here.map((each) => (
          <Tile key={each.name} page={each} />
        ))}
      </div>
    );
  }
  return <Page key={page.name} page={page} {...{ offline, alarm, awake }} />;
}

function Tile({ page }: { readonly page: (typeof pages)[number] }) {
  const words = say(plantWords);
  const may = usePageRight(page.act);
  return (
    <a class="tile" href={address('plant', page.name)} data-testid={`tile-${page.name}`}>
      <Icon name={page.icon} size={32} />
      <b>{words.tiles[page.name].title}</b>
      <span>{words.tiles[page.name].text}</span>
      {!may.may && <span class="chip">{words.needs(say(shellWords).roles[may.needs])}</span>}
    </a>
  );
}

type PageProps = PlantProps & { readonly page: (typeof pages)[number] };

/** One subject. Where its right ends under somebody's hands, what was begun stays, out of sight, until they sign in again. */
function Page({ page, ...device }: PageProps) {
  const app = useApp();
  const words = say(plantWords);
  const may = usePageRight(page.act);
  // Until something is loaded, the way to the first reel is one touch away.
  const isBeginning = useFloor().slots.size === 0 && app.practice === null;
  const [signingIn, setSigningIn] = useState(false);
  const wasOpen = useRef(may.may);
  if (may.may) wasOpen.current = true;
  return (
    <div class="stack page">
      <header class="row">
        <a class="button quiet" href={address('plant')}>
          <Icon name="left" /> {words.back}
        </a>
        <h1>{words.tiles[page.name].title}</h1>
        {isBeginning && page.name !== 'begin' && (
          <a class="button" href={address('plant', 'begin')} data-testid="to-steps">
            {words.tiles.begin.title}
          </a>
        )}
      </header>
      {!may.may && (
        <div class="empty" data-testid="plant-gate">
          <Icon name="person" size={56} />
          <p>
            <b>{words.needs(say(shellWords).roles[may.needs])}</b>
          </p>
          <p>{words.gate.asWhom}</p>
          {wasOpen.current && <p>{words.gate.kept}</p>}
          <Button tone="act" large testId="gate-sign-in" onPress={() => setSigningIn(true)}>
            {words.gate.signIn}
          </Button>
        </div>
      )}
      {wasOpen.current && (
        <div hidden={!may.may}>
          {contentOf(page.name, device, () => {
            wasOpen.current = false; // the form of the first person is done with
            setSigningIn(true);
          })}
        </div>
      )}
      {signingIn && <SignInDialog onClose={() => setSigningIn(false)} />}
    </div>
  );
}

function usePageRight(act: Act): May {
  const app = useApp();
  const people = [...useFloor().people.values()];
  return act === 'manage-people'
    ? mayManagePeople(app.person.value, people)
    : mayDo(act, app.person.value, people.length > 0);
}

function contentOf(page: PageName, device: PlantProps, onFirst: () => void): ComponentChildren {
  switch (page) {
    case 'begin':
      return <Begin />;
    case 'this':
      return <ThisPlant />;
    case 'lines':
      return <Lines />;
    case 'setups':
      return <Setups />;
    case 'sheet':
      return <Sheet />;
    case 'people':
      return <People onFirst={onFirst} />;
    case 'rules':
      return (
        <div class="stack">
          <Rules />
          <InLine />
        </div>
      );
    case 'checklists':
      return <Checklists />;
    case 'parts':
      return <Parts />;
    case 'labels':
      return <Labels />;
    case 'print':
      return <Print />;
    case 'scanner':
      return <Scanner />;
    case 'practice':
      return <Practice />;
    case 'stations':
      return <Stations />;
    case 'server':
      return <Server />;
    case 'tablet':
      return <ThisTablet {...device} />;
  }
}
