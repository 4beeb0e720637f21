import type { words as english } from '../en/sync.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  live: '동기화됨',
  syncing: '동기화 중…',
  toSend: (count) => `보낼 것 ${count}건`,
  unreached: (span) => (span === null ? '서버에 닿지 않음' : `${span} 동안 서버에 닿지 않음`),
  waits: '서버가 기다리라고 함',
  refused: '서버가 거부함',
  quarantined: (count) => `기록 ${count}건 격리됨`,
  rolledBack: '서버의 로그가 뒤로 갔을 수 있습니다',
  headFault: '서버의 로그가 의심스러움',
  clocksOff: (count) => `태블릿 ${count}대의 시계가 틀림`,
  history: (share) => `이력 불러오는 중: ${share}`,
  historyChecked: '이력 확인 중',
  historyTitle: '이력',
  stillMissing: (missing, of) => `옛 기록 ${of}건 중 ${missing}건이 아직 없습니다.`,
  checkedHelp: '모든 기록이 왔습니다. 이제 이 태블릿이 직접 모두 계산해 비교합니다.',
  historyHelp:
    '이 태블릿은 다른 태블릿이 계산한 것에서 시작했습니다. 장착과 확인은 평소대로 됩니다. 나머지가 올 때까지 여기의 로그, 내보내기, 추적은 불완전합니다.',
  notWhole: (missing) =>
    `옛 기록 ${missing}건이 아직 오는 중입니다: 답이 불완전할 것입니다. 서버에는 모두 있습니다.`,
};
