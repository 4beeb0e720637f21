import type { words as english } from '../en/refusal.ts';
import { formatCount, type Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  inLog: (clock) => `${clock}, 로그에 있음`,
  nothingLoaded: '장착된 것이 없습니다.',
  closest: '필요한 것 중 가장 비슷함',
  characters: (count) => `${formatCount(count)}글자가 다릅니다.`,
  belongsAt: '이 릴의 자리',
  belongsNowhere: '여기에는 이것을 쓰는 슬롯이 없습니다.',
  lacksReel: '지금 거기에 릴이 없습니다.',
  hasReel: '지금 거기에 릴이 있습니다.',
  onLine: (slot, line) => `${line}의 ${slot}`,
  rightReel: (slot) => `${slot}에 필요`,
  rightReelNone: '로그에는 창고에 그 릴이 없습니다.',
  rightReelAt: (reel, more) => (more === 0 ? reel : `${reel} 외 ${formatCount(more)}개`),
  feederToFetch: '가져올 피더',
  feederNone: '목록에 그 크기의 빈 피더가 없습니다.',
  anotherFeeder: '다른 피더 스캔',
  carryOn: (slot) => `${slot}에 가져가기`,
  unload: (slot) => `${slot} 분리`,
  reachIn: '손을 넣기 전에 설비를 멈추십시오.',
  runsHere: {
    title: '그 릴은 이미 여기서 쓰고 있습니다',
    text: (slot) => `이 라벨은 ${slot}의 릴과 같습니다. 라벨이 같은 두 번째 릴입니까?`,
    same: '아니요, 그 릴입니다',
    second: '예, 두 번째 릴입니다',
  },
  cameBefore: {
    title: '이 릴이 전에 라인에 있었습니까?',
    text: (lot, left) =>
      `라벨에 고유 ID가 없습니다. 비슷한 릴${lot === null ? '' : `(로트 ${lot})`}이 ${left === null ? '수량을 모른 채' : `${left}개 남은 채`} 라인에서 내려왔습니다.`,
    same: '예, 그 릴입니다',
    fresh: '아니요, 새 릴입니다',
  },
};
