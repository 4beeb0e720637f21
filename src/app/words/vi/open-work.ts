import type { words as english } from '../en/open-work.ts';
import type { Said } from '../open-work.ts';
import type { Sentences } from '../words.ts';

const saidVi: Said = {
  misfit: () => 'Setup không vừa chuyền này',
  move: (count) => `còn ${count} lần chuyển feeder`,
  'slot-empty': (count) => `${count} slot chưa có cuộn của nó`,
  'slot-other': (count) => `${count} slot có linh kiện khác`,
  'slot-held': (count) => `${count} cuộn chờ trưởng ca`,
  'measured-wrong': (count) => `${count} linh kiện đo sai`,
  'looked-wrong': (count) => `${count} linh kiện trông sai`,
  'cannot-tell': (count) => `${count} linh kiện quá sát giới hạn với máy đo`,
  unchecked: (count) => `${count} linh kiện chưa kiểm`,
  step: (count) => `${count} bước của checklist`,
  'no-checklist': () => 'Checklist chưa hề được mở',
};

export const words: Sentences<typeof english> = {
  said: saidVi,
  on: (part, slot) => `${part} ở ${slot}`,
  reelOn: (reel, slot) => `cuộn ${reel} ở ${slot}`,
  reel: (reel) => `cuộn ${reel}`,
  more: (count) => `và ${count} nữa`,
  isWrong: 'Sai',
  isOpen: 'Còn mở',
  nothing: 'Không còn gì mở.',
};
