import type { words as english } from '../en/people.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  whoTitle: '누가 작업합니까?',
  yourLanguage: '내 언어(모든 태블릿에서)',
  pinTitle: (name) => `${name} 님의 PIN`,
  pinHelp: '숫자 네 자리에서 여덟 자리.',
  pinWrong: 'PIN이 틀립니다.',
  pinLeft: (left) => `PIN이 틀립니다. ${left}번 더 시도할 수 있습니다.`,
  pinLocked: (minutes) => `시도가 너무 많습니다. ${minutes} min 동안 잠깁니다.`,
  pinUnsafe: 'PIN은 안전한 페이지에서만 확인할 수 있습니다. https 주소로 앱을 여십시오.',
  notSeenHere: (name) =>
    `서버가 응답하지 않고, 이 태블릿은 ${name} 님을 확인한 적이 없습니다. 서버가 응답하는 곳에서 시도하십시오.`,
  pinNotHere: (name) =>
    `이 태블릿은 아직 ${name} 님의 PIN을 모릅니다. 서버가 응답하는 곳이나 PIN을 설정한 태블릿에서 한 번 입력하십시오.`,
  seenTooLongAgo: (name) =>
    `서버가 응답하지 않고, 이 태블릿이 ${name} 님을 확인한 지 사흘이 넘었습니다. 서버가 응답하는 곳에서 시도하십시오.`,
  asking: '확인 중…',
  enter: '확인',
  erase: '지우기',
  nobody:
    '이 태블릿에 아직 사람이 없습니다. 먼저 엔지니어를 추가하십시오. 다른 사람은 엔지니어가 추가합니다.',
  addFirst: '첫 엔지니어 추가',
  awayTitle: (name) => `${name} 님이 로그아웃되었습니다`,
  awayHelp: (name) =>
    `하던 작업은 남아 있습니다. ${name} 님이 로그인하면 이어서 합니다. 다른 사람이 로그인하면 닫힙니다.`,
  awayClose: '하던 작업 닫기',
  badgeNeeded: (name) => `${name} 님은 PIN이 없습니다: 사원증을 스캔하십시오.`,
  scanBadge: '사원증 스캔',
  badgeHelp: '스캐너로 스캔하거나 코드 아래 인쇄된 것을 입력하십시오.',
  badgeUnknown: '모르는 사원증입니다. 다른 것을 스캔하십시오.',
  noPin: (name) => `${name} 님은 아직 PIN이 없습니다. 엔지니어가 “공장”에서 설정합니다.`,
  clearTitle: '반장이 결정합니다',
  clearHelp: '반장의 사원증을 스캔하십시오. 그다음 PIN과 이유를 입력하십시오.',
  clearReason: '이유',
  reasons: ['이 로트는 기술 부서가 승인', '사람이 확인하고 측정함', '라벨 손상, 부품 확인됨', '사람이 셈'],
  otherReason: '다른 이유',
  accept: '릴 받기',
  decline: '거절',
  cartKept: (f) => `대차 ${f.cart}: ${f.slot}용은 이제 ${f.carries}. ${f.held}: 대차에 싣지 않습니다.`,
  cleared: (slot) => `${slot}용으로 허용됨.`,
  declined: '거절함. 릴은 라인에 올리지 않습니다.',
  withoutPasskey: '없이 저장',
  ownNotSigned: '패스키가 서명하지 않아 아무것도 저장하지 않았습니다.',
  withPasskey: '패스키 사용',
  passkeyAsks: '다음에 패스키를 요청합니다.',
  passkeyFailed:
    '패스키로 서명하지 못해 아무것도 기록하지 않았습니다. 다시 시도하거나, 취소하고 PIN을 쓰십시오.',
  needsRole: (role) => `필요: ${role}`,
  quantityTitle: '릴에 부품이 몇 개 있습니까?',
  quantityHelp: '인쇄된 수 또는 센 수. 나중에 정정할 수 있습니다. 정정은 모두 로그에 남습니다.',
  quantityWrong: '0보다 큰 정수를 입력하십시오.',
};
