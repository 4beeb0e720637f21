import type { words as english } from '../en/practice.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  word: '연습',
  tells: '여기서 한 것은 실적에 들어가지 않습니다. 진짜 라인은 계속 돕니다.',
  end: '연습 끝내기',
  real: (slot, told) => `진짜 라인: ${slot} ${told}`,
  title: '라인을 건드리지 않고 연습',
  about:
    '지금 이 라인의 복사본을 받습니다. 스캔, 스플라이스, 기종 교체, 실수도 해 보십시오: 진짜 라인이나 그 로그, 수량에는 닿지 않습니다. 복사본은 연습을 끝내거나 열두 시간이 지나면 지워집니다.',
  aboutNew:
    '이 공장에는 아직 라인이 없어 작은 가상 라인을 받습니다. 스캔, 장착, 스플라이스, 실수도 해 보십시오. 연습을 끝내거나 열두 시간이 지나면 지워집니다.',
  warns: '진짜 라인의 경고는 계속 보입니다.',
  start: '연습 시작',
  taken: '이 태블릿의 다른 창에서 연습이 열려 있습니다. 먼저 거기서 끝내십시오.',
  notSaved: (name) => `연습: 파일을 저장하지 않습니다. 실제 라인에서는 ${name}이 됩니다.`,
  labels: '연습용 라벨',
  labelsHelp: '스캔 대신 라벨을 누르십시오: 슬롯, 필요하면 피더, 릴.',
  print: '라벨 인쇄',
  groups: {
    load: '장착할 것',
    splice: '다음에 스플라이스할 것',
    wrong: '거부되거나 보류될 것',
    panels: '패널',
  },
  slot: (slot) => `슬롯 ${slot}`,
  wants: (part) => `필요: ${part}`,
  right: (slot) => `${slot}에 맞는 릴`,
  wrong: (slot, asked) => `원래 ${slot}; ${asked}에서 해 보기`,
  foreign: (asked) => `쓰는 슬롯 없음; ${asked}에서 해 보기`,
  bare: (slot) => `라벨에 수량 없음; ${slot}용`,
  free: (slot) => `${slot}용 빈 피더`,
  panel: '패널 한 장 세기',
  nothing: '먼저 셋업을 선택하십시오. 그 라벨이 여기에 나옵니다.',
  names: { line: '연습 라인', machine: '첫 설비', bank: '앞', product: '연습 보드' },
};
