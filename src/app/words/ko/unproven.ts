import type { words as english } from '../en/unproven.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  page: '미증명',
  none: '미증명인 것이 없습니다: 반장이 필요한 기록마다 서버의 티켓이 있습니다.',
  noTickets: '이 공장은 아직 티켓을 내지 않습니다. 서버가 응답하는 곳에서 반장이 PIN을 입력하면 시작됩니다.',
  help: '이 기록들은 반장이나 엔지니어가 필요한데 서버의 티켓 없이 만들어졌습니다. 현장에서는 유효합니다. 사정을 아는 반장이 확인하거나 기각합니다.',
  stands: {
    proven: '티켓으로 증명됨',
    unproven: '미증명',
    confirmed: '반장이 확인함',
    rejected: '반장이 기각함',
    'before-tickets': '티켓 이전',
  },
  right: '권한',
  why: {
    'no-ticket': (role) => `서버의 티켓 없음: “${role}” 역할의 사람이 했다고 증명할 것이 없습니다.`,
    'ticket-over': () => '티켓이 이 시각에는 유효하지 않았습니다.',
    role: (role) => `티켓의 역할이 낮습니다. 필요: ${role}.`,
  },
  before: '이것을 쓸 때 이 공장은 아직 티켓을 내지 않았습니다.',
  by: (name) => `${name}`,
  nobody: '이름 없음',
  confirm: '확인',
  reject: '기각',
  confirmAll: (count) => (count === 1 ? '확인' : `${count}건 모두 확인`),
  confirmTitle: (count) => (count === 1 ? '적힌 대로 했습니까?' : `${count}건 모두 적힌 대로 했습니까?`),
  rejectTitle: '이 사람이 하지 않았다고 판단합니까?',
  rejectHelp: '기록은 기각 표시로 남습니다. 현장에서 바뀐 것도 그대로입니다: 직접 바로잡으십시오.',
  rejectPerson: '서버에서는 이 사람에 대한 변경이 무효입니다. “공장”의 “사람”을 보고 명단을 바로잡으십시오.',
  reason: '어떻게 확인했습니까?',
  needsServer: '서버가 응답해야 합니다: 그래야 누가 결정하는지 증명됩니다.',
  notProven: '적었지만 티켓이 없어 아무것도 해결되지 않습니다. 서버가 응답하는 곳에서 다시 시도하십시오.',
  confirmed: (count) => `기록 ${count}건을 확인했습니다.`,
  rejected: '기록을 기각했습니다.',
  engineerOnly: (count) => `그중 ${count}건은 엔지니어의 확인이 필요합니다.`,
  badgeAlone: (name) =>
    `${name} 님은 사원증만으로 로그인했습니다. 반장이 필요한 것은 미증명으로 남습니다. 증명하려면 이름과 PIN으로 로그인하십시오.`,
  settled: { confirmed: '확인됨', rejected: '기각됨' },
};
