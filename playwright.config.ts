/** Tests in a real browser, against the built page as `npm start` serves it. */
import { createServer } from 'node:net';
import { defineConfig, devices } from '@playwright/test';
import { findBrowser } from './scripts/browser.mjs';

function freePort(): Promise<number> {
  return new Promise((resolve, reject) => {
    const probe = createServer();
    probe.on('error', reject);
    probe.listen(0, 'localhost', () => {
      const address = probe.address();
      probe.close(() => resolve(typeof address === 'object' && address !== null ? address.port : 0));
    });
  });
}

// The runner's children read this file too and must come to the same port.
process.env.BOUGHLIGHT_TEST_PORT ??= String(await freePort());
const port = process.env.BOUGHLIGHT_TEST_PORT;
const executablePath = findBrowser();

export default defineConfig({
  testDir: 'tests/browser',
  outputDir: 'test-results',
  forbidOnly: true,
  fullyParallel: false,
  workers: 1,
  retries: 0,
  timeout: 120_000,
  expect: { timeout: 20_000 },
  reporter: [['list']],
  use: {
    baseURL: `http://localhost:${port}/`,
    trace: 'retain-on-failure',
    launchOptions: {
      ...(executablePath === null ? {} : { executablePath }),
      args: [
        ...(process.getuid?.() === 0 ? ['--no-sandbox'] : []),
        '--use-angle=swiftshader',
        '--enable-unsafe-swiftshader',
        '--disable-quic',
        '--no-first-run',
        '--disable-background-networking',
        '--disable-component-update',
        '--disable-sync',
        '--force-color-profile=srgb',
        '--font-render-hinting=none',
      ],
    },
  },
  projects: [
    {
      name: 'laptop',
      testIgnore: /\.phone\.spec\.ts$/,
      use: { ...devices['Desktop Chrome'], viewport: { width: 1440, height: 900 } },
    },
    {
      name: 'phone',
      testMatch: /\.phone\.spec\.ts$/,
      use: { ...devices['Pixel 7'], viewport: { width: 390, height: 844 }, deviceScaleFactor: 1 },
    },
  ],
  webServer: {
    command: `node scripts/start.mjs --port ${port}`,
    url: `http://localhost:${port}/`,
    reuseExistingServer: false,
    timeout: 120_000,
  },
});
