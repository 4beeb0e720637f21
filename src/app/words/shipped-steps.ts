import { inLanguage } from '../../../shared/checklist/steps.ts';
import { area, language, say } from './words.ts';

/** Texts of the checklists that ship, by their English, in languages that the checklists themselves do not have. */
export const shippedWords = area('shipped-steps');

/**
 * A text of the plant's own, kept in one or several languages: in the language in use, else as this app says the same English, else in
 * English, else in whatever there is. What an engineer wrote anew has no English that ships, and stands as it was written.
 */
export function sayText(texts: Readonly<Record<string, string>>): string {
  const known = say(shippedWords)[texts['en'] ?? ''];
  const own = texts[language.value] ?? '';
  return own.trim() === '' ? (known ?? inLanguage(texts, 'en')) : own;
}
