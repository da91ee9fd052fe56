import { defineConfig } from 'vitest/config';

export default defineConfig({
  base: './',
  build: { target: 'es2022', sourcemap: false },
  test: { include: ['tests/**/*.test.ts'], exclude: ['tests/e2e/**'], environment: 'node', testTimeout: 60_000 },
});
