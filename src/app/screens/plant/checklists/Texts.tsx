// A text of the plant's own, in several languages: a field for each, and the choice of one more.

import { Field, SelectField } from '../../../ui/Field.tsx';
import { templateWords } from '../../../words/template.ts';
import { type Language, languages, say, tongues } from '../../../words/words.ts';

/** A text's fields, one a language. `onText` is told once a field is left. */
export function Texts(props: {
  readonly label: string;
  readonly texts: Readonly<Record<string, string>>;
  readonly codes: readonly Language[];
  readonly maxLength: number;
  readonly onText: (code: Language, text: string) => void;
}) {
  const { label, texts, codes, maxLength, onText } = props;
  return (
    <>
      {codes.map((code) => (
        <Field
          key={code}
          label={`${label} · ${tongues[code].name}`}
          lang={code}
          dir={tongues[code].runs}
          maxLength={maxLength}
          value={texts[code] ?? ''}
          onLeave={(text) => onText(code, text)}
        />
      ))}
    </>
  );
}

/** Adds one of the languages that have no fields yet; nothing where all have. */
export function MoreLanguage(props: {
  readonly codes: readonly Language[];
  readonly onAdd: (code: Language) => void;
}) {
  const words = say(templateWords);
  const rest = languages.filter((code) => !props.codes.includes(code));
  if (rest.length === 0) return null;
  return (
    <SelectField
      label={words.language}
      testId="language-add"
      value=""
      onChoose={(chosen) => rest.filter((code) => code === chosen).forEach(props.onAdd)}
    >
      <option value="">{words.noLanguage}</option>
      {rest.map((code) => (
        <option key={code} value={code} lang={code}>
          {tongues[code].name}
        </option>
      ))}
    </SelectField>
  );
}
