import type { words as english } from '../en/server.ts';
import type { Cause } from '../server.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  noKey: '이 페이지는 기록에 서명할 수 없습니다',
  noKeyHelp:
    '키, 카메라, 오프라인 시작에는 안전한 페이지가 필요합니다. https 주소로 앱을 열거나(서버가 주소와 신뢰하는 방법을 보여 줍니다) 서버 컴퓨터에서 여십시오. 그때까지 기록은 이 태블릿에 남습니다.',
  alone: '이 태블릿은 혼자 작동합니다',
  aloneHelp:
    '서버 없이도 확인하고 경고하고 로그를 남깁니다. 서버에 참여하면 옛 기록까지 다른 태블릿과 로그를 나눕니다.',
  joinTitle: '공장 서버에 참여',
  joinAgain: '다시 참여',
  code: '일회용 코드',
  codeHelp: '문자와 숫자 열 자리. 반장의 태블릿이나 서버에서 받습니다. 입력하거나 그 코드를 스캔하십시오.',
  codeWrong: '코드는 문자와 숫자 열 자리입니다. 예: ABCDE-23456.',
  name: '이 태블릿을 부르는 이름',
  nameMissing: '반장이 태블릿을 구별할 수 있게 이름을 입력하십시오.',
  join: '참여',
  joining: '참여하는 중…',
  joined: (plant) => `참여함: ${plant}.`,
  standing: '동기화',
  phases: {
    alone: '참여 안 함',
    follower: '이 태블릿의 다른 창이 동기화 중',
    syncing: '보내고 받는 중…',
    live: '동기화됨: 태블릿끼리 기록이 바로 보입니다',
    waiting: '다시 시도 대기',
    refused: '서버가 거부: 누군가 처리해야 합니다',
  },
  plant: '공장',
  lastAnswer: '마지막 응답',
  ago: (span) => `${span} 전`,
  never: '앱을 연 뒤로 없음',
  backlog: '보낼 것',
  entries: (count) => `기록 ${count}건`,
  nothing: '없음, 서버에 모두 있음',
  clock: '시계',
  clockRight: '서버와 같음',
  clockBehind: (span) => `서버보다 ${span} 늦음: 맞추십시오`,
  clockAhead: (span) => `서버보다 ${span} 빠름: 맞추십시오`,
  why: '이유',
  quarantined: '격리됨',
  quarantinedHelp:
    '서버가 이 기록들을 격리했습니다: 봉인이나 순서상의 자리가 맞지 않습니다. 잃은 것은 없고 여기에도 남아 있습니다. 서버 담당자를 부르십시오.',
  rolledBack: '서버의 로그가 뒤로 갔을 수 있습니다',
  rolledBackHelp: (span) =>
    `${span} 전에 알게 됨: 백업을 복원한 뒤처럼 서버의 내용이 전보다 적었을 수 있습니다. 태블릿이 가진 것을 다시 보냅니다. 로그와 태블릿 목록을 확인하십시오.`,
  rolledBackSeen: '확인했습니다',
  headFaults: {
    forked: '서버가 로그를 두 개 보여 줍니다',
    'other-key': '서버의 키가 다릅니다',
    'no-proof': '서버가 로그를 증명하지 않습니다',
  },
  headFaultHelp: {
    forked: (span) =>
      `${span} 전에 알게 됨: 로그가 전에 보여 준 것에서 이어지지 않습니다. 누군가 바꿨을 수 있습니다. 계속 작업하고 서버 담당자를 부르십시오.`,
    'other-key': (span) =>
      `${span} 전에 알게 됨: 이 태블릿이 참여했을 때와 다른 키로 서명합니다. 다른 컴퓨터로 옮긴 뒤에만 정상입니다. 서버 담당자에게 물으십시오.`,
    'no-proof': (span) =>
      `${span} 전에 알게 됨: 전에는 로그를 증명했습니다. 계속 작업하고 서버 담당자에게 물으십시오.`,
  },
  quarantinedHere: (count) => `기록 ${count}건을 여기 로그에 넣지 않았습니다`,
  quarantinedHereHelp:
    '내용, 서명 또는 시계가 맞지 않습니다. 다른 기록은 모두 들어 있습니다. 서버 담당자를 부르십시오.',
  clocksOff: '틀린 시계',
  clockOfAhead: (name, span) => `${name}: ${span} 빠름`,
  clockOfBehind: (name, span) => `${name}: ${span} 늦음`,
  clocksOffHelp: '맞추십시오: 이 태블릿들이 쓴 것은 순서가 틀릴 수 있습니다.',
  stateNears: (share) => `새 태블릿의 시작 데이터가 공간의 ${share}를 차지함`,
  stateNearsHelp:
    '가득 차면 새 태블릿은 먼저 로그 전체를 읽어 몇 분이 걸립니다. 빠를 때 예비 태블릿을 등록하고 서버 담당자에게 알리십시오.',
  stateOver: '새 태블릿이 느리게 시작함',
  stateOverHelp:
    '새 태블릿의 시작 데이터가 너무 커서 넘겨줄 수 없습니다. 먼저 로그 전체를 읽어 몇 분이 걸립니다. 필요하기 전에 등록하고, 충전기에 꽂아 열어 두십시오. 잃는 것은 없습니다.',
  now: '지금 동기화',
  causes: {
    unreachable: '서버가 응답하지 않습니다. 계속 작업하십시오. 기록은 여기서 기다립니다.',
    unreadable: '응답한 것은 공장 서버가 아닙니다. 네트워크를 확인하십시오.',
    'other-plant':
      '다른 공장의 서버입니다. 아무것도 보내지 않고 기록은 여기서 기다립니다. 참여하지 말고 서버 담당자를 부르십시오.',
    'tablet-unknown': '서버가 이 태블릿을 모릅니다. 새 코드로 다시 참여하십시오.',
    'tablet-revoked': '반장이 이 태블릿을 차단했습니다. 새 코드로 다시 참여할 수 있습니다.',
    'code-wrong': '그 코드는 모르는 것이거나 이미 썼거나 10분이 지났습니다. 새 코드를 달라고 하십시오.',
    'tablet-active':
      '이 태블릿은 아직 옛 키로 허용되어 있습니다. 먼저 반장이 차단한 다음 새 코드로 들어옵니다.',
    'wire-too-old': '이 앱은 서버보다 오래되었습니다. 서버가 응답하는 곳에서 새로 고치십시오.',
    'wire-too-new': '이 앱은 서버보다 새것입니다. 서버를 업데이트해야 합니다.',
    'time-off': '이 태블릿의 시계가 너무 많이 틀립니다. 맞추십시오.',
    'signature-wrong': '서버가 이 태블릿의 키를 받지 않습니다. 새 코드로 다시 참여하십시오.',
    'person-unproven': '로그인이 만료되었습니다. 사원증을 스캔하고 PIN을 다시 입력하십시오.',
    'role-lacking': '반장이나 엔지니어만 할 수 있습니다.',
    'too-often': '시도가 너무 많습니다. 1분 기다리십시오.',
    'store-away': '서버가 저장소에 닿지 못합니다. 다시 시도합니다.',
    'store-full': '서버의 디스크가 가득 찼습니다. 기록은 여기서 기다립니다. 서버 담당자를 부르십시오.',
    'store-read-only': '서버가 로그를 쓸 수 없습니다. 기록은 여기서 기다립니다. 서버 담당자를 부르십시오.',
    'server-fault': '서버에 고장이 있었습니다. 서버 로그를 보십시오. 태블릿이 다시 시도합니다.',
    stopping: '서버가 멈추는 중입니다.',
  } as Readonly<Partial<Record<Cause, string>>>,
  otherCause: (code) => `서버 응답: ${code}.`,
  leadTitle: '다른 태블릿',
  leadHelp: '반장이나 엔지니어가 태블릿을 받아들이고 차단합니다: 사원증과 PIN.',
  leadOpen: '태블릿 받아들이기 또는 차단',
  leadOffline: '태블릿은 서버만 받아들일 수 있는데 지금 응답하지 않습니다. 응답하면 다시 시도하십시오.',
  newCode: '태블릿용 새 코드',
  newScreenCode: '현황판용 코드',
  codeForScreen:
    '현황판에서 앱을 열고 이 코드를 입력하십시오. 모든 라인을 보여 주며 아무것도 바꿀 수 없습니다.',
  codeUntilScreen: (span) => `현황판 한 대용, ${span} 동안 유효.`,
  isScreen: '현황판',
  screenNotEmpty:
    '현황판은 빈 상태로 시작해야 하는데 이 태블릿에는 기록이 있습니다. 다른 브라우저와 새 코드를 쓰십시오.',
  codeFor: '새 태블릿의 카메라로 이것을 스캔하거나, 거기서 앱을 열고 코드를 입력하십시오.',
  codeUntil: (span) => `태블릿 한 대용, ${span} 동안 유효.`,
  codeOver: '이 코드는 만료되었습니다.',
  tablets: '태블릿',
  seen: (span) => `${span} 전에 마지막으로 봄`,
  neverSeen: '참여한 뒤 본 적 없음',
  clockOff: (span) => `시계 ${span} 틀림`,
  thisOne: '이 태블릿',
  isOut: '차단됨',
  revoke: '차단',
  revokeTitle: (name) => `${name}: 차단합니까?`,
  revokeHelp:
    '잃어버렸거나 판 태블릿용입니다. 더는 보내거나 받을 수 없습니다. 지금까지의 기록은 로그에 남습니다.',
  revoked: (name) => `${name}: 차단했습니다.`,
  list: '새로 고침',
};
