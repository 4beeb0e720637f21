// The printable sheet of practice labels: plain HTML with real symbols. Cut apart, they stand in for slots, feeders, badges
// and reels; a scanner reads them off paper or off another screen.

import { plantName } from './plant.ts';
import type { PracticeLabel } from './practice-label.ts';
import { practiceGroups } from './practice-label.ts';
import type { DrawSymbol } from './symbols.ts';

const escapes: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' };

function escapeText(text: string): string {
  return text.replace(/[&<>"]/g, (char) => escapes[char] ?? char);
}

/** Control characters as people write them, so that the text under a symbol says what is in it. */
function visible(text: string): string {
  return text.replaceAll('\x1d', '␝').replaceAll('\x1e', '␞').replaceAll('\x04', '␄');
}

function labelCard(label: PracticeLabel, draw: DrawSymbol): string {
  const symbols = label.codes.map(
    (code) =>
      `<figure class="${code.format}">${draw(code)}<figcaption>${escapeText(visible(code.text))}</figcaption></figure>`,
  );
  return (
    `<li class="label"><h3>${escapeText(label.title)}</h3><p>${escapeText(label.hint)}</p>` +
    `<div class="codes">${symbols.join('')}</div></li>`
  );
}

/** The whole page. Its looks are in `sheetStyle`, served beside it, since the page allows no styles of its own. */
export function sheetPage(labels: readonly PracticeLabel[], draw: DrawSymbol): string {
  const sections = practiceGroups.map((group) => {
    const cards = labels.filter((label) => label.group === group).map((label) => labelCard(label, draw));
    return cards.length === 0 ? '' : `<section><h2>${group}</h2><ul>${cards.join('\n')}</ul></section>`;
  });
  return `<!doctype html>
<html lang="en" translate="no">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>Practice labels</title>
<link rel="stylesheet" href="/demo/labels.css">
</head>
<body>
<header>
<h1>Practice labels</h1>
<p>${escapeText(plantName)}: plant, products, people, numbers and lots are made up. Print at 100 %, or scan off this screen with
another device. Every person's PIN is the number on the badge.</p>
</header>
${sections.join('\n')}
</body>
</html>
`;
}

/** The looks of the sheet, on screen and on paper. */
export const sheetStyle = `
body { font: 15px/1.35 system-ui, "Noto Sans", sans-serif; margin: 24px; color: #14181d; background: #fff; }
h1 { font-size: 24px; margin: 0 0 4px; }
h2 { font-size: 18px; margin: 28px 0 10px; border-bottom: 2px solid #14181d; padding-bottom: 4px; }
h3 { font-size: 15px; margin: 0; overflow-wrap: anywhere; }
p { margin: 2px 0 8px; color: #555c65; }
ul { list-style: none; margin: 0; padding: 0; columns: 400px; column-gap: 10px; }
.label { border: 1px dashed #8d8a80; border-radius: 6px; padding: 10px; margin: 0 0 10px; break-inside: avoid; }
.codes { display: flex; flex-wrap: wrap; gap: 8px; }
figure { margin: 0; }
figcaption { font: 9px/1.2 ui-monospace, monospace; overflow-wrap: anywhere; max-width: 380px; }
svg { display: block; }
@media print { body { margin: 0; zoom: 0.62; } h2 { break-after: avoid; } }
`;
