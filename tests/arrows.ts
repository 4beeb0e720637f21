// Who may import whom: rows of rooms and walls held against files. What no row allows is forbidden, types like values. A room reaches only
// rooms of rows above its own, so that no arrow points up and no way out of a room leads back into it.

import path from 'node:path';
import { type Node, parseSource, type SourceFile, visit } from './source-scan.ts';

/** A room: its places, what they may name. A wall: packages or a folder, who alone may name them. */
export type Row = Readonly<{ names: readonly string[]; where: readonly string[]; why: string }>;

const isIn = (name: string, places: readonly string[]) =>
  places.some((at) => name === at || name.startsWith(at.endsWith('*') ? at.slice(0, -1) : `${at}/`));

/** Everything that a file names as a module: values, types, workers; `isLoaded` where that runs before the file does. */
export function importsOf(
  file: SourceFile,
): readonly { readonly name: string; readonly isLoaded: boolean }[] {
  const found: { name: string; isLoaded: boolean }[] = [];
  visit(parseSource(file).program, (node) => {
    const [first, second] = (node['arguments'] ?? []) as readonly Node[];
    const isWorker = file.source.slice(second?.start, second?.end) === 'import.meta.url';
    const isCall = isWorker || (node['callee'] as Node | undefined)?.['name'] === 'require';
    const name = ((node['source'] ?? (isCall ? first : null)) as Node | null)?.['value'];
    const isLoaded = (node['importKind'] ?? node['exportKind']) === 'value';
    if (typeof name === 'string' && !name.endsWith('/')) found.push({ name, isLoaded }); // a folder is no module
  });
  return found;
}

/** Every import that breaks a row, and every file on a circle of files that load each other. */
export function faultsOf(files: readonly SourceFile[], rooms: readonly Row[], walls: readonly Row[]) {
  const places = rooms.flatMap((row, rank) => row.names.map((place) => ({ place, rank, ...row })));
  places.sort((a, b) => b.place.length - a.place.length);
  const roomOf = (name: string) => places.find(({ place }) => isIn(name, [place]));
  const loads = new Map<string, readonly string[]>();
  const faults = files.flatMap((file) =>
    importsOf(file).flatMap(({ name, isLoaded }) => {
      const isOwn = name.startsWith('.');
      const to = isOwn ? path.posix.join(file.path, '..', name).replace(/\?.*/, '') : name;
      if (isLoaded) loads.set(file.path, [...(loads.get(file.path) ?? []), to]);
      const [own, other] = [roomOf(file.path), roomOf(to)];
      const wall = walls.find(({ names }) => isIn(to, names));
      const isInside = own !== undefined && own === other;
      const isBelow = own && (other?.rank ?? -1) < own.rank && isIn(to, own.where);
      if (wall ? isIn(file.path, [...wall.where, 'tests']) : isOwn || own?.place === 'tests')
        return !isOwn || isInside || isBelow ? [] : [`${file.path} imports ${to}: ${own?.why ?? 'no row'}`];
      return [`${file.path} imports ${to}: ${wall?.why ?? 'a new package needs a row'}`];
    }),
  );
  for (let size = -1; size !== loads.size; ) {
    size = loads.size;
    const all = new Set([...loads.values()].flat());
    for (const [file, to] of loads)
      if (!all.has(file) || !to.some((next) => loads.has(next))) loads.delete(file);
  }
  return [
    ...faults,
    ...[...loads.keys()].map((file) => `${file} is on a circle of files that load each other`),
  ];
}
