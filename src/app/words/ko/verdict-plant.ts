// What is said of the reasons that come from the plant's own lists: types of feeders, makers of a product, ages, the store.

import type { PlantReasons, ReasonFacts } from '../reason-words.ts';

/** What was measured, what is wanted, and what the guard band leaves. */
const measured = (f: ReasonFacts) =>
  `측정: ${f['quantity']} ± ${f['uncertainty']} ${f['unit']}. 기준: ${f['nominal']} ${f['unit']}, ${f['least']} ~ ${f['most']}. 가드 밴드 ${f['guard']} 적용: ${f['from']} ~ ${f['to']}.`;

export const plantReasonsKo: PlantReasons = {
  'feeder-unknown': {
    title: '모르는 피더',
    say: (f) => `피더 ${f['feeder']}: 공장 목록에 없어 폭을 대조할 수 없습니다.`,
    act: '반장이 결정해야 합니다.',
  },
  'feeder-type': {
    title: '피더 타입이 틀림',
    say: (f) => `피더 ${f['feeder']}: ${f['found']} 타입. 이 슬롯에 필요한 것은 ${f['wanted']} 타입입니다.`,
    act: '그 타입의 피더를 쓰십시오.',
  },
  'feeder-drive': {
    title: '구동이 틀림',
    say: (f) => `피더 ${f['feeder']}: 구동 ${f['found']}. 이 슬롯에 필요한 것은 ${f['wanted']}입니다.`,
    act: '구동이 맞는 피더를 쓰십시오.',
  },
  'feeder-height': {
    title: '포켓이 피더에 너무 깊음',
    say: (f) =>
      `테이프의 포켓 깊이는 ${f['wanted']} mm, 피더 ${f['feeder']}에 지나갈 수 있는 깊이는 ${f['found']} mm입니다.`,
    act: '더 깊은 포켓용 피더를 쓰십시오.',
  },
  'maker-not-listed': {
    title: '제조사가 이 제품의 목록에 없음',
    say: (f) =>
      `${f['supplierPart']}: 이 제품에서 ${f['part']}용으로 승인되지 않았습니다.${f['listed'] ? ` 승인됨: ${f['listed']}.` : ''}${f['approvedFor'] ? ` ${f['approvedFor']}에서는 승인되어 있습니다.` : ''}`,
    act: '목록에 있는 제조사의 릴을 쓰거나 반장이 결정하게 하십시오.',
  },
  'date-code-old': {
    title: '날짜 코드로 보아 너무 오래됨',
    say: (f) => `제조 ${f['made']}. 이 부품에 대한 라인의 경과 한도는 ${f['last']}에 끝났습니다.`,
    act: '반장이 결정해야 합니다.',
  },
  'date-code-unknown': {
    title: '경과 모름',
    say: (f) =>
      f['dateCode']
        ? `날짜 코드 ${f['dateCode']}: 확실히 읽을 수 없습니다. 라인은 이 부품의 경과를 제한합니다.`
        : '라벨에 날짜 코드가 없습니다. 라인은 이 부품의 경과를 제한합니다.',
    act: '반장이 결정해야 합니다.',
  },
  'value-outside': {
    title: '값이 틀림',
    say: measured,
    act: '장착하지 마십시오. 릴을 따로 두고 다른 릴을 스캔하십시오.',
  },
  'value-unsure': {
    title: '값 불분명',
    say: (f) => `${measured(f)} 이 계측기로는 한계에 너무 가깝습니다.`,
    act: '릴을 다시 스캔하여 다시 측정하거나 반장이 결정하게 하십시오.',
  },
  'value-unmeasured': {
    title: '값 미측정',
    say: (f) => `라인은 공급 전에 부품 하나를 측정하도록 요구합니다: ${f['part']}.`,
    act: '릴을 다시 스캔하여 측정하거나 반장이 결정하게 하십시오.',
  },
  'value-unknown': {
    title: '확인할 값 없음',
    say: (f) =>
      f['lack'] === 'tolerance'
        ? `부품 목록의 값에 허용차가 없습니다: ${f['part']}.`
        : `부품 목록에 값이 없습니다: ${f['part']}.`,
    act: '반장이 결정해야 합니다. 부품 화면에 값을 입력하십시오.',
  },
  'value-within': { title: '값 확인됨', say: measured, act: '' },
  'feeder-care': {
    title: '피더를 점검할 때',
    say: (f) =>
      `피더 ${f['feeder']}: 약 ${f['placed']}개 실장, 공장 기준 ${f['after']}개마다 점검. 빼낸 뒤 점검에 맡기십시오.`,
    act: '',
  },
  'older-in-store': {
    title: '창고에 더 오래된 릴이 있음',
    say: (f) =>
      f['by'] === 'expires'
        ? `${f['place']}의 릴 ${f['reel']}: ${f['expires']}까지 써야 하며 이 릴보다 먼저입니다.`
        : `${f['place']}의 릴 ${f['reel']}: 날짜 코드 ${f['dateCode']}, 이 릴보다 오래되었습니다.`,
    act: '',
  },
};
