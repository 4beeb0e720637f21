import type { PackageFamily } from '../../../../shared/floor/vocabulary.ts';
import type { ValueSource } from '../../../../shared/moisture/values.ts';
import type { words as english } from '../en/moisture.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  level: (msl) => `MSL ${msl}`,
  left: (span) => `플로어 라이프 ${span} 남음`,
  leftUntil: (span, clock) => `플로어 라이프 ${span} 남음, ${clock}까지`,
  unopened: (span) => `미개봉: 플로어 라이프 ${span}`,
  noLimit: '이 환경에서 제한 없음',
  over: '플로어 라이프 끝남',
  overSince: (clock) => `${clock}에 플로어 라이프 끝남`,
  baking: '오븐 안',
  bakeShort: '베이킹이 표보다 짧음',
  bakeLet: (name) => `짧은 베이킹 인정: ${name}`,
  letBake: '베이킹 인정',
  letBakeTitle: (reel) => `${reel}의 베이킹을 인정합니까?`,
  letBakeWhat: (f) =>
    `베이킹 ${f.hours} h${f.celsius === null ? '' : `, ${f.celsius} °C`}. ${f.wanted === null ? '표에 해당 행이 없습니다.' : `표의 요구는 ${f.wanted} h입니다.`}`,
  letBakeHelp:
    '인정하면 플로어 라이프는 베이킹이 끝난 때부터 다시 시작하고, 이 베이킹 때문에 릴을 보류하지 않습니다. 한 번만 인정됩니다. 또 짧은 베이킹이 있으면 다시 보류합니다.',
  letBakeWhy: '왜 인정합니까?',
  letBakeDone: (reel) => `${reel}: 베이킹을 인정했습니다.`,
  letBakeFor: '이 베이킹',
  letBakeOnce: '이번만',
  letBakeAlways: '지금부터 계속 인정',
  hotOver: (hours) => `90 °C 초과 합계 ${hours} h`,
  labelTime: '6등급: 베이킹한 다음 라벨의 시간 입력',
  families: {
    bga: 'BGA',
    lga: 'LGA',
    pqfp: 'PQFP',
    mqfp: 'MQFP',
    qfp: 'QFP',
    tqfp: 'TQFP',
    lqfp: 'LQFP',
    plcc: 'PLCC',
    qfn: 'QFN',
    sop: 'SOP',
    tsop: 'TSOP',
    soic: 'SOIC',
    sot: 'SOT',
    chip: '칩',
    other: '해당 없음',
  } as Readonly<Record<PackageFamily, string>>,
  sources: {
    own: '공장이 가진 규격서',
    copy: '공개본과 대조함',
    memory: '기억에 의함, 대조 안 함',
  } as Readonly<Record<ValueSource, string>>,
  restsOn: (f) =>
    `${f.classes.length === 1 ? `클래스 ${f.classes[0]}` : `클래스 ${[...f.classes].sort().join(' 또는 ')}(짧은 쪽 적용)`} · ${f.celsius} °C, ${f.humidity} % · ${f.edition}`,
  classOpen:
    '패키지를 다 알지 못해 가장 나쁜 클래스를 적용합니다. 엔지니어가 “공장”의 “부품과 피더”에서 입력할 수 있습니다.',
  labelHours: '라벨의 시간(h)',
  labelHoursHelp: '6등급: 봉투에 인쇄된 플로어 라이프. 베이킹이 끝난 때부터 셉니다.',
  badLabelHours: '라벨의 시간을 1에서 9999 사이로 입력하십시오.',
  hotSoFar: (hours, most) => `90 °C 초과 베이킹은 지금까지 ${hours} h. 합계 한도는 ${most} h입니다.`,
  hotLimit: '이 한도는 기억에 의한 것입니다',
  bakeAdvice: (f) => `표의 요구: ${f.options}(${f.source}).`,
  bakeOption: (hours, celsius) => `${celsius} °C에서 ${hours} h`,
  or: '또는',
  bakeLarge: '125 °C 96 h 행은 큰 BGA와 적층 다이용입니다. 패키지를 모르는 동안 이것을 적용합니다.',
  dry: '건조 보관 중',
  open: '봉투 / 오븐',
  title: (reel) => `${reel}의 플로어 라이프`,
  where: '어디에 있습니까?',
  airs: { floor: '현장에서 개봉 상태', dry: '드라이 캐비닛 또는 밀봉 봉투', bake: '오븐 안' },
  hours: '몇 시간 전입니까?',
  hoursHelp: '0 = 지금. 더 전이면 그때부터의 시간.',
  humidity: '그곳의 상대 습도',
  humidities: { 5: '5 % 이하', 10: '10 % 이하' } as Readonly<Record<number, string>>,
  ovenAir: '오븐 안의 상대 습도',
  ovenAirs: { dry: '5 % 이하', moist: '더 높음 또는 모름' },
  ovenAirHelp:
    '125 °C 미만에서는 표가 건조한 공기에만 맞습니다. 다른 공기에서는 반장이 베이킹을 인정해야 합니다.',
  ovenAirMissing: '오븐이 얼마나 건조한지 선택하십시오',
  celsius: '오븐 온도(°C)',
  celsiusHelp: '테이프와 릴은 40 °C까지만 견디는 것이 많습니다. 봉투 라벨을 확인하십시오.',
  bakeCaution: '뜨거움: 오븐에서는 장갑을 끼십시오. 봉투 라벨과 현장 규칙이 우선입니다.',
  resetHelp:
    '릴을 다시 꺼내면 여기에 입력하십시오. 몸체와 등급에 대해 표가 요구하는 것보다 짧은 베이킹은 플로어 라이프를 되살리지 못합니다. 그때는 반장이 결정해야 합니다.',
  badHours: '0에서 9999시간 사이로 입력하십시오.',
  badCelsius: '30에서 150 °C 사이로 입력하십시오.',
  climate: (f) =>
    f.computed !== f.entered
      ? `현장의 ${f.entered.celsius} °C, ${f.entered.humidity} % 값은 표 밖입니다. 가장 나쁜 행을 적용합니다: ${f.computed.celsius} °C, ${f.computed.humidity} %. 공정 엔지니어에게 물으십시오.`
      : f.isEntered
        ? `${f.entered.celsius} °C, 습도 ${f.entered.humidity} % 이하의 현장용, 라인 규칙.`
        : `${f.entered.celsius} °C, 습도 ${f.entered.humidity} % 이하의 현장용: 라인 자체의 값은 아무도 입력하지 않았습니다.`,
  yes: '저장',
  written: (reel) => `${reel}: 저장했습니다.`,
  ends: (slot, life, out) => `${slot}: 플로어 라이프는 ${life}에 끝나고, 릴은 ${out}까지 갑니다.`,
  isOver: (slot, life) => `${slot}: 플로어 라이프가 ${life}에 끝났습니다.`,
  endsAct: '그때까지 다른 릴을 끼우십시오. 이 릴은 자체 규칙대로 건조하거나 베이킹하십시오.',
  overAct: '사용을 멈추십시오. 그 뒤에 실장한 부품은 반장이 결정합니다.',
  toBake: (reels) => `플로어 라이프 끝남, 먼저 베이킹: ${reels}`,
};
