import type { words as english } from '../en/pictures.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  rule: '라벨 사진',
  ruleHelp: '장착이나 스플라이스 때 카메라가 읽은 라벨 사진을 보관합니다.',
  keep: '사진 보관',
  days: '보관 일수',
  megabytes: '태블릿마다 공간, MB',
  fault: '사진은 1~3650일, 1~10000 MB여야 합니다.',
  shown: '라벨 사진',
  notHere: '사진이 이 태블릿에 없습니다. 라벨을 읽은 태블릿에서 확인하십시오.',
  none: '사진을 찾지 못했습니다.',
  broken: '보관한 사진과 다릅니다. 반장에게 알리십시오.',
  failed: '라벨 사진을 보관하지 못했습니다. 판정은 유효합니다.',
  exported: '라벨 사진도 저장',
  saved: (name) => `${name} 파일로 저장했습니다.`,
};
