import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    environment: 'node',
    // Not UTC on purpose: nothing in the core may depend on the zone of the machine.
    env: { TZ: 'Australia/Lord_Howe' },
    include: ['tests/**/*.test.ts', 'tests/**/*.test.tsx'],
    exclude: ['tests/browser/**'],
    setupFiles: ['tests/house/quiet.ts'],
    testTimeout: 20_000,
    allowOnly: false,
  },
});
