import { availableParallelism } from 'node:os';
import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

const root = fileURLToPath(new URL('..', import.meta.url));

export default defineConfig({
  root,
  resolve: { alias: { '@': root } },
  test: {
    // Room for a machine that does other work too; a test that hangs still ends.
    testTimeout: 240_000,
    // On two cores it would keep to one.
    maxWorkers: Math.max(2, availableParallelism() - 1),
    projects: [
      {
        extends: true,
        test: {
          name: 'app and db',
          include: ['tests/db/**/*.test.ts', 'tests/unit/{app,cli}/**/*.test.ts'],
        },
      },
      {
        extends: true,
        test: {
          name: 'lib and content',
          include: ['tests/{unit,reference,property}/**/*.test.ts'],
          exclude: ['tests/unit/{app,cli}/**'],
          // lib is pure: files may share what it has worked out, such as the catalogue, and do not load it each for itself.
          isolate: false,
        },
      },
    ],
  },
});
