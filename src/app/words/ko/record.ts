import type { words as english } from '../en/record.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  title: '종이 기록',
  asking: '서버에 증명을 요청하는 중…',
  proven: (place, size) => `증명됨: 공장 로그 ${size}개 중 ${place}번째 기록, 공장 키로 서명됨.`,
  holds: '코드에 증명이 들어 있습니다. 로그 없이 “reelward log verify --record”로 확인합니다.',
  seen: (count, names) => `태블릿 ${count}대가 확인하고 서명함: ${names}.`,
  since: (when) => `아직 증명 안 됨: ${when}부터 서버가 없습니다.`,
  never: '아직 증명 안 됨: 서버에 연결된 적이 없습니다.',
  waiting: '아직 증명 안 됨: 서버에 이 기록이 없습니다.',
  noProof: '증명 안 됨: 서버가 증명을 주지 않았습니다.',
  later: '서버가 기록을 받은 뒤 다시 인쇄하십시오. 그러면 종이에 증명이 들어갑니다.',
  key: (fingerprint) => `공장 키: ${fingerprint}`,
  brought: {
    'one-log': '이 종이는 이 태블릿과 같은 로그입니다.',
    'not-one-log': '이 종이와 서버가 서로 다른 로그를 보여 줍니다. 품질 담당자를 부르십시오.',
    'not-the-plants': '이 종이는 이 공장 키로 서명되지 않았습니다.',
    'no-server': '서버가 없습니다. 서버가 응답하면 종이를 확인합니다.',
    'not-checked': '종이를 확인하지 않았습니다. 동기화된 태블릿에서 스캔하십시오.',
  },
};
