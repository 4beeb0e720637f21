import type { words as english } from '../en/values.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  title: (part) => `${part} 측정`,
  ask: '공급하기 전에 이 릴의 부품 하나를 계측기로 측정하십시오.',
  which: '코드가 여러 값을 뜻할 수 있습니다. 맞는 값을 고르십시오.',
  wanted: (nominal, least, most, unit) => `기준: ${nominal} ${unit}, ${least} ~ ${most} ${unit}`,
  meter: (percent, digits, guard) =>
    `계측기: ± ${percent} % 및 ± ${digits} 디짓. 가드 밴드: 그 값의 ${guard} %.`,
  shows: (unit) => `계측기 표시(${unit})`,
  help: '입력하거나 계측기가 입력하게 하십시오.',
  wrong: '숫자를 입력하십시오. 예: 10.02',
  otherUnit: (unit) => `계측기가 다른 양을 표시합니다. ${unit} 단위의 숫자가 필요합니다.`,
  check: '값 확인',
  cannot: '측정하지 않고 두기',
  rule: {
    title: '공급 전에 측정할 부품',
    help: '부품 종류마다 한 행. 값은 부품 목록이나 셋업의 메모에서 옵니다. 행이 없으면 확인 없음.',
    begins: '품번 앞부분(비움: 값이 있는 모두)',
    add: '부품 종류 추가',
    percent: '계측기: 읽은 값의 ± %',
    digits: '계측기: 마지막 자리의 ± 디짓',
    guard: '가드 밴드, 계측기 불확도의 %',
    wrong: '계측기 값은 숫자로, 종류는 한 번씩 입력하십시오.',
  },
};
