// Stations: who counts on this line, how each station stands, and what to type at a device.

import { Fragment } from 'preact';
import { countedBy } from '../../../../../shared/floor/counters.ts';
import type { FloorState } from '../../../../../shared/floor/state.ts';
import type { BothCounts, Counter, Station } from '../../../../../shared/floor/station-state.ts';
import { silentSince } from '../../../../../shared/floor/told-states.ts';
import { useApp, useFloor } from '../../../app.ts';
import { useRefusal } from '../../../may.ts';
import { stateWord } from '../../../state-word.ts';
import { stationName } from '../../../station-name.ts';
import { Button } from '../../../ui/Button.tsx';
import { Icon } from '../../../ui/Icon.tsx';
import { visible } from '../../../ui/visible.ts';
import { stationWords } from '../../../words/stations.ts';
import { formatCount, formatDay, formatTime, say } from '../../../words/words.ts';
import { Answers } from './Answers.tsx';
import { Differing } from './Differing.tsx';
import { Loads } from './Loads.tsx';
import { isMachine, ofLineFirst } from './model.ts';
import { Rename } from './Rename.tsx';
import './stations.css';

export function Stations() {
  const app = useApp();
  const floor = useFloor();
  const words = say(stationWords);
  const line = app.line.value;
  const stations = ofLineFirst(floor, line);
  const called = stations.filter(({ means }) => means === 'hermes');
  const devices = stations.filter((station) => !isMachine(station));
  return (
    <div class="stack" data-testid="stations">
      <p class="caution">
        <Icon name="warn" />
        {words.caution}
      </p>
      {stations.length === 0 ? (
        <div class="empty" data-testid="stations-none">
          <Icon name="plant" size={56} />
          <h2>{words.none}</h2>
          <p>{words.noneHelp}</p>
          <p class="code command" data-raw>
            reelward link --config FILE
          </p>
        </div>
      ) : (
        <>
          {line !== null && <WhoCounts line={line} stations={stations} />}
          <div class="stations">
            {stations.map((station) => (
              <StationCard key={station.station} station={station} />
            ))}
          </div>
        </>
      )}
      {called.length > 0 && <WhatToSet machines={called} />}
      <WhatToTypeAtMachine station={stations.find(({ means }) => means === 'ipc2591') ?? null} />
      {(stations.length === 0 || devices.length > 0) && <WhatToType station={devices[0] ?? null} />}
    </div>
  );
}

/** The lead's act: one counter a line. */
function WhoCounts({ line, stations }: { readonly line: string; readonly stations: readonly Station[] }) {
  const app = useApp();
  const floor = useFloor();
  const words = say(stationWords);
  const refusal = useRefusal('choose-counter');
  const counter = floor.counters.get(line);
  const known = floor.lines.get(line);
  const choose = (station: string | null) => {
    const now =
      station === null
        ? words.handNow
        : `${words.stationNow(stationName(floor, station))} ${words.checkInLine}`;
    app.record([{ kind: 'line.counted-by', payload: { line, station } }], {
      notice: { tone: 'go', text: now },
    });
  };
  const choice = (station: string | null, name: string) => (
    <Button
      key={station ?? ''}
      large
      testId={station === null ? 'count-by-hand' : `count-by-${station}`}
      pressed={(counter?.station ?? null) === station}
      disabledReason={refusal}
      onPress={() => choose(station)}
    >
      {(counter?.station ?? null) === station ? `✓ ${name}` : name}
    </Button>
  );
  return (
    <section class="card stack">
      <h2>{words.who(known?.name ?? line)}</h2>
      <p class="soft">{words.whoHelp}</p>
      <div class="row">
        {choice(null, words.hand)}
        {stations
          .filter((station) => station.line === line)
          .map(({ station }) => choice(station, stationName(floor, station)))}
      </div>
      {counter && <BothTold counter={counter} zone={known?.zone ?? 'UTC'} />}
    </section>
  );
}

/** What people and the station counted of the same while. */
function BothTold({ counter, zone }: { readonly counter: Counter; readonly zone: string }) {
  const words = say(stationWords);
  const { both, beside, outside } = counter;
  const told = ({ stands, atMs, hand, machine }: BothCounts) =>
    words.both[stands](formatTime(atMs, zone), formatCount(hand), formatCount(machine));
  return (
    <>
      {both.length > 0 && (
        <div data-testid="counted-both">
          <h3>{words.bothTitle}</h3>
          <ul>
            {both.map((each) => (
              <li key={each.atMs}>{told(each)}</li>
            ))}
          </ul>
          <p class="soft">{words.bothHelp}</p>
        </div>
      )}
      {beside > 0 && <p data-testid="beside">{words.beside(beside)}</p>}
      {outside > 0 && <p data-testid="outside">{words.outside(outside)}</p>}
    </>
  );
}

function StationCard({ station }: { readonly station: Station }) {
  const app = useApp();
  const floor = useFloor();
  const words = say(stationWords);
  const zone = floor.lines.get(station.line)?.zone ?? 'UTC';
  const since = silentSince(station, app.nowMs.value);
  const newest = station.boots.at(-1);
  const totalSince = isMachine(station) ? words.heardAs : words.boot;
  const isCounter = countedBy(floor, station.line, app.nowMs.value).by !== 'hand';
  const counts = isCounter && floor.counters.get(station.line)?.station === station.station;
  const place =
    station.at === 'work' && station.machine !== null
      ? words.atMachine(visible(station.machine))
      : words.places[station.at];
  return (
    <section class="card stack" data-testid={`station-${station.station}`}>
      <div class="row">
        <h2 class={station.name === null ? 'grow code' : 'grow'}>{stationName(floor, station.station)}</h2>
        {station.heardMs === null ? (
          <span class="chip plain">? {words.never}</span>
        ) : since !== null ? (
          <span class="chip care">! {words.silent(formatTime(since, zone))}</span>
        ) : (
          <span class="chip go">✓ {words.heard(formatTime(station.heardMs, zone))}</span>
        )}
        {counts && <span class="chip plain">{words.counts}</span>}
      </div>
      <table class="plain">
        <tbody>
          {station.name !== null && <Fact name={words.ownName}>{visible(station.station)}</Fact>}
          <Fact name={words.line}>{lineName(floor, station.line)}</Fact>
          <Fact name={words.stands}>{place}</Fact>
          <Fact name={words.lastHeard}>
            {station.heardMs === null ? words.never : formatDay(station.heardMs, zone)}
          </Fact>
          <Fact name={words.total}>
            {newest === undefined ? '–' : `${formatCount(newest.total)}, ${totalSince(visible(newest.boot))}`}
          </Fact>
          <Fact name={words.state}>{stateWord(station.state)}</Fact>
          {station.recipe !== null && (
            <Fact name={words.recipe}>
              {visible([station.recipe.recipe, station.recipe.revision].filter(Boolean).join(' '))}
            </Fact>
          )}
          <Fact name={words.version}>
            {words.linkOf(
              visible(station.version),
              floor.tablets.get(station.tablet)?.name ?? station.tablet,
            )}
          </Fact>
        </tbody>
      </table>
      <Understood station={station} zone={zone} />
      <Loads station={station} zone={zone} />
      <Differing station={station} zone={zone} />
      {station.answers === true && <Answers station={station} zone={zone} />}
      <Rename station={station} />
    </section>
  );
}

function Understood({ station, zone }: { readonly station: Station; readonly zone: string }) {
  const words = say(stationWords);
  if (station.noticed.length === 0) return <p class="soft">{words.allUnderstood}</p>;
  const names: Readonly<Record<string, string>> = words.notices;
  return (
    <div data-testid="not-understood">
      <h3>{words.noticed}</h3>
      <ul>
        {station.noticed.map(({ what, said, times, atMs }) => (
          <li key={what}>
            {names[what] ?? words.other}: <span data-raw>{visible(said)}</span> ({words.times(times)},{' '}
            {formatDay(atMs, zone)})
          </li>
        ))}
      </ul>
    </div>
  );
}

function Fact({ name, children }: { readonly name: string; readonly children: string }) {
  return (
    <tr>
      <th>{name}</th>
      <td>{children}</td>
    </tr>
  );
}

function lineName(floor: FloorState, line: string): string {
  return floor.lines.get(line)?.name ?? visible(line);
}

/** Where the link calls the machines that tell their boards themselves. */
function WhatToSet({ machines }: { readonly machines: readonly Station[] }) {
  const words = say(stationWords);
  return (
    <section class="card stack" data-testid="what-to-set">
      <h2>{words.setTitle}</h2>
      <p>{words.setHelp}</p>
      <dl class="typed" data-raw>
        {machines.map(({ station, address }) => (
          <Fragment key={station}>
            <dt>{visible(station)}</dt>
            <dd class="code" translate={false}>
              {`${words.setAddress} ${visible(address)}`}
            </dd>
          </Fragment>
        ))}
      </dl>
      <p class="soft">{words.setNever}</p>
    </section>
  );
}

/** What a device is told once by hand. The secret stands in the link's file and never in the log. */
function WhatToType({ station }: { readonly station: Station | null }) {
  const words = say(stationWords);
  const name = encodeURIComponent(station?.station ?? 'STATION');
  const place = station?.address === undefined || station.address === '' ? 'HOST:PORT' : station.address;
  const message = '{"boot":"7f3a91c2","total":1234,"at":null,"serial":null,"skipped":null,"state":null}';
  return (
    <section class="card stack" data-testid="what-to-type">
      <h2>{words.typeTitle}</h2>
      <p>{words.typeHelp}</p>
      <dl class="typed" data-raw>
        <dt>{words.typeAddress}</dt>
        <dd class="code" translate={false}>{`POST http://${place}/api/stations/${name}/count`}</dd>
        <dt>{words.typeHeader}</dt>
        <dd class="code" translate={false}>{`Authorization: Bearer ${words.typeSecret}`}</dd>
        <dt>{words.typeBody}</dt>
        <dd class="code" translate={false}>
          {message}
        </dd>
      </dl>
      <p class="soft">{words.typeBoot}</p>
      <p class="soft">{words.typeAnswer}</p>
    </section>
  );
}

/** What a machine of IPC-2591 is told once in its settings; nothing where no station is heard by it. */
function WhatToTypeAtMachine({ station }: { readonly station: Station | null }) {
  const words = say(stationWords);
  if (station === null) return null;
  // A queue at a broker has its address behind it.
  const isBroker = station.address.includes('://');
  return (
    <section class="card stack" data-testid="what-to-type-at-machine">
      <h2>{words.machineTitle}</h2>
      <p>{words.machineHelp}</p>
      <dl class="typed" data-raw>
        <dt>{isBroker ? words.machineAt : words.machineAddress}</dt>
        <dd class="code" translate={false}>
          {isBroker ? station.address : `amqp://${station.address}`}
        </dd>
        {!isBroker && (
          <>
            <dt>{words.machineTarget}</dt>
            <dd>{words.machineAny}</dd>
          </>
        )}
      </dl>
      <p class="soft">{words.machineProof}</p>
    </section>
  );
}
