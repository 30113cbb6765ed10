import AxeBuilder from '@axe-core/playwright';
import { codeOf } from '../support/case-codes';
import { expect, test } from './fixtures';
import {
  fillFinding,
  makeCall,
  openAttempt,
  primePressureLow,
  takeReading,
  weakLiftPump,
  writeFinding,
} from './learner';

/** All rules once; the dark theme differs in nothing but its colours. */
const themes = [
  { colorScheme: 'light', rules: undefined },
  { colorScheme: 'dark', rules: ['color-contrast'] },
] as const;

for (const { colorScheme, rules } of themes) {
  test(`axe finds nothing serious on any page in the ${colorScheme} theme`, async ({ page }) => {
    const expectClean = async () => {
      const axe = new AxeBuilder({ page });
      const { violations } = await (rules ? axe.withRules([...rules]) : axe).analyze();
      const grave = violations.filter(({ impact }) => impact === 'serious' || impact === 'critical');
      expect(grave.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html).join(' ')}`)).toEqual([]);
    };
    await page.emulateMedia({ colorScheme });
    await page.goto('/');
    await expectClean();
    await page.goto('/learn');
    await expectClean();
    await openAttempt(page, codeOf('lift-pump-weak', 800));
    await expectClean();
    await takeReading(page, primePressureLow.hookUp);
    await fillFinding(page, primePressureLow.finding);
    await expectClean();
    await writeFinding(page, primePressureLow.finding);
    await takeReading(page, { ...primePressureLow.hookUp, condition: 'idle' });
    await expectClean();
    await makeCall(page, weakLiftPump);
    await expectClean();
  });
}
