import { availableParallelism } from 'node:os';
import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

const root = fileURLToPath(new URL('..', import.meta.url));

export default defineConfig({
  root,
  resolve: { alias: { '@': root } },
  test: {
    include: ['tests/{unit,reference,property,db}/**/*.test.ts'],
    // Room for a machine that does other work too; a test that hangs still ends.
    testTimeout: 240_000,
    // On two cores it would keep to one.
    maxWorkers: Math.max(2, availableParallelism() - 1),
  },
});
