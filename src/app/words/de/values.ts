import type { words as english } from '../en/values.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  title: (part) => `${part} messen`,
  ask: 'Legen Sie ein Bauteil dieser Rolle an das Messgerät, bevor sie zuführt.',
  which: 'Der Code kann mehrere Werte bedeuten. Wählen Sie den richtigen.',
  wanted: (nominal, least, most, unit) => `Verlangt: ${nominal} ${unit}, von ${least} bis ${most} ${unit}`,
  meter: (percent, digits, guard) =>
    `Messgerät: ± ${percent} % und ± ${digits} Digits. Sicherheitsband: ${guard} % davon.`,
  shows: (unit) => `Messgerät zeigt, in ${unit}`,
  help: 'Eintippen, oder vom Messgerät tippen lassen.',
  wrong: 'Geben Sie eine Zahl ein, zum Beispiel 10,02.',
  otherUnit: (unit) => `Das Messgerät zeigt etwas anderes. Verlangt: eine Zahl in ${unit}.`,
  check: 'Wert prüfen',
  cannot: 'Ungemessen lassen',
  rule: {
    title: 'Bauteile, die vor dem Zuführen gemessen werden',
    help: 'Eine Zeile je Klasse von Bauteilen. Der Wert kommt aus der Teileliste oder aus der Notiz der Rüstung. Keine Zeile: keine Prüfung.',
    begins: 'Teilenummern beginnen mit (leer: alle mit Wert)',
    add: 'Klasse von Bauteilen hinzufügen',
    percent: 'Messgerät: ± % vom Messwert',
    digits: 'Messgerät: ± Digits der letzten Stelle',
    guard: 'Sicherheitsband, % der Messunsicherheit',
    wrong: 'Geben Sie die Angaben des Messgeräts als Zahlen ein und jede Klasse einmal.',
  },
};
