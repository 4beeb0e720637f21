// Which language is spoken, each under its own name.

import { type Language, languages, tongues } from '../words/words.ts';
import { ChoiceField } from './Field.tsx';

interface LanguageFieldProps {
  readonly label: string;
  readonly value: Language;
  readonly onChoose: (language: Language) => void;
  readonly help?: string;
}

export function LanguageField(props: LanguageFieldProps) {
  return (
    <ChoiceField
      {...props}
      choices={languages.map((each) => ({
        value: each,
        text: tongues[each].name,
        testId: `language-${each}`,
        lang: each,
      }))}
    />
  );
}
