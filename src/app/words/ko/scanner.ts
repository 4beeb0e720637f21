import type { Layout } from '../../scan/layouts.ts';
import type { words as english } from '../en/scanner.ts';
import type { Sentences } from '../words.ts';

const layouts: Readonly<Record<Layout, string>> = {
  us: '영어(미국)',
  uk: '영어(영국)',
  german: '독일어',
  'swiss-german': '스위스 독일어',
  french: '프랑스어',
  spanish: '스페인어',
  italian: '이탈리아어',
  swedish: '스웨덴어',
};

export const words: Sentences<typeof english> = {
  layouts,
  title: '이 코드를 스캐너로 스캔하십시오',
  help: '이 화면, 다른 화면, 인쇄한 시트 어디서나. 이 페이지가 열려 있는 동안 스캔은 다른 데로 가지 않습니다.',
  codeLabel: '조정용 코드',
  striped: '바코드만 읽는 스캐너',
  stripedLabel: '조정용 바코드',
  stripedHelp:
    '작은 화면에는 너무 넓습니다: 시트를 인쇄하십시오. 바코드는 구분 문자가 한 가지뿐이라 그것만 시험합니다.',
  stripedSheet: '바코드만 읽는 스캐너용:',
  print: '시트 인쇄',
  waiting: '스캔을 기다리는 중…',
  right: '이 스캐너는 설정이 맞습니다.',
  rightText: '글자, 기호, 구분 문자가 인쇄된 대로 옵니다.',
  plainOnly: '단순한 코드는 읽지만 구분 문자가 있는 라벨은 못 읽습니다.',
  plainOnlyText: '스캐너를 아래와 같이 설정할 때까지 그런 라벨은 거부합니다.',
  wrong: '이 스캐너는 아직 믿을 수 없습니다.',
  wrongText: '이것으로 스캔한 것은 인쇄된 대로 오지 않습니다.',
  findings: {
    'all-equal': '모든 글자가 인쇄된 대로 왔습니다.',
    'half-arrived': (found, wanted) =>
      `${wanted}글자 중 ${found}글자만 왔습니다: 스캔이 끊겼습니다. 글자 사이 지연을 없애거나 스캐너를 거치대에 가까이 두십시오.`,
    'layout-differs': (scanner, tablet) =>
      `스캐너의 키보드는 ${scanner}, 태블릿의 키보드는 ${tablet}입니다. 스캐너의 키보드를 ${tablet}, 또는 태블릿의 배열을 ${scanner} 쪽으로 맞추십시오.`,
    'characters-differ':
      '글자가 바뀌어 오는데, 여기서 아는 키보드 배열로는 설명되지 않습니다. 스캐너의 키보드를 태블릿 배열에 맞추고 다시 스캔하십시오.',
    'case-inverted':
      '대소문자가 뒤바뀌어 옵니다. Caps Lock을 끄고, 스캐너가 글자를 그대로 보내도록 설정하십시오.',
    'separators-lost': (names) =>
      `구분 문자가 오지 않습니다(${names}). 스캐너가 제어 문자를 Ctrl+키 또는 Alt+숫자판으로 보내도록 설정하십시오.`,
    'separator-replaced': (name, by) =>
      `구분 문자 ${name} 대신 “${by}” 문자가 옵니다. 스캐너가 제어 문자를 그대로 보내도록 설정하십시오.`,
    'terminator-missing': '끝에 Enter가 없어 스캔의 끝은 추측입니다. 스캐너의 접미사를 Enter로 설정하십시오.',
    'unknown-key': (key) => `스캔 중간에 “${key}” 키가 왔습니다. 스캐너 설정에서 그런 키를 빼십시오.`,
    slow: (pace) => `글자 사이 ${pace} ms는 느립니다. 글자 사이 지연을 없애십시오.`,
    'symbology-id-sent': (id) =>
      `스캐너가 앞에 코드 종류(${id})를 보냅니다. 이해되므로 그대로 두어도 됩니다.`,
  },
  wanted: '인쇄',
  found: '도착',
  label: {
    title: '인쇄한 라벨을 스캔하십시오',
    help: '슬롯, 피더, 사원증 또는 릴의 라벨.',
    read: '이 라벨은 읽힙니다.',
    unknown: '이 태블릿이 모르는 라벨입니다.',
    unknownHelp: '다시 스캔하십시오. 안 되면 더 크게 인쇄하거나 먼저 공장에 추가하십시오.',
  },
  arrived: '도착한 것',
  none: '아직 없습니다. 아무거나 스캔하십시오: 제어 문자까지 여기에 보입니다.',
  characters: (count) => `${count}글자`,
  pace: (ms) => `글자당 ${ms} ms`,
  endedBy: { Enter: '다음 Enter', Tab: '다음 Tab', silence: 'Enter 없음' },
  reads: '읽은 결과',
  readsNothing: '알려진 라벨 아님',
  settingsTitle: '스캐너 설정 방법',
  settings: [
    '키보드로 작동(HID).',
    '키보드 국가: 태블릿과 같게.',
    '제어 문자를 Ctrl+키 또는 Alt+숫자판으로 보냄.',
    '접미사: Enter. 접두사 없음.',
    '글자는 인쇄된 대로: 대소문자 변경 없음.',
    '글자 사이 지연 없음.',
  ],
  keep: '이 스캐너의 속도를 이 태블릿에 저장',
  keptNow: '저장했습니다. 이 태블릿은 이 속도로 스캔과 타자를 구분합니다.',
  isKept: '이 태블릿에 스캐너의 속도가 저장되어 있습니다.',
  forget: '보통 속도 사용',
  sheetTitle: '스캐너 조정',
  sheetText: '태블릿에서 “공장”의 “스캐너”를 열고 이 코드를 스캔하십시오.',
  sheetHolds: '코드의 내용:',
  fields: {
    part: '부품',
    supplierPart: '공급사 품번',
    quantity: '수량',
    lot: '로트',
    dateCode: '날짜 코드',
    reel: '릴',
  },
};
