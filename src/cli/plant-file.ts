// What is wrong with a plant's file, in one line, for every command that takes one.

import {
  type PlantFile,
  type PlantFileFault,
  plantFileKinds,
  readPlantFile,
} from '../../shared/floor/plant-file.ts';
import { type CommandIo, NotUnderstood, readText } from './command.ts';

function sayFault(fault: PlantFileFault): string {
  switch (fault.code) {
    case 'not-json':
      return 'expected a file that "reelward plant" or the app wrote, found text that is no JSON';
    case 'not-a-plant':
      return 'expected a file that "reelward plant" or the app wrote, found other JSON';
    case 'newer':
      return 'it was written by a newer version; update this one first';
    case 'no-lines':
      return 'it holds no line';
    case 'kind':
      return `told[${fault.at - 1}].kind: expected one of ${plantFileKinds.join(', ')}, found ${fault.kind}`;
    case 'payload':
      return `told[${fault.at - 1}]${fault.where === '' ? '' : `.payload.${fault.where}`}: not as an entry ${fault.kind} wants it`;
  }
}

/** Reads a plant's file, or standard input for `-`; throws `NotUnderstood` with the first thing that is wrong with it. */
export async function readOtherPlant(file: string, io: CommandIo): Promise<PlantFile> {
  const read = readPlantFile(await readText(file, io));
  if (read.ok) return read.value;
  throw new NotUnderstood(`${file === '-' ? 'standard input' : file}: ${sayFault(read.error)}`);
}
