import { Validator } from '@seriousme/openapi-schema-validator';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { startBuiltServer, type BuiltServer } from '../support/built-server.js';

interface Operation {
  readonly summary?: string;
  readonly requestBody?: { content: Record<string, { schema?: object }> };
  readonly responses: Record<string, unknown>;
}

interface Description {
  readonly openapi: string;
  readonly paths: Record<string, Record<string, Operation>>;
  readonly components: { schemas: Record<string, { properties?: object; enum?: unknown[] }> };
}

// Checked against the published OpenAPI 3 schema by a validator that is not ours (@seriousme/openapi-schema-validator).
describe('the API description of the built server', () => {
  let server: BuiltServer;
  let description: Description;
  beforeAll(async () => {
    server = await startBuiltServer();
    description = (await (await fetch(`${server.address}/api/openapi.json`)).json()) as Description;
  });
  afterAll(() => server.stop());

  it('is a valid OpenAPI document', async () => {
    const result = await new Validator().validate(structuredClone(description) as never);
    expect(result.errors ?? []).toEqual([]);
    expect(result.valid).toBe(true);
  });

  it('describes the main job and no page', () => {
    const paths = Object.keys(description.paths);
    for (const path of [
      '/api/items',
      '/api/jobs',
      '/api/jobs/{id}/proposal',
      '/api/jobs/{id}/reservation',
      '/health',
    ]) {
      expect(paths).toContain(path);
    }
    expect(paths.filter((path) => !path.startsWith('/api/') && path !== '/health')).toEqual([]);
  });

  it('has a summary for every operation and properties for every schema', () => {
    const silent = Object.entries(description.paths).flatMap(([path, operations]) =>
      Object.entries(operations).flatMap(([method, { summary }]) => (summary ? [] : [`${method} ${path}`])),
    );
    expect(silent).toEqual([]);
    const empty = Object.entries(description.components.schemas).flatMap(([name, schema]) =>
      schema.enum || Object.keys(schema.properties ?? {}).length > 0 ? [] : [name],
    );
    expect(empty).toEqual([]);
  });
});
