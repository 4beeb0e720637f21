// Whose hands work at this tablet: gloves need larger targets, the left hand has what it presses most on its side.

import { useApp } from '../../app.ts';
import { ChoiceField } from '../../ui/Field.tsx';
import { plantWords } from '../../words/plant.ts';
import { language, say, tongues } from '../../words/words.ts';

export function Hands() {
  const { preferences } = useApp();
  const words = say(plantWords).tablet;
  const usual = tongues[language.value].runs === 'ltr' ? 'right' : 'left';
  return (
    <>
      <ChoiceField
        label={words.gloves}
        value={preferences.value.gloves}
        choices={[
          { value: true, text: words.on, testId: 'gloves-on' },
          { value: false, text: words.off, testId: 'gloves-off' },
        ]}
        onChoose={(gloves) => {
          preferences.value = { ...preferences.value, gloves };
        }}
        help={words.glovesHelp}
      />
      <ChoiceField
        label={words.hand}
        value={preferences.value.hand ?? usual}
        choices={(['left', 'right'] as const).map((each) => ({
          value: each,
          text: words.hands[each],
          testId: `hand-${each}`,
        }))}
        onChoose={(hand) => {
          preferences.value = { ...preferences.value, hand };
        }}
        help={words.handHelp}
      />
    </>
  );
}
