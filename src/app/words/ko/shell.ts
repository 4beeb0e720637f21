import type { words as english } from '../en/shell.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  nav: { line: '라인', load: '장착', change: '교체', stock: '릴', log: '로그', plant: '공장' },
  noLine: '아직 라인 없음',
  noSetup: '셋업 선택 안 됨',
  side: { top: '윗면', bottom: '아랫면' },
  revision: (revision) => `리비전 ${revision}`,
  run: (done, wanted) => `패널 ${done} / ${wanted}장`,
  signIn: '로그인',
  signInFirst: '먼저 사원증을 스캔하십시오',
  needsRole: (role) => `필요: ${role}`,
  signInHelp: '사원증을 스캔하거나 이름을 선택하십시오.',
  signedInAs: (name) => `로그인: ${name}`,
  signOut: '로그아웃',
  roles: { operator: '작업자', lead: '반장', engineer: '엔지니어' },
  offlineReady: '오프라인 작업 가능',
  gettingReady: '오프라인 준비 중…',
  toSend: (count) => `보낼 것 ${count}건`,
  skipToDock: '“입력”과 “카메라”로 건너뛰기',
  done: '완료',
  cancel: '취소',
  detailsOf: (what) => `더 보기: ${what}`,
  lessOf: (what) => `접기: ${what}`,
  close: '닫기',
  newVersion: '새 버전이 준비되었습니다.',
  update: '지금 업데이트',
  updateLater: '하던 작업이 없을 때까지 기다립니다.',
  languageLater: '그 언어는 아직 이 태블릿에 없습니다. 네트워크에 연결하고 다시 선택하십시오.',
  leftAlone: (name, minutes) =>
    `${name} 님이 로그아웃되었습니다: ${minutes}분 동안 조작 없음. 하던 작업은 남아 있습니다.`,
  shiftOver: (name) => `${name} 님이 로그아웃되었습니다: 교대가 지났습니다. 하던 작업은 남아 있습니다.`,
  notInPractice: '연습에서는 불가',
  fault: {
    'disk-full': {
      title: '이 태블릿이 가득 찼습니다',
      text: '여기서는 더 이상 쓰거나 확인할 수 없습니다. 받은 것은 모두 안전합니다. 다른 태블릿에서 작업하십시오. 이 태블릿의 공간을 비운 다음 다시 시도하십시오.',
    },
    'closed-by-newer': {
      title: '다른 창에 새 버전이 열려 있습니다',
      text: '이 창은 옛 버전이라 멈췄습니다. 받은 것은 모두 안전합니다. 새로 고치고 계속하십시오.',
    },
    lost: {
      title: '이 태블릿의 로그를 열 수 없습니다',
      text: '다른 태블릿에서 작업하고 태블릿 담당자를 부르십시오. 브라우저 데이터를 지우지 마십시오: 보내지 않은 기록이 아직 있을 수 있습니다.',
    },
    unknown: {
      title: '로그에 쓰지 못했습니다',
      text: '완료로 보인 것은 안전합니다. 마지막 동작은 쓰이지 않았습니다. 계속하기 전에 새로 고치고 로그를 확인하십시오.',
    },
  },
  reload: '새로 고침',
  tryAgain: '다시 시도',
  muted: '누를 때까지 소리 꺼짐',
  storageLow: (megabytes) => `이 태블릿에 로그용 공간이 ${megabytes} MB만 남았습니다.`,
};
