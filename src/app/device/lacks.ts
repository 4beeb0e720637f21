// What the browser in use cannot do of what work on a floor would have: told on the page of this tablet, never in the way of work.

/** Everything that an engine may lack, in the order in which it is told. */
const abilities = {
  awake: (engine: Navigator) => 'wakeLock' in engine,
  vibration: (engine: Navigator) => 'vibrate' in engine,
  keeps: (engine: Navigator) => typeof engine.storage?.persist === 'function',
  serial: (engine: Navigator) => 'serial' in engine,
} as const;

export type Lack = keyof typeof abilities;

/** What this engine lacks. Pages that are not secure lack most of it, whatever the engine. */
export function engineLacks(engine: Navigator = navigator): readonly Lack[] {
  const names = Object.keys(abilities) as Lack[]; // its own keys
  return names.filter((name) => !abilities[name](engine));
}
