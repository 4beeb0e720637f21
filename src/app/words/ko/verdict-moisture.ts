// What is said of the reasons about bakes, labels of level 6 and reels without an id.

import type { MoistureReasons, TableWords } from '../reason-words.ts';

/** On what a bake's hours rest. */
export const tableKo: TableWords = {
  own: '표: 공장이 가진 규격서. ',
  copy: '표: 공개본과 대조함. ',
  memory: '표: 기억에 의함. ',
};

export const moistureReasonsKo: MoistureReasons = {
  'bake-hours-over': {
    title: '베이킹 합계가 너무 김',
    say: (f) =>
      `90 °C 초과가 지금까지 ${f['hours']} h, 한도는 ${f['most']} h입니다. 리드가 잘 납땜되지 않을 수 있습니다.`,
    act: '반장이 결정해야 합니다. 부품 제조사에 물으십시오.',
  },
  'label-time-missing': {
    title: '6등급: 라벨의 시간은?',
    say: () => '베이킹한 6등급 릴이 얼마나 가는지는 봉투 라벨에 있습니다. 아직 아무도 입력하지 않았습니다.',
    act: '베이킹하고 “봉투 / 오븐”에서 시간을 입력한 다음 다시 스캔하십시오.',
  },
  'reel-unnamed': {
    title: 'ID가 없고, 개봉한 릴일 수 있음',
    say: (f) =>
      `이 부품의 릴${f['lot'] ? `(로트 ${f['lot']})` : ''}이 전에 라인에서 내려왔습니다${f['left'] ? `(남은 수량 ${f['left']})` : ''}. ID가 없으면 둘을 구별할 수 없어 ${f['floorLife'] === 'true' ? '플로어 라이프를' : '수량을'} 알 수 없습니다.`,
    act: '릴에 ID를 주거나 반장이 결정하게 하십시오.',
  },
  'reel-gone': {
    title: '로그에 따르면 오래전에 다 쓴 릴',
    say: (f) =>
      `로그에는 릴 ${f['reel']} 또는 그 부품 일부를 오래전에 다 쓴 것으로 되어 있습니다. 봉투 밖에 얼마나 있었는지 이 태블릿은 알 수 없습니다.`,
    act: '로트는 추적에서 찾으십시오. 반장이 결정해야 합니다.',
  },
  'floor-life-short': {
    title: '플로어 라이프가 릴보다 먼저 끝남',
    say: (f) => `플로어 라이프는 ${f['leftSeconds']} 뒤에 끝나고, 릴은 ${f['neededSeconds']} 갑니다.`,
    act: '반장이 결정해야 합니다.',
  },
};
