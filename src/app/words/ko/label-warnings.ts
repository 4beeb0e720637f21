import type { LabelWarning } from '../../../../shared/labels/warnings.ts';
import type { words as english } from '../en/label-warnings.ts';
import type { Sentences } from '../words.ts';

const fields: Readonly<Record<Extract<LabelWarning, { readonly code: 'conflict' }>['field'], string>> = {
  part: '사내 품번',
  supplierPart: '공급사 품번',
  quantity: '수량',
  lot: '로트',
  dateCode: '날짜 코드',
  made: '제조 주',
  expires: '사용 기한',
  reel: '릴',
  supplier: '공급사',
  country: '국가',
  msl: '습기 민감 등급',
  order: '주문',
};

/** A text in quotes, cut to what a line holds; control characters become visible. */
function quote(text: string): string {
  const plain = text.replace(/[\u0000-\u001f]/g, (char) => String.fromCharCode(0x2400 + char.charCodeAt(0)));
  return `“${plain.length > 60 ? `${plain.slice(0, 57)}…` : plain}”`;
}

function sayIt(warning: LabelWarning): string {
  switch (warning.code) {
    case 'no-code':
      return '이 라벨에서 코드를 읽지 못했습니다';
    case 'no-part-number':
      return '이 라벨에 품번이 없습니다. 다른 데서 알아야 합니다';
    case 'header-damaged':
      return `코드의 앞부분이 손상됨: ${quote(warning.found)}`;
    case 'separators-replaced':
      return `스캐너가 구분 문자(GS) 대신 ${quote(warning.found)} 문자를 보냈습니다. 제어 문자를 보내도록 설정하십시오`;
    case 'separators-mixed':
      return `구분 문자가 서로 다릅니다(${warning.found.map(quote).join(', ')}). 스캐너와 키보드 배열을 확인하십시오`;
    case 'separators-lost':
      return `${quote(warning.text)}에 구분 문자가 없습니다. 확실한 것만 읽었습니다. 스캐너가 제어 문자를 보내도록 설정하십시오`;
    case 'trailer-uncertain':
      return `${quote(warning.text)}의 마지막 글자는 코드의 끝 표시일 수 있습니다`;
    case 'keyboard-layout':
      return `스캐너가 다른 키보드(${warning.layout})로 입력합니다. ${quote(warning.text)}: 받지 않았습니다. 배열을 설정하고 다시 스캔하십시오`;
    case 'identifier-lower-case':
      return `식별자 ${quote(warning.id)}: 소문자로 와서 ${warning.id.toUpperCase()} 식별자로 읽었습니다`;
    case 'identifier-unlisted':
      return `식별자 ${warning.id}: 모르는 것입니다. 값은 보관하고 쓰지 않습니다`;
    case 'no-identifier':
      return `${quote(warning.text)}에 식별자가 없습니다. 텍스트로 보관합니다`;
    case 'format-unread':
      return `형식 ${warning.format}: 여기서 읽지 않습니다. 텍스트로 보관합니다`;
    case 'tags-not-mh10':
      return `데이터 식별자 대신 두 글자 표시(${warning.tags.join(', ')})입니다`;
    case 'one-letter-tags':
      return '한 글자 표시를 이렇게 읽었습니다: R 릴, P 사내 품번, D 날짜, L 로트, V 공급사, Q 수량, S 공급사 품번';
    case 'blank-separated':
      return `빈칸에서 잘라 읽었습니다. ${quote(warning.text)}의 품번에 빈칸이 있으면 거기서도 잘립니다`;
    case 'value-may-go-on':
      return `${quote(warning.text)}: ${warning.id} 뒤 값의 일부일 수 있습니다. 읽지 않았습니다`;
    case 'identifier-unconfirmed':
      return `${quote(warning.text)}: 식별자로 시작하거나 그냥 번호일 수 있습니다. 사람이 정해야 합니다`;
    case 'confirmed-by-setup':
      return `${fields[warning.field]} ${quote(warning.value)}: 셋업과 같습니다`;
    case 'conflict':
      return `라벨에 ${fields[warning.field]} 값이 여러 개입니다: ${warning.values.map(quote).join(', ')}`;
    case 'second-lot':
      return `라벨에 두 번째 로트가 있습니다: ${quote(warning.text)}. 릴에 둘 다 들어 있습니다`;
    case 'quantity-unreadable':
      return `수량 ${quote(warning.text)}: 추측 없이는 읽을 수 없습니다. 세거나 입력하십시오`;
    case 'quantity-marks':
      return `수량 ${quote(warning.text)} → ${warning.quantity}개로 읽었습니다`;
    case 'date-code-unclear':
      return `날짜 코드 ${quote(warning.text)}(${warning.id}): 분명하지 않습니다. 인쇄된 대로 보관합니다`;
    case 'no-such-week':
      return `날짜 코드 ${quote(warning.text)}(${warning.id}): 어느 해의 주도 아닙니다. 인쇄된 대로 보관합니다`;
    case 'no-such-date':
      return `${quote(warning.text)}(${warning.id}): 날짜가 아닙니다`;
    case 'day-not-printed':
      return `${quote(warning.text)}(${warning.id}): 일이 없습니다. 그달 말일로 봅니다`;
    case 'country-unlisted':
      return `${quote(warning.text)}: 국가 코드가 아닙니다`;
    case 'msl-unlisted':
      return `${quote(warning.text)}: 습기 민감 등급이 아닙니다`;
    case 'rule-unclear':
      return `라벨 규칙 ${quote(warning.rule)}: 두 가지 이상으로 맞습니다. 쓰지 않습니다`;
    case 'full-ascii':
      return `${quote(warning.text)}은(는) 전체 ASCII Code 39로 보입니다. 원래는 ${quote(warning.meant)}입니다. 스캐너를 그렇게 설정하십시오`;
    case 'gs1-unread':
      return `${quote(warning.text)}에 여기서 모르는 GS1 식별자가 있습니다. 텍스트로 보관합니다`;
    case 'gs1-check-digit':
      return `${quote(warning.text)}의 검사 숫자가 틀립니다`;
  }
}

export const words: Sentences<typeof english> = {
  say: sayIt,
};
