import type { words as english } from '../en/find.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  open: '카메라로 찾기',
  sweep: '카메라로 전수 확인',
  title: '릴 찾기',
  help: '태블릿을 라벨을 따라 천천히 움직이십시오.',
  sweepHelp: '슬롯 라벨과 그 릴의 라벨을 화면 안에 두십시오.',
  on: (slot) => `${slot}에 있음`,
  to: (slots) => `${slots}(으)로`,
  told: (wanted, barred, read) => `필요: ${wanted} · 쓰지 말 것: ${barred} · 읽음: ${read}`,
  swept: (seen, all) => `확인: ${seen} / ${all}`,
  other: '지금 필요 없음',
  unknown: '알 수 없음',
  reading: '읽는 중…',
  none: '아직 읽은 것이 없습니다.',
  missing: '아직 못 본 슬롯',
  several: (slot) => `${slot}: 가까이에 릴이 여러 개 있습니다. 더 가까이 대거나 슬롯과 릴을 스캔하십시오.`,
  unsure: (slot) => `${slot}: 라벨로는 어느 릴인지 알 수 없습니다.`,
  check: '이 슬롯 확인',
  times: (count) => `화면에 ${count} ×`,
  kept: (count) => `확인한 릴: ${count}. 로그에 남겼습니다.`,
  notKept: '확인한 내용이 로그에 없습니다. 먼저 로그인하십시오.',
  barred: '쓰지 말 것',
};
