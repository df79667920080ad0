/**
 * The page under test. It fails the test when the page prints a warning or an error, throws, asks
 * any other host for anything, gets no answer for a file or breaks its own security policy.
 */
import { test as base, type ConsoleMessage, expect, type Page, type Request } from '@playwright/test';

/** Talk of the browser's software rendering, by what it begins with; it says nothing of the page. */
const allowedTalk = '[.WebGL-';

function watch(page: Page, baseURL: string): string[] {
  const complaints: string[] = [];
  page.on('console', (message: ConsoleMessage) => {
    const text = message.text();
    if (!['warning', 'error'].includes(message.type())) return;
    if (text.startsWith(allowedTalk)) return;
    complaints.push(`console ${message.type()}: ${text}`);
  });
  page.on('pageerror', (error) => complaints.push(`thrown: ${error.message}`));
  page.on('request', (request: Request) => {
    const url = new URL(request.url());
    const own = url.origin === new URL(baseURL).origin;
    if (!own && url.protocol !== 'blob:') complaints.push(`foreign request: ${request.url()}`);
  });
  page.on('response', (response) => {
    if (response.status() >= 400) complaints.push(`answer ${response.status()}: ${response.url()}`);
  });
  return complaints;
}

interface Fixtures {
  /** What the page did that it must not do; a test that provokes something empties it. */
  readonly complaints: string[];
}

export const test = base.extend<Fixtures>({
  complaints: [
    async ({ page, baseURL }, use) => {
      if (baseURL === undefined) throw new Error('complaints: the address of the page is not set');
      const complaints = watch(page, baseURL);
      await use(complaints);
      expect(complaints, 'the page must do its work quietly and alone').toEqual([]);
    },
    { auto: true },
  ],
});

export { expect };
