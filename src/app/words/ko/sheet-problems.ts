import type { SheetProblem, SheetProblemCode } from '../../../../shared/sheet/problems.ts';
import type { words as english } from '../en/sheet-problems.ts';
import type { Sentences } from '../words.ts';

type Facts = SheetProblem['facts'];

/** Facts that name a field carry its English name, or its own in a placement file. */
const fields: Readonly<Record<string, string>> = {
  slot: '슬롯',
  machine: '설비',
  bank: '뱅크',
  'slot number': '슬롯 번호',
  part: '부품',
  'placements per panel': '패널당 실장 수',
  'tape width': '테이프 폭',
  pitch: '피치',
  'sharing among slots': '슬롯 간 분담',
  alternates: '대체품',
  'supplier parts': '공급사 품번',
  description: '설명',
  package: '패키지',
  pins: '핀',
  'body size': '몸체 크기',
  'body thickness': '몸체 두께',
  'moisture sensitivity level': '습기 민감 등급',
  polarity: '극성',
  'feeder type': '피더 타입',
  'feeder drive': '피더 구동',
  'pocket depth': '포켓 깊이',
  critical: '중요',
  'positions taken': '점유 슬롯 수',
  side: '면',
  'reference designators': '레퍼런스',
  designator: '레퍼런스',
  fitted: '실장',
  'not fitted': '미실장',
  notFitted: '미실장',
  note: '비고',
  quantity: '수량',
  'order numbers': '주문 번호',
  value: '값',
  device: '라이브러리 이름',
  variants: '변형',
  mounting: '실장 방식',
  mount: '실장 방식',
  mirrored: '반전',
  place: 'X와 Y',
  rotation: '각도',
  level: '계층',
  item: '항목 번호',
  maker: '제조사',
};

function field(name: string | number | undefined): string {
  return fields[String(name)] ?? String(name);
}

/** A side as the file's reader names it. */
function side(name: string | number | undefined): string {
  return name === 'bottom' ? '아랫면' : '윗면';
}

/** A yes or no as the file's reader names it. */
function flag(name: string | number | undefined): string {
  return name === 'yes' ? '예' : '아니요';
}

const said: Readonly<Record<SheetProblemCode, (facts: Facts) => string>> = {
  encodingGuessed: () =>
    '파일이 UTF-8이 아니어서 Windows-1252로 읽었습니다. 악센트 있는 글자를 확인하거나 UTF-8로 저장하십시오.',
  quoteBroken: (f) =>
    `${f['row']}행에서 연 따옴표가 닫히지 않았습니다. 뒤의 내용이 다른 칸에 있을 수 있습니다. 그 행을 고치십시오.`,
  rowTooLong: (f) =>
    `행은 ${f['found']}칸, 머리글은 ${f['wanted']}칸입니다. 구분 문자가 든 칸이 있는 듯합니다: 따옴표로 묶으십시오.`,
  rowUnreadable: (f) =>
    `행은 ${f['found']}칸, 머리글은 ${f['wanted']}칸이고 서로 맞지 않습니다. 행을 고치십시오.`,
  noRows: () => '머리글 아래에 행이 없습니다. 행을 넣어 시트를 다시 내보내십시오.',
  moreProblems: (f) => `문제 ${f['count']}건이 더 있습니다. 이것들을 고친 다음 시트를 다시 읽으십시오.`,
  moreErrors: (f) =>
    `문제 ${f['count']}건이 더 있고 그중에는 오류도 있습니다. 이것들을 고친 다음 시트를 다시 읽으십시오.`,
  columnMissing: (f) =>
    `“${field(f['wanted'])}” 열이 없습니다. 있는 열: ${f['headers']}. 직접 열을 선택하십시오.`,
  columnAbsent: (f) =>
    `“${field(f['wanted'])}” 열이 없습니다. 있는 열: ${f['headers']}. 직접 열을 선택하거나 없이 계속하십시오.`,
  columnNotFound: (f) =>
    `이 시트에는 ${field(f['field'])}용 열이 없습니다: “${f['wanted']}”. 있는 열: ${f['headers']}. 열을 다시 선택하십시오.`,
  columnUnknown: (f) => `열 “${f['found']}”: 쓰지 않습니다. 셋업에 필요하면 내용을 직접 선택하십시오.`,
  columnTwice: (f) =>
    `열 “${f['found']}”도 ${field(f['field'])} 같습니다. 쓰는 것은 “${f['used']}”입니다. 다른 쪽이라면 직접 선택하십시오.`,
  usagePerBoard: (f) =>
    `열 “${f['found']}”: 보드당 수로 보이는데 패널당으로 받았습니다. 패널에 보드가 여러 장이면 곱하십시오.`,
  slotMissing: (f) => `슬롯이 비었는데 행에는 부품이 있습니다: ${f['part']}. 슬롯을 넣으십시오.`,
  textTooLong: (f) => `${field(f['field'])} “${f['found']}…”: ${f['most']}자를 넘습니다. 줄이십시오.`,
  textCut: (f) => `글이 ${f['most']}자를 넘습니다. 나머지는 뺐습니다: 줄이십시오.`,
  slotUnclear: (f) =>
    `슬롯 “${f['found']}”: M1-F-014처럼 적히지 않아 옆 슬롯을 확인할 수 없습니다. 적힌 대로 씁니다.`,
  slotNumberUnreadable: (f) => `슬롯 번호 “${f['found']}”: 1 이상의 정수가 아닙니다. 고치십시오.`,
  partMissing: (f) => `슬롯 ${f['slot']}: 품번이 없는데 다른 칸은 채워져 있습니다. 넣으십시오.`,
  usageUnreadable: (f) => `패널당 실장 수 “${f['found']}”: 0 이상의 정수가 아닙니다. 고치십시오.`,
  usageMissing: () =>
    '패널당 실장 수가 비어 있어 이 슬롯이 언제 소진될지 알 수 없습니다. 넣거나 좌표 파일을 추가하십시오.',
  usageZero: () =>
    '패널당 실장 수가 0입니다: 장착하지만 쓰지 않습니다. 그렇다면 행을 미실장으로 표시하십시오.',
  usageFromDesignators: (f) =>
    `패널당 실장 수가 비어 있어 레퍼런스 ${f['count']}개를 ${f['count']}개로 셉니다. 패널 전체의 것인지 확인하십시오.`,
  designatorsDisagree: (f) =>
    `레퍼런스는 ${f['found']}개인데 패널당 실장 수는 ${f['wanted']}개입니다. 어느 것이 맞는지 확인하십시오.`,
  widthUnreadable: (f) => `테이프 폭 “${f['found']}”: mm 수가 아닙니다. 8 또는 8 mm로 적으십시오.`,
  widthUnknown: (f) => `${f['found']} mm는 EIA-481 테이프 폭(${f['wanted']} mm)이 아닙니다. 고치십시오.`,
  widthMissing: () => '테이프 폭이 없어 피더가 맞는지 확인할 수 없습니다. 넣으십시오.',
  notTape: (f) => `“${f['found']}”: 테이프가 아니어서 이 슬롯에는 테이프 길이와 스플라이스 시각이 없습니다.`,
  pitchUnreadable: (f) => `피치 “${f['found']}”: 0보다 큰 mm 수가 아닙니다. 4 또는 4 mm로 적으십시오.`,
  pitchUnusual: (f) =>
    `EIA-481에는 ${f['width']} mm 테이프에 ${f['found']} mm 피치가 없고 ${f['wanted']} mm만 있습니다. 확인하십시오. 다른 테이프도 드물게 있습니다.`,
  pitchMissing: () => '피치가 없어 테이프 길이를 부품 수로 바꿀 수 없습니다. 넣으십시오.',
  positionsUnreadable: (f) => `점유 슬롯 수 “${f['found']}”: 1에서 60 사이의 정수가 아닙니다. 고치십시오.`,
  pinsUnreadable: (f) => `핀 수 “${f['found']}”: 1 이상의 정수가 아니어서 뺐습니다. 고치십시오.`,
  bodySizeUnreadable: (f) =>
    `몸체 크기 “${f['found']}”: mm 길이와 폭이 아니어서 뺐습니다. 17 x 17처럼 적으십시오.`,
  thicknessUnreadable: (f) => `몸체 두께 “${f['found']}”: 0보다 큰 mm 수가 아니어서 뺐습니다. 고치십시오.`,
  pocketUnreadable: (f) => `포켓 깊이 “${f['found']}”: 0보다 큰 mm 수가 아니어서 뺐습니다. 고치십시오.`,
  mslUnknown: (f) =>
    `“${f['found']}”: 습기 민감 등급(1, 2, 2a, 3, 4, 5, 5a, 6)이 아니어서 뺐습니다. 고치십시오.`,
  sharingUnknown: (f) =>
    `“${f['found']}”: 슬롯끼리 이 부품을 어떻게 나누는지 알 수 없습니다. 각자 자기 몫을 실장하면 “split”, 하나가 빌 때까지 공급하면 “in turn”이라고 적으십시오.`,
  turnUsageDiffers: (f) =>
    `부품 ${f['part']}: 차례로 씁니다. 공급하는 슬롯이 ${f['wanted']}개를 모두 실장합니다. 이 행은 ${f['found']}개입니다. 행마다 같은 수를 적으십시오.`,
  sideUnknown: (f) => `“${f['found']}”: top(윗면)도 bottom(아랫면)도 아니어서 면을 뺐습니다. 고치십시오.`,
  flagUnreadable: (f) =>
    `“${f['found']}”: yes(예)도 no(아니요)도 아니어서 “${flag(f['taken'])}”로 봅니다. 고치십시오.`,
  alternateIsPart: (f) => `부품 ${f['part']}: 자기 자신의 대체품으로 되어 있습니다. 뺐습니다.`,
  slotTwice: (f) =>
    `슬롯 ${f['slot']}: 이미 ${f['first']}행에 있습니다(부품 ${f['part']}). 슬롯에는 부품 하나만 들어갑니다: 행 하나를 고치십시오.`,
  noRoom: (f) =>
    `슬롯 ${f['slot']}의 피더는 슬롯 ${f['wanted']}개를 차지합니다. 슬롯 ${f['next']}(${f['nextRow']}행)까지 ${f['found']}칸뿐입니다. 하나를 옮기십시오.`,
  littleRoom: (f) =>
    `슬롯 ${f['slot']}의 ${f['width']} mm 피더는 보통 슬롯 ${f['wanted']}개를 차지합니다. 슬롯 ${f['next']}(${f['nextRow']}행)까지 ${f['found']}칸뿐입니다. 들어가는지 확인하거나 점유 슬롯 수를 넣으십시오.`,
  noApprovedReels: (f) =>
    `부품 ${f['part']}: 승인된 공급사 품번이 없어 사내 품번 라벨만 통과합니다. 넣으십시오.`,
  partDiffers: (f) =>
    `부품 ${f['part']}: ${field(f['field'])} 값이 여기는 ${f['found']}, ${f['first']}행은 ${f['wanted']}. 어느 것이 맞는지 확인하십시오.`,
  usageDisagrees: (f) =>
    `부품 ${f['part']}: 패널당 실장 수가 시트는 ${f['found']}, 좌표 파일은 ${f['wanted']}. 어느 것이 맞는지 확인하십시오.`,
  usageRatio: (f) =>
    `모든 부품에서 시트의 실장 수가 좌표 파일의 ${f['ratio']}배입니다. 파일에는 ${f['ratio']}장 중 보드 한 장만 있는 듯합니다: 패널에 보드가 몇 장인지 입력하십시오.`,
  usageSplitUnknown: (f) =>
    `부품 ${f['part']}: 슬롯 ${f['found']}개에 실장점 ${f['wanted']}개인데, 좌표 파일에 각각 몇 개인지 없습니다. 패널당 실장 수를 넣으십시오.`,
  partNotPlaced: (f) => `부품 ${f['part']}: 슬롯은 있는데 좌표 파일에 없습니다. 양쪽의 품번을 확인하십시오.`,
  partWithoutSlot: (f) =>
    `부품 ${f['part']}: ${f['found']}번 실장하는데(좌표 파일, ${f['first']}행부터) 슬롯이 없습니다. 슬롯을 주거나 미실장으로 표시하십시오.`,
  placementPartMissing: (f) => `레퍼런스 ${f['designator']}: 품번이 없어 뺐습니다. 넣으십시오.`,
  placementTwice: (f) => `레퍼런스 ${f['designator']}: ${f['first']}행과 같은 자리입니다. 한 번만 셉니다.`,
  placementSideMissing: () => '좌표 파일에 면 열이 없습니다. 실장점을 모두 윗면으로 봅니다.',
  placementSideUnknown: (f) =>
    `“${f['found']}”: top(윗면)도 bottom(아랫면)도 아니어서 이 실장점을 윗면으로 봅니다. 고치십시오.`,
  headerGuessed: (f) => `파일에 아는 머리글이 없습니다. 내용으로 본 열: ${f['wanted']}. 확인하십시오.`,
  columnByLook: (f) => `열 “${f['found']}”: 내용으로 보아 ${field(f['field'])} 열로 봅니다. 확인하십시오.`,
  genericParts: (f) =>
    `열 “${f['found']}”: 여러 값에 이름이 하나여서 품번이 아니라 종류입니다. 값으로 셉니다. 품번 열이 있으면 직접 선택하십시오.`,
  partsAreDesignators: (f) =>
    `열 “${f['found']}”: 품번이 아니라 레퍼런스입니다. 품번 열을 직접 선택하십시오.`,
  sheetAdded: (f) =>
    `시트 “${f['found']}”의 행도 머리글이 같아 함께 읽습니다. ${f['first']}행부터 이어서 번호를 매깁니다.`,
  designatorTwice: (f) =>
    `레퍼런스 ${f['designator']}: 이미 ${f['first']}행에 다른 자리로 있습니다. 한 번만 셉니다. 보드의 부품마다 다른 이름을 주십시오.`,
  designatorSeldom: (f) =>
    `레퍼런스 ${f['designator']}: 파일에 ${f['found']}번 있고 다른 것은 대부분 ${f['wanted']}번입니다. 패널의 보드마다 있는지 확인하십시오.`,
  placementSideFromName: (f) =>
    `파일에 면이 적혀 있지 않습니다. 파일 이름 “${f['found']}”에 따라 실장점을 모두 ${side(f['side'])}으로 봅니다.`,
  throughHole: (f) => `레퍼런스 ${f['designator']}(${f['part']}): 삽입 부품이어서 실장으로 세지 않습니다.`,
  oddPlaced: (f) =>
    `레퍼런스 ${f['designator']}: 테스트 포인트나 구멍 같은데 부품이 있습니다(${f['part']}). 실장으로 셉니다. 아니면 미실장으로 표시하십시오.`,
  valueInPackages: (f) =>
    `값 ${f['part']}: 패키지가 여기는 ${f['found']}, ${f['first']}행은 ${f['wanted']}. 부품 두 종으로 셉니다. 품번을 주십시오.`,
  partInPackages: (f) =>
    `부품 ${f['part']}: 패키지가 여기는 ${f['found']}, ${f['first']}행은 ${f['wanted']}. 품번을 확인하십시오.`,
  valueWithoutPackage: (f) =>
    `레퍼런스 ${f['designator']}: 값 ${f['part']}만 있고 패키지와 품번이 없습니다. 어느 부품인지 알 수 없습니다: 넣으십시오.`,
  xmlBroken: (f) => `XML이 여기서 깨졌습니다: ${f['found']}. 뒤는 읽지 않습니다. 파일을 다시 내보내십시오.`,
  noComponents: () => '파일에 부품이 없습니다. 부품과 그 자리를 넣어 내보내십시오.',
  panelOfFile: (f) =>
    `파일의 패널에는 보드가 ${f['found']}장 있고 한 장만 셉니다. 패널에 보드가 몇 장인지 입력하십시오.`,
  billRowWithoutDesignators: (f) =>
    `부품 ${f['part']}: 레퍼런스가 없어 이 행에서는 아무것도 실장하지 않습니다. 실장한다면 넣으십시오.`,
  billPartMissing: (f) => `${f['designator']} 행에 품번도 값도 없습니다. 하나를 넣으십시오.`,
  billPartByOther: (f) => `행에 품번이 없어 부품을 이렇게 부릅니다: ${f['part']}. 품번을 넣으십시오.`,
  secondTable: (f) => `여기서 다른 표가 시작됩니다(${f['headers']}). 읽지 않습니다.`,
  boardsInFile: (f) =>
    `좌표 파일에 이미 보드 ${f['found']}장이 있어 보드 ${f['wanted']}장을 다시 곱하지 않습니다. 패널에 보드가 몇 장인지 확인하십시오.`,
  quantityDiffers: (f) =>
    `수량은 ${f['wanted']}개인데 행의 레퍼런스는 ${f['found']}개입니다. 어느 것이 맞는지 확인하십시오.`,
  quantityUnreadable: (f) => `수량 “${f['found']}”: 수가 아닙니다. 레퍼런스로 셉니다. 고치십시오.`,
  quantityRatio: (f) =>
    `모든 행에서 수량이 레퍼런스의 ${f['ratio']}배입니다. BOM이 보드 ${f['ratio']}장을 세는 듯합니다.`,
  billDesignatorTwice: (f) =>
    `레퍼런스 ${f['designator']}: 이미 ${f['first']}행에 같은 부품으로 있습니다. 한 번만 셉니다.`,
  billDesignatorDiffers: (f) =>
    `레퍼런스 ${f['designator']}: ${f['first']}행은 부품 ${f['wanted']}, 여기는 ${f['found']}. 한 자리에는 부품 하나만 들어갑니다: 행 하나를 고치십시오.`,
  variantOpen: (f) =>
    `BOM의 변형이 여기서 다릅니다: ${f['wanted']}. 실장으로 봅니다. 생산할 변형을 선택하거나 그 변형의 BOM을 가져오십시오.`,
  variantNotFound: (f) => `BOM에 없는 변형: “${f['found']}”. 있는 것: ${f['wanted']}.`,
  partDescribedTwice: (f) =>
    `부품 ${f['part']}: 값이 여기는 ${f['found']}, ${f['first']}행은 ${f['wanted']}. 품번을 확인하십시오.`,
  markInRemark: (f) =>
    `비고 “${f['found']}”에 따라 이 행은 모두 미실장입니다. 일부 레퍼런스만이라면 거기에 적으십시오.`,
  blankNotFitted: (f) =>
    `열 “${f['found']}”: 표시가 있는 행이 있고 ${f['count']}행은 비어 있습니다. 빈 것은 미실장으로 봅니다.`,
  designatorNotInBill: (f) =>
    `레퍼런스 ${f['designator']}: 좌표 파일에 있는데 BOM에 없어 세지 않습니다. BOM에 넣거나 미실장으로 표시하십시오.`,
  designatorNotPlaced: (f) =>
    `레퍼런스 ${f['designator']}(부품 ${f['part']}): BOM에 있는데 좌표 파일에 없어 세지 않습니다.`,
  partOfFileDiffers: (f) =>
    `레퍼런스 ${f['designator']}: 부품이 좌표 파일은 ${f['found']}, BOM(${f['first']}행)은 ${f['wanted']}. BOM을 따릅니다. 어느 것이 맞는지 확인하십시오.`,
  valueOfFileDiffers: (f) =>
    `레퍼런스 ${f['designator']}: 값이 좌표 파일은 ${f['found']}, BOM(${f['first']}행)은 ${f['wanted']}. BOM을 따릅니다. 어느 것이 맞는지 확인하십시오.`,
  sideOfFileDiffers: (f) =>
    `레퍼런스 ${f['designator']}: 좌표 파일은 ${side(f['found'])}, BOM은 ${side(f['wanted'])}. 좌표 파일을 따릅니다.`,
  sheetDesignatorNotPlaced: (f) =>
    `레퍼런스 ${f['designator']}: 이 행에 있는데 좌표 파일에 없습니다. 양쪽을 확인하십시오.`,
  designatorWithoutSlot: (f) =>
    `레퍼런스 ${f['designator']}(좌표 파일 ${f['first']}행, 부품 ${f['part']}): 시트의 어느 행에도 없습니다. 그 슬롯의 행에 넣거나 미실장으로 표시하십시오.`,
  sheetPartDiffers: (f) =>
    `레퍼런스 ${f['designator']}: 부품이 이 행은 ${f['found']}, 좌표 파일이나 BOM은 ${f['wanted']}. 어느 것이 맞는지 확인하십시오.`,
  sheetDesignatorTwice: (f) => `레퍼런스 ${f['designator']}: 이미 ${f['first']}행에 있습니다. 거기서 셉니다.`,
  listPartEmpty: () => '행에 품번이 없는데 다른 칸은 차 있습니다. 채우십시오.',
  listPackingUnknown: (f) =>
    `“${f['found']}”: 테이프, 컷 테이프, 트레이, 튜브, 벌크가 아니어서 뺐습니다. tape, cut tape, tray, tube, bulk 중 하나로 고치십시오.`,
  listAgeUnreadable: (f) =>
    `최대 경과 “${f['found']}”: 개월 수가 아니어서 뺐습니다. 24 또는 2 years로 쓰십시오.`,
  listPriceUnreadable: (f) =>
    `가격 “${f['found']}”은(는) 0보다 큰 수가 아니어서 제외합니다. 0.012 또는 0.012 EUR로 쓰십시오.`,
  listPriceUnclear: (f) =>
    `“${f['found']}”은(는) 가격이 몇 개 기준인지 알 수 없습니다. Price each 또는 Price per 1000으로 쓰십시오.`,
  listToleranceUnclear: (f) =>
    `“${f['found']}”에 1보다 작은 숫자만 있어 비율인지 퍼센트인지 알 수 없어 뺐습니다. 열 이름을 Tolerance %로 하거나 칸에 1 %로 쓰십시오.`,
  listReelEmpty: () => '행에 릴 ID가 없어 뺐습니다. 채우십시오.',
  listReelTwice: (f) => `릴 ${f['found']}: 이미 ${f['first']}행에 있습니다. 마지막 수량을 씁니다.`,
  listCountUnreadable: (f) => `수량 “${f['found']}”: 정수가 아니어서 행을 뺐습니다. 고치십시오.`,
};

export const words: Sentences<typeof english> = {
  say: (problem) => said[problem.code](problem.facts),
};
