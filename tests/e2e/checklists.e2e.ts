// A plant's own checklists on the plant's pages: in the languages that its people read, English or not.

import { expect, it } from 'vitest';
import { openAt, ownEntries, type Tablet } from './support/floor.ts';
import { speak } from './support/tour/visit.ts';
import { useDemo } from './support/use-demo.ts';

const demo = useDemo({ badge: 'BADGE-4401' });

/** Opens the list for a shift's start to be edited, the app speaking German. */
async function edited({ page }: Tablet) {
  await openAt(page, '#/plant/checklists');
  await speak(page, { language: 'de', pseudo: null });
  await page.getByTestId('edit-shift-start').click();
  await page.getByTestId('step-add').waitFor();
  return {
    page,
    fill: async (label: string, text: string) => {
      const field = page.getByLabel(label, { exact: true });
      await field.fill(text);
      await field.blur();
    },
    removeAll: async () => {
      const remove = page.getByRole('button', { name: 'Entfernen', exact: true });
      for (let left = await remove.count(); left > 0; left--) await remove.first().click();
    },
    written: async () => {
      await page.getByTestId('template-save').click();
      await page.getByTestId('step-add').waitFor({ state: 'detached' });
      return (await ownEntries(page, 'checklist.template')).at(-1)?.payload;
    },
  };
}

it('keeps a list in German alone, its first heading too', () =>
  demo.onTablet(async (tablet) => {
    const { page, fill, removeAll, written } = await edited(tablet);
    await removeAll();
    await page.getByTestId('step-add').click();
    await fill('Text · Deutsch', 'Die Lampe über dem Tisch brennt.');
    const [step] = ((await written()) as { steps: readonly unknown[] }).steps;
    expect(step).toMatchObject({
      group: { de: 'Weiteres' },
      text: { de: 'Die Lampe über dem Tisch brennt.' },
    });
    await speak(page, { language: 'es', pseudo: null });
    await page.getByTestId('edit-shift-start').click();
    await expect.poll(() => page.getByTestId('step-0').textContent()).toContain('Die Lampe über dem Tisch');
  }));

it('takes a name and a step in a language that is added by choice', () =>
  demo.onTablet(async (tablet) => {
    const { page, fill, written } = await edited(tablet);
    await page.getByTestId('language-add').selectOption('ar');
    await fill('Name · العربية', 'بداية الوردية عندنا');
    await fill('Name · Deutsch', 'Unser Schichtbeginn');
    await page.getByTestId('step-add').click();
    const form = page.getByTestId('step-form');
    expect(await form.getByLabel('Text · العربية').getAttribute('dir')).toBe('rtl');
    await fill('Text · العربية', 'المصباح مضاء.');
    const payload = (await written()) as { title: unknown; steps: { text: unknown }[] };
    expect(payload.title).toMatchObject({ ar: 'بداية الوردية عندنا', de: 'Unser Schichtbeginn' });
    expect(payload.steps.at(-1)?.text).toEqual({ ar: 'المصباح مضاء.' });
    await expect
      .poll(() => page.getByTestId('template-shift-start').textContent())
      .toContain('Unser Schichtbeginn');
  }));

it('wants a name in one language at least', () =>
  demo.onTablet(async (tablet) => {
    const { page, fill } = await edited(tablet);
    for (const name of ['English', 'Español']) await fill(`Name · ${name}`, '');
    const save = page.getByTestId('template-save');
    await expect.poll(() => save.getAttribute('aria-disabled')).toBe('true');
    await fill('Name · Deutsch', 'Schichtbeginn');
    await expect.poll(() => save.getAttribute('aria-disabled')).not.toBe('true');
  }));
