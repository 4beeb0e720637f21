import type { words as english } from '../en/push.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  title: '앱이 닫혀 있을 때의 알림',
  promise:
    '반장용: 응답 없는 경고, 사용 중인 사용 금지 릴, 멈춘 라인. 늦거나 오지 않을 수 있으니 태블릿 한 대를 열어 두십시오.',
  way: '알림은 암호화되어 이 브라우저 제조사의 서비스를 거칩니다. 공장 서버가 거기에 닿아야 합니다.',
  noBrowser: '이 브라우저는 알림을 받지 않습니다.',
  noServer: '응답하는 서버가 없습니다. 먼저 참여하거나 나중에 다시 하십시오.',
  off: '공장 서버에 이 설정이 없습니다.',
  unreached: '공장 서버가 서비스에 닿지 않습니다. 여기에는 알림이 없습니다.',
  denied: '브라우저가 알림을 막습니다. 설정에서 이 페이지에 허용하십시오.',
  turnOn: '알림 켜기',
  turnOff: '알림 끄기',
  isOn: '알림이 여기로 옵니다.',
  isOff: '여기서는 알림이 꺼져 있습니다.',
  wrong: '되지 않았습니다. 다시 하십시오.',
  first: '알림이 여기에 도착합니다.',
  warning: (line, slot) => `${line}: ${slot}의 경고에 아무도 응답하지 않습니다.`,
  blocked: (line, slot) => `${line}: ${slot}에서 사용 금지 릴을 사용 중입니다.`,
  stood: (line) => `${line} 멈춰 있음.`,
};
