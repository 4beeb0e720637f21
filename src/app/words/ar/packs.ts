// Not said in this language yet: as English has it.

export { words } from '../en/packs.ts';
