// What a machine is asked, and how its answers become entries: what it has loaded, which setup it wants.

import type { Answered } from './ask.ts';
import { type Loaded, type LoadedDesk, openLoaded } from './loaded.ts';
import type { MachineConfig, MachineWorld } from './machine.ts';
import { type Place, readSaid, type WantedSetup } from './messages.ts';
import { type OfferedDesk, openOffered } from './offered.ts';

/** Opens both. */
export function openAskedDesks(
  config: MachineConfig,
  world: MachineWorld,
): { readonly loaded: LoadedDesk; readonly offered: OfferedDesk } {
  const { station, line } = config;
  const common = { ...world, station, line, notice: world.desk.notice };
  return {
    loaded: openLoaded({
      ...common,
      slotOf: (place) => slotOf(config, place),
      ask: world.askLoaded,
      read: loadOf,
    }),
    offered: openOffered({
      ...common,
      slotOf: (place) => config.slots.get(place) ?? place,
      ask: world.askWanted,
      read: wantedOf,
    }),
  };
}

/** The line's slot for a place: as the configuration says, else what the machine calls it. */
export function slotOf(config: MachineConfig, { names }: Place): string | null {
  const mapped = names.find((name) => config.slots.has(name));
  return mapped === undefined ? (names[0] ?? null) : (config.slots.get(mapped) ?? null);
}

/** The load that the machine's answer tells, all of which was asked for; or why it tells none. */
function loadOf(answer: Answered): Loaded | string {
  if (!answer.ok) return answer.why;
  const said = readSaid(answer.envelope);
  if (said.is === 'loaded') return { places: said.places, whole: !said.isCut };
  return said.is === 'unread' ? `${answer.envelope.name}: ${said.why}` : answer.envelope.name;
}

/** The setup that the machine's answer asks for; or why it asks for none. */
function wantedOf(answer: Answered): WantedSetup | string {
  if (!answer.ok) return answer.why;
  const said = readSaid(answer.envelope);
  if (said.is === 'wanted') return said.wanted;
  return said.is === 'unread' ? `${answer.envelope.name}: ${said.why}` : answer.envelope.name;
}
