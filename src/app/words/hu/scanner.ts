import type { words as english } from '../en/scanner.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  layouts: {
    us: 'angol (USA)',
    uk: 'angol (Egyesült Királyság)',
    german: 'német',
    'swiss-german': 'svájci német',
    french: 'francia',
    spanish: 'spanyol',
    italian: 'olasz',
    swedish: 'svéd',
  },
  title: 'Olvassa be ezt a kódot az olvasóval',
  help: 'Erről a képernyőről, egy másikról vagy a kinyomtatott lapról. Amíg ez az oldal nyitva van, a beolvasások máshová nem mennek.',
  codeLabel: 'Kalibrálókód',
  striped: 'Olvasó, amely csak vonalkódot olvas',
  stripedLabel: 'Kalibráló vonalkód',
  stripedHelp:
    'Kis képernyőhöz túl széles: ott nyomtassa ki a lapot. A vonalkódban egy elválasztó van, ezért csak annak van próbája.',
  stripedSheet: 'Csak vonalkódot olvasó olvasóhoz:',
  print: 'Lap nyomtatása',
  waiting: 'Beolvasásra vár…',
  right: 'Ez az olvasó jól van beállítva.',
  rightText: 'A betűk, jelek és elválasztók úgy érkeznek, ahogy nyomtatva vannak.',
  plainOnly: 'Az egyszerű kódokat olvassa, az elválasztós címkéket nem.',
  plainOnlyText: 'Az ilyen címkék elutasítva, amíg az olvasó nincs a lentiek szerint beállítva.',
  wrong: 'Ebben az olvasóban még nem lehet megbízni.',
  wrongText: 'Amit beolvas, nem úgy érkezik, ahogy nyomtatva van.',
  findings: {
    'all-equal': 'Minden karakter úgy érkezett, ahogy nyomtatva van.',
    'half-arrived': (found, wanted) =>
      `${wanted} karakterből csak ${found} érkezett meg: a beolvasás megszakadt. Állítsa a karakterek közti késleltetést nullára, vagy vigye közelebb az olvasót a bázisához.`,
    'layout-differs': (scanner, tablet) =>
      `Az olvasó billentyűzete: ${scanner}, a tablet ezt várja: ${tablet}. Állítsa az olvasó billentyűzetét erre: ${tablet}, vagy a tablet kiosztását erre: ${scanner}.`,
    'characters-differ':
      'A karakterek megváltozva érkeznek, és egyetlen itt ismert kiosztás sem magyarázza. Állítsa az olvasó billentyűzetét a tablet kiosztására, és olvassa be újra.',
    'case-inverted':
      'A kis- és nagybetűk felcserélve érkeznek. Kapcsolja ki a Caps Lockot, és állítsa be, hogy az olvasó ne változtasson a betűkön.',
    'separators-lost': (names) =>
      `Az elválasztók nem érkeznek meg (${names}). Állítsa be, hogy az olvasó vezérlőkaraktereket küldjön, Ctrl és egy billentyű vagy Alt és a számbillentyűzet módjában.`,
    'separator-replaced': (name, by) =>
      `Az elválasztó (${name}) így érkezik: „${by}”. Állítsa be, hogy az olvasó változatlanul küldje a vezérlőkaraktereket.`,
    'terminator-missing':
      'Nincs Enter a végén, ezért a beolvasás vége csak sejthető. Állítsa az olvasó utótagját Enterre.',
    'unknown-key': (key) =>
      `A beolvasás közepén ez a billentyű jött: „${key}”. Vegye ki az ilyen billentyűket az olvasó beállításaiból.`,
    slow: (pace) => `Két karakter között ${pace} ms lassú. Állítsa a karakterek közti késleltetést nullára.`,
    'symbology-id-sent': (id) => `Az olvasó előre elküldi a kód fajtáját (${id}). Ez érthető, maradhat.`,
  },
  wanted: 'nyomtatva',
  found: 'érkezett',
  label: {
    title: 'Olvasson be egy nyomtatott címkét',
    help: 'Helyét, feederét, kártyáét vagy tekercsét.',
    read: 'Ez a címke olvasható.',
    unknown: 'Ez a tablet nem ismeri ezt a címkét.',
    unknownHelp: 'Olvassa be újra. Ha nem segít, nyomtassa nagyobbra, vagy előbb vegye fel az üzembe.',
  },
  arrived: 'Ami megérkezett',
  none: 'Még semmi. Olvasson be bármit: itt látszik, vezérlőkarakterekkel együtt.',
  characters: (count) => `${count} karakter`,
  pace: (ms) => `egyenként ${ms} ms`,
  endedBy: { Enter: 'utána Enter', Tab: 'utána Tab', silence: 'nincs Enter' },
  reads: 'így olvasva',
  readsNothing: 'nem ismert címke',
  settingsTitle: 'Hogyan legyen beállítva egy olvasó',
  settings: [
    'Billentyűzetként működik (HID).',
    'A billentyűzet országa: ugyanaz, mint a tableté.',
    'Vezérlőkaraktereket küld, Ctrl és egy billentyű vagy Alt és a számbillentyűzet módjában.',
    'Utótag: Enter. Nincs előtag.',
    'Betűk, ahogy nyomtatva vannak: nincs kis- és nagybetűváltás.',
    'Nincs késleltetés a karakterek között.',
  ],
  keep: 'Az olvasó tempójának mentése ezen a tableten',
  keptNow: 'Mentve. Ez a tablet e tempó alapján különbözteti meg a beolvasást a gépeléstől.',
  isKept: 'Ez a tablet elmentette az olvasója tempóját.',
  forget: 'A szokásos tempó',
  sheetTitle: 'Olvasó kalibrálása',
  sheetText: 'Nyissa meg a tableten: Üzem, Olvasó, majd olvassa be ezt a kódot.',
  sheetHolds: 'A kód tartalma:',
  fields: {
    part: 'alkatrész',
    supplierPart: 'szállítói cikkszám',
    quantity: 'mennyiség',
    lot: 'tétel',
    dateCode: 'dátumkód',
    reel: 'tekercs',
  },
};
