import type { words as english } from '../en/passkeys.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  open: (count) => `패스키 ${count}개`,
  openOf: (shown, name) => `${name} 님: ${shown}`,
  title: (name) => `${name} 님의 패스키`,
  help: '패스키는 누가 결정했는지 증명합니다: 이 태블릿의 잠금, 또는 태블릿에 대는 보안 키. 없으면 PIN으로 정합니다.',
  none: '아직 패스키가 없습니다.',
  where: {
    unsafe: '패스키에는 안전한 페이지가 필요합니다. 앱을 https 주소로 여십시오. 여기서는 PIN으로 정합니다.',
    'by-number': '패스키에는 숫자가 아닌 이름 주소가 필요합니다. 여기서는 PIN으로 정합니다.',
    none: '이 브라우저는 패스키를 쓸 수 없습니다. 여기서는 PIN으로 정합니다.',
  },
  who: (name) => `${name} 님이나 엔지니어만 할 수 있습니다. 사원증을 스캔한 다음 PIN을 입력하십시오.`,
  notThem: (name) => `${name} 님이나 엔지니어만 됩니다.`,
  add: '패스키 추가',
  name: '이름이 무엇입니까?',
  nameHelp: '예: “파란 키”, “라인 앞쪽 태블릿”.',
  nameMissing: '이름을 입력하십시오.',
  make: '지금 만들기',
  made: (name) => `패스키 “${name}” 추가됨.`,
  notMade: '패스키를 만들지 못했습니다. 키를 태블릿에 대거나 태블릿 잠금을 풀고 다시 시도하십시오.',
  remove: '삭제',
  removeOf: (name) => `패스키 ${name} 삭제`,
  removed: (name) => `패스키 “${name}” 삭제됨.`,
  addedBy: (name, host) => `${name} 님이 추가, ${host} 페이지용`,
  fell: '카운터가 줄었습니다. 복제되었을 수 있습니다. 삭제하고 새로 만드십시오.',
  unproven:
    '누가 추가했는지 증명되지 않았습니다. 반장이 “로그”에서 확인할 때까지 이 패스키는 아무것도 증명하지 못합니다.',
  signed: '서명',
  byPasskey: (name) => `${name} 님의 패스키로 증명됨`,
  pinOnly: 'PIN만, 태블릿이 알린 대로',
  refused: '패스키로 증명되지 않습니다: 다른 내용에 서명했거나 이 사람의 것이 아닙니다.',
  checking: '확인 중…',
};
