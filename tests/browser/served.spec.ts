/** What the server says, and that the built page stays within it. */
import { expect, test } from './house.ts';

test('the page comes with a policy that lets nothing in from elsewhere', async ({ request }) => {
  const answer = await request.get('./');
  expect(answer.status()).toBe(200);
  const policy = answer.headers()['content-security-policy'];
  for (const rule of [
    "default-src 'none'",
    "script-src 'self'",
    "style-src 'self'",
    "frame-ancestors 'none'",
  ]) {
    expect(policy).toContain(rule);
  }
  expect(policy).not.toContain('unsafe-inline');
  expect(policy).not.toContain("'unsafe-eval'");
});

test('a file that is not there is not found', async ({ request }) => {
  expect((await request.get('./assets/nothing-of-that-name.js')).status()).toBe(404);
});

test('the sample trees and the schemas are served as they are', async ({ request }) => {
  const tree = await request.get('./examples/potted-fig-in-leaf.json');
  expect(await tree.json()).toMatchObject({ format: 'boughlight-tree', version: 1 });
  const schema = await request.get('./schema/boughlight-light-1.schema.json');
  expect(await schema.json()).toMatchObject({ $schema: 'https://json-schema.org/draft/2020-12/schema' });
});
