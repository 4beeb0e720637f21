import type { Words } from '../areas.ts';

export const words: Words<'feeds'> = {
  kinds: { tape: '테이프', 'cut-tape': '컷 테이프', tray: '트레이', tube: '튜브', bulk: '벌크' },
  acts: { splice: '스플라이스', exchange: '교체', refill: '보충' },
  label: '라벨 인쇄',
  warns: {
    splice: (span, clock) => `${span} 후, ${clock}쯤 소진됩니다. 다음 가닥을 가져오십시오.`,
    exchange: (span, clock) => `${span} 후, ${clock}쯤 소진됩니다. 그 뒤 교체할 때까지 설비가 멈춥니다.`,
    refill: (span, clock) => `${span} 후, ${clock}쯤 소진됩니다. 그 전에 보충하십시오.`,
  },
  comesNext: { splice: '새 릴', exchange: '대신 올릴 것', refill: '위에 부을 것' },
  accepted: {
    exchange: '있던 것은 분리된 것으로 봅니다. 스플라이스가 아닙니다: 이것을 넣을 때까지 설비가 멈춥니다.',
    refill: '여기부터 피더를 비울 때까지 두 로트 모두 가능성이 있습니다.',
  },
  sayFeeds: {
    tape: '',
    'cut-tape': '컷 테이프: 스플라이스 가능 시간이 없습니다. 가닥이 끝나면 끝납니다.',
    tray: '트레이: 비면 교체할 때까지 설비가 멈춥니다.',
    tube: '튜브: 비면 교체할 때까지 설비가 멈춥니다.',
    bulk: '벌크: 비기 전에 보충하십시오.',
  },
  picks: {
    tape: '',
    'cut-tape': (count) => `테이프 ${count}가닥`,
    tray: (count) => `트레이 ${count}더미`,
    tube: (count) => `튜브 ${count}세트`,
    bulk: (count) => `${count}봉`,
  },
  dueNow: { splice: '지금 스플라이스', exchange: '지금 교체', refill: '지금 보충' },
  forLane: (lane, part, count) => `${lane}: ${part}, 패널당 ${count}.`,
};
