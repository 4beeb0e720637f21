import type { words as english } from '../en/in-line.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  title: '라인 안의 패널',
  help: '릴이 바뀌는 곳에서는 이 패널들이 의심 대상입니다. 있을 수 있는 최대 수를 입력하십시오. 설비 앞에 서 있는 패널도 포함합니다. 아무도 입력하지 않은 곳은 추정값을 씁니다.',
  behind: (machine) => `${machine}: 여기서 끝났고 아직 세지 않은 패널, 최대`,
  before: (machine) => `${machine}: 세었고 아직 도착하지 않은 패널, 최대`,
  missed: '세지 않고 지나가는 패널, 최대',
  guess: (most) => `입력 안 됨: 최대 ${most}장으로 가정합니다(일반 관행).`,
  seen: (panels, most) => `패널 ${panels}장을 두 곳에서 스캔했습니다. 그 사이는 최대 ${most}장이었습니다.`,
  takeSeen: '스캔 결과 사용',
  takeHelp:
    '본 수는 한계가 아닙니다. 더 많을 수 있으면 더 큰 수를 입력하십시오. 스캔이 그것을 넘으면 저절로 넓어집니다.',
  scansHere: '이 태블릿에서 스캔한 패널',
  count: '셉니다',
  goInto: (machine) => `들어가는 설비: ${machine}`,
  scansHelp:
    '설비 앞에서 패널 몇 장을 스캔하고, 세는 곳에서 다시 스캔하십시오. 그러면 사이에 몇 장이 있는지 라인이 배웁니다.',
  save: '라인 안의 패널 저장',
  saved: '저장했습니다. 이제부터 추적은 이것을 따릅니다.',
  wrong: '0에서 500 사이의 정수와 50 % 미만의 비율을 입력하십시오.',
  exitOpen: '출구 화면 열기',
  exitTitle: '만든 패널',
  exitHelp: '라인을 나가는 패널을 하나씩 스캔하십시오.',
  exitCounted: '셈:',
  exitBefore: '이미 스캔함, 더하지 않음:',
  exitOther: '패널이 아님, 더하지 않음:',
  exitNoRun: '이 라인은 생산 중이 아닙니다. 먼저 시작하십시오.',
  exitLost: '이 페이지가 키보드를 잃었습니다. 스캔 전에 여기를 누르십시오.',
  exitLeave: '이 화면 나가기',
};
