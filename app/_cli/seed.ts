import { explainFailure } from './explain-failure';

/**
 * Puts an invented organisation into an empty database, and says how to sign in to it. Loaded late, so that wrong
 * settings are answered in plain lines.
 */
async function seed(): Promise<void> {
  const { database } = await import('../_server/database');
  const { findBySlug } = await import('@/db/queries/organizations');
  const { loadDemo } = await import('./demo/demo-content');
  const { demoSignIns } = await import('./demo/demo-sign-ins');
  const { seedDemo } = await import('./demo/seed-demo');
  const demo = loadDemo();
  const added = await seedDemo(demo, new Date(), (name, attempts) =>
    console.log(`${name}: ${attempts} invented attempts`),
  );
  if (!added) console.log('There are people or attempts already; nothing added.');
  const organization = await findBySlug(database(), demo.shortName);
  if (organization?.demo) console.log(`\n${demoSignIns(demo)}`);
}

seed().catch(explainFailure);
