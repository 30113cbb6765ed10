import { expect, test } from 'vitest';
import { addingOrganization, changingOrganization, findOrganization } from '@/db/queries/organizations';
import { together } from '@/db/together';
import { usualSettings } from '@/lib/accounts/settings';
import { anOrganization } from '../support/people-rows';
import { testDatabase } from '../support/test-database';

test('an organisation keeps its name and settings, and another stays as it was', async () => {
  const db = testDatabase();
  const other = anOrganization({ id: 'college', name: 'Hill College', slug: 'college' });
  await together(db, [addingOrganization(db, anOrganization()), addingOrganization(db, other)]);
  const settings = { ...usualSettings, units: 'bar-c', passMarks: { practice: 55, assessed: 80 } } as const;
  await together(db, [changingOrganization(db, { id: 'harbour', name: 'Harbour Diesel and Marine', settings })]);
  expect(await findOrganization(db, 'harbour')).toMatchObject({
    name: 'Harbour Diesel and Marine',
    slug: 'harbour',
    settings,
  });
  expect(await findOrganization(db, 'college')).toMatchObject({ name: 'Hill College', settings: null });
});
