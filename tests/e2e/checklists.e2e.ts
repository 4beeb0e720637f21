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
