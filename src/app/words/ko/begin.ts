import type { words as english } from '../en/begin.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  about:
    '빈 태블릿에서 첫 번째 맞는 릴까지. 어느 단계에서든 멈출 수 있습니다. 여기서나 다른 태블릿에서 이어 가십시오.',
  language: '이 태블릿의 언어',
  done: '완료',
  steps: {
    plant: {
      title: '공장',
      text: '이름과 시간대. 인쇄물과 내보내기에 이름이 나옵니다.',
      act: '공장 이름 정하기',
    },
    engineer: {
      title: '첫 엔지니어',
      text: '이름, 사원증, PIN. 다른 사람은 모두 엔지니어가 추가합니다.',
      act: '엔지니어 추가',
    },
    line: {
      title: '라인',
      text: '설비와 뱅크. 슬롯은 설비에 적힌 그대로.',
      act: '라인 등록',
    },
    people: {
      title: '사람과 사원증',
      text: '작업자와 반장. 사원증은 여기서 인쇄할 수 있습니다.',
      act: '사람 추가',
    },
    product: {
      title: '첫 제품',
      text: '셋업 시트, 또는 보드의 좌표 파일과 BOM.',
      act: '제품 가져오기',
    },
    labels: {
      title: '슬롯 라벨',
      text: '슬롯마다 스캔할 코드가 생깁니다. 피더와 대차의 라벨도 그곳에서 인쇄합니다.',
      act: '라벨 인쇄',
    },
    scanner: {
      title: '스캐너',
      text: '한 번 시험하면 이 태블릿이 제대로 읽는지 알 수 있습니다.',
      act: '스캐너 시험',
    },
    label: {
      title: '인쇄한 라벨',
      text: '슬롯 라벨 하나를 스캔하십시오. 그 슬롯으로 읽혀야 합니다.',
      act: '라벨 시험',
    },
    practice: {
      title: '첫 장착 연습',
      text: '라인의 복사본에서 합니다. 거기서 한 것은 실적에 들어가지 않습니다.',
      act: '연습 시작',
    },
    load: {
      title: '첫 릴',
      text: '슬롯, 피더, 릴을 스캔하십시오. 서로 맞는지 태블릿이 알려 줍니다.',
      act: '라인에 장착',
    },
  },
  fromFile: '다른 공장의 파일로 시작',
  badges: '사원증 인쇄',
  more: '열기',
  openOf: (step) => `열기: ${step}`,
};
