// The only sentences that come with the page itself, in every language: what stands where no other words could be fetched.

import type { Language } from './words.ts';

export const unreachable: Readonly<Record<Language, { readonly told: string; readonly reload: string }>> = {
  en: {
    told: 'Part of the app could not be loaded. Connect this tablet to the network, then reload.',
    reload: 'Reload',
  },
  es: {
    told: 'No se pudo cargar una parte de la aplicación. Conecte esta tableta a la red y vuelva a cargar.',
    reload: 'Recargar',
  },
  de: {
    told: 'Ein Teil der App konnte nicht geladen werden. Verbinden Sie dieses Tablet mit dem Netz und laden Sie neu.',
    reload: 'Neu laden',
  },
  fr: {
    told: 'Une partie de l’application n’a pas pu être chargée. Connectez cette tablette au réseau, puis rechargez.',
    reload: 'Recharger',
  },
  pt: {
    told: 'Não foi possível carregar uma parte do aplicativo. Conecte este tablet à rede e recarregue.',
    reload: 'Recarregar',
  },
  pl: {
    told: 'Nie udało się wczytać części aplikacji. Połącz ten tablet z siecią i wczytaj ponownie.',
    reload: 'Wczytaj ponownie',
  },
  hu: {
    told: 'Az alkalmazás egy része nem töltődött be. Csatlakoztassa a táblagépet a hálózathoz, majd töltse újra.',
    reload: 'Újratöltés',
  },
  vi: {
    told: 'Không tải được một phần ứng dụng. Hãy kết nối máy tính bảng này với mạng rồi tải lại.',
    reload: 'Tải lại',
  },
  zh: {
    told: '应用的一部分无法加载。请将此平板连接网络，然后重新加载。',
    reload: '重新加载',
  },
  ja: {
    told: 'アプリの一部を読み込めませんでした。このタブレットをネットワークにつないで、再読み込みしてください。',
    reload: '再読み込み',
  },
  ko: {
    told: '앱의 일부를 불러오지 못했습니다. 이 태블릿을 네트워크에 연결한 뒤 다시 불러오십시오.',
    reload: '다시 불러오기',
  },
  ar: {
    told: 'تعذّر تحميل جزء من التطبيق. صِل هذا الجهاز بالشبكة ثم أعد التحميل.',
    reload: 'إعادة التحميل',
  },
};
