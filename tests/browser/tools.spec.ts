/** What is done with a limb as a whole. */
import { expect, test } from './house.ts';
import { expectAccessible, openWithoutPicture, sheet } from './pageSteps.ts';

test.use({ locale: 'en-GB' });

test('shoots are set along a limb, the limb is copied round, mirrored and split, each in one step', async ({
  page,
}) => {
  await openWithoutPicture(page);
  await sheet(page, 'Tree').click();
  const headline = page.locator('.headline');
  await expect(headline).toHaveText('4 limbs, 12 laterals, 51 shoots, 419 leaves.');
  await page.getByRole('button', { name: /^South-east limb \d/ }).click();
  await page.getByText('More to do with South-east limb').click();
  await expectAccessible(page);
  const tools = page.locator('.branch-tools');
  await tools.getByRole('textbox', { name: /^How many/ }).fill('3');
  await tools.getByRole('textbox', { name: /^From one to the next/ }).fill('22,5');
  await tools.getByRole('button', { name: 'Add these shoots' }).click();
  await expect(headline).toContainText('54 shoots, 446 leaves');
  await tools.getByRole('textbox', { name: /^Limbs in all/ }).fill('2');
  await tools.getByRole('button', { name: 'Copy it round' }).click();
  await expect(headline).toContainText('5 limbs, 15 laterals');
  await tools.getByRole('textbox', { name: /^From its base/ }).fill('40');
  await tools.getByRole('button', { name: 'Split it here' }).click();
  await expect(page.getByText('South-east limb, outer part').first()).toBeVisible();
  await expect(headline).toContainText('6 limbs');
  for (let i = 0; i < 3; i++) await page.getByRole('button', { name: 'Undo' }).click();
  await expect(headline).toHaveText('4 limbs, 12 laterals, 51 shoots, 419 leaves.');
  await expect(page.getByRole('button', { name: 'Undo' })).toBeDisabled();
});
