import type { words as english } from '../en/verdict.ts';
import { type ReasonWords, restsOn } from '../reason-words.ts';
import { formatCount, type Sentences } from '../words.ts';
import { moistureReasonsKo, tableKo } from './verdict-moisture.ts';
import { plantReasonsKo } from './verdict-plant.ts';

const reasons: ReasonWords = {
  ...moistureReasonsKo,
  ...plantReasonsKo,
  'unknown-slot': {
    title: '그런 슬롯 없음',
    say: (f) => `이 라인에는 없는 슬롯입니다: ${f['slot']}.`,
    act: '설비에서 슬롯 코드를 스캔하십시오.',
  },
  'slot-not-in-setup': {
    title: '쓰지 않는 슬롯',
    say: (f) => `이 셋업에서 ${f['slot']}에는 아무것도 필요 없습니다.`,
    act: '비워 두십시오. 맞는 슬롯을 스캔하십시오.',
  },
  'slot-loaded': {
    title: '슬롯에 이미 장착됨',
    say: (f) => `${f['slot']}에 이미 릴이 있습니다: ${f['part']}${f['reel'] ? `(릴 ${f['reel']})` : ''}.`,
    act: '먼저 그 릴을 분리하십시오.',
  },
  'slot-empty': {
    title: '슬롯이 비었음',
    say: (f) => `${f['slot']}에 장착된 것이 없습니다.`,
    act: '스플라이스 대신 릴을 장착하십시오.',
  },
  'no-part': {
    title: '품번 없음',
    say: (f) => `어느 부품인지 알려 주는 코드가 라벨에 없습니다. 필요: ${f['wanted']}.`,
    act: '라벨 전체를 스캔하거나 인쇄된 품번을 입력하십시오.',
  },
  'wrong-part': {
    title: '부품이 틀림',
    say: (f) =>
      f['goesTo'] ? `이 릴의 자리는 ${f['goesTo']}입니다.` : '이 셋업에는 이 부품을 쓰는 슬롯이 없습니다.',
    act: '제자리에 돌려놓으십시오. 다른 릴을 스캔하십시오.',
  },
  'wrong-for-lane': {
    title: '다른 레인에 맞지 않음',
    say: (f) => `${f['lane']}은(는) 이 슬롯에서 ${f['wanted']}을(를) 씁니다.`,
    act: '돌려놓으십시오. 두 레인에 모두 맞는 릴을 스캔하십시오.',
  },
  'kept-for-lane': {
    title: '다른 레인용으로 둠',
    say: (f) => `${f['slot']}에 ${f['lane']}용 릴이 있습니다: ${f['part']}.`,
    act: '그 릴은 그대로 두십시오. 스플라이스하려면 먼저 다른 레인을 선택하십시오.',
  },
  'not-in-setup': {
    title: '이 셋업에 없음',
    say: (f) =>
      f['slot']
        ? `이 릴을 쓰는 슬롯이 없습니다. 가장 비슷한 것은 ${f['slot']}입니다.`
        : '이 릴을 쓰는 슬롯이 없습니다.',
    act: '대차에 두거나 창고에 돌려놓으십시오.',
  },
  'bake-short': {
    title: '베이킹이 너무 짧음',
    say: (f) =>
      `베이킹 ${f['hours']} h${f['celsius'] ? `, ${f['celsius']} °C` : ''}. ${f['wanted'] ? `표의 요구는 ${f['wanted']} h` : '표에 해당 행이 없음'}. 그래서 플로어 라이프가 되살아나지 않습니다: ${f['leftSeconds']} 남음. (${restsOn(f, tableKo)}모르는 패키지는 가장 나쁜 값을 적용합니다.)`,
    act: '반장이 결정해야 합니다.',
  },
  'same-label': {
    title: '라벨이 같은 두 번째 릴',
    say: () => '사람이 확인했습니다: 라벨이 여기서 쓰는 릴과 같습니다.',
    act: '',
  },
  'reel-elsewhere': {
    title: '릴이 다른 슬롯에 있음',
    say: (f) => `릴 ${f['reel']}: 로그에는 ${f['slot']}에 있습니다.`,
    act: '이미 그 슬롯에 없으면 먼저 거기서 분리하십시오.',
  },
  'reel-on-cart': {
    title: '릴이 대차에 있음',
    say: (f) => `릴 ${f['reel']}: 로그에는 대차 ${f['cart']}에 ${f['slot']}용으로 준비되어 있습니다.`,
    act: '다른 릴을 쓰거나 먼저 “준비”에서 대차에서 내리십시오.',
  },
  'slot-on-cart': {
    title: '슬롯이 대차에 준비됨',
    say: (f) => `대차 ${f['cart']}에 이미 ${f['slot']}용 릴이 준비되어 있습니다.`,
    act: '다른 슬롯을 스캔하거나 먼저 대차의 그 자리에서 내리십시오.',
  },
  'reel-here': {
    title: '릴이 이미 여기 있음',
    say: (f) => `릴 ${f['reel']}: 이미 ${f['slot']}에 있습니다.`,
    act: '다음 릴을 스캔하십시오.',
  },
  'reel-blocked': {
    title: '사용 금지 릴',
    say: (f) => `사용 금지: ${f['reason']}.`,
    act: '따로 두십시오. 반장을 부르십시오.',
  },
  'feeder-elsewhere': {
    title: '피더가 다른 슬롯에 있음',
    say: (f) => `피더 ${f['feeder']}: 로그에는 ${f['slot']}에 있습니다.`,
    act: '피더 코드를 확인하거나 먼저 거기서 분리하십시오.',
  },
  'feeder-aside': {
    title: '따로 둔 피더',
    say: (f) => `피더 ${f['feeder']}, 사용 금지: ${f['why']}.`,
    act: '다른 피더를 쓰십시오. 점검한 뒤 피더에 기록하십시오.',
  },
  'feeder-lanes': {
    title: '피더에 남은 레인 없음',
    say: (f) => `피더 ${f['feeder']}의 레인: ${f['lanes']}. 로그에는 이미 ${f['slots']}에 있습니다.`,
    act: '피더 코드를 확인하거나 타입의 레인 수를 고치십시오.',
  },
  'feeder-on-cart': {
    title: '피더가 대차에 있음',
    say: (f) => `피더 ${f['feeder']}: 로그에는 대차 ${f['cart']}에 ${f['slot']}용으로 준비되어 있습니다.`,
    act: '피더 코드를 확인하거나 먼저 “준비”에서 대차에서 내리십시오.',
  },
  'feeder-width': {
    title: '피더가 테이프에 맞지 않음',
    say: (f) =>
      `피더 ${f['feeder']}: ${f['found']} mm 테이프용. 이 슬롯에 필요한 것은 ${f['wanted']} mm입니다.`,
    act: '폭이 맞는 피더를 쓰십시오.',
  },
  'feeder-pitch': {
    title: '피더 피치가 맞지 않음',
    say: (f) =>
      `피더 ${f['feeder']}: 이송 ${f['found']} mm. 이 테이프에 필요한 것은 ${f['wanted']} mm입니다.`,
    act: '피치를 설정하거나 다른 피더를 쓰십시오. 피치가 틀리면 모르는 사이에 부품을 버립니다.',
  },
  'floor-life-over': {
    title: '플로어 라이프 끝남',
    say: () => '이 릴은 방습 봉투 밖에 너무 오래 있었습니다.',
    act: '쓰지 마십시오. 자체 규칙대로 베이킹으로 보내십시오.',
  },
  'not-the-loaded-reel': {
    title: '로그의 릴이 아님',
    say: (f) => `로그에 있는 ${f['slot']}의 릴: ${f['loaded'] || '다른 릴'}.`,
    act: '누가 바꿨는지 알아보십시오. 그다음 분리하고 다시 장착하십시오.',
  },
  'part-contradicts': {
    title: '라벨이 서로 모순됨',
    say: (f) => `라벨은 ${f['part']}, 그런데 ${f['supplierPart']} 승인 대상은 ${f['approvedFor']}입니다.`,
    act: '반장이 결정해야 합니다.',
  },
  'alternate-not-approved': {
    title: '여기서 승인되지 않은 대체품',
    say: (f) =>
      `${f['found']}: ${f['approvedFor']}에서는 ${f['wanted']} 대신 쓸 수 있지만 이 제품에서는 안 됩니다.`,
    act: '반장이 결정해야 합니다.',
  },
  'supplier-part-not-approved': {
    title: '모르는 공급사 품번',
    say: (f) => `${f['supplierPart']}: 승인 목록에 없습니다. 필요: ${f['wanted']}.`,
    act: '반장이 결정해야 합니다.',
  },
  'no-quantity': {
    title: '수량 없음',
    say: () => '라벨에 수량이 없어 소진 시각을 모릅니다.',
    act: '수량을 입력하거나 반장이 결정하게 하십시오.',
  },
  expired: {
    title: '기한 지남',
    say: (f) => `사용 기한 ${f['expires']}.`,
    act: '반장이 결정해야 합니다.',
  },
  'by-alternate': {
    title: '승인된 대체품',
    say: (f) => `${f['found']}: ${f['wanted']}의 승인된 대체품입니다.`,
    act: '',
  },
  'by-supplier-part': {
    title: '공급사 품번으로 일치',
    say: (f) => `${f['supplierPart']}: ${f['part']}용으로 승인되었습니다.`,
    act: '',
  },
  'by-comparison': {
    title: '같은 품번으로 봄',
    say: (f) => `현장 규칙(${f['rule']})에 따라 ${f['found']} = ${f['wanted']}.`,
    act: '',
  },
  'mixed-lots': {
    title: '다른 로트',
    say: (f) => `로트가 바뀝니다: ${f['from']} → ${f['to']}.`,
    act: '',
  },
  'quantity-corrected': {
    title: '라벨의 수량이 아님',
    say: (f) =>
      f['label'] === ''
        ? `라벨에 수량 없음. 로그는 ${f['quantity']} 사용.`
        : `라벨은 ${f['label']}. 로그는 ${f['quantity']} 사용.`,
    act: '',
  },
};

export const words: Sentences<typeof english> = {
  accepted: {
    exchange: '교체용으로 맞음',
    refill: '보충용으로 맞음',
    load: '맞는 릴',
    splice: '스플라이스에 맞는 릴',
    sweep: '확인함',
  },
  refused: '거부',
  held: '보류, 반장 대기',
  wants: (slot) => `${slot}에 필요`,
  says: '릴에 적힌 것',
  also: '또한',
  goOn: '계속',
  nextIs: (slot) => `다음: ${slot}`,
  another: '다른 릴 스캔',
  callLead: '반장이 결정하게 하기',
  typeQuantity: '수량 입력',
  takeBack: '되돌리기',
  parts: (count) => `${formatCount(count)}개`,
  lot: (lot) => `로트 ${lot}`,
  reel: (reel) => `릴 ${reel}`,
  practice: '연습 스캔',
  allLoaded: '모든 슬롯이 장착되었습니다.',
  spliceCaution:
    '테이프는 설비가 멈췄거나 피더가 그 설명서대로 방호 구역 밖에 있을 때만 이으십시오. 칼날은 손가락 반대쪽으로 자르십시오. 현장 규칙이 우선입니다.',
  loadCaution: '손을 넣기 전에 설비를 멈추고 헤드가 멈출 때까지 기다리십시오. 현장 규칙이 우선입니다.',
  reasons,
};
