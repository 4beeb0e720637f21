import type { words as english } from '../en/this-plant.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  name: '공장 이름',
  nameHelp: '장착표, 사원증, 내보내기에 나옵니다.',
  zoneHelp: '새 라인은 이것으로 시작합니다.',
  nameMissing: '공장 이름을 입력하십시오.',
  zoneUnknown: '목록에서 시간대를 선택하십시오.',
  same: '바뀐 것이 없습니다.',
  save: '이름 저장',
  saved: (name) => `저장함: ${name}`,
  fileTitle: '두 번째 공장을 위한 파일',
  fileHelp:
    '라인, 설비, 뱅크, 규칙, 부품 규칙, 체크리스트, 라벨 규칙이 들어 있습니다. 사람, 릴, 셋업, 이력은 없습니다.',
  noLine: '아직 라인이 없습니다.',
  fileSave: '파일 저장',
  fileSaved: (name) => `저장함: ${name}`,
  beginTitle: '다른 공장의 파일로 시작',
  beginHelp: '다른 공장의 이 페이지 또는 “reelward plant”로 저장한 파일입니다.',
  notEmpty: '이 공장에는 이미 라인이 있습니다. 파일은 라인이 없는 공장에만 씁니다.',
  begun: '라인과 규칙이 들어왔습니다. 다음 단계로 가십시오.',
  choose: '파일 선택',
  brings: '들어오는 것:',
  bringsOf: (name) => `${name}에서 들어오는 것:`,
  counts: {
    lines: '라인',
    slots: '슬롯',
    parts: '부품 규칙',
    checklists: '체크리스트',
    labelRules: '라벨 규칙',
  },
  begin: '이 파일 사용',
  toSteps: '첫 단계',
  faults: {
    'not-json': '공장 파일이 아닙니다. 다른 공장에서 저장한 파일을 선택하십시오.',
    'not-a-plant': '다른 종류의 파일입니다. 다른 공장에서 저장한 파일을 선택하십시오.',
    newer: '더 새로운 버전의 파일입니다. 먼저 이 태블릿을 업데이트하십시오.',
    'no-lines': '파일에 라인이 없습니다. 다른 공장에서 다시 저장하십시오.',
    kind: (at, what) =>
      `${at}번째 기록(${what})은 이런 파일에 들어갈 수 없습니다. 다른 공장에서 다시 저장하십시오.`,
    payload: (at, what) =>
      `${at}번째 기록(${what})이 손상되었습니다. 다른 공장에서 파일을 다시 저장하십시오.`,
  },
};
