import type { words as english } from '../en/lines.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  add: '라인 추가',
  edit: '변경',
  editOf: (name) => `${name} 변경`,
  machines: (count) => `설비 ${count}대`,
  slots: (count) => `슬롯 ${count}개`,
  fromSheets: '셋업 시트로만 알려진 슬롯이 있습니다. 라인을 열어 설비에 적힌 대로 이름을 붙이십시오.',
  newTitle: '새 라인',
  newName: (number) => `라인 ${number}`,
  name: '이름',
  zone: '시간대',
  zoneHelp: '라인이 있는 곳. 예: Asia/Seoul',
  help: '뱅크마다 첫 슬롯과 마지막 슬롯을 설비에 적힌 대로 입력하십시오.',
  bankOf: (number) => `뱅크 ${number}`,
  removeOf: (number) => `뱅크 ${number} 빼기`,
  first: '첫 슬롯',
  last: '마지막 슬롯',
  addAcross: (slot) => `반대쪽 추가: ${slot}`,
  addMachine: (slot) => `다음 설비 추가: ${slot}`,
  addBank: '뱅크 추가',
  holdsTrays: '트레이(피더 없음)',
  trays: '트레이',
  lanes: {
    title: '레인',
    help: '컨베이어 하나로 두 제품을 동시에 만들 수 있습니다. 생산은 레인마다 따로이고, 모두 같은 슬롯에서 가져갑니다.',
    add: '레인 추가',
    name: (number) => `레인 ${number} 이름`,
    called: (line, number) => `${line} 레인 ${number}`,
    removeOf: (number) => `레인 ${number} 제거`,
    held: {
      runs: (lane) => `${lane}: 생산 중입니다. 먼저 생산을 끝내십시오.`,
      reels: (slots) => `이 레인에만 필요한 것을 먼저 빼십시오: ${slots}.`,
      open: '이 레인에 남은 일이 있습니다: 보류된 릴, 인계, 기종 교체, 체크리스트, 전수 확인, 솔더 페이스트, 계수 스테이션, 준비된 피더, 대차. 먼저 끝내십시오.',
    },
  },
  picture: '라인의 모양',
  save: '라인 저장',
  saved: (name) => `${name}: 저장했습니다.`,
  faults: {
    'no-number': '둘 다 숫자로 끝나야 합니다: M1-F-001과 M1-F-025.',
    differs: '끝의 숫자만 다를 수 있습니다.',
    'not-from-one': '첫 슬롯은 1번이어야 합니다.',
    backwards: '마지막 번호가 첫 번호보다 작습니다.',
    'too-many': '한 뱅크는 슬롯 500개까지입니다.',
    twice: '이 뱅크는 이미 있습니다.',
  },
  obstacles: {
    ranges: (count) =>
      count === 1 ? '위에 표시된 뱅크를 고치십시오.' : `위에 표시된 뱅크 ${count}개를 고치십시오.`,
    'name-missing': '이름을 입력하십시오.',
    'lanes-alike': '레인마다 다른 이름을 붙이십시오.',
    'zone-unknown': '목록에서 시간대를 선택하십시오.',
    'no-banks': '먼저 한 뱅크의 슬롯을 입력하십시오.',
    lost: (slots, count) =>
      count === 1
        ? `슬롯 ${slots}: 사용 중입니다. 그대로 두십시오.`
        : `사용 중인 슬롯 ${count}개가 없어집니다: ${slots}. 그대로 두십시오.`,
  },
};
